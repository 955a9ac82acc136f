"""A whole block for one athlete on one kit: the one place where prescription and kit meet."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Catalogue, Implement
from undercroft.domain.kit import Kit
from undercroft.domain.load_sheet import LoadSheet, SheetExercise
from undercroft.domain.mechanics import BandLaw, laws_of
from undercroft.domain.occlusion import Ahead, Lock, OcclusionRecord, exposures_ahead
from undercroft.domain.program import calendar
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan, Week
from undercroft.domain.program.finding import Finding, Severity
from undercroft.domain.program.methods import Limb
from undercroft.domain.sheet.day import Day, OcclusionToday, implement_for
from undercroft.domain.sheet.exercise import work_out_exercise
from undercroft.domain.sheet.needs import needs_of
from undercroft.domain.sheet.occlusion import planned_occlusion
from undercroft.domain.sheet.pieces import Pieces, pieces_of
from undercroft.domain.sheet.plates import plates_used
from undercroft.domain.sheet.standing import Standing
from undercroft.domain.sheet.timing import minutes
from undercroft.domain.sheet.turns import turns_of_session
from undercroft.domain.sheet.wishes import UnknownMaximum
from undercroft.domain.strength import NotchTable, PlannedSession, PlannedTurn, notch_tables

NOTHING_ON_RECORD = OcclusionRecord()


@dataclass(frozen=True, slots=True, eq=False)
class Order:
    """What is to be worked out: for whom, with what, knowing what, from which Monday on."""

    block: Block
    athlete: Athlete
    kit: Kit
    catalogue: Catalogue
    standing: Standing
    starts_on: date
    occlusion: OcclusionRecord = NOTHING_ON_RECORD


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """The sheets in the order of the plan; findings of severity stop forbid sending them.

    `pieces` are those of the kit that the loads were chosen from.
    """

    sheets: tuple[LoadSheet, ...]
    findings: tuple[Finding, ...]
    pieces: Pieces


@dataclass(frozen=True, slots=True, eq=False)
class _Place:
    """A session and where in the block it stands."""

    w: int
    s: int
    week: Week
    session: SessionPlan
    on: date


@dataclass(frozen=True, slots=True, eq=False)
class _Shared:
    """Worked out once for all sessions: loads that can be made, laws of bands, locks, exposures."""

    pieces: Pieces
    laws: Mapping[str, BandLaw]
    locks: Mapping[date, Lock]
    ahead: Mapping[tuple[str, Limb], Ahead]


def work_out(order: Order, leave_out: Collection[str] = ()) -> WorkedOut:
    """Load sheets of all sessions but those whose keys are left out (done or under way)."""
    places = [place for place in _places(order) if place.session.key not in leave_out]
    tables = _tables(order, places)
    shared = _shared(order, places)
    findings: list[Finding] = []
    sheets = [_sheet(order, place, shared, tables[place.session.key], findings) for place in places]
    return WorkedOut(tuple(sheets), tuple(findings), shared.pieces)


def _shared(order: Order, places: Sequence[_Place]) -> _Shared:
    found = (planned_occlusion(place.session, place.on) for place in places)
    planned = [one for one in found if one is not None]
    return _Shared(
        pieces_of(order.kit, order.athlete),
        laws_of(order.kit),
        order.occlusion.locks(one.on for one in planned),
        exposures_ahead(planned, order.occlusion),
    )


def _places(order: Order) -> Iterator[_Place]:
    for w, week in enumerate(order.block.weeks):
        for s, session in enumerate(week.sessions):
            on = calendar.day_of_session(order.starts_on, w, session.day)
            yield _Place(w, s, week, session, on)


def _implements(session: SessionPlan, catalogue: Catalogue) -> dict[str, Implement]:
    return {plan.key: implement_for(plan, catalogue) for plan in session.exercises}


def _tables(order: Order, places: list[_Place]) -> dict[str, dict[str, NotchTable]]:
    """By session and lift, the notch table; a lift's sessions follow each other in time."""
    turns: dict[str, list[tuple[_Place, list[PlannedTurn]]]] = defaultdict(list)
    for place in sorted(places, key=lambda place: place.on):
        for lift, found in _turns_by_lift(order, place).items():
            turns[lift].append((place, found))
    tables: dict[str, dict[str, NotchTable]] = {place.session.key: {} for place in places}
    for lift, sessions in turns.items():
        known = order.standing.lifts.get(lift)
        if known is None:
            continue
        ahead = [PlannedSession(place.on.toordinal(), tuple(found)) for place, found in sessions]
        made = notch_tables(lift, known.state, ahead, known.settings)
        for (place, _), table in zip(sessions, made, strict=True):
            tables[place.session.key][lift] = table
    return tables


