"""How far a lift's maximum has moved since a load was sent, and what says so, in words."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from math import exp, log

from undercroft.domain.proposals.sent import KnownThen, maximum_of
from undercroft.domain.sheet.standing import DoneSession, LiftStanding
from undercroft.domain.strength import Evidence, SetDone, StrengthSettings, TestedMax

NO_OTHER = "the sets since ask for no other load"
NOTHING_SINCE = "nothing that came in since tells of it"

COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True, slots=True)
class Moved:
    """`by` is ln(maximum now / maximum as it was expected); `sessions` have told of it since."""

    by: float
    sessions: int
    why: str

    @property
    def times(self) -> float:
        return exp(self.by)

    @property
    def notches(self) -> int:
        """Steps of 1 %: less than half of one asks for no other load."""
        return round(100 * self.by)


def moved(known: LiftStanding, then: KnownThen, done: Sequence[DoneSession]) -> Moved | None:
    """None where no maximum of the lift was known when it was sent.

    What was known then is taken to have grown by the drift that the tracker expects of training: a
    plan that goes as planned moves nothing. `done` are the sessions that told of the lift, oldest
    first.
    """
    before, now = then.maxima.get(known.lift), maximum_of(known)
    if before is None:
        return None
    since = [one for one in done if one.on > before.at]
    days = sorted({before.at, now.at, *(one.on for one in since if one.on < now.at)})
    drift = sum(_drift(known.settings, *gap) for gap in pairwise(days))
    by = log(now.kg / before.kg) - drift
    return Moved(by, len(since), _why(by, since, known))


def _drift(settings: StrengthSettings, start: date, end: date) -> float:
    return settings.drift * min((end - start).days / 7, settings.trained_gap_weeks)


def _why(by: float, since: Sequence[DoneSession], known: LiftStanding) -> str:
    count = abs(round(100 * by))
    told = _telling(by, since)
    if count == 0:
        return NO_OTHER if told else NOTHING_SINCE
    size = COUNTS[count] if count < len(COUNTS) else f"{count}"
    words = f"{size} {'notch' if count == 1 else 'notches'} {'up' if by > 0 else 'down'}"
    return f"{words}: {told or f'the maximum is {known.source}'}"


def _telling(by: float, since: Sequence[DoneSession]) -> str:
    """The newest session's evidence that speaks loudest for where the maximum went."""
    newest = since[-1].evidence if since else ()
    if not newest:
        return ""
    sign = 1 if by >= 0 else -1
    return evidence_words(max(newest, key=lambda one: sign * _better(one)))


def _better(one: Evidence) -> float:
    """Repetitions in hand beyond the plan; a test or a velocity says more than any set."""
    if not isinstance(one, SetDone):
        return 100.0
    return one.reps + one.rir - one.planned.reps - one.planned.rir


def evidence_words(one: Evidence) -> str:
    """ "3 reps at 4 in reserve, planned 2" """
    if isinstance(one, TestedMax):
        return f"a tested single of {one.load_kg:g} kg"
    if not isinstance(one, SetDone):
        return f"the bar's speed tells of {one.kg:.1f} kg"
    said = f"{_reps(one.reps)} at {one.rir:g} in reserve"
    planned = one.planned
    if one.reps != planned.reps:
        return f"{said}, planned {planned.reps:g} at {planned.rir:g}"
    if one.rir != planned.rir:
        return f"{said}, planned {planned.rir:g}"
    return f"{said} with {one.load_kg:g} kg, as planned"


def _reps(count: float) -> str:
    return "1 rep" if count == 1 else f"{count:g} reps"
