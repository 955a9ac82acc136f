"""Questions that need a doctor first, and the cautions that are counted.

Tiers are our own choice for somebody who trains alone; the wording is our own.
"""

from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.question import Outcome, Question
from undercroft.domain.occlusion.questions_hard import CE_SUMMARY, OWN, TABLE_1, TABLE_5

TRIAL = Basis(Mark.SEEN, "excluded by trial NCT03419169")


def _doctor(
    key: str, name: str, text: str, basis: Basis, points: int = 0, *, passes: bool = False
) -> Question:
    return Question(key, name, text, basis, Outcome.DOCTOR_FIRST, points=points, passes=passes)


def _caution(key: str, name: str, text: str, points: int) -> Question:
    basis = Basis(Mark.SECOND_HAND, "counted by a CE summary; the point is our own choice")
    return Question(key, name, text, basis, Outcome.NEEDS_READING, points=points)


DOCTOR_FIRST = (
    _doctor("sickle-trait", "sickle cell trait", "Do you carry the sickle cell trait?", CE_SUMMARY),
    _doctor("varicose", "varicose veins", "Do you have varicose veins?", CE_SUMMARY, 3),
    _doctor("diabetes", "diabetes", "Do you have diabetes?", TABLE_1),
    _doctor("kidney", "kidney disease", "Do you have a disease of the kidneys?", TABLE_1),
    _doctor(
        "rheumatoid",
        "inflamed joints (rheumatoid arthritis)",
        "Do you have rheumatoid arthritis?",
        TABLE_1,
    ),
    _doctor(
        "after-covid",
        "illness that stayed after COVID-19",
        "Has COVID-19 left you with an illness that is not over?",
        TABLE_1,
    ),
    _doctor("lung", "a disease of the lungs", "Do you have a disease of the lungs?", TRIAL),
    _doctor(
        "pressure-treated",
        "treated high blood pressure",
        "Are you treated for high blood pressure, or were you told that you should be?",
        TRIAL,
    ),
    _doctor(
        "cancer-past",
        "cancer in the past",
        "Were you ever treated for cancer?",
        CE_SUMMARY,
        2,
    ),
    _doctor(
        "nerve",
        "a disease of the nerves, or a numb or weak limb",
        "Do you have a disease of the nerves, or an arm or leg that is numb or weak?",
        Basis(Mark.SEEN, "Kacin et al. 2015 (abstract): neurologic conditions"),
    ),
    _doctor(
        "fainting",
        "fainting, or dizziness on standing up",
        "Do you faint, or does it go black before your eyes when you stand up?",
        TABLE_5,
    ),
    _doctor(
        "blood-fats",
        "raised blood fats",
        "Were you told that your cholesterol or another blood fat is too high?",
        TABLE_5,
        2,
    ),
    _doctor(
        "low-capacity",
        "little breath for effort",
        "Must you stop for breath on three flights of stairs taken at an even pace?",
        TABLE_5,
    ),
    _doctor(
        "oestrogen",
        "oestrogen, as a contraceptive or otherwise",
        "Do you use a pill, patch, ring or other medicine with oestrogen?",
        TABLE_1,
        2,
    ),
    _doctor(
        "steroids",
        "anabolic steroids or drugs for performance",
        "Do you take anabolic steroids or other drugs for performance, or did you in the last"
        " year?",
        Basis(Mark.SEEN, "Nascimento et al. 2022 (abstract)"),
    ),
    _doctor("thinners", "blood thinners", "Do you take a medicine that thins the blood?", TRIAL),
    _doctor(
        "clot-medicine",
        "a medicine that raises the risk of clots",
        "Does the leaflet of a medicine that you take warn of blood clots?",
        CE_SUMMARY,
    ),
    _doctor(
        "statins",
        "a statin",
        "Do you take a statin (a medicine against cholesterol)?",
        Basis(Mark.FROM_MEMORY, "muscle breakdown"),
    ),
    _doctor(
        "other",
        "another condition, medicine or a doctor's advice",
        "Is there any other illness, medicine or doctor's advice that speaks against hard effort?",
        OWN,
    ),
    _doctor(
        "worse",
        "a cleared condition that came back or got worse",
        "Has anything that you were cleared for come back or got worse?",
        OWN,
        passes=True,
    ),
)

CAUTIONS = (
    _caution(
        "family-clots",
        "blood clots in the family",
        "Has a parent, brother, sister or child of yours had a blood clot in a vein or the lungs?",
        1,
    ),
    _caution("smoking", "smoking", "Do you smoke, or did you within the last year?", 1),
)
"""Age and body mass are counted too, from the measures below."""