def _turns_by_lift(order: Order, place: _Place) -> dict[str, list[PlannedTurn]]:
    found: dict[str, list[PlannedTurn]] = defaultdict(list)
    implements = _implements(place.session, order.catalogue)
    for lift, _, turn in turns_of_session(place.session, implements):
        found[lift].append(turn)
    return found


def _turn_numbers(session: SessionPlan, catalogue: Catalogue) -> dict[str, int]:
    """By set key, its place among the lift's evidence of the session."""
    counted: dict[str, int] = defaultdict(int)
    numbers: dict[str, int] = {}
    for lift, key, _ in turns_of_session(session, _implements(session, catalogue)):
        numbers[key] = counted[lift]
        counted[lift] += 1
    return numbers


def day_of_session(order: Order, session: str) -> Day:
    """What the arithmetic of one session looks at, by the session's key. Raises KeyError."""
    places = list(_places(order))
    place = {place.session.key: place for place in places}[session]
    return _day(order, place, _shared(order, places), _tables(order, places)[session])


def _day(order: Order, place: _Place, shared: _Shared, tables: Mapping[str, NotchTable]) -> Day:
    return Day(
        on=place.on,
        athlete=order.athlete,
        kit=order.kit,
        catalogue=order.catalogue,
        pieces=shared.pieces,
        laws=shared.laws,
        standing=order.standing,
        tables=tables,
        turns=_turn_numbers(place.session, order.catalogue),
        occlusion=_occlusion(order, place, shared),
    )


def _occlusion(order: Order, place: _Place, shared: _Shared) -> OcclusionToday | None:
    planned = planned_occlusion(place.session, place.on)
    if planned is None:
        return None
    ahead = {limb: shared.ahead[planned.session, limb] for limb in planned.limbs}
    return OcclusionToday(order.occlusion, shared.locks[place.on], ahead)


def _sheet(
    order: Order,
    place: _Place,
    shared: _Shared,
    tables: Mapping[str, NotchTable],
    findings: list[Finding],
) -> LoadSheet:
    session = place.session
    day = _day(order, place, shared, tables)
    done: list[tuple[ExercisePlan, SheetExercise]] = []
    for e, plan in enumerate(session.exercises):
        try:
            done.append((plan, work_out_exercise(day, plan)))
        except UnknownMaximum as fault:
            findings.append(_unknown_maximum(place, e, plan, fault.lift))
    exercises = tuple(sheet for _, sheet in done)
    return LoadSheet(
        session=session.key,
        name=session.name,
        week=place.week.key,
        week_name=place.week.name,
        day=session.day,
        on=place.on,
        athlete=order.athlete.name,
        kit=order.kit.name,
        exercises=exercises,
        minutes=minutes(done),
        needs=needs_of(day, exercises),
        plates=plates_used(day.kit, exercises),
        note=session.note,
    )


def _unknown_maximum(place: _Place, e: int, plan: ExercisePlan, lift: str) -> Finding:
    day = calendar.DAYS[place.session.day - 1]
    return Finding(
        Severity.STOP,
        f"week {place.w + 1}, {day}, exercise {e + 1} ({plan.exercise})",
        f"weeks.{place.w}.sessions.{place.s}.exercises.{e}",
        f"no maximum of {lift!r} is known for this athlete",
        "give the athlete one, tested or guessed, or write when_unknown: find",
    )
