"""Send a block: each athlete gets a revision of their own, with sheets for their own kit."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date, timedelta
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.known import write_known
from undercroft.documents.made import made
from undercroft.domain.program.block import Block
from undercroft.domain.program.calendar import day_of_session, monday_of
from undercroft.domain.program.changes import changes
from undercroft.domain.program.checks import Overrule, standing_stops
from undercroft.domain.program.own import Layer
from undercroft.domain.proposals import known_now
from undercroft.services import (
    blocks,
    lending,
    looking_over,
    own_changes,
    own_exercises,
    picture_feed,
    planning,
    rights,
)
from undercroft.services.catalogues import catalogue_for, catalogue_of
from undercroft.services.clock import day_of, iso
from undercroft.services.looking_over import Found, Looked
from undercroft.services.refusals import Conflict
from undercroft.services.rights import WRITE
from undercroft.store import athletes, life, revisions
from undercroft.store.feed import athlete_lock, publish
from undercroft.store.models import Athlete

SENT_MEANWHILE = "the athlete was sent something else meanwhile"


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
    return Wanted(body["athletes"], body.get("starts_on"), overrules_of(coach, body, now))


def overrules_of(coach: str, body: Mapping[str, Any], now: int) -> list[Overrule]:
    """The stops that a request sets aside, by the coach of that name today."""
    return [Overrule(by=coach, on=day_of(now), **one) for one in body.get("overrules", ())]


def send(coach_id: str, block_id: str, wanted: Wanted, now: int) -> list[Sent]:
    """Send the block as it stands to each athlete; one who cannot get it keeps none from it.

    Raises NotFound, NotAllowed, FaultyDocument.
    """
    block = blocks.sound_block(coach_id, block_id)
    for athlete_id in wanted.athletes:
        rights.require(coach_id, athlete_id, WRITE)
    return [_send_own(coach_id, block_id, block, one, wanted, now) for one in wanted.athletes]


def _send_own(
    coach_id: str, block_id: str, block: Block, athlete_id: str, wanted: Wanted, now: int
) -> Sent:
    """The block with the athlete's own changes; refused where the two do not go together."""
    try:
        own = own_changes.block_for(athlete_id, block_id, block, catalogue_of(coach_id))
    except FaultyDocument as fault:
        return _faulty(athlete_id, fault.faults)
    return send_to(coach_id, block_id, own, athlete_id, wanted, now)


def _faulty(athlete_id: str, faults: Sequence[Fault]) -> Sent:
    return Sent(athlete_id, None, 0, looking_over.shown(looking_over.as_stops(faults)))


@dataclass(frozen=True, slots=True, eq=False)
class OwnAfter:
    """Own changes that a sending leaves behind; what they and the revision were made from."""

    before: own_changes.Kept
    layer: Layer
    revision: int


@dataclass(frozen=True, slots=True, eq=False)
class _Ready:
    """A block worked out for one athlete, as the ledger and the feed stood at `position`.

    `loan`: what goes along of the coach's own exercises.
    """

    athlete_id: str
    block_id: str
    block: Block
    position: int
    number: int
    loan: lending.Loan
    before: planning.Current | None
    run: int
    starts_on: date
    looked: Looked
    documents: list[tuple[str, dict[str, Any]]]

    @property
    def continued(self) -> bool:
        """Does the athlete already train by this run of the block?"""
        return self.before is not None and self.before.run == self.run


def send_to(
    coach_id: str,
    block_id: str,
    block: Block,
    athlete_id: str,
    wanted: Wanted,
    now: int,
    leaves: OwnAfter | None = None,
) -> Sent:
    """Send one athlete a block, which need not be the one that others get.

    Worked out before the lock, under which nobody else can write; again if overtaken. Raises
    Conflict where what it leaves as own changes was made from what does not stand any more, and
    NotFound or NotAllowed where the coach's right has ended meanwhile.
    """
    row = athletes.athlete_with_coach(athlete_id)
    ready = _work_out(block_id, block, row, _loan(coach_id, row, block, leaves), wanted, now)
    with athlete_lock(athlete_id) as row:
        rights.require(coach_id, athlete_id, WRITE)
        loan = _loan(coach_id, row, block, leaves)
        if loan.differing:
            return _faulty(athlete_id, lending.faults(loan))
        if row.position != ready.position or loan != ready.loan:
            ready = _work_out(block_id, block, row, loan, wanted, now)
        stops = standing_stops(ready.looked.findings, wanted.overrules)
        if stops:
            return Sent(athlete_id, None, 0, looking_over.shown(stops))
        if leaves is not None:
            _leave(ready, leaves, now, coach_id)
        _send_out(ready, row, wanted.overrules, now, coach_id)
    if loan.documents:
        own_exercises.bring_sheets_up_to_date(loan.to, loan.documents.keys())
    return Sent(athlete_id, ready.number, len(ready.documents), [])


