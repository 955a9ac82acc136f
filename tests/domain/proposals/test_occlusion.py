"""Occlusion work in kilograms moves by the repetitions reached, within its lock and its cap."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from tests.domain.occlusion.people import PRESCRIPTION, cleared, read, screened
from tests.domain.program.plans import MONDAY, exercise, one_day, order
from tests.domain.proposals.weeks_ahead import evidence, sets_of, then

from undercroft.domain.load_sheet import SheetExercise
from undercroft.domain.occlusion import OcclusionDay, OcclusionRecord, ScreeningFile
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.methods import Limb, Method, OcclusionRule, Restriction
from undercroft.domain.program.wish import Fixed
from undercroft.domain.proposals import Kind, OcclusionDone, SetProposal, propose
from undercroft.domain.sheet import work_out

OPEN = read(screened(on=MONDAY - timedelta(days=20)))
SEVENTY_FIVE = (30, 15, 15, 15)
WRAPPED = OcclusionRule(Limb.THIGH, Restriction.WRAP, tightness=6)
PLACE = ("leg-extension", Limb.THIGH)


def legs(kg: float) -> ExercisePlan:
    """Leg extension, whose maximum is 60 kg: the cap is 24, and the stack goes by fives."""
    plan = tuple(SetPlan(f"s{n}", Fixed(kg), reps) for n, reps in enumerate(SEVENTY_FIVE, start=1))
    return exercise("leg-extension", plan, Method.OCCLUSION, details=WRAPPED)


def used_to_it(file: ScreeningFile = OPEN) -> OcclusionRecord:
    """Five exposures lie behind."""
    days = (MONDAY - timedelta(days=ago) for ago in (4, 7, 11, 14, 18))
    return OcclusionRecord(file, tuple(OcclusionDay(on, frozenset({Limb.THIGH})) for on in days))


def sheet_of(kg: float, record: OcclusionRecord) -> SheetExercise:
    asked = replace(order(one_day(legs(kg))), occlusion=record)
    return work_out(asked).sheets[0].exercises[0]


def done(kg: float, reps: Sequence[int], record: OcclusionRecord, **more: bool) -> OcclusionDone:
    """As the sheet of that day asked, with so many repetitions."""
    known = sheet_of(kg, record).occlusion
    assert known is not None
    return OcclusionDone(known.next, tuple(reps), (kg,) * len(reps), **more)


def told(now_kg: float, last: OcclusionDone | None, record: OcclusionRecord) -> list[SetProposal]:
    plan = one_day(legs(now_kg))
    known = evidence(plan, then(), occlusion={} if last is None else {PLACE: last})
    return sets_of(propose(replace(order(plan), occlusion=record), (), known))


def after(reps: Sequence[int], now_kg: float = 15, done_kg: float = 15) -> SetProposal:
    record = used_to_it()
    return told(now_kg, done(done_kg, reps, record), record)[0]


def test_a_last_set_above_its_target_asks_for_the_next_load_of_the_stack() -> None:
    one = after((30, 15, 15, 17))
    assert (one.kind, one.from_kg, one.to_kg) == (Kind.PROPOSED, 15, 20)
    assert one.why == "last time 30-15-15-17: last set above its target"
    assert one.write == Fixed(20)


def test_all_its_sets_move_together() -> None:
    record = used_to_it()
    found = told(15, done(15, (30, 15, 15, 17), record), record)
    assert [one.to_kg for one in found] == [20, 20, 20, 20]


def test_targets_that_were_just_met_ask_for_nothing() -> None:
    one = after((30, 15, 15, 15))
    assert (one.kind, one.to_kg) == (Kind.STAYS, None)


def test_a_first_set_under_two_thirds_asks_for_less() -> None:
    one = after((19, 12, 10, 8))
    assert (one.from_kg, one.to_kg) == (15, 10)


def test_a_load_that_was_accepted_is_not_proposed_again() -> None:
    assert after((30, 15, 15, 17), now_kg=20).kind is Kind.STAYS


def test_nothing_rises_above_two_fifths_of_the_maximum() -> None:
    """24 kg is the cap; from 20 the next load would be 25."""
    one = after((30, 15, 15, 17), now_kg=20, done_kg=20)
    assert (one.kind, one.to_kg) == (Kind.STAYS, None)
    assert one.why.endswith("but no other load is open here")


def test_a_table_from_a_higher_maximum_stops_at_the_cap_of_today() -> None:
    record = used_to_it()
    generous = done(15, (30, 15, 15, 17), record)
    assert generous.table is not None
    old = replace(generous, table=replace(generous.table, up_kg=30.0))
    one = told(15, old, record)[0]
    assert one.to_kg == 20
    assert one.why.endswith("not above 20 kg, the day's limit")


def test_what_is_locked_is_never_moved() -> None:
    last = done(15, (30, 15, 15, 17), used_to_it())
    one = told(15, last, OcclusionRecord())[0]
    assert (one.kind, one.to_kg, one.write) == (Kind.STAYS, None, None)
    assert one.why.startswith("Occlusion work is locked")


def test_a_clinicians_prescription_is_never_moved() -> None:
    last = done(15, (30, 15, 15, 17), used_to_it())
    day = MONDAY - timedelta(days=20)
    clearance = cleared("injury", on=day, prescription=PRESCRIPTION)
    clinic = read(screened(on=day, injury="yes"), clearances=(clearance,))
    one = told(15, last, used_to_it(clinic))[0]
    assert (one.kind, one.to_kg, one.write) == (Kind.UNKNOWN, None, None)
    assert one.why == "no load of it is worked out here, and none is moved"


def test_another_load_than_the_planned_one_leaves_it_to_the_coach() -> None:
    record = used_to_it()
    lighter = replace(done(15, (30, 15, 15, 17), record), loads_kg=(10, 10, 10, 10))
    one = told(15, lighter, record)[0]
    assert (one.kind, one.to_kg) == (Kind.UNKNOWN, None)


def test_a_session_stopped_by_a_sign_holds_the_load() -> None:
    record = used_to_it()
    one = told(15, done(15, (30, 15, 15, 17), record, stopped=True), record)[0]
    assert (one.kind, one.why) == (Kind.STAYS, "last time 30-15-15-17: the session was stopped")


def test_before_the_first_time_nothing_tells_of_the_next_load() -> None:
    one = told(15, None, used_to_it())[0]
    assert (one.kind, one.why) == (Kind.UNKNOWN, "not done yet: nothing tells of its next load")
