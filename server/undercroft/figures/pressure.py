"""Pressures of cuffs, and the doses of occlusion work. None of these is a clearance."""

from datetime import date
from functools import partial

from undercroft.domain.kit import Cuff, Wrap
from undercroft.domain.occlusion.pressure import (
    Estimate,
    Padding,
    Sex,
    estimate_by_padding,
    estimate_thigh,
    target_mmhg,
)
from undercroft.domain.occlusion.protocol import (
    EXPECTED,
    FIXED_SEVENTY_FIVE,
    load_range_kg,
    predicted_wear_s,
)
from undercroft.domain.occlusion.work import Work
from undercroft.domain.program.methods import Limb, Restriction
from undercroft.figures.row import REFUSED, Mark, Row

SUBJECT = "occlusion"
CUFF = Cuff("cuff", "cuff", 180.0, "nylon")
NARROW = Cuff("narrow", "cuff", 50.0, "nylon")
BARE_CUFF = Cuff("bare", "cuff", 180.0, "")
DAY = date(2026, 2, 2)
EQUATION = "Rev Bras Med Esporte 2019"
TUNCALI = "Tuncali et al. 2006, formula"


def thigh(
    cm: float = 55, systolic: float = 120, age: int = 23, sex: Sex = Sex.MALE, cuff: Cuff = CUFF
) -> Estimate:
    return estimate_thigh(Limb.THIGH, cuff, cm, systolic, age, sex)


def share_of_wrap(cuff: Cuff | Wrap, percent: float) -> float:
    return target_mmhg(cuff, percent, thigh(), Limb.THIGH, DAY)


def padded(padding: Padding | None) -> float:
    return estimate_by_padding(Limb.THIGH, CUFF, 120, padding).mmhg


def _end_of_range(place: int) -> float:
    return load_range_kg(80)[place]


def seventy_five() -> Work:
    sets = FIXED_SEVENTY_FIVE.sets
    return Work(Limb.THIGH, Restriction.CUFF, sets, 30, 30, 30.0)


ROWS = (
    Row(SUBJECT, "thigh, mmHg", "55 cm, 120 mmHg, 23, male", 166.235,
        lambda: thigh().mmhg, 0.01, EQUATION, Mark.SEEN),
    Row(SUBJECT, "thigh, mmHg", "55 cm, 120 mmHg, 23, female", 158.251,
        lambda: thigh(sex=Sex.FEMALE).mmhg, 0.01, EQUATION, Mark.SEEN),
    Row(SUBJECT, "thigh, mmHg", "60 cm, 130 mmHg, 30, male", 181.636,
        lambda: thigh(60, 130, 30).mmhg, 0.01, EQUATION, Mark.SEEN),
    Row(SUBJECT, "thigh, 95 % of people from, mmHg", "55 cm, 120 mmHg, 23, male", 136.3,
        lambda: thigh().low or 0.0, 0.1, f"{EQUATION}, its standard error", Mark.DERIVED),
    Row(SUBJECT, "thigh, 95 % of people to, mmHg", "55 cm, 120 mmHg, 23, male", 196.2,
        lambda: thigh().high or 0.0, 0.1, f"{EQUATION}, its standard error", Mark.DERIVED),
    Row(SUBJECT, "50 % of that estimate, mmHg", "55 cm, 120 mmHg, 23, male", 83.1,
        lambda: share_of_wrap(CUFF, 50), 0.1, EQUATION, Mark.DERIVED),
    Row(SUBJECT, "thigh equation at 60 years", "outside its people", REFUSED,
        lambda: thigh(age=60).mmhg, 0.0, EQUATION, Mark.SEEN),
    Row(SUBJECT, "thigh equation, 5 cm cuff", "outside its cuff", REFUSED,
        lambda: thigh(cuff=NARROW).mmhg, 0.0, EQUATION, Mark.SEEN),
    Row(SUBJECT, "padding, mmHg", "120 mmHg, factor 0.80", 162.5,
        lambda: padded(Padding(55, 0.8, "a measured table")), 0.05, TUNCALI, Mark.SEEN),
    Row(SUBJECT, "padding without a factor", "no default", REFUSED,
        lambda: padded(None), 0.0, "its table was not seen", Mark.SEEN),
    Row(SUBJECT, "pressure, material unknown", "50 %", REFUSED,
        lambda: share_of_wrap(BARE_CUFF, 50), 0.0, "Buckner et al. 2017", Mark.SEEN),
    Row(SUBJECT, "pressure of a wrap", "50 %", REFUSED,
        lambda: share_of_wrap(Wrap("w", "wrap", 75.0), 50), 0.0, "Bell et al. 2020", Mark.SEEN),
    Row(SUBJECT, "repetitions of 30-15-15-15", "", 75,
        lambda: sum(one.reps or 0 for one in FIXED_SEVENTY_FIVE.sets), 0.0,
        "Hughes 2018, scheme", Mark.SEEN),
    Row(SUBJECT, "time of 30-15-15-15, s", "4 s a repetition, 30 s rests", 390,
        lambda: predicted_wear_s(seventy_five(), handling_s=0.0), 0.0,
        "PMC7534706, table 3", Mark.DERIVED),
    *(
        Row(SUBJECT, f"{word} load, kg", "1RM 80 kg", expected,
            partial(_end_of_range, place), 0.0, "20-40 % of the maximum", Mark.MEMORY)
        for place, word, expected in ((0, "lightest", 16.0), (1, "heaviest", 32.0))
    ),
    Row(SUBJECT, "four sets to failure, mean repetitions", "36.0, 14.7, 11.5, 10.4", 72.6,
        lambda: sum(one.mean for one in EXPECTED), 0.05, "Rolnick et al. 2025", Mark.SEEN),
)  # fmt: skip
