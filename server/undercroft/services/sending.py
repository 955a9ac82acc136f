"""Send a block: each athlete gets a revision of their own, with sheets for their own kit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain
from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault
from undercroft.domain.program.block import Block
from undercroft.domain.program.changes import changes
from undercroft.domain.sheet import WorkedOut
from undercroft.services import blocks, planning
from undercroft.services.accounts import require_athlete
from undercroft.services.clock import day_of, iso
from undercroft.services.people import kit_document
from undercroft.store import revisions
from undercroft.store.feed import athlete_lock, publish
from undercroft.store.models import Athlete


@dataclass(frozen=True, slots=True)
class Sent:
    """What one athlete got; `faults` say why nothing was sent, where they are any."""

    athlete: str
    revision: int | None
    sessions: int
    faults: tuple[Fault, ...]


def send(
    coach_id: str, block_id: str, athlete_ids: Sequence[str], starts_on: date | None, now: int
) -> list[Sent]:
    """Send the block as it stands to each athlete; one who cannot get it keeps none from it.

    Raises NotFound, FaultyDocument.
    """
    block = blocks.sound_block(coach_id, block_id)
    for athlete_id in athlete_ids:
        require_athlete(coach_id, athlete_id)
    return [_send(coach_id, block_id, block, one, starts_on, now) for one in athlete_ids]


def _send(
    coach_id: str, block_id: str, block: Block, athlete_id: str, starts_on: date | None, now: int
) -> Sent:
    with athlete_lock(athlete_id) as row:
        before = planning.current(athlete_id)
        same = [one.number for one in revisions.revisions_of_block(athlete_id, block_id)]
        continued = before is not None and before.number in same
        start = starts_on or (before.starts_on if before and continued else _monday(day_of(now)))
        keys = [session.key for week in block.weeks for session in week.sessions]
        begun = revisions.sessions_begun(athlete_id, same, keys)
        done = planning.worked_out(row, block, start, leave_out=begun)
        faults = _faults(row, done)
        if faults:
            return Sent(athlete_id, None, 0, faults)
        number = 1 + (before.number if before else 0)
        document = plain(BlockShape().dump(block))
        day = start.isoformat()
        revisions.add_revision(athlete_id, number, block_id, document, day, now, coach_id)
        through = row.position
        for sheet in done.sheets:
            final = planning.on_wire(replace(sheet, revision=number, through=through))
            planning.put_out(athlete_id, number, sheet.session, through, final)
        _withdraw(athlete_id, before, keys)
        said = changes(before.block if before and continued else None, block, catalogue())
        publish(athlete_id, "revision", str(number), _notice(number, block, start, now, said))
        return Sent(athlete_id, number, len(done.sheets), ())


def _faults(row: Athlete, done: WorkedOut) -> tuple[Fault, ...]:
    if kit_document(row).key == "none":
        what = "has no kit yet"
        return (Fault(row.name, "kit", what, "write down what stands in the gym, then send"),)
    stops = tuple(
        Fault(found.where, found.path, found.what, found.right)
        for found in planning.stops(done.findings)
    )
    return stops + tuple(_locks(done))


def _locks(done: WorkedOut) -> Iterator[Fault]:
    """Locked work is not sent, and nothing overrules that."""
    for sheet in done.sheets:
        for exercise in sheet.exercises:
            if exercise.locked:
                where = f"{sheet.week_name}, {sheet.name}, {exercise.name.lower()}"
                yield Fault(where, "", exercise.locked, "take it out of the block for this athlete")


def _withdraw(athlete_id: str, before: planning.Current | None, kept: Sequence[str]) -> None:
    """Take back sheets of sessions that the new revision no longer has and nobody began."""
    if before is None:
        return
    gone = [key for key in before.sessions if key not in kept]
    begun = revisions.sessions_begun(athlete_id, before.numbers, gone)
    for key in gone:
        if key not in begun:
            publish(athlete_id, "sheet.withdrawn", key, {"session": key})


def _notice(
    number: int, block: Block, start: date, now: int, said: tuple[str, ...]
) -> dict[str, Any]:
    return {
        "number": number,
        "block_name": block.name,
        "sent_at": iso(now),
        "sessions": [
            {
                "session": session.key,
                "name": session.name,
                "week": week.key,
                "week_name": week.name,
                "day": session.day,
                "on": (start + timedelta(weeks=w, days=session.day - 1)).isoformat(),
            }
            for w, week in enumerate(block.weeks)
            for session in week.sessions
        ],
        "changes": list(said),
    }


def _monday(day: date) -> date:
    """The Monday of the week that has begun."""
    return day - timedelta(days=day.weekday())
