"""Every threshold of occlusion work, each with the line that answers "why this number?".

Nobody moves them: neither a coach's settings nor a document. They are stricter than a supervised
clinic, because the athlete is alone and the wraps have no gauge; a clinician's limits can only
make them tighter. Where the evidence conflicts, the tighter figure stands.
"""

from dataclasses import dataclass

from undercroft.domain.occlusion.basis import Basis, Mark


@dataclass(frozen=True, slots=True)
class OcclusionSettings:
    """Numbers with their units in the names; percentages of what the name says."""

    screening_months: int = 6
    clearance_days: int = 366
    pressure_reading_days: int = 90
    grown_up_years: int = 18
    score_locks_from: int = 5
    age_counts_from: int = 40
    age_counts_twice_above: int = 60
    body_mass_counts_from: float = 25.0
    body_mass_counts_twice_above: float = 30.0
    raised_pressure_mmhg: tuple[int, int] = (140, 90)
    high_pressure_mmhg: tuple[int, int] = (160, 95)
    dangerous_pressure_mmhg: tuple[int, int] = (180, 110)
    least_pressure_percent: float = 40.0
    most_pressure_percent: float = 80.0
    most_estimated_percent: float = 50.0
    most_first_percent: float = 50.0
    measured_good_days: int = 28
    measured_mmhg: tuple[float, float] = (60.0, 350.0)
    equation_error_mmhg: float = 15.289
    equation_cuff_mm: float = 180.0
    equation_years: tuple[int, int] = (18, 35)
    equation_thigh_cm: tuple[float, float] = (40.0, 80.0)
    equation_systolic_mmhg: tuple[float, float] = (90.0, 139.0)
    padding_girth_cm: tuple[float, float] = (20.0, 75.0)
    least_load_percent: float = 20.0
    most_load_percent: float = 40.0
    most_tightness_leg: int = 7
    most_tightness_arm: int = 6
    numb_asked_s: int = 20
    numb_early_s: int = 30
    numb_clears_s: int = 60
    most_sets: int = 4
    rest_least_s: int = 30
    rest_most_s: int = 60
    rep_s: float = 4.0
    handling_s: float = 30.0
    wear_warn_s: int = 600
    wear_stop_s: int = 900
    break_s: int = 180
    gap_stop_h: int = 36
    gap_warn_h: int = 48
    days_a_week: int = 3
    away_days: int = 21
    steps_back: int = 2
    first_reserve: int = 4
    first_set_least: int = 15
    first_set_most: int = 75
    down_percent: float = 10.0
    after_check_h: tuple[int, ...] = (24, 48, 72)


LIMITS = OcclusionSettings()


def _basis(mark: Mark, source: str) -> Basis:
    return Basis(mark, source)