def _loan(coach_id: str, row: Athlete, block: Block, leaves: OwnAfter | None) -> lending.Loan:
    """With accepted loads nothing goes along: what they are of was sent before."""
    lender = coach_id if leaves is None else row.coach_id
    return lending.of_block(lender, row.coach_id, block)


def _send_out(
    ready: _Ready, row: Athlete, overrules: Sequence[Overrule], now: int, coach_id: str
) -> None:
    """The revision with its sheets; what it names of the coach's own exercises goes along."""
    number = ready.number
    lending.lend(ready.loan, now)
    _keep(ready, overrules, now, coach_id)
    for session, document in ready.documents:
        planning.put_out(row.id, ready.run, number, session, ready.position, document)
    _withdraw(ready)
    publish(row.id, "revision", str(number), _notice(ready, now))
    picture_feed.publish(row, ready.block)


def _work_out(
    block_id: str, block: Block, row: Athlete, loan: lending.Loan, wanted: Wanted, now: int
) -> _Ready:
    before = planning.current(row.id)
    again = before is not None and before.block_id == block_id
    start = wanted.starts_on or (before.starts_on if before and again else monday_of(day_of(now)))
    number = life.next_number(row.id)
    run = _run_of(row.id, block_id, before, start) or number
    begun = planning.begun_of(
        row.id, revisions.numbers_of_run(row.id, run), planning.sessions_of(block)
    )
    known = lending.catalogue_after(loan)
    looked = looking_over.look_over(row, block, start, known, leave_out=sorted(begun))
    documents = [
        (s.session, planning.on_wire(replace(s, revision=number, through=row.position)))
        for s in looked.done.sheets
    ]
    return _Ready(
        row.id, block_id, block, row.position, number, loan, before, run, start, looked, documents
    )


def _run_of(
    athlete_id: str, block_id: str, before: planning.Current | None, start: date
) -> int | None:
    """The run that a sending goes on with, or None where it begins a new one.

    It goes on where its Monday stays, and where the coach moves what the athlete trains by. Another
    Monday begins anew what another block has replaced meanwhile, and what was done to its end.
    """
    last = revisions.latest_of_block(athlete_id, block_id)
    if last is None:
        return None
    if last.starts_on == start.isoformat():
        return int(last.run)
    if before is None or before.number != last.number or _done_by(athlete_id, before, start):
        return None
    return before.run


def _done_by(athlete_id: str, current: planning.Current, day: date) -> bool:
    """Is the block at its end by then, and did the athlete begin any of it?"""
    end = current.starts_on + timedelta(weeks=len(current.block.weeks))
    return day >= end and bool(planning.begun_of(athlete_id, current.numbers, current.sessions))


def _keep(ready: _Ready, overrules: Sequence[Overrule], now: int, coach_id: str) -> None:
    """The revision, with what was overruled and why."""
    revisions.add_revision(
        ready.athlete_id,
        ready.number,
        ready.block_id,
        plain(made(BlockShape).dump(ready.block)),
        ready.starts_on.isoformat(),
        [{**asdict(one), "on": one.on.isoformat()} for one in overrules],
        now,
        coach_id,
        ready.run,
        write_known(known_now(ready.looked.order.standing)),
    )


def _leave(ready: _Ready, leaves: OwnAfter, now: int, coach_id: str) -> None:
    """Keep the own changes. Raises Conflict."""
    if ready.before is None or ready.before.number != leaves.revision:
        raise Conflict(SENT_MEANWHILE, "look at the loads again")
    before, layer = leaves.before, leaves.layer
    own_changes.keep(ready.athlete_id, ready.block_id, before, layer, now, coach_id)


def _withdraw(ready: _Ready) -> None:
    """Take back sheets of sessions that the new revision no longer has and nobody began.

    Of another block only those planned from its first day on: the weeks until then stay.
    """
    before, since = ready.before, ready.starts_on.isoformat()
    if before is None:
        return
    kept = planning.sessions_of(ready.block) if ready.continued else []
    days = revisions.days_of_sheets(ready.athlete_id, before.numbers)
    gone = [
        key
        for key in before.sessions
        if key not in kept and (ready.continued or days.get(key, since) >= since)
    ]
    begun = planning.begun_of(ready.athlete_id, before.numbers, gone)
    for key in gone:
        if key not in begun:
            planning.withdraw(ready.athlete_id, before.run, key)


def _notice(ready: _Ready, now: int) -> dict[str, Any]:
    before = ready.before.block if ready.before and ready.continued else None
    return {
        "number": ready.number,
        "run": ready.run,
        "block_name": ready.block.name,
        "sent_at": iso(now),
        "sessions": [
            {
                "session": session.key,
                "name": session.name,
                "week": week.key,
                "week_name": week.name,
                "day": session.day,
                "on": day_of_session(ready.starts_on, w, session.day).isoformat(),
            }
            for w, week in enumerate(ready.block.weeks)
            for session in week.sessions
        ],
        "changes": list(changes(before, ready.block, catalogue_for(ready.athlete_id))),
    }
