"""Of which days the athlete's phones can have told everything."""

from datetime import date, timedelta

from undercroft.services.clock import day_of
from undercroft.services.devices import DeviceSeen, devices_of

DAY = timedelta(days=1)


def heard_through(athlete_id: str) -> date | None:
    """The day before a phone was last heard; None where none ever was."""
    heard = [_last_heard(one) for one in devices_of(athlete_id)]
    return day_of(max(heard)) - DAY if heard else None


def _last_heard(phone: DeviceSeen) -> int:
    """What a phone sends once it is revoked is held, and tells nothing."""
    return min(phone.last_used_at, phone.revoked_at or phone.last_used_at)
