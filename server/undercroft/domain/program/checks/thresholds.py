"""Every threshold of the checks, each with the line that answers "why this number?".

Those of occlusion work and of mechanics stand in the settings of their own subjects; nobody moves
them. Of these here a coach may move what only a `warn` or a `note` rests on.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from typing import Any

OWN = "our own choice"
TRADE = "common practice"


def _row(value: float, unit: str, least: float, most: float, source: str) -> Any:
    """A field of the table: its default, unit, the range that makes sense, and its source."""
    return field(
        default=value, metadata={"unit": unit, "least": least, "most": most, "source": source}
    )


@dataclass(frozen=True, slots=True)
class Thresholds:
    """The numbers that checks compare with; the table of them is `TABLE`."""

    load_off_percent: float = _row(
        2.5, "% of the wish", 0, 20, f"about one pair of small plates on 100 kg; {OWN}"
    )
    load_off_kg: float = _row(
        1.25,
        "kg",
        0,
        10,
        "half of this kit's smallest step is allowed for light loads, up to half of the 2.5 kg that"
        f" the smallest usual plates make; {OWN}",
    )
    speed_reps: float = _row(
        5, "repetitions", 3, 12, f"speed sets have 2-3; 5 or 6 are too many ({TRADE})"
    )
    speed_rest_s: float = _row(
        60,
        "s",
        0,
        600,
        f"75-90 s between sets ({TRADE}); of 1, 2 and 3 min the first can do and the second kept"
        " power best (J Sports Sci Med 14:269, 12 people, seen)",
    )
    speed_lockout_percent: float = _row(
        85, "% of the maximum", 50, 120, f"above that a set is heavy work, not fast work; {TRADE}"
    )
    speed_sets: float = _row(
        8, "sets", 3, 30, f"power is best at set four or five and has gone by eight ({TRADE})"
    )
    alone_percent: float = _row(
        80, "% of the maximum", 50, 100, f"from there on a set can end under the bar; {OWN}"
    )
    alone_reserve: float = _row(
        2,
        "repetitions in reserve",
        0,
        5,
        "alone, leave 1-3 in reserve (handbook teaching, from memory); home bench press without a"
        " spotter leads the deaths on record (Lombardi & Troxel 2003, seen)",
    )
    recovery_h: float = _row(
        48, "h", 0, 168, "48-72 h between hard sessions of a muscle (handbooks, from memory)"
    )
    heavy_percent: float = _row(80, "% of the maximum", 50, 100, f"heavy work; {OWN}")
    heavy_reserve: float = _row(
        1,
        "repetitions in reserve",
        0,
        5,
        "sets to failure slow recovery by 24-48 h (Morán-Navarro et al. 2017, seen); the last"
        f" repetition short of it counts too: {OWN}",
    )
    jump_percent: float = _row(
        30, "%", 5, 200, f"more than the most of the four weeks before; {OWN}"
    )
    jump_sets: float = _row(3, "sets", 1, 20, f"a smaller step is no jump, whatever its %; {OWN}")
    ceiling_sets: float = _row(
        20,
        "hard sets a week",
        4,
        60,
        "12-20 a week are a good standard for trained people (review, PMC8884877, seen), where"
        " the athlete has no ceiling of their own",
    )
    top_percent: float = _row(100, "% of the maximum", 90, 130, "more has never been lifted")
    over_time_min: float = _row(0, "min", 0, 120, "the athlete's own time for a session")
    reserve_off: float = _row(
        1,
        "repetitions",
        0,
        5,
        f"people tell their reserve to about one repetition near failure (from memory); {OWN}",
    )
    maximum_weeks: float = _row(
        12, "weeks", 1, 104, f"strength moves by 0.2-1 % a week (studies, seen); {OWN}"
    )
    maximum_reps: float = _row(
        10,
        "repetitions",
        3,
        15,
        "estimates hold to ten repetitions (Reynolds et al. 2006, seen)",
    )
    warm_up_percent: float = _row(80, "% of the maximum", 40, 100, TRADE)
    sides_percent: float = _row(
        10, "%", 2, 50, f"sides of most people differ by less (from memory); {OWN}"
    )
    band_sides_percent: float = _row(
        5, "% of the load", 1, 50, "bands sold as equal differ by 8-19 % (McMaster 2010, seen)"
    )
    band_share_points: float = _row(
        5, "points off the share", 1, 30, f"more than the doubt of measured bands; {OWN}"
    )
    sprint_rest_s: float = _row(
        420,
        "s",
        60,
        1200,
        f"full recovery takes about 7-10 min after 40-60 m ({TRADE}); the handbook rule of 1 min"
        " for each 10 m (secondary pages, seen) is milder and holds for shorter runs",
    )
    sprint_from_m: float = _row(40, "m", 10, 100, f"from there on full recovery counts; {TRADE}")
    sprint_rest_s_per_10_m: float = _row(
        60, "s", 10, 300, "handbook rule of 1 min for each 10 m (secondary pages, seen)"
    )
    sprint_most_m: float = _row(100, "m", 20, 400, f"longer runs are not for top speed; {OWN}")
    lost_sessions: float = _row(1, "sessions", 1, 14, f"one is worth a word; {OWN}")


DEFAULT = Thresholds()


@dataclass(frozen=True, slots=True)
class Threshold:
    """A line of the table; values that make sense lie from `least` to `most`."""

    name: str
    default: float
    unit: str
    least: float
    most: float
    source: str


TABLE: Mapping[str, Threshold] = {
    one.name: Threshold(
        one.name,
        getattr(DEFAULT, one.name),
        one.metadata["unit"],
        one.metadata["least"],
        one.metadata["most"],
        one.metadata["source"],
    )
    for one in fields(Thresholds)
}
