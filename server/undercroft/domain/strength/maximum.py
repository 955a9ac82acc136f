"""A one-repetition maximum from one set to failure, by seven equations and the handbook curve.

Every equation reads the deadlift low (LeSuer et al. 1997), and most rest on charts rather than on
data (review in Biology of Sport, PMC4042664). With w the load and r the repetitions to failure, the
result is in the unit of w. At r = 1 every equation is overridden by w itself: a true single is the
maximum.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp, isfinite

from undercroft.domain.errors import DomainError, positive
from undercroft.domain.strength.reserve import FEWEST, HANDBOOK, MOST, RepCurve, share

WEAK_ABOVE = 10
"""Repetitions above which a result is marked weak: linear equations hold to 10 (Reynolds, Gordon,
Robergs 2006, seen) and spread grows (Mayhew et al. 1995, seen)."""


class TooManyToTell(DomainError):
    """More repetitions than say anything about a maximum."""

    def __init__(self, reps: float) -> None:
        super().__init__("repetitions", f"{reps:g} are too many to tell", f"at most {MOST} do")


@dataclass(frozen=True, slots=True)
class Equation:
    """`times(r)` is what the load is multiplied by; `below` is where the formula breaks down."""

    key: str
    name: str
    formula: str
    source: str
    mark: str
    times: Callable[[float], float]
    below: float | None = None


@dataclass(frozen=True, slots=True)
class Maximum:
    """A maximum worked out from one set; `weak` above ten repetitions."""

    kg: float
    weak: bool
    equation: str


_COPY = "seen in a secondary copy"

EQUATIONS: tuple[Equation, ...] = (
    Equation("epley", "Epley", "w (1 + r/30)", "Epley 1985", "seen", lambda r: 1 + r / 30),
    Equation(
        "brzycki", "Brzycki", "36 w/(37 - r)", "Brzycki 1993", _COPY, lambda r: 36 / (37 - r), 37
    ),
    Equation(
        "lander",
        "Lander",
        "100 w/(101.3 - 2.67123 r)",
        "Lander 1985",
        _COPY,
        lambda r: 100 / (101.3 - 2.67123 * r),
        101.3 / 2.67123,
    ),
    Equation("lombardi", "Lombardi", "w r^0.10", "Lombardi 1989", _COPY, lambda r: r**0.10),
    Equation(
        "mayhew",
        "Mayhew",
        "100 w/(52.2 + 41.9 e^(-0.055 r))",
        "Mayhew et al. 1992",
        _COPY,
        lambda r: 100 / (52.2 + 41.9 * exp(-0.055 * r)),
    ),
    Equation(
        "oconner",
        "O'Conner",
        "w (1 + 0.025 r)",
        "O'Conner et al. 1989",
        _COPY,
        lambda r: 1 + r / 40,
    ),
    Equation(
        "wathan",
        "Wathan",
        "100 w/(48.8 + 53.8 e^(-0.075 r))",
        "Wathan 1994",
        _COPY,
        lambda r: 100 / (48.8 + 53.8 * exp(-0.075 * r)),
    ),
)


def equation(key: str) -> Equation:
    """The equation of that key. DomainError names the ones there are."""
    for one in EQUATIONS:
        if one.key == key:
            return one
    known = ", ".join((HANDBOOK.name, *(one.key for one in EQUATIONS)))
    raise DomainError("equation", f"there is no {key!r}", f"there are {known}")


def multiplier(of: Equation, reps: float) -> float:
    """The bare formula, without override or refusal of many repetitions.

    DomainError where it is not defined: r below 1, or at and beyond its singularity.
    """
    if not (isfinite(reps) and reps >= FEWEST):
        raise DomainError("repetitions", f"are {reps:g}", f"should be at least {FEWEST}")
    if of.below is not None and reps >= of.below:
        where = f"should be below {of.below:g}, where {of.name} breaks down"
        raise DomainError("repetitions", f"are {reps:g}", where)
    return of.times(reps)


def curve_of(key: str) -> RepCurve:
    """The repetition curve that goes with an equation, or the handbook's own."""
    if key == HANDBOOK.name:
        return HANDBOOK
    of = equation(key)
    shares = (1 / multiplier(of, reps) for reps in range(FEWEST + 1, MOST + 1))
    return RepCurve(of.key, (1.0, *shares))


def one_rep_max(load_kg: float, reps: float, key: str = HANDBOOK.name) -> Maximum:
    """The maximum that `reps` to failure (done plus in reserve) with `load_kg` speak for.

    TooManyToTell above 15; DomainError for fewer than one repetition, a load that is not positive,
    or an unknown equation.
    """
    positive("load in kg", load_kg)
    if reps > MOST:
        raise TooManyToTell(reps)
    if reps == 1:
        times = 1.0
    elif key == HANDBOOK.name:
        times = 1 / share(reps)
    else:
        times = multiplier(equation(key), reps)
    return Maximum(load_kg * times, reps > WEAK_ABOVE, key)
