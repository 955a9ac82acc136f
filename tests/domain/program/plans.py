"""Plans, people and gyms for the tests, each with one thing that can be changed. All invented."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from undercroft.documents.catalogue import catalogue
from undercroft.domain.athlete import Athlete, Maximum, MaximumKind
from undercroft.domain.kit import (
    Anchor,
    Band,
    BandReading,
    Bar,
    BarKind,
    Dumbbell,
    Kit,
    Landmine,
    Plate,
    Stack,
    Support,
)
from undercroft.domain.ledger import Entry, SessionRecord, fold
from undercroft.domain.program.block import (
    Block,
    ExercisePlan,
    Rest,
    SessionPlan,
    SetPlan,
    Week,
)
from undercroft.domain.program.methods import DETAILS_OF, Method
from undercroft.domain.program.wish import Fixed, LoadWish, OfMaximum
from undercroft.domain.sheet import Order, standing_of

MONDAY = date(2026, 11, 2)
CATALOGUE = catalogue()

RACK = Support("rack", "Rack", 1.1, safeties=True)
STANDS = Support("stands", "Stands", 1.1, safeties=False)

PLATES = (
    Plate(20, 6, 0.06),
    Plate(15, 2, 0.045),
    Plate(10, 4, 0.035),
    Plate(5, 4, 0.026),
    Plate(2.5, 4, 0.019),
    Plate(1.25, 2, 0.015),
)

BANDS = tuple(
    Band(
        f"thin-{side}",
        f"thin, {side}",
        22,
        4.5,
        1.04,
        tuple(
            BandReading(length, force)
            for length, force in ((1.25, 50), (1.5, 81), (1.75, 102), (2.0, 119))
        ),
    )
    for side in ("left", "right")
)

CELLAR = Kit(
    "cellar",
    "A cellar",
    bars=(
        Bar("bar", "Steel bar", 20),
        Bar("hex", "Hex bar", 25, BarKind.HEX),
        Bar("ash", "Ash bar", 8, BarKind.OSCILLATING, sleeve_length_m=0.3),
    ),
    plates=PLATES,
    dumbbells=tuple(Dumbbell(kg, 2) for kg in (6, 8, 10, 12.5, 15, 17.5, 20, 22.5, 25, 30)),
    stacks=(Stack("tower", "Tower", tuple(range(5, 85, 5)), sheaves=0),),
    bands=BANDS,
    anchors=(Anchor("pegs", "Pegs", 0.05, 0.55),),
    supports=(RACK,),
    landmines=(Landmine("pivot", "Pivot"),),
    things=("bench", "box", "pull-up bar"),
)

LIFTS = {
    "back-squat": 140.0,
    "bench-press": 100.0,
    "deadlift": 180.0,
    "hex-bar-deadlift": 180.0,
    "overhead-press": 60.0,
    "barbell-row": 90.0,
    "pulldown": 70.0,
    "leg-extension": 60.0,
    "triceps-pushdown": 40.0,
}

SIV = Athlete(
    "siv",
    "Siv Underdal",
    stature_m=1.75,
    body_mass_kg=75,
    session_minutes=90,
    maxima=tuple(
        Maximum(lift, kg, MaximumKind.TESTED, date(2026, 10, 20)) for lift, kg in LIFTS.items()
    ),
)


def percent(of: float, **fields: Any) -> OfMaximum:
    return OfMaximum(of, **fields)


def sets(
    count: int, reps: int | None = 5, load: LoadWish | None = None, **fields: Any
) -> tuple[SetPlan, ...]:
    """So many equal sets with the keys s1, s2 …"""
    wish = load or percent(70)
    return tuple(SetPlan(f"s{n}", wish, reps, **fields) for n in range(1, count + 1))


def exercise(
    name: str = "back-squat",
    plan_sets: tuple[SetPlan, ...] = (),
    method: Method = Method.STRAIGHT,
    key: str = "",
    **fields: Any,
) -> ExercisePlan:
    """An exercise with the details that its method has by default; set keys begin with its own."""
    own = key or name
    chosen = plan_sets or sets(3)
    keyed = tuple(replace(one, key=f"{own}.{one.key}") for one in chosen)
    needs = {Method.SPEED, Method.MAXIMUM_TEST}
    details = DETAILS_OF[method]() if method in needs else None  # type: ignore[call-arg]
    fields = {"rest": Rest(120, 180), "details": details, **fields}
    return ExercisePlan(own, name, method, keyed, **fields)


def session(*exercises: ExercisePlan, day: int = 1, key: str = "") -> SessionPlan:
    return SessionPlan(key or f"day{day}", f"Day {day}", day, exercises)


def week(*sessions: SessionPlan, number: int = 1) -> Week:
    """A week whose sessions have keys of their own."""
    keyed = tuple(replace(one, key=f"w{number}.{one.key}") for one in sessions)
    return Week(f"w{number}", f"Week {number}", keyed)


def block(*weeks: Week) -> Block:
    return Block("block", "A block", weeks)


def one_day(*exercises: ExercisePlan) -> Block:
    """A block of one session."""
    return block(week(session(*exercises)))


def order(
    plan: Block, athlete: Athlete = SIV, kit: Kit = CELLAR, starts_on: date = MONDAY
) -> Order:
    return Order(plan, athlete, kit, CATALOGUE, standing_of(athlete), starts_on)


def kg(value: float) -> Fixed:
    return Fixed(value)


def record(
    plan_session: str = "w1.day1", *entries: tuple[str, str, Mapping[str, Any]]
) -> SessionRecord:
    """What became of a session: entries as (kind, set key, body)."""
    folded = fold(
        Entry(
            f"id{n:03d}", kind, "2026-11-02T18:00:00+01:00", 1, plan_session, key or None, body=body
        )
        for n, (kind, key, body) in enumerate(entries)
    )
    return folded.sessions[1, plan_session]
