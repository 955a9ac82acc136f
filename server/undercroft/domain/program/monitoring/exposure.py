"""Occlusion exposure: minutes of wear and repetitions, limb by limb and week by week."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from undercroft.domain.ledger import Entry
from undercroft.domain.program.monitoring.done import DoneSet


@dataclass(frozen=True, slots=True)
class Wear:
    """One time that a wrap or cuff was on a limb."""

    on: date
    limb: str
    seconds: float


@dataclass(frozen=True, slots=True)
class Exposure:
    """A limb's week from Monday on; `longest_s` is the longest single wear, `days` had any."""

    monday: date
    limb: str
    minutes: float
    longest_s: float
    days: int


def wears(wraps: Iterable[Entry]) -> tuple[Wear, ...]:
    """Wear records from the ledger's entries of wraps taken off, on the day that the phone said."""
    return tuple(
        Wear(
            datetime.fromisoformat(entry.at).date(),
            str(entry.body["limb"]),
            float(entry.body["seconds"]),
        )
        for entry in wraps
        if entry.kind == "wrap.off"
    )


def exposures(records: Iterable[Wear]) -> tuple[Exposure, ...]:
    """The sum of wear for each week and limb, oldest first."""
    groups: dict[tuple[date, str], list[Wear]] = defaultdict(list)
    for one in records:
        groups[one.on - timedelta(days=one.on.weekday()), one.limb].append(one)
    return tuple(
        Exposure(
            monday,
            limb,
            sum(one.seconds for one in worn) / 60,
            max(one.seconds for one in worn),
            len({one.on for one in worn}),
        )
        for (monday, limb), worn in sorted(groups.items())
    )


def occlusion_reps(sets: Iterable[DoneSet]) -> dict[tuple[date, str], int]:
    """Repetitions under occlusion by week's Monday and limb."""
    reps: dict[tuple[date, str], int] = defaultdict(int)
    for one in sets:
        if one.limb is not None and one.reps:
            monday = one.on - timedelta(days=one.on.weekday())
            reps[monday, one.limb.value] += one.reps
    return dict(reps)
