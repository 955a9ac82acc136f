"""Which sessions an athlete was sent, and of which of them the ledger speaks."""

from collections.abc import Collection
from datetime import date
from typing import Any, NamedTuple

from undercroft.store.entries import Line, lines
from undercroft.store.sql import marks, parsed, rows


class SentSession(NamedTuple):
    """A session of one revision, without its sheet; `on` is the day it was planned for."""

    revision: int
    session: str
    on: str


class BegunSession(NamedTuple):
    """A session of one revision that was begun; None where its entries name no revision.

    `started` is the position of its first beginning (None: none was told), `first` of any entry.
    """

    revision: int | None
    session: str
    started: int | None
    first: int


def runs_of(athlete_id: str) -> dict[int, int]:
    """By revision, the first revision of the same run of its block: it names the run."""
    found = rows(
        "SELECT number, run FROM revision WHERE athlete_id = ? ORDER BY number", athlete_id
    )
    return dict(found)


class SentRevision(NamedTuple):
    """A revision, the run it belongs to, and the Monday that it begins on."""

    number: int
    run: int
    first_day: str


def revisions_sent(athlete_id: str) -> list[SentRevision]:
    """Every revision without its block, oldest first."""
    found = rows(
        "SELECT number, run, starts_on FROM revision WHERE athlete_id = ? ORDER BY number",
        athlete_id,
    )
    return [SentRevision(*row) for row in found]


def runs_between(athlete_id: str, first: date, last: date) -> set[int]:
    """Runs with a session planned for one of these days, in whichever of their revisions."""
    found = rows(
        "SELECT DISTINCT run FROM revision WHERE athlete_id = ? AND number IN"
        " (SELECT revision FROM sheet WHERE athlete_id = ? AND on_day BETWEEN ? AND ?)",
        athlete_id,
        athlete_id,
        first.isoformat(),
        last.isoformat(),
    )
    return {run for (run,) in found}


def sessions_sent(athlete_id: str, revisions: Collection[int] | None = None) -> list[SentSession]:
    """Every session that has a sheet, of every revision or of these."""
    of = "" if revisions is None else f" AND revision IN ({marks(len(revisions))})"
    found = rows(
        "SELECT revision, session, on_day FROM sheet WHERE athlete_id = ?"
        f"{of} ORDER BY revision, session",
        athlete_id,
        *(revisions or ()),
    )
    return [SentSession(*row) for row in found]


def sessions_begun(
    athlete_id: str, kinds: Collection[str], revisions: Collection[int] | None = None
) -> list[BegunSession]:
    """Every session with a stored entry of these kinds, of whatever revision, sent or not.

    With revisions: of one of these.
    """
    of = "" if revisions is None else f" AND revision IN ({marks(len(revisions))})"
    found = rows(
        "SELECT revision, session,"
        " MIN(CASE WHEN kind = 'session.started' THEN position END), MIN(position)"
        " FROM entry WHERE athlete_id = ? AND status = 'stored' AND session IS NOT NULL"
        f" AND kind IN ({marks(len(kinds))}){of} GROUP BY revision, session",
        athlete_id,
        *kinds,
        *(revisions or ()),
    )
    return [BegunSession(*row) for row in found]


class KeptSheet(NamedTuple):
    """The sheet of a session of one revision in short; `on_day` is the day it was planned for."""

    revision: int
    session: str
    on_day: str
    document: Any


def sheets_for(athlete_id: str, wanted: Collection[tuple[int, str]]) -> list[KeptSheet]:
    """The sheets of certain sessions, each with its revision."""
    if not wanted:
        return []
    numbers = {number for number, _ in wanted}
    names = {session for _, session in wanted}
    found = rows(
        "SELECT revision, session, on_day, COALESCE(short, document) FROM sheet"
        f" WHERE athlete_id = ? AND revision IN ({marks(len(numbers))})"
        f" AND session IN ({marks(len(names))})",
        athlete_id,
        *numbers,
        *names,
    )
    kept = [row for row in found if (row[0], row[1]) in wanted]
    documents = parsed(row[-1] for row in kept)
    pairs = zip(kept, documents, strict=True)
    return [KeptSheet._make((*row[:-1], document)) for row, document in pairs]


def entries_for(athlete_id: str, wanted: Collection[tuple[int | None, str]]) -> list[Line]:
    """The stored entries of certain sessions, each with its revision, in order of positions."""
    names = {session for _, session in wanted}
    numbers = {number or 0 for number, _ in wanted}  # no revision has the number 0
    found = lines(
        f"athlete_id = ? AND session IN ({marks(len(names))})"
        f" AND (revision IN ({marks(len(numbers))}) OR revision IS NULL)",
        athlete_id,
        *names,
        *numbers,
    )
    return [entry for entry in found if (entry.revision, entry.session) in wanted]
