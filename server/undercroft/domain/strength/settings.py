"""Every threshold of the strength part, each with the line that answers "why this number?".

Doubts (standard deviations) are relative, in natural-log units: 0.02 is 2 %. "Our own choice" means
that no published figure settles it.
"""

from dataclasses import dataclass, replace

Points = tuple[tuple[float, float], ...]
"""(place, value) pairs, rising in place; linear in between, held flat outside."""


@dataclass(frozen=True, slots=True)
class StrengthSettings:
    """The numbers that the tracker and the notch table work with."""

    test_sd: float = 0.042
    curve_sd: Points = ((3.0, 0.015), (5.0, 0.023), (9.0, 0.033), (14.0, 0.040))
    tilt_sd: float = 0.1
    reserve_sd: Points = ((2.0, 1.0), (3.0, 1.3), (4.0, 2.0), (5.0, 3.0))
    long_set_reps: int = 12
    long_set_factor: float = 1.5
    growth_sd: float = 0.015
    drift: float = 0.002
    trained_gap_weeks: float = 2.0
    form_sd: float = 0.02
    gate: float = 0.12
    band_z: float = 1.6448536269514722
    rise_per_set: int = 2
    rise_in_all: int = 5
    reach: int = 20


DEFAULT = StrengthSettings()


def novice(settings: StrengthSettings = DEFAULT) -> StrengthSettings:
    """The same settings for somebody new to the lift, whose strength moves faster."""
    return replace(settings, growth_sd=0.020, drift=0.010)


def trained(settings: StrengthSettings = DEFAULT) -> StrengthSettings:
    """The same settings for somebody who knows how to test a maximum."""
    return replace(settings, test_sd=0.025)


BASIS: dict[str, str] = {
    "test_sd": "median test-retest CV 4.2 % over 32 studies (Grgic et al. 2020, seen); 2.5 % for"
    " trained athletes after 2.1 % in squatters (Banyard et al. 2017, seen)",
    "curve_sd": "by n: half of the spread between people once the athlete's own curve is learnt"
    " (Nuzzo et al. 2024: SD of repetitions falls linearly with load, seen in excerpts); our own"
    " choice",
    "tilt_sd": "the other half of that spread, as a lasting trait of athlete and lift; our own"
    " choice",
    "reserve_sd": "repetitions by reserve: 1.0 at 0-2, 1.3 at 3, 2 at 4, 3 beyond (Halperin et al."
    " 2022, Refalo et al. 2024, Hackett et al. 2017, seen); our own rounding",
    "long_set_reps": "reserve is called worse in sets above 12 (Halperin et al. 2022, seen)",
    "long_set_factor": "slope 0.47 against 0.06 above and below 12 repetitions (Halperin et al."
    " 2022, seen); the factor 1.5 is our own choice",
    "growth_sd": "per square root of a week; rates of Latella et al. 2020 and of training studies"
    " (seen) vary several times more between people than on average; 2.0 % for novices; our own"
    " choice",
    "drift": "per week trained: powerlifters 0.20-0.29 % (Latella et al. 2020, seen); 1 % for"
    " novices, who gain 1-2 % in studies (Mayhew et al. 2008, seen)",
    "trained_gap_weeks": "a longer gap counts as this much training and no more, so that absence"
    " invents neither gain nor loss; our own choice",
    "form_sd": "measured day-to-day maximum -5.6 to +4.8 %, CV 2.1 % (Banyard et al. 2017, seen)",
    "gate": "about three standard deviations of a set's difference; our own choice",
    "band_z": "90 % of a normal distribution lie within 1.645 standard deviations",
    "rise_per_set": "about the smallest plates at a usual load; our own choice",
    "rise_in_all": "the best day measured lay 4.8 % above the first (Banyard et al. 2017, seen)",
    "reach": "notches on each side of today, beyond the largest difference of one session; our own"
    " choice",
}
"""Why each setting has its value, by field name."""


def at(points: Points, place: float) -> float:
    """Read a value off points: linear in between, held flat outside."""
    below = points[0]
    for above in points:
        if place <= above[0]:
            if above[0] == below[0]:
                return above[1]
            part = (place - below[0]) / (above[0] - below[0])
            return below[1] + part * (above[1] - below[1])
        below = above
    return below[1]
