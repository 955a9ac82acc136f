"""Keep each lift's tracker up to date from what sessions tell; only what changed is worked out.

A lift's rows stand in the order of the planned days of their sessions, so that their order comes
from no phone's clock. Each row keeps what its session told and the tracker's state after it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.documents.told import ToldSession, read_told, write_told
from undercroft.domain.athlete import Athlete
from undercroft.domain.sheet.standing import (
    LiftStanding,
    Standing,
    lift_standing,
    settings_for,
    with_leans,
    with_maxima,
)
from undercroft.domain.strength import StrengthSettings, take_session
from undercroft.domain.told import Told
from undercroft.store import trackers


@dataclass(frozen=True, slots=True)
class Heard:
    """What a session told, by lift; `order` is its place among all sessions, `on` its day."""

    order: str
    on: date
    told: Mapping[str, tuple[Told, ...]]


def hear(athlete_id: str, athlete: Athlete, heard: Heard) -> set[str]:
    """Take in what a session told, in place of what it told before; the lifts that moved."""
    moved = set()
    for lift in {*heard.told, *_lifts_heard(athlete_id, heard.order)}:
        before = trackers.row_before(athlete_id, lift, heard.order)
        later = trackers.rows_from(athlete_id, lift, heard.order)
        rows = [(row.session_order, read_told(row.body)) for row in later]
        old = next((told.told for order, told in rows if order == heard.order), ())
        new = heard.told.get(lift, ())
        if old == new:
            continue
        moved.add(lift)
        rest = [(order, told.on, told.told) for order, told in rows if order != heard.order]
        if new:
            rest.insert(0, (heard.order, heard.on, new))
        else:
            trackers.remove_row(athlete_id, lift, heard.order)
        done = _reworked(athlete, lift, read_told(before.body) if before else None, rest)
        keep(athlete_id, {lift: list(done)})
    return moved


def forget_elsewhere(
    athlete_id: str, athlete: Athlete, part: str, end: str, *kept: str
) -> set[str]:
    """Unhear what stands under orders with this part and end, but for those that are kept.

    A session that was planned anew, and a test that was corrected, had another place before.
    """
    moved: set[str] = set()
    for order in trackers.orders_with(athlete_id, part):
        if order.endswith(end) and order not in kept:
            moved |= hear(athlete_id, athlete, Heard(order, date.min, {}))
    return moved


Reworked = Mapping[str, Sequence[tuple[str, ToldSession]]]
"""By lift, what each session told and the tracker's state after it, in order."""


def reworked(athlete_id: str, athlete: Athlete) -> Reworked:
    """Every lift worked out again from what its sessions told, as after the coach changed a
    maximum. Writes nothing.
    """
    return {
        lift: list(_reworked(athlete, lift, None, _heard(athlete_id, lift)))
        for lift in trackers.lifts_of(athlete_id)
    }


def keep(athlete_id: str, done: Reworked) -> None:
    """Keep what was worked out."""
    for lift, rows in done.items():
        for order, told in rows:
            trackers.keep_row(athlete_id, lift, order, write_told(told))


def latest_told(athlete_id: str) -> dict[str, ToldSession]:
    """By lift, the last session that told of it."""
    return {row.lift: read_told(row.body) for row in trackers.latest_rows(athlete_id)}


def standing_now(athlete_id: str, athlete: Athlete, last_kg: Mapping[str, float]) -> Standing:
    """Every lift as it stands, maxima that came after the last session included."""
    return standing_after(athlete, latest_told(athlete_id), last_kg)


def standing_after(
    athlete: Athlete, told: Mapping[str, ToldSession], last_kg: Mapping[str, float]
) -> Standing:
    """Every lift as it stands after the last session that told of it."""
    settings = settings_for(athlete)
    lifts = {}
    for lift in dict.fromkeys([*(m.lift for m in athlete.maxima), *told]):
        last = told.get(lift)
        if last is None:
            known = lift_standing(athlete, lift, (), settings)
        else:
            stood = LiftStanding(lift, last.state, settings, last.source)
            known = with_maxima(stood, athlete, lift, settings, after=last.on, through=None)
        if known is not None:
            lifts[lift] = known
    return Standing(with_leans(lifts, athlete, settings), last_kg)


def _heard(athlete_id: str, lift: str) -> list[tuple[str, date, tuple[Told, ...]]]:
    return [
        (row.session_order, told.on, told.told)
        for row in trackers.rows_from(athlete_id, lift, "")
        for told in [read_told(row.body)]
    ]


def _lifts_heard(athlete_id: str, order: str) -> set[str]:
    """Lifts of which the session at this place told before."""
    rows = trackers.rows_at(athlete_id, order)
    return {row.lift for row in rows}


def _reworked(
    athlete: Athlete,
    lift: str,
    before: ToldSession | None,
    rows: Iterable[tuple[str, date, tuple[Told, ...]]],
) -> Iterator[tuple[str, ToldSession]]:
    settings = settings_for(athlete)
    stood = None if before is None else LiftStanding(lift, before.state, settings, before.source)
    after = None if before is None else before.on
    for order, on, told in rows:
        start = with_maxima(stood, athlete, lift, settings, after=after, through=on)
        done = _take(start, on, told, settings)
        yield order, done
        stood = LiftStanding(lift, done.state, settings, done.source)
        after = on


def _take(
    start: LiftStanding | None,
    on: date,
    told: tuple[Told, ...],
    settings: StrengthSettings,
) -> ToldSession:
    state = None if start is None else start.state
    steps = take_session(state, on.toordinal(), [one.evidence for one in told], settings)
    wild = tuple(one.set for one, step in zip(told, steps, strict=True) if step.wild)
    return ToldSession(on, told, wild, steps[-1].state, f"sets up to {on:%-d %B %Y}")
