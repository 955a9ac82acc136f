"""What each limb had in a session with a wrap or cuff on, as kept between replannings."""

from collections.abc import Collection
from datetime import date, datetime
from typing import Any

from undercroft.domain.occlusion import Dose, OcclusionDay
from undercroft.domain.occlusion.site import sites_of


def write_doses(on: date, doses: Collection[Dose]) -> dict[str, Any]:
    """Plain data that `read_doses` and `read_day` read; `on` is the day that counts."""
    return {"on": on.isoformat(), "doses": [_plain(dose) for dose in doses]}


def read_doses(data: dict[str, Any]) -> tuple[Dose, ...]:
    """What each limb had."""
    return tuple(_dose(one) for one in data["doses"])


def read_day(data: dict[str, Any]) -> OcclusionDay:
    """The day of the work, and its limbs."""
    limbs = frozenset(dose.site.limb for dose in read_doses(data))
    return OcclusionDay(date.fromisoformat(data["on"]), limbs)


def _plain(dose: Dose) -> dict[str, Any]:
    return {
        "site": str(dose.site),
        "start": dose.start.isoformat(),
        "end": dose.end.isoformat(),
        "seconds": dose.seconds,
        "reps": dose.reps,
        "longest_s": dose.longest_s,
        "closed": dose.closed,
    }


def _dose(data: dict[str, Any]) -> Dose:
    (site,) = sites_of(data["site"])
    start, end = datetime.fromisoformat(data["start"]), datetime.fromisoformat(data["end"])
    return Dose(site, start, end, data["seconds"], data["reps"], data["longest_s"], data["closed"])
