"""How costs grow with what lies behind them: history, athletes, the size of a batch."""

import random
import shutil
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from itertools import islice
from math import inf
from pathlib import Path
from statistics import median
from typing import Any

from flask import Flask
from tests.conftest import make_tables
from tests.people import PASSWORD, Phone
from tests.scale import squad
from tests.scale.copies import Copy, copy
from tests.scale.names import names
from tests.scale.paper import Costs
from tests.scale.screens import scene_in
from tests.scale.timings import Cost, Timed, measure
from tests.scale.years import SORTS, Sort, Trainee, at, body_of, enrol, train
from tests.writing import Writer

from undercroft.api import create_app
from undercroft.api.sessions import DEVICE_COOKIE
from undercroft.config import Settings
from undercroft.demo.history import session_entries
from undercroft.demo.scenario import load
from undercroft.domain.program.calendar import monday_of
from undercroft.services import accounts, blocks, devices
from undercroft.store import database, revisions, sql
from undercroft.store.feed import last_position
from undercroft.store.migrate import epoch
from undercroft.store.models import Athlete

WEEKS = (4, 13, 26, 52, 130, 260, 520)
ATHLETES = (10, 100, 1_000, 10_000)
SQUADS = (10, 30, 100, 300, 1_000)
BATCHES = (1, 5, 20, 50, 100, 200, 500)

OF_COACH = 10
"""Athletes of each coach, where the server's athletes grow and no squad does."""

SELDOM = Sort("tilde", "forge-cellar", "four-weeks", syncs_after=6)
"""Comes down to where there is a signal every other week."""

LAST = date(2026, 11, 20)
ROUNDS = 5

Say = Callable[[str], None]


@dataclass
class Figures:
    """By name of what was asked, its cost at each size, in units of the machine's pace beside it.

    Other tenants of a machine halve its pace for seconds, which would look like growth.
    """

    in_paces: dict[str, dict[int, list[float]]] = field(default_factory=lambda: defaultdict(dict))
    fastest_ms: float = inf

    def note(self, what: str, size: int, costs: Sequence[Cost], parts: int = 1) -> None:
        """Of one request or, where it has `parts`, of each of them."""
        self.fastest_ms = min(self.fastest_ms, *(one.pace_ms for one in costs))
        samples = [one.cpu_ms / one.pace_ms / parts for one in costs]
        self.in_paces[what].setdefault(size, []).extend(samples)

    def costs(self) -> Costs:
        """Medians, in milliseconds of the processor at the fastest pace that was seen."""
        return {
            what: {size: round(median(paces) * self.fastest_ms, 3) for size, paces in sizes.items()}
            for what, sizes in self.in_paces.items()
        }


def by_history(folder: Path, say: Say) -> Figures:
    """One athlete who trained for years; measured as it was after so many weeks."""
    path = _fresh(folder / "history.sqlite3")
    began = monday_of(LAST) - timedelta(weeks=max(WEEKS) + 1)
    coach_id = _coach(squad.COACH_EMAIL, began)
    block_id = blocks.add(coach_id, load("blocks", SELDOM.block), at(began)).id
    who = enrol(coach_id, SELDOM, began, random.Random(1))
    for _ in train(who, coach_id, block_id, began, LAST):
        pass
    say("trained")
    database.close_all()
    return measured_history(path, began, WEEKS, say)


def measured_history(path: Path, began: date, sizes: Sequence[int], say: Say) -> Figures:
    """The only athlete of a file, who began on that Monday, as it was after so many weeks."""
    figures = Figures()
    for weeks in sizes:
        then = path.with_name(f"after-{weeks}.sqlite3")
        shutil.copy(path, then)
        database.open_database(str(then))
        _connect()
        day = began + timedelta(weeks=weeks)
        _measure_history(then, _cut(day), weeks, day, figures)
        database.close_all()
        say(f"{weeks} weeks measured")
    return figures


def _cut(day: date) -> Trainee:
    """Forget what came after a day; who is left with the rest."""
    athlete = Athlete.get()
    through = sql.rows(
        "SELECT MAX(position), MAX(n) FROM entry WHERE received_at <= ?", at(day, 23)
    )
    ((position, n),) = through
    for table in ("entry", "change"):
        sql.run(f"DELETE FROM {table} WHERE position > ?", position)
    for table in ("tracker_state", "session_fact"):
        sql.run(f"DELETE FROM {table} WHERE session_order > ?", f"{day}~")
    sql.run("DELETE FROM revision WHERE sent_at > ?", at(day, 23))
    sql.run("DELETE FROM sheet WHERE revision > (SELECT MAX(number) FROM revision)")
    sql.run("UPDATE athlete SET position = ?", position)
    sql.run("UPDATE device SET stored_through = ?, cursor = ?", n, position)
    return Trainee(athlete.id, SELDOM, random.Random(1), n)


def _measure_history(path: Path, who: Trainee, weeks: int, day: date, figures: Figures) -> None:
    app = _app(path, day)
    for line in measure(scene_in(app, most=1), ROUNDS):
        figures.note(line.what, weeks, line.costs)
    _connect()
    watch = Timed(app)
    for _ in range(3):
        other = copy(who.id, "a copy", at(day))
        _measure_syncs(app, watch, who, other, day, figures, weeks)
        _connect()
        Athlete.delete().where(Athlete.id == other.id).execute()


