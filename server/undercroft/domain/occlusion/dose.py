"""What a session's entries tell of wear and repetitions, limb by limb."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from undercroft.domain.ledger import Entry, SessionRecord
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import Site, sites_of
from undercroft.domain.program.block import SessionPlan
from undercroft.domain.program.methods import Method, OcclusionRule, Side
from undercroft.domain.set_keys import set_keys


@dataclass(frozen=True, slots=True)
class Wear:
    """One wrap or cuff on one limb, from on to off; `closed` is false where no off was recorded."""

    site: Site
    on_at: datetime
    seconds: float
    closed: bool = True

    @property
    def off_at(self) -> datetime:
        return self.on_at + timedelta(seconds=self.seconds)


@dataclass(frozen=True, slots=True)
class Dose:
    """What one limb had in one session; `seconds` is 0 where no wear was recorded."""

    site: Site
    start: datetime
    end: datetime
    seconds: float
    reps: int
    longest_s: float = 0.0
    closed: bool = True

    @property
    def on(self) -> date:
        return self.start.date()


def wears_of(entries: Sequence[Entry]) -> tuple[Wear, ...]:
    """Wear by limb from `wrap.on` and `wrap.off`, in the order of the entries.

    The phone's own count of seconds stands, not the difference of two readings of a clock that may
    have jumped. A wrap whose end was never recorded counts as worn up to the limit.
    """
    found: list[Wear] = []
    on: dict[Site, datetime] = {}
    for entry in entries:
        at = datetime.fromisoformat(entry.at)
        for site in sites_of(str(entry.body.get("limb", ""))):
            if entry.kind == "wrap.on":
                found += _unclosed(on, site)
                on[site] = at
            elif entry.kind == "wrap.off":
                seconds = float(entry.body.get("seconds", 0))
                begun = on.pop(site, at - timedelta(seconds=seconds))
                found.append(Wear(site, begun, seconds))
    for site in list(on):
        found += _unclosed(on, site)
    return tuple(found)


def doses_of(plan: SessionPlan, record: SessionRecord) -> tuple[Dose, ...]:
    """The session's dose for each limb that was worked or wrapped in it."""
    wears: dict[Site, list[Wear]] = defaultdict(list)
    for wear in wears_of(record.wraps):
        wears[wear.site].append(wear)
    reps: dict[Site, int] = defaultdict(int)
    times: dict[Site, list[datetime]] = defaultdict(list)
    for site, done, at in _sets_done(plan, record):
        reps[site] += done
        times[site].append(at)
    sites = sorted({*wears, *reps})
    return tuple(_dose(site, wears[site], reps[site], times[site]) for site in sites)


def _dose(site: Site, wears: list[Wear], reps: int, times: list[datetime]) -> Dose:
    starts = [*times, *(one.on_at for one in wears)]
    ends = [*times, *(one.off_at for one in wears)]
    return Dose(
        site=site,
        start=min(starts),
        end=max(ends),
        seconds=sum(one.seconds for one in wears),
        reps=reps,
        longest_s=max((one.seconds for one in wears), default=0.0),
        closed=all(one.closed for one in wears),
    )


def _unclosed(on: dict[Site, datetime], site: Site) -> Iterator[Wear]:
    begun = on.pop(site, None)
    if begun is not None:
        yield Wear(site, begun, float(LIMITS.wear_stop_s), closed=False)


def _sets_done(plan: SessionPlan, record: SessionRecord) -> Iterator[tuple[Site, int, datetime]]:
    """Each limb's repetitions of each set that was done, the sets that the athlete added too."""
    for exercise in plan.exercises:
        if exercise.method is not Method.OCCLUSION:
            continue
        rule = exercise.details
        if not isinstance(rule, OcclusionRule):
            continue
        for key in set_keys(exercise, record):
            answers = record.sets[key].answers() if key in record.sets else ()
            for done in (each for each in answers if each.kind == "done"):
                side = done.body.get("side")
                sides = [Side(side)] if side in list(Side) else list(Side)
                at = datetime.fromisoformat(done.at)
                for one in sides:
                    yield Site(rule.limb, one), int(done.body.get("reps") or 0), at
