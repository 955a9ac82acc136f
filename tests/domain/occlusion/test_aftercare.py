"""Signs in a set and after it, and what to do about them."""

from datetime import date, datetime, timedelta, timezone

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undercroft.domain.occlusion import (
    AFTER_SIGNS,
    ORDER,
    STOP_SIGNS,
    TWO_LINES,
    AfterCheck,
    Outcome,
    Urgency,
    after_decision,
    checks_due,
    stop_urgency,
)

DAY = date(2026, 3, 4)
NONE, SEE, CALL = Urgency.NONE, Urgency.SEE_TODAY, Urgency.EMERGENCY


@pytest.mark.parametrize(
    ("hours", "signs", "urgency"),
    [
        (24, (), NONE),
        (24, ("sore",), NONE),
        (48, ("sore",), NONE),
        (72, ("sore",), NONE),
        (96, ("sore",), SEE),  # gone by 96 h, seen
        (24, ("sore-worse",), NONE),  # worst at 24-48 h, seen
        (48, ("sore-worse",), SEE),
        (50, ("dark-urine",), SEE),  # CDC/NIOSH, seen
        (24, ("weakness",), SEE),
        (24, ("pain",), SEE),
        (24, ("sore", "one-limb"), SEE),  # whatever else is ticked
        (24, ("sore-one-side",), SEE),
        (24, ("numb-still",), SEE),
        (24, ("tense",), SEE),
        (24, ("breathless",), CALL),
        (24, ("chest-pain", "sore"), CALL),
        (72, ("dark-urine", "blood-coughed"), CALL),
        (24, ("something new",), SEE),
    ],
)
def test_what_ticked_signs_mean(hours, signs, urgency):
    decision = after_decision(AfterCheck(DAY, hours, signs))
    assert decision.urgency is urgency
    assert decision.locks is (urgency is not NONE)


def test_dark_urine_says_what_to_ask_for():
    decision = after_decision(AfterCheck(DAY, 50, ("dark-urine",)))
    assert "medical care today" in decision.do_now[0]
    assert "creatine kinase" in decision.do_now[1]


def test_breathless_says_to_call():
    assert "emergency number" in after_decision(AfterCheck(DAY, 1, ("breathless",))).do_now[0]


SIGNS = st.lists(st.sampled_from([one.key for one in AFTER_SIGNS]), max_size=5)


@settings(deadline=None)
@given(st.sampled_from([24, 48, 72]), SIGNS, SIGNS)
def test_a_further_tick_never_makes_it_less_urgent(hours, signs, more):
    one = after_decision(AfterCheck(DAY, hours, tuple(signs)))
    both = after_decision(AfterCheck(DAY, hours, (*signs, *more)))
    assert both.urgency.gravity >= one.urgency.gravity
    assert both.locks or not one.locks


def test_checks_come_due_after_24_48_and_72_hours():
    off = datetime(2026, 3, 2, 19, tzinfo=timezone.utc)  # noqa: UP017

    def due(hours: float, *answered: int) -> tuple[int, ...]:
        return checks_due(off, answered, off + timedelta(hours=hours))

    assert [due(23.9), due(24), due(48), due(80)] == [(), (24,), (24, 48), (24, 48, 72)]
    assert due(80, 24, 48) == (72,)


def test_signs_of_heart_lungs_and_brain_call_and_lock():
    graves = {one.key for one in STOP_SIGNS if one.urgency is CALL}
    assert graves == {"chest-pain", "breathless", "heartbeat", "fainted", "headache", "speech"}
    assert {one.outcome for one in STOP_SIGNS if one.key in graves} == {Outcome.LOCKED}


def test_any_other_sign_ends_the_day():
    others = [one for one in STOP_SIGNS if one.urgency is not CALL]
    assert {one.outcome for one in others} == {Outcome.NOT_TODAY}
    told = {one.key for one in others}
    assert told >= {"numb", "colour", "wrap-pain", "weak", "dizzy", "sick", "clock", "doubt"}


@pytest.mark.parametrize(
    ("signs", "urgency"),
    [
        ((), NONE),
        (("numb",), Urgency.LEAVE_OFF),
        (("numb", "speech"), CALL),
        (("strange",), SEE),
    ],
)
def test_the_gravest_sign_decides(signs, urgency):
    assert stop_urgency(signs) is urgency


def test_the_wrap_screen_has_two_lines_and_the_order_starts_with_the_set():
    assert len(TWO_LINES) == 2
    assert all(len(line) <= 100 for line in TWO_LINES)
    assert [ORDER[0], ORDER[2]] == ["Stop the set.", "Take the wraps off, on every limb."]
    assert ORDER[-1] == "Do not try again today."


def test_keys_of_signs_are_unique():
    for signs in (STOP_SIGNS, AFTER_SIGNS):
        assert len({one.key for one in signs}) == len(signs)
