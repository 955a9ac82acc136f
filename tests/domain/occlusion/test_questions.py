"""The questions: plain, complete, and each with the line that says where it comes from."""

import pytest

from undercroft.domain.occlusion import (
    BY_KEY,
    CLEARABLE,
    QUESTIONS,
    SCREENING,
    TODAY,
    Asked,
    Kind,
    Outcome,
    Question,
    asked,
)

FOR_A_CLINICIAN = {Outcome.DOCTOR_FIRST, Outcome.CLINICAL, Outcome.LOCKED}


def test_keys_are_unique_and_each_question_is_asked_once():
    assert len(BY_KEY) == len(QUESTIONS) == len(SCREENING) + len(TODAY)
    assert asked(Asked.SCREENING) == SCREENING
    assert asked(Asked.TODAY) == TODAY
    assert {one.asked for one in SCREENING} == {Asked.SCREENING}
    assert {one.asked for one in TODAY} == {Asked.TODAY}


@pytest.mark.parametrize("one", QUESTIONS, ids=lambda one: one.key)
def test_a_question_is_short_ends_as_one_and_says_its_source(one: Question):
    assert "?" in one.text
    assert len(one.text) <= 200
    assert one.name
    assert one.basis.source


@pytest.mark.parametrize("one", QUESTIONS, ids=lambda one: one.key)
def test_what_needs_a_clinician_can_be_cleared_and_nothing_else_can(one: Question):
    can = one.outcome in FOR_A_CLINICIAN | {Outcome.NEEDS_READING}
    assert (one.key in CLEARABLE) == can


def test_a_hard_stop_is_never_for_somebody_alone():
    hard = [one for one in SCREENING if one.outcome is Outcome.LOCKED]
    assert len(hard) == 16
    assert all(one.never_alone for one in hard)


def test_only_measures_are_no_yes_or_no():
    others = {one.key for one in QUESTIONS if one.kind is not Kind.YES_NO}
    assert others == {
        "born", "sex", "height_m", "mass_kg", "systolic", "diastolic", "pressure-on",
    }  # fmt: skip


def test_illness_journey_and_changes_make_the_screening_out_of_date():
    assert {one.key for one in QUESTIONS if one.renews} == {"fever", "journey", "changed"}


def test_conditions_that_need_care_now_say_so():
    urgent = {one.key for one in QUESTIONS if one.urgent}
    assert urgent == {"effort-signs", "heart-today", "one-limb", "dark-urine"}