def _measure_syncs(
    app: Flask, watch: Timed, who: Trainee, other: Copy, day: date, figures: Figures, size: int
) -> None:
    """A sync with nothing to say, with one set, and with a whole session that moves its lifts."""
    sheet = _next_sheet(who.id, day)
    assert sheet is not None
    evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18), UTC)
    lines = session_entries(sheet, body_of(who), evening, who.n, random.Random(2))
    phone = _phone(app, other)
    begun, rest = lines[:3], lines[3:]
    _send(phone, begun, watch)
    nothing = [_send(phone, [], watch) for _ in range(ROUNDS)]
    figures.note("a sync with nothing to say", size, nothing)
    sets = [_send(phone, [one], watch) for one in rest[:ROUNDS]]
    figures.note("a sync of one set", size, sets)
    figures.note("a sync that ends a session", size, [_send(phone, rest[ROUNDS:], watch)])


def by_athletes(folder: Path, say: Say) -> Figures:
    """More and more athletes on the server, each coach with ten of them."""
    path = _fresh(folder / "athletes.sqlite3")
    ids = squad.seed(squad.Size(OF_COACH, 3, LAST), sorts=SORTS[1:2])
    figures = Figures()
    here = OF_COACH
    for count in ATHLETES:
        _fill(ids[0], count - here)
        here = count
        _measure_all(path, ids[0], count, figures)
        say(f"{count} athletes measured")
    return figures


def by_squad(folder: Path, say: Say) -> Figures:
    """More and more athletes of one coach."""
    path = _fresh(folder / "squad.sqlite3")
    ids = squad.seed(squad.Size(SQUADS[0], 3, LAST), sorts=SORTS[1:2])
    figures, here = Figures(), SQUADS[0]
    for count in SQUADS:
        with database.writing():
            for name in islice(names(), count - here):
                copy(ids[0], name, at(LAST))
        here = count
        _measure_all(path, ids[0], count, figures)
        say(f"a squad of {count} measured")
    return figures


def by_batch(folder: Path, say: Say) -> Figures:
    """One request with more and more entries, each of them new."""
    path = _fresh(folder / "batch.sqlite3")
    (id_,) = squad.seed(squad.Size(1, 3, LAST), sorts=SORTS[1:2])
    app = _app(path, LAST)
    watch, figures = Timed(app), Figures()
    _connect()
    phone = _phone(app, copy(id_, "a copy", at(LAST)))
    where = _begin(phone, watch)
    for size in BATCHES:
        took = [_send(phone, _sets(phone, where, size), watch) for _ in range(ROUNDS)]
        figures.note("the request", size, took)
        figures.note("each entry", size, took, parts=size)
        say(f"{size} entries measured")
    return figures


def _fill(like: str, more: int) -> None:
    """So many more athletes, ten to a coach."""
    for n in range(0, more, OF_COACH):
        with database.writing():
            coach_id = _coach(f"{n}-of-{more}@example.org", LAST)
            for name in islice(names(), OF_COACH):
                copy(like, name, at(LAST), coach_id)


def _measure_all(path: Path, like: str, size: int, figures: Figures) -> None:
    app = _app(path, LAST)
    for line in measure(scene_in(app, most=1), ROUNDS):
        figures.note(line.what, size, line.costs)
    _connect()
    other = copy(like, "a copy", at(LAST))
    phone, watch = _phone(app, other), Timed(app)
    where = _begin(phone, watch)
    took = [_send(phone, _sets(phone, where, 1), watch) for _ in range(ROUNDS)]
    figures.note("a sync of one set", size, took)
    _connect()
    Athlete.delete().where(Athlete.id == other.id).execute()


def _begin(phone: Phone, watch: Timed) -> dict[str, Any]:
    """The next session, begun: its key and revision."""
    sheet = _next_sheet(phone.athlete_id, LAST - timedelta(days=1))
    assert sheet is not None
    where = {"session": sheet["session"], "revision": sheet["revision"]}
    _send(phone, [phone.writes.entry("session.started", {}, **where)], watch)
    return where


def _sets(phone: Phone, where: dict[str, Any], count: int) -> list[dict[str, Any]]:
    """So many sets of the session under way, as the phone writes them."""
    body = {"load_kg": 92.5, "reps": 3, "rir": 4}
    keys = (f"set.{n}" for n in range(phone.writes.n, phone.writes.n + count))
    return [phone.writes.entry("set.done", body, set=key, **where) for key in keys]


def _fresh(path: Path) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    make_tables(str(path))
    database.open_database(str(path))
    _connect()
    return path


def _connect() -> None:
    """A request gives its connection back when it ends."""
    database.connect()
    squad.hasten()


def _coach(email: str, since: date) -> str:
    hasher = accounts.make_hasher(cheap=True)
    return accounts.add_coach(hasher, email, squad.COACH_NAME, PASSWORD, at(since))


def _app(path: Path, day: date) -> Flask:
    settings = Settings(database=str(path), cheap_passwords=True, sync_per_minute=1_000_000)
    return create_app(settings, lambda: at(day, 22))


def _phone(app: Flask, one: Copy) -> Phone:
    browser = app.test_client()
    browser.set_cookie(DEVICE_COOKIE, one.token)
    (here,) = devices.devices_of(one.id)
    writes = Writer(n=here.stored_through)
    return Phone(browser, one.phone, one.id, epoch(), last_position(one.id), writes)


def _send(phone: Phone, entries: list[Any], watch: Timed) -> Cost:
    """What one exchange cost, all of whose entries are stored."""
    answer = phone.syncs(*entries)
    assert {one["status"] for one in answer["verdicts"]} <= {"stored"}, answer
    return watch.last


def _next_sheet(athlete_id: str, after: date) -> Mapping[str, Any] | None:
    """The next session of what the athlete trains by."""
    row = revisions.latest_revision(athlete_id)
    sheets = revisions.sheets_of(athlete_id, row.number).values() if row else ()
    ahead: Iterator[Any] = (one for one in sheets if one["on"] > after.isoformat())
    return min(ahead, key=lambda one: str(one["on"]), default=None)
