"""The rules of occlusion work by their keys, as the checks list them.

The domain of occlusion says what is wrong and what would be right; here each of its rules gets the
line that the list of checks shows.
"""

from dataclasses import dataclass

from undercroft.domain.program.finding import Severity

STOP, WARN, NOTE = Severity


@dataclass(frozen=True, slots=True)
class LimitCheck:
    """`key` and `severity` name the issue; `limits` are its settings; else `source` says why."""

    key: str
    severity: Severity
    looks_for: str
    limits: tuple[str, ...] = ()
    source: str = ""
    suffix: str = ""

    @property
    def name(self) -> str:
        return f"occlusion-{self.key}{self.suffix}"


LADDER = "first exposures: begin modestly (Clark & Manini 2017, seen); the steps are our own choice"
FALLING = "lone lifters die under bars (Lombardi & Troxel, seen); weakness comes suddenly"

LIMIT_CHECKS: tuple[LimitCheck, ...] = (
    LimitCheck(
        "placing", STOP, "wraps or cuffs elsewhere than at the top of a limb", source="from memory"
    ),
    LimitCheck(
        "alone-under-load",
        STOP,
        "wraps on, alone, under what can come down on the lifter",
        source=FALLING,
    ),
    LimitCheck("alone-with-bar", WARN, "wraps on, alone, with a bar in the hands", source=FALLING),
    LimitCheck("load", STOP, "more than 40 % of the maximum", ("most_load_percent",)),
    LimitCheck(
        "load",
        WARN,
        "a load of which nobody knows the share of the maximum",
        ("least_load_percent", "most_load_percent"),
        suffix="-unknown",
    ),
    LimitCheck(
        "load", NOTE, "less than 20 % of the maximum", ("least_load_percent",), suffix="-light"
    ),
    LimitCheck(
        "wear", STOP, "wear of a set list beyond the limit", ("wear_stop_s", "rep_s", "handling_s")
    ),
    LimitCheck(
        "wear",
        WARN,
        "wear of a set list beyond ten minutes",
        ("wear_warn_s", "rep_s", "handling_s"),
        suffix="-long",
    ),
    LimitCheck("break", STOP, "wraps kept on across exercises", ("break_s",)),
    LimitCheck("sets", STOP, "more sets with a wrap on than any protocol has", ("most_sets",)),
    LimitCheck(
        "rest",
        WARN,
        "rests with the wrap on outside those of the protocols",
        ("rest_least_s", "rest_most_s"),
    ),
    LimitCheck("reps", WARN, "more repetitions with a wrap on than 75", ("first_set_most",)),
    LimitCheck(
        "tightness",
        STOP,
        "no tightness, or one above the limb's limit at that exposure",
        ("most_tightness_leg", "most_tightness_arm"),
    ),
    LimitCheck(
        "wrap-pressure", STOP, "a pressure for a wrap, which has no gauge", source="Bell 2020, seen"
    ),
    LimitCheck(
        "pressure",
        STOP,
        "no pressure for a cuff, or one outside its limits",
        ("least_pressure_percent", "most_pressure_percent", "most_estimated_percent"),
    ),
    LimitCheck("gap", STOP, "two sessions of a limb too near each other", ("gap_stop_h",)),
    LimitCheck(
        "gap", WARN, "two sessions of a limb within 48 hours", ("gap_warn_h",), suffix="-short"
    ),
    LimitCheck("twice-a-day", STOP, "two sessions on one day", ("days_a_week",)),
    LimitCheck("days-in-a-row", WARN, "occlusion work on two days in a row", ("gap_warn_h",)),
    LimitCheck("days-a-week", STOP, "more days a week than the limit", ("days_a_week",)),
    LimitCheck(
        "exposure-dose", STOP, "more sets or repetitions than a first exposure may have", (), LADDER
    ),
    LimitCheck("exposure-failure", STOP, "a first exposure to failure, or near it", (), LADDER),
    LimitCheck("exposure-load", STOP, "a first exposure with too much load", (), LADDER),
    LimitCheck("exposure-limbs", STOP, "a first exposure of two limbs at once", (), LADDER),
    LimitCheck(
        "exposure-exercises", STOP, "more exercises than a first exposure may have", (), LADDER
    ),
)
