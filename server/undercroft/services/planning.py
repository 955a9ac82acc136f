"""Load sheets of what an athlete trains by, made and put into the feed.

Call what publishes with the athlete's lock held.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from undercroft.documents.canonical import plain
from undercroft.documents.made import made
from undercroft.documents.reading import read_block
from undercroft.documents.sheet import LoadSheetShape
from undercroft.documents.sheet_read import in_short
from undercroft.documents.told import ToldSession
from undercroft.domain.exercise import Catalogue, instead_of
from undercroft.domain.ledger import WORK_KINDS
from undercroft.domain.load_sheet import LoadSheet
from undercroft.domain.program.block import Block
from undercroft.domain.program.finding import Severity
from undercroft.domain.sheet import Order, WorkedOut, work_out
from undercroft.domain.sheet.occlusion import has_occlusion
from undercroft.domain.sheet.session import NOTHING_ON_RECORD
from undercroft.services import tracking
from undercroft.services.catalogues import catalogue_for
from undercroft.services.occlusion_record import record_of
from undercroft.services.people import athlete_document, kit_document
from undercroft.store import last_done, models, revisions
from undercroft.store.feed import last_position, publish


@dataclass(frozen=True, slots=True, eq=False)
class Current:
    """What the athlete trains by: the newest revision, and all that belong to its run.

    `block_id` names the block, `run` this doing of it: the number of its first revision.
    """

    number: int
    numbers: tuple[int, ...]
    block_id: str
    run: int
    block: Block
    starts_on: date

    @property
    def sessions(self) -> list[str]:
        return sessions_of(self.block)


def sessions_of(block: Block) -> list[str]:
    """Keys of all sessions, in the order of the plan."""
    return [session.key for week in block.weeks for session in week.sessions]


def exercises_of(block: Block, known: Catalogue) -> set[str]:
    """Keys of the exercises that it names, and of what its sheets may offer in their place."""
    sessions = (session for week in block.weeks for session in week.sessions)
    named = {plan.exercise for session in sessions for plan in session.exercises}
    return named.union(
        one.key for key in named & known.keys() for one in instead_of(known[key], known)
    )


def current(athlete_id: str) -> Current | None:
    """The newest revision, or None where nothing was sent yet."""
    row = revisions.latest_revision(athlete_id)
    if row is None:
        return None
    return Current(
        number=row.number,
        numbers=revisions.numbers_of_run(athlete_id, row.number),
        block_id=row.block,
        run=row.run,
        block=read_block(row.document, catalogue_for(athlete_id)),
        starts_on=date.fromisoformat(row.starts_on),
    )


def begun_of(athlete_id: str, numbers: Sequence[int], sessions: Sequence[str]) -> set[str]:
    """Of these sessions those that were begun from one of these revisions: they keep their sheet.

    To look at a session, or to say that something hurts before it, does not begin it.
    """
    return revisions.sessions_begun(athlete_id, numbers, sessions, WORK_KINDS)


def order_for(
    row: models.Athlete,
    block: Block,
    starts_on: date,
    told: Mapping[str, ToldSession] | None = None,
    known: Catalogue | None = None,
) -> Order:
    """A block for an athlete as everything stands now; `told` in place of what trackers hold.

    `known` in place of the catalogue of the athlete's coach, where a block brings exercises along.
    """
    known = known or catalogue_for(row.id)
    athlete = athlete_document(row, known)
    last_kg = last_done.last_loads(row.id)
    latest = tracking.latest_told(row.id) if told is None else told
    return Order(
        block=block,
        athlete=athlete,
        kit=kit_document(row),
        catalogue=known,
        standing=tracking.standing_after(athlete, latest, last_kg),
        starts_on=starts_on,
        occlusion=record_of(row.id, athlete) if has_occlusion(block) else NOTHING_ON_RECORD,
    )


@dataclass(frozen=True, slots=True, eq=False)
class Ahead:
    """Sheets of sessions not begun, worked out with the ledger and the feed up to `through`.

    `stopped`: sessions that cannot be sent as they are now. `now` None: nothing was sent yet.
    """

    through: int
    now: Current | None
    sheets: tuple[LoadSheet, ...] = ()
    stopped: Collection[str] = ()


def ahead_of(
    row: models.Athlete,
    most: int | None = None,
    told: Mapping[str, ToldSession] | None = None,
) -> Ahead:
    """What lies ahead, worked out again; `most` sessions are looked at, the next ones first.

    Writes nothing. Without the lock it holds only as long as the athlete's position stays.
    """
    through, now = last_position(row.id), current(row.id)
    if now is None:
        return Ahead(through, None)
    begun = begun_of(row.id, now.numbers, now.sessions)
    order = order_for(row, now.block, now.starts_on, told)
    ahead = [key for key in now.sessions if key not in begun][:most]
    done = work_out(order, leave_out={*now.sessions} - {*ahead})
    return Ahead(through, now, tuple(done.sheets), _stopped(now.block, done))


def put_out_changed(athlete_id: str, ahead: Ahead, lifts: Collection[str] | None = None) -> None:
    """Publish the sheets that changed.

    `lifts` moved: sheets with one of them go out even where their loads stay, because they say up
    to which position the ledger is in them. None: everything may have moved. A session that cannot
    be worked out any more keeps its sheet.
    """
    now = ahead.now
    if now is None:
        return
    kept = revisions.sheets_of(athlete_id, now.number)
    for sheet in ahead.sheets:
        if sheet.session in ahead.stopped and sheet.session in kept:
            continue
        told = lifts is None or any(e.notches and e.notches.lift in lifts for e in sheet.exercises)
        document = on_wire(replace(sheet, revision=now.number, through=ahead.through))
        if told or _differs(kept.get(sheet.session), document):
            put_out(athlete_id, now.run, now.number, sheet.session, ahead.through, document)


def refresh(
    row: models.Athlete, lifts: Collection[str] | None = None, most: int | None = None
) -> None:
    """Work out again what lies ahead and publish what changed, both under the lock."""
    put_out_changed(row.id, ahead_of(row, most), lifts)


def _stopped(block: Block, done: WorkedOut) -> set[str]:
    """Sessions with a finding that forbids sending them as they are now."""
    return {
        session.key
        for w, week in enumerate(block.weeks)
        for s, session in enumerate(week.sessions)
        if any(
            found.severity is Severity.STOP and found.path.startswith(f"weeks.{w}.sessions.{s}.")
            for found in done.findings
        )
    }


def put_out(
    athlete_id: str, run: int, number: int, session: str, through: int, document: Any
) -> None:
    """Keep a sheet and put it into the feed."""
    revisions.keep_sheet(athlete_id, number, session, through, document, in_short(document))
    publish(athlete_id, "sheet", feed_key(run, session), document)


def withdraw(athlete_id: str, run: int, session: str) -> None:
    """Take the sheet of a session back."""
    publish(athlete_id, "sheet.withdrawn", feed_key(run, session), {"session": session})


def feed_key(run: int, session: str) -> str:
    """Two runs may have sessions of one key, and the phone needs the sheets of both."""
    return session if run == 1 else f"{run}/{session}"


def on_wire(sheet: LoadSheet) -> dict[str, Any]:
    """The sheet as plain data."""
    data: dict[str, Any] = plain(made(LoadSheetShape).dump(sheet))
    return data


def _differs(kept: Any, document: dict[str, Any]) -> bool:
    if kept is None:
        return True
    return {**kept, "through": 0} != {**document, "through": 0}
