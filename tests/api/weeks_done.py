"""Weeks of training as a phone tells them: which sessions were done, when, how hard, how long."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from tests.api.training import entries_of, send, sheets
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS, day_of


@dataclass(frozen=True)
class Effort:
    """A session of the block, its rating (0-10) and minutes; `on` where not the planned day."""

    session: str
    rpe: float
    minutes: int
    on: str | None = None


FORTNIGHT = (
    Effort("w1-mon", 7, 60),
    Effort("w1-wed", 6.5, 50, on="2026-02-05"),
    Effort("w1-fri", 8, 45),
    Effort("w2-mon", 7.5, 70),
    Effort("w2-fri", 5, 30),
)
"""One session a day late, one of the second week left out."""


def trains(coach: AtDesk, athlete: str, block: str, phone: Phone, *efforts: Effort) -> None:
    """The block sent, and these of its sessions done as planned, on the newest sheet of each."""
    send(coach, block, athlete)
    newest: dict[str, Any] = {}
    for effort in efforts:
        newest |= sheets(phone.reads_all())
        does(phone, newest[effort.session], effort)


def does(phone: Phone, sheet: dict[str, Any], effort: Effort) -> None:
    phone.writes.at = f"{effort.on or sheet['on']}T18:00:00.000+01:00"
    where = {"session": sheet["session"], "revision": sheet["revision"]}
    body = {"rpe": effort.rpe, "minutes": effort.minutes}
    over = phone.writes.entry("session.finished", body, **where)
    answer = phone.sends(*entries_of(phone, sheet), over)
    assert answer.status_code == 200, answer.text


def comes(coach: AtDesk, clock: Clock, day: str) -> None:
    """That day, with the coach looking in every few days so that the log-in lasts."""
    while (left := date.fromisoformat(day) - day_of(clock.now)).days > 0:
        clock.passes(min(left.days, 3) * DAY_MS)
        assert coach.get("/coach/me").status_code == 200
