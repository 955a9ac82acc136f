"""Questions on the person as such; what follows from the numbers stands in `measures`."""

from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.question import Kind, Outcome, Question
from undercroft.domain.occlusion.questions_hard import CE_SUMMARY, OWN, TABLE_5

SEXES = ("female", "male", "not-said")
"""Not said counts as female: the score has a point for it."""

MEASURES = (
    Question(
        "born",
        "date of birth",
        "When were you born?",
        Basis(Mark.SEEN, "trials enrol adults (18 and over)"),
        kind=Kind.DATE,
    ),
    Question(
        "sex",
        "sex",
        "Female or male, for the count of risks? You need not say.",
        CE_SUMMARY,
        kind=Kind.CHOICE,
        choices=SEXES,
    ),
    Question(
        "height_m",
        "height",
        "How tall are you?",
        CE_SUMMARY,
        kind=Kind.NUMBER,
        least=1.0,
        most=2.5,
        unit="m",
    ),
    Question(
        "mass_kg",
        "body mass",
        "What do you weigh?",
        CE_SUMMARY,
        kind=Kind.NUMBER,
        least=30.0,
        most=300.0,
        unit="kg",
    ),
    Question(
        "systolic",
        "upper blood pressure",
        "Your blood pressure at rest, the upper number?",
        TABLE_5,
        kind=Kind.NUMBER,
        least=60.0,
        most=280.0,
        unit="mmHg",
    ),
    Question(
        "diastolic",
        "lower blood pressure",
        "Your blood pressure at rest, the lower number?",
        TABLE_5,
        kind=Kind.NUMBER,
        least=30.0,
        most=180.0,
        unit="mmHg",
    ),
    Question(
        "pressure-on",
        "day of the blood pressure",
        "On which day was that measured?",
        OWN,
        kind=Kind.DATE,
    ),
    Question(
        "alone",
        "training alone",
        "Do you ever train with nobody there who could take the wraps off and call for help?",
        OWN,
    ),
    Question(
        "untrained",
        "no regular training for the last eight weeks",
        "Have you trained less than twice a week over the last eight weeks?",
        Basis(Mark.FROM_MEMORY, "very untrained: blocked; the eight weeks are our own choice"),
        Outcome.NOT_TODAY,
        points=3,
        opens="eight weeks of regular training without wraps, and then the screening anew",
    ),
)