BASIS: dict[str, Basis] = {
    "screening_months": _basis(
        Mark.OWN_CHOICE, "an answer grows old; anew at once after illness, surgery or birth"
    ),
    "clearance_days": _basis(Mark.OWN_CHOICE, "a clearance that outlasts a year is asked anew"),
    "pressure_reading_days": _basis(
        Mark.OWN_CHOICE, "a blood pressure counts for the screening when it is that fresh"
    ),
    "grown_up_years": _basis(Mark.OWN_CHOICE, "trials enrol adults only (18 and over, seen)"),
    "score_locks_from": _basis(
        Mark.SECOND_HAND,
        "none with more than 4 points (score of the Nakajima 2011 lineage, CE summary)",
    ),
    "age_counts_from": _basis(
        Mark.SECOND_HAND, "age 40-58 has a point, over 40 is a caution (CE summary)"
    ),
    "age_counts_twice_above": _basis(
        Mark.SECOND_HAND, "over 60 has two points (CE summary); 59-60, left out there, has one"
    ),
    "body_mass_counts_from": _basis(
        Mark.SECOND_HAND, "body mass index 25-30 kg/m² has a point (CE summary)"
    ),
    "body_mass_counts_twice_above": _basis(
        Mark.SECOND_HAND, "over 30 kg/m² has two points and is a caution (CE summary)"
    ),
    "raised_pressure_mmhg": _basis(
        Mark.SEEN, "trial NCT05037942 excluded above 140/90; 'from there on' is our own choice"
    ),
    "high_pressure_mmhg": _basis(
        Mark.SECOND_HAND, "item of the score (CE summary): blocked until a doctor has spoken"
    ),
    "dangerous_pressure_mmhg": _basis(
        Mark.SEEN, "excluded, seek care (Nascimento et al. 2022, Table 5)"
    ),
    "least_pressure_percent": _basis(Mark.P_FROM_MEMORY, "40-80 % of limb occlusion pressure"),
    "most_pressure_percent": _basis(Mark.P_FROM_MEMORY, "40-80 % of limb occlusion pressure"),
    "most_estimated_percent": _basis(
        Mark.OWN_CHOICE,
        "an equation errs by about 30 mmHg either way: 80 % of an estimate may be 98 % of the"
        " true pressure (derived from SEE 15.289, Rev Bras Med Esporte 2019, seen)",
    ),
    "most_first_percent": _basis(
        Mark.OWN_CHOICE, "for the first two exposures, as tightness is held back there too"
    ),
    "measured_mmhg": _basis(Mark.OWN_CHOICE, "outside it is a slip of the pen"),
    "equation_error_mmhg": _basis(
        Mark.SEEN, "standard error of estimate, Rev Bras Med Esporte 2019"
    ),
    "equation_cuff_mm": _basis(Mark.SEEN, "cuff 18 cm wide, Rev Bras Med Esporte 2019"),
    "equation_years": _basis(
        Mark.OWN_CHOICE, "its people were 23.2 ± 5.2 years old (seen): no slope of age beyond"
    ),
    "equation_thigh_cm": _basis(Mark.OWN_CHOICE, "outside it is a slip, or nobody it was made for"),
    "equation_systolic_mmhg": _basis(
        Mark.OWN_CHOICE, "from 140 on a doctor comes first; below 90 nobody it was made for"
    ),
    "padding_girth_cm": _basis(Mark.SEEN, "range of limb girths, Tuncali et al. 2006"),
    "measured_good_days": _basis(
        Mark.OWN_CHOICE, "the pressure changes with day and posture (from memory): measure anew"
    ),
    "least_load_percent": _basis(Mark.P_FROM_MEMORY, "20-40 % of the one-repetition maximum"),
    "most_load_percent": _basis(Mark.P_FROM_MEMORY, "20-40 % of the one-repetition maximum"),
    "most_tightness_leg": _basis(
        Mark.SEEN,
        "7 of 10 is moderate pressure without pain (Bell et al. 2018); legs stayed below full"
        " occlusion on average (Bell et al. 2020)",
    ),
    "most_tightness_arm": _basis(
        Mark.OWN_CHOICE, "a mean arm at 7 came out above full occlusion (Bell et al. 2020, seen)"
    ),
    "numb_asked_s": _basis(Mark.COMMON_PRACTICE, "numb within about 20 s means too tight"),
    "numb_early_s": _basis(Mark.OWN_CHOICE, "10 s to answer the question that is asked at 20 s"),
    "numb_clears_s": _basis(Mark.OWN_CHOICE, "what 'clears at once' means, at the most"),
    "most_sets": _basis(Mark.P_FROM_MEMORY, "2-4 sets with the wrap on"),
    "rest_least_s": _basis(Mark.P_FROM_MEMORY, "rests of 30-60 s with the wraps on"),
    "rest_most_s": _basis(Mark.P_FROM_MEMORY, "rests of 30-60 s with the wraps on"),
    "rep_s": _basis(
        Mark.SEEN, "2 s up, 2 s down (PMC7534706 Table 3); 1-2 s each way (P from memory)"
    ),
    "handling_s": _basis(
        Mark.OWN_CHOICE, "winding on and taking off, part of which restricts already"
    ),
    "wear_warn_s": _basis(Mark.P_FROM_MEMORY, "5-10 min for an exercise, then release"),
    "wear_stop_s": _basis(
        Mark.COMMON_PRACTICE, "15 min on an arm; 20 are taught for legs, we take 15 for both"
    ),
    "break_s": _basis(
        Mark.COMMON_PRACTICE, "3-4 min off before the next exercise (4 min off did not prevent"
        " harm in Krieger 2018, seen)",
    ),
    "gap_stop_h": _basis(Mark.SEEN, "at least 36 h between sessions (PMC7534706 Table 3)"),
    "gap_warn_h": _basis(
        Mark.OWN_CHOICE, "recovery takes 24-72 h, 96 after a first bout (partly from memory)"
    ),
    "days_a_week": _basis(Mark.P_FROM_MEMORY, "2-3 days a week; more often is for the clinic"),
    "away_days": _basis(Mark.OWN_CHOICE, "3-4 weeks away; the shorter of the two counts"),
    "steps_back": _basis(
        Mark.OWN_CHOICE, "two for each such time away: begin modestly (Clark & Manini 2017, seen)"
    ),
    "first_reserve": _basis(
        Mark.OWN_CHOICE, "repetitions left: a first bout to failure harms (Sieljacks 2016, seen)"
    ),
    "first_set_least": _basis(
        Mark.OWN_CHOICE, "fewer, with 36.0 the mean (Rolnick et al. 2025, seen), asks a question"
    ),
    "first_set_most": _basis(
        Mark.OWN_CHOICE, "more, with 36.0 the mean (Rolnick et al. 2025, seen), asks a question"
    ),
    "down_percent": _basis(Mark.OWN_CHOICE, "where fewer than half of the repetitions succeed"),
    "after_check_h": _basis(
        Mark.SECOND_HAND,
        "muscle breakdown shows after 48-72 h (CE summary); one patient came the day after"
        " (Tabata et al. 2016, seen)",
    ),
}  # fmt: skip
"""Why each setting has its value, by field name."""
