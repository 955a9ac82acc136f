"""Send a block: each athlete gets a revision of their own, with sheets for their own kit."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date, timedelta
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain
from undercroft.documents.catalogue import catalogue
from undercroft.domain.program.block import Block
from undercroft.domain.program.changes import changes
from undercroft.domain.program.checks import Overrule, standing_stops
from undercroft.services import blocks, looking_over, planning
from undercroft.services.accounts import require_athlete
from undercroft.services.clock import day_of, iso
from undercroft.services.looking_over import Found
from undercroft.store import revisions
from undercroft.store.feed import athlete_lock, publish


@dataclass(frozen=True, slots=True)
class Sent:
    """What one athlete got; `stops` say why nothing was sent, where there are any."""

    athlete: str
    revision: int | None
    sessions: int
    stops: list[Found]


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the coach asks for: to whom, from which Monday on, which stops set aside and why."""

    athletes: Sequence[str]
    starts_on: date | None = None
    overrules: Sequence[Overrule] = ()


def wanted(coach: str, body: Mapping[str, Any], now: int) -> Wanted:
    """A request to send as the coach of that name made it."""
    overrules = [Overrule(by=coach, on=day_of(now), **one) for one in body.get("overrules", ())]
    return Wanted(body["athletes"], body.get("starts_on"), overrules)


def send(coach_id: str, block_id: str, wanted: Wanted, now: int) -> list[Sent]:
    """Send the block as it stands to each athlete; one who cannot get it keeps none from it.

    Raises NotFound, FaultyDocument.
    """
    block = blocks.sound_block(coach_id, block_id)
    for athlete_id in wanted.athletes:
        require_athlete(coach_id, athlete_id)
    return [_send(coach_id, block_id, block, one, wanted, now) for one in wanted.athletes]


def _send(
    coach_id: str, block_id: str, block: Block, athlete_id: str, wanted: Wanted, now: int
) -> Sent:
    with athlete_lock(athlete_id) as row:
        before = planning.current(athlete_id)
        same = [one.number for one in revisions.revisions_of_block(athlete_id, block_id)]
        continued = before is not None and before.number in same
        start = wanted.starts_on or (
            before.starts_on if before and continued else _monday(day_of(now))
        )
        keys = [session.key for week in block.weeks for session in week.sessions]
        begun = revisions.sessions_begun(athlete_id, same, keys)
        looked = looking_over.look_over(row, block, start, leave_out=sorted(begun))
        stops = standing_stops(looked.findings, wanted.overrules)
        if stops:
            return Sent(athlete_id, None, 0, looking_over.shown(stops))
        number = 1 + (before.number if before else 0)
        _keep(Kept(athlete_id, number, block_id, block, start), wanted.overrules, now, coach_id)
        for sheet in looked.done.sheets:
            final = planning.on_wire(replace(sheet, revision=number, through=row.position))
            planning.put_out(athlete_id, number, sheet.session, row.position, final)
        _withdraw(athlete_id, before, keys, None if continued else start)
        said = changes(before.block if before and continued else None, block, catalogue())
        publish(athlete_id, "revision", str(number), _notice(number, block, start, now, said))
        return Sent(athlete_id, number, len(looked.done.sheets), [])


@dataclass(frozen=True, slots=True)
class Kept:
    """A revision as it is kept."""

    athlete: str
    number: int
    block_id: str
    block: Block
    starts_on: date


def _keep(kept: Kept, overrules: Sequence[Overrule], now: int, coach_id: str) -> None:
    """The revision, with what was overruled and why."""
    revisions.add_revision(
        kept.athlete,
        kept.number,
        kept.block_id,
        plain(BlockShape().dump(kept.block)),
        kept.starts_on.isoformat(),
        [{**asdict(one), "on": one.on.isoformat()} for one in overrules],
        now,
        coach_id,
    )


def _withdraw(
    athlete_id: str, before: planning.Current | None, kept: Sequence[str], since: date | None
) -> None:
    """Take back sheets of sessions that the new revision no longer has and nobody began.

    Of another block only those planned from its first day on: the weeks until then stay.
    """
    if before is None:
        return
    days = revisions.days_of_sheets(athlete_id, before.numbers)
    gone = [
        key
        for key in before.sessions
        if key not in kept and (since is None or days.get(key, "9") >= since.isoformat())
    ]
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
