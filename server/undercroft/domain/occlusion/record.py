"""What is on record of an athlete's occlusion work; with nothing on record it is locked."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from undercroft.domain.occlusion.answers import said_yes
from undercroft.domain.occlusion.exposure import OcclusionDay, exposure_on
from undercroft.domain.occlusion.history import ScreeningFile
from undercroft.domain.occlusion.ladder import FULL_DOSE
from undercroft.domain.occlusion.lock import Lock, lasting_on
from undercroft.domain.occlusion.pressure import Measured
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import is_arm
from undercroft.domain.program.methods import Limb

ILLNESSES = ("fever", "changed")
"""Questions of the day whose "yes" is a day of illness, which takes first exposures back."""


@dataclass(frozen=True, slots=True)
class OcclusionRecord:
    """Answers, signatures, clearances; days with occlusion work; measured pressures.

    days  ever since the first exposure
    """

    screening: ScreeningFile = field(default_factory=ScreeningFile)
    days: tuple[OcclusionDay, ...] = ()
    pressures: tuple[Measured, ...] = ()

    @property
    def ill(self) -> tuple[date, ...]:
        """Days of illness that the answers tell of."""
        told = self.screening.answered
        return tuple(one.on for one in told if any(said_yes(one, key) for key in ILLNESSES))

    def locks(self, days: Iterable[date]) -> dict[date, Lock]:
        """The lock by planned day; one that has gone by gets that of the last day on record.

        Work that comes late is done under what was recorded since. Answers of a single day are
        not in it: the questions of the day are asked anew before the first wrap goes on.
        """
        wanted = tuple(days)
        file = self.screening
        known = file.last_day
        states = lasting_on({max(on, known) for on in wanted}, file)
        return {on: states[max(on, known)] for on in wanted}


@dataclass(frozen=True, slots=True)
class PlannedOcclusion:
    """A session that is yet to be done: its key, its day, the limbs it works with a wrap on."""

    session: str
    on: date
    limbs: frozenset[Limb]


@dataclass(frozen=True, slots=True)
class Ahead:
    """An exposure to come; `after` are the sessions that it takes for done by then.

    holds_until  the last day on which it has that number; later, time away has taken it back
    """

    exposure: int
    after: tuple[str, ...] = ()
    holds_until: date | None = None


def exposures_ahead(
    planned: Sequence[PlannedOcclusion], record: OcclusionRecord
) -> dict[tuple[str, Limb], Ahead]:
    """By session and limb the number of its exposure; each counts those before it as done."""
    days = list(record.days)
    before: list[PlannedOcclusion] = []
    found: dict[tuple[str, Limb], Ahead] = {}
    for one in sorted(planned, key=lambda one: one.on):
        for limb in one.limbs:
            exposure = exposure_on(days, one.on, limb, record.ill)
            after, until = _after(before, limb, exposure), _holds_until(days, one.on, limb)
            found[one.session, limb] = Ahead(exposure, after, until if exposure > 1 else None)
        days.append(OcclusionDay(one.on, one.limbs))
        before.append(one)
    return found


def _holds_until(days: Collection[OcclusionDay], on: date, limb: Limb) -> date | None:
    last = max((day.on for day in days if day.on < on and day.has_like(limb)), default=None)
    if last is None:
        return None
    spells = (on - last).days // LIMITS.away_days + 1
    return last + timedelta(days=spells * LIMITS.away_days - 1)


def _after(before: Collection[PlannedOcclusion], limb: Limb, exposure: int) -> tuple[str, ...]:
    """From the full dose on nothing depends on a session more or less."""
    if exposure >= FULL_DOSE:
        return ()
    like = [one for one in before if any(is_arm(own) == is_arm(limb) for own in one.limbs)]
    return tuple(one.session for one in like)
