"""Questions whose "yes" locks, or belongs to a clinic: decided first, outweighed by nothing.

The conditions are those that published lists and trials exclude; the tier is our own choice for
somebody who trains alone, stricter than clinic lists. The wording is our own.
"""

from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.question import Outcome, Question

CE_SUMMARY = Basis(Mark.SECOND_HAND, "risk score and list of a continuing-education summary")
CLINIC_LIST = Basis(Mark.SECOND_HAND, "contraindication list of a clinic")
TABLE_1 = Basis(Mark.SEEN, "Nascimento et al. 2022, Table 1")
TABLE_5 = Basis(Mark.SEEN, "Nascimento et al. 2022, Table 5")
OWN = Basis(Mark.OWN_CHOICE, "kept beside the published lists, to be on the safe side")
BOND = Basis(Mark.SEEN, "Bond et al. 2019 (abstract): no agreed standard after surgery")

CARE_NOW = "Ask for medical help now; call the emergency number if it is there while you rest."
DOCTOR_NOW = "See a doctor about it today."


def _locks(
    key: str,
    name: str,
    text: str,
    basis: Basis,
    points: int = 0,
    urgent: str = "",
    *,
    passes: bool = False,
) -> Question:
    return Question(
        key,
        name,
        text,
        basis,
        Outcome.LOCKED,
        points=points,
        never_alone=True,
        passes=passes,
        urgent=urgent,
    )


def _clinical(key: str, name: str, text: str, basis: Basis, points: int = 0) -> Question:
    return Question(key, name, text, basis, Outcome.CLINICAL, points=points, passes=True)


HARD_STOPS = (
    _locks(
        "clot",
        "a blood clot, past or suspected",
        "Have you ever had a blood clot in a vein or in the lungs, or did a doctor suspect one?",
        Basis(Mark.SEEN, "excluded by trials NCT03419169, NCT04086030, NCT05037942"),
        5,
    ),
    _locks(
        "clotting-disorder",
        "a clotting disorder",
        "Does your blood clot more easily, or less easily, than it should?",
        CE_SUMMARY,
    ),
    _locks("pregnant", "pregnancy", "Are you pregnant, or could you be?", TABLE_1, 4, passes=True),
    _locks(
        "after-birth",
        "a birth or pregnancy in the last six months",
        "Has a pregnancy of yours ended in the last six months, by birth or otherwise?",
        TABLE_1,
        passes=True,
    ),
    _locks(
        "sickle-cell",
        "sickle cell disease",
        "Do you have sickle cell disease? (Carrying the trait is asked further on.)",
        CE_SUMMARY,
    ),
    _locks(
        "vessel-surgery",
        "surgery on blood vessels, or a dialysis access",
        "Was a blood vessel of yours ever operated on, widened, stented or replaced, or do you"
        " have an access for dialysis?",
        CE_SUMMARY,
    ),
    _locks(
        "artery-disease",
        "narrowed arteries",
        "Are the arteries of your arms or legs narrowed, or do your legs hurt after a stretch of"
        " walking until you stand still?",
        TABLE_5,
    ),
    _locks(
        "lymph",
        "lymph swelling, removed lymph nodes, or breast surgery",
        "Do you have swelling from lymph, or were lymph nodes or a breast ever operated on?",
        CE_SUMMARY,
    ),
    _locks(
        "heart",
        "a disease of the heart or the great vessels",
        "Have you ever had a heart attack, angina, a weak or inflamed heart, a disturbed heart"
        " rhythm, a stopped heart, or a widened great vessel (aneurysm)?",
        TABLE_5,
        5,
    ),
    _locks(
        "effort-signs",
        "chest pain, breathlessness or a racing heart out of proportion",
        "In the last year, did your chest hurt, did your heart race or stumble, or did breath"
        " fail you, at rest or with effort that should be easy?",
        TABLE_5,
        urgent=DOCTOR_NOW,
        passes=True,
    ),
    _locks(
        "head",
        "a stroke, or bleeding or raised pressure in the head",
        "Have you ever had a stroke, even one that passed, a bleeding in the head, or raised"
        " pressure in it?",
        CLINIC_LIST,
    ),
    _locks(
        "acidosis",
        "blood that is too acid",
        "Has a doctor told you that your blood is too acid?",
        CLINIC_LIST,
    ),
    _locks(
        "limb-tumour",
        "a growth in an arm or a leg",
        "Is there a growth or an unexplained lump in one of your arms or legs?",
        CLINIC_LIST,
        passes=True,
    ),
    _locks(
        "cancer-now",
        "cancer under treatment",
        "Are you being treated for cancer, or were you within the last twelve months?",
        CE_SUMMARY,
        2,
        passes=True,
    ),
    _locks(
        "limb-harm",
        "an open wound, a graft, a fracture, crushing, infection or marked swelling of a limb",
        "Does an arm or a leg have an open wound, a skin graft, a break that has not healed, a"
        " crush injury, an infection or a marked swelling?",
        CE_SUMMARY,
        passes=True,
    ),
    _locks(
        "muscle-breakdown",
        "muscle breakdown after effort",
        "Did hard effort ever break down your muscles, with dark urine or a hospital stay?",
        Basis(Mark.FROM_MEMORY, "past exertional rhabdomyolysis"),
    ),
)
"""Every one of them blocks somebody who trains alone."""

FOR_THE_CLINIC = (
    _clinical(
        "injury",
        "an injury that is not over",
        "Are you getting over an injury of a muscle, tendon, joint or bone?",
        Basis(Mark.OWN_CHOICE, "a measured cuff under a licensed practitioner, or nothing"),
    ),
    _clinical(
        "surgery",
        "surgery in the last twelve weeks",
        "Were you operated on in the last twelve weeks?",
        Basis(
            Mark.SECOND_HAND,
            "about 70 times the risk of a clot within 6 weeks of in-patient surgery (Sweetland et"
            " al. 2009); 12 weeks are our own choice",
        ),
        5,
    ),
    _clinical(
        "kept-still",
        "a cast, a brace, bed rest or forbidden weight",
        "In the last twelve weeks, was a limb in a cast or brace or not to bear weight, or did you"
        " lie in bed for more than three days?",
        BOND,
        3,
    ),
    _clinical(
        "rehab",
        "recovery as the aim",
        "Is the aim of this work to recover from an injury, an operation or an illness?",
        BOND,
    ),
)
"""Only the clinician's own prescription is recorded here; nothing is worked out from it."""
