"""Which sessions the desk shows beside what was planned, each with what became of it.

A session is one key of one run of a block, under whichever of the run's revisions it was done. It
is shown on the sheet it was begun with.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.ledger import WORK_KINDS, SessionRecord, fold
from undercroft.services import ledger
from undercroft.store import sessions
from undercroft.store.database import reading
from undercroft.store.sessions import BegunSession, KeptSheet, SentRevision, SentSession

NEVER = "9999-12-31"

MOST_SESSIONS = 60
MOST_BEGUN = 45
"""So many begun ones at the most while others wait: those missed or next would be crowded out."""


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """`run` is the number of its run's first revision; `record` None: nobody began it."""

    run: int
    sheet: KeptSheet
    record: SessionRecord | None


@dataclass(frozen=True, slots=True)
class KnownSession:
    """`sent` is where it is shown; `numbers` the revisions under which it has entries."""

    run: int
    sent: SentSession
    numbers: tuple[int, ...]


def sessions_shown(athlete_id: str) -> list[Shown]:
    """The newest sessions that were begun and those not begun that are nearest, latest first."""
    with reading():
        return _shown(athlete_id, _chosen(known_sessions(athlete_id)))


def sessions_between(athlete_id: str, first: date, last: date) -> list[Shown]:
    """Every session planned for one of these days, by day."""
    with reading():
        known = known_sessions(athlete_id, (first, last))
        own = [one for one in known if first.isoformat() <= one.sent.on <= last.isoformat()]
        return _shown(athlete_id, sorted(own, key=_day))


def _shown(athlete_id: str, chosen: Sequence[KnownSession]) -> list[Shown]:
    documents = {
        (sheet.revision, sheet.session): sheet
        for sheet in sessions.sheets_for(
            athlete_id, {(one.sent.revision, one.sent.session) for one in chosen}
        )
    }
    records = _records(athlete_id, chosen)
    return [
        Shown(
            one.run,
            documents[one.sent.revision, one.sent.session],
            records.get((one.run, one.sent.session)),
        )
        for one in chosen
    ]


def known_sessions(athlete_id: str, days: tuple[date, date] | None = None) -> list[KnownSession]:
    """Every session that was begun, or that is still to be done: the newest revision of its run
    has it, and nothing was sent in its place since.

    With a first and a last day: those of the runs that plan anything for these days.
    """
    sent_so_far = sessions.revisions_sent(athlete_id)
    runs = {one.number: one.run for one in sent_so_far}
    if days is not None:
        near = sessions.runs_between(athlete_id, *days)
        runs = {number: run for number, run in runs.items() if run in near}
    if not runs:
        return []
    newest = {run: number for number, run in runs.items()}
    numbers = None if days is None else tuple(runs)
    until = _until(sent_so_far, newest)
    begun: dict[tuple[int, str], list[BegunSession]] = defaultdict(list)
    for told in sessions.sessions_begun(athlete_id, WORK_KINDS, numbers):
        if told.revision is not None and told.revision in runs:
            begun[runs[told.revision], told.session].append(told)
    sheets: dict[tuple[int, str], dict[int, SentSession]] = defaultdict(dict)
    for sent in sessions.sessions_sent(athlete_id, numbers):
        sheets[runs[sent.revision], sent.session][sent.revision] = sent
    return [
        KnownSession(run, own[_shown_on(own, begun[run, key])], _numbers(begun[run, key]))
        for (run, key), own in sheets.items()
        if begun[run, key] or (newest[run] in own and own[newest[run]].on < until[run])
    ]


def _until(sent: Sequence[SentRevision], newest: Mapping[int, int]) -> dict[int, str]:
    """By run, the first day of what was sent later in its place: from then on it is withdrawn."""
    return {
        run: min((one.first_day for one in sent if one.number > number), default=NEVER)
        for run, number in newest.items()
    }


def _shown_on(sheets: dict[int, SentSession], begun: Sequence[BegunSession]) -> int:
    """The revision it was begun from, or else of its first entry, or else the newest."""
    ranked = [
        (_rank(told), told.revision)
        for told in begun
        if told.revision is not None and told.revision in sheets
    ]
    return min(ranked)[1] if ranked else max(sheets)


def _rank(told: BegunSession) -> tuple[bool, int]:
    return told.started is None, told.first if told.started is None else told.started


def _numbers(begun: Sequence[BegunSession]) -> tuple[int, ...]:
    return tuple(told.revision for told in begun if told.revision is not None)


def _chosen(every: Sequence[KnownSession]) -> list[KnownSession]:
    latest_first = sorted(every, key=_day, reverse=True)
    begun = [one for one in latest_first if one.numbers]
    others = [one for one in latest_first if not one.numbers]
    if others:
        now = _today(begun, others)
        others.sort(key=lambda one: abs(_ordinal(one) - now))
    begun = begun[: max(MOST_BEGUN, MOST_SESSIONS - len(others))]
    return sorted([*begun, *others[: MOST_SESSIONS - len(begun)]], key=_day, reverse=True)


def _today(begun: Sequence[KnownSession], others: Sequence[KnownSession]) -> int:
    """Where the athlete stands: the newest session begun, or the first of what was sent last."""
    if begun:
        return _ordinal(begun[0])
    newest = max(one.sent.revision for one in others)
    return min(_ordinal(one) for one in others if one.sent.revision == newest)


def _day(one: KnownSession) -> tuple[str, int, str]:
    return one.sent.on, one.sent.revision, one.sent.session


def _ordinal(one: KnownSession) -> int:
    return date.fromisoformat(one.sent.on).toordinal() if one.sent.on else 0


def _records(
    athlete_id: str, chosen: Sequence[KnownSession]
) -> dict[tuple[int | None, str], SessionRecord]:
    """What became of each, by run and session, whichever revision its entries came from."""
    run = {(number, one.sent.session): one.run for one in chosen for number in one.numbers}
    if not run:
        return {}
    told = [
        ledger.from_row(row, run[row.revision, row.session])
        for row in sessions.entries_for(athlete_id, run)
        if row.revision is not None and row.session is not None
    ]
    return dict(fold(told).sessions)
