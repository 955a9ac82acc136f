"""Questions of the day, asked before the first wrap goes on. The wording is our own."""

from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.question import Asked, Outcome, Question
from undercroft.domain.occlusion.questions_hard import CARE_NOW, CE_SUMMARY, DOCTOR_NOW, OWN

MEMORY = Basis(Mark.FROM_MEMORY, "dehydrated, hot or after alcohol: blocked or reduced")
VEIN = Basis(Mark.SEEN, "signs of a clot in a vein, patient pages of a blood-disorder institute")


def _today(
    key: str,
    name: str,
    text: str,
    basis: Basis,
    outcome: Outcome = Outcome.NOT_TODAY,
    *,
    renews: bool = False,
    urgent: str = "",
) -> Question:
    return Question(
        key,
        name,
        text,
        basis,
        outcome,
        asked=Asked.TODAY,
        passes=True,
        renews=renews,
        urgent=urgent,
    )


TODAY = (
    _today(
        "heart-today",
        "chest pain, fainting, or breath that fails",
        "Now or since the last session: chest pain, fainting, or short of breath at rest?",
        Basis(Mark.SEEN, "signs of a clot in the lungs; exercise-test criteria"),
        Outcome.LOCKED,
        urgent=CARE_NOW,
    ),
    _today(
        "one-limb",
        "one limb swollen, warm or discoloured",
        "Is one arm or one leg swollen, warmer than the other, or of another colour?",
        VEIN,
        Outcome.LOCKED,
        urgent=DOCTOR_NOW,
    ),
    _today(
        "dark-urine",
        "dark urine",
        "Has your urine been dark, like tea or cola?",
        Basis(Mark.SEEN, "CDC/NIOSH, signs of rhabdomyolysis"),
        Outcome.LOCKED,
        urgent=DOCTOR_NOW,
    ),
    _today(
        "fever",
        "fever or illness",
        "Do you have a fever, or are you ill or just over an illness?",
        CE_SUMMARY,
        renews=True,
    ),
    _today(
        "dry",
        "too little drunk, or a hot room",
        "Have you drunk too little, or is it hot where you train?",
        MEMORY,
    ),
    _today("alcohol", "alcohol", "Have you drunk alcohol in the last 24 hours?", MEMORY),
    _today(
        "journey",
        "a long journey",
        "In the last three days, did you sit for more than four hours on a journey?",
        Basis(Mark.OWN_CHOICE, "long travel raises the risk of a clot; days and hours are ours"),
        renews=True,
    ),
    _today(
        "new-pain",
        "new pain or numbness",
        "Do you have a new pain, or an arm or leg that feels numb?",
        OWN,
    ),
    _today(
        "changed",
        "a change since the screening",
        "Since your screening: an illness, an operation, a birth, or a new medicine?",
        OWN,
        Outcome.INCOMPLETE,
        renews=True,
    ),
    _today(
        "alone-today",
        "alone today",
        "Are you alone today, with nobody who could take the wraps off and call for help?",
        OWN,
        Outcome.OPEN,
    ),
)
"""`alone-today` closes only what a clearance opened for company, see `lacking`."""
