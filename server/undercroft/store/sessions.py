"""Which sessions an athlete was sent, and of which of them the ledger speaks."""

from collections.abc import Collection
from typing import NamedTuple

from undercroft.store.entries import Line, lines
from undercroft.store.models import Sheet
from undercroft.store.sql import marks, rows


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


def sessions_sent(athlete_id: str) -> list[SentSession]:
    """Every session of every revision that has a sheet."""
    found = rows(
        "SELECT revision, session, on_day FROM sheet WHERE athlete_id = ?"
        " ORDER BY revision, session",
        athlete_id,
    )
    return [SentSession(*row) for row in found]


def sessions_begun(athlete_id: str, kinds: Collection[str]) -> list[BegunSession]:
    """Every session with a stored entry of these kinds, of whatever revision, sent or not."""
    found = rows(
        "SELECT revision, session,"
        " MIN(CASE WHEN kind = 'session.started' THEN position END), MIN(position)"
        " FROM entry WHERE athlete_id = ? AND status = 'stored' AND session IS NOT NULL"
        f" AND kind IN ({marks(len(kinds))}) GROUP BY revision, session",
        athlete_id,
        *kinds,
    )
    return [BegunSession(*row) for row in found]


def sheets_for(athlete_id: str, wanted: Collection[tuple[int, str]]) -> list[Sheet]:
    """The sheets of certain sessions, each with its revision."""
    found = Sheet.select().where(
        Sheet.athlete == athlete_id,
        Sheet.revision.in_({number for number, _ in wanted}),
        Sheet.session.in_({session for _, session in wanted}),
    )
    return [sheet for sheet in found if (sheet.revision, sheet.session) in wanted]


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
