"""The lock: what opens it, what closes it again, and that nothing overrides it."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from tests.domain.occlusion.people import (
    COACH,
    DAY,
    DOCTOR,
    PRESCRIPTION,
    cleared,
    read,
    screened,
    today,
    without,
)

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion import (
    AfterCheck,
    Aim,
    Answered,
    Clearance,
    ClinicianLimits,
    Outcome,
    Prescription,
    Profession,
    ScreeningFile,
    Signature,
    Stopped,
    start_on,
    state_on,
    states_on,
    valid_until,
)

LATER = DAY + timedelta(days=30)


def test_without_a_screening_it_is_closed():
    lock = state_on(DAY, ScreeningFile())
    assert (lock.open, lock.outcome) == (False, Outcome.INCOMPLETE)
    assert lock.why == ("no screening has been answered",)


def test_a_clean_screening_that_nobody_has_read_is_closed():
    lock = state_on(DAY, ScreeningFile((screened(),)))
    assert (lock.open, lock.outcome) == (False, Outcome.NEEDS_READING)
    assert lock.what_opens_it == ("the coach reads the screening and signs",)


def test_the_coachs_signature_opens_it_for_six_months():
    file = read(screened())
    lock = state_on(DAY, file)
    assert (lock.open, lock.outcome, lock.until) == (True, Outcome.OPEN, date(2026, 9, 1))
    assert state_on(date(2026, 9, 1), file).open
    late = state_on(date(2026, 9, 2), file)
    assert (late.open, late.what_opens_it) == (False, ("the screening, answered anew",))


@pytest.mark.parametrize(
    ("on", "until"),
    [
        (date(2026, 8, 31), date(2027, 2, 27)),
        (date(2027, 8, 31), date(2028, 2, 28)),
        (date(2026, 12, 31), date(2027, 6, 29)),
        (date(2026, 1, 1), date(2026, 6, 30)),
    ],
)
def test_six_months_end_within_the_month_that_they_reach(on, until):
    assert valid_until(screened(on)) == until


def test_many_days_at_once_are_the_same_as_one_by_one():
    file = read(screened(), screened(LATER, "s2", kidney="yes"), clearances=(cleared("kidney"),))
    days = [DAY, LATER, date(2026, 9, 2), date(2027, 3, 2)]
    assert states_on(days, file) == {on: state_on(on, file) for on in days}


def test_a_signature_counts_for_the_screening_that_it_read():
    file = replace(read(screened()), answered=(screened(), screened(LATER, "s2")))
    assert not state_on(LATER, file).open


def test_a_signature_of_an_earlier_or_later_day_does_not_count():
    for on in (DAY - timedelta(days=1), DAY + timedelta(days=1)):
        file = replace(read(screened()), signatures=(Signature("s1", COACH, on),))
        assert not state_on(DAY, file).open


def test_a_screening_from_a_clock_gone_ahead_does_not_count():
    ahead = screened(date(2027, 3, 2))
    assert state_on(DAY, read(ahead)).why[0] == "the screening bears a later day, 2027-03-02"


@pytest.mark.parametrize("caution", [{"smoking": "yes"}, {"born": "1980-01-01"}])
def test_a_counted_caution_asks_for_a_note_with_the_signature(caution):
    plain = state_on(DAY, read(screened(**caution)))
    assert (plain.open, plain.outcome) == (False, Outcome.NEEDS_READING)
    assert state_on(DAY, read(screened(**caution), note="talked it over, fit")).open


def test_a_clearance_answers_a_caution_too():
    file = read(screened(smoking="yes"), clearances=(cleared("smoking"),))
    assert state_on(DAY, file).open


@pytest.mark.parametrize("note", ["", "he is fine, go ahead"])
def test_the_coach_alone_cannot_open_doctor_first(note):
    lock = state_on(DAY, read(screened(kidney="yes"), note=note))
    assert (lock.open, lock.outcome) == (False, Outcome.DOCTOR_FIRST)


def test_a_recorded_clearance_opens_doctor_first_until_its_last_day():
    clearance = cleared("kidney", days=40)
    file = read(screened(kidney="yes"), clearances=(clearance,))
    lock = state_on(DAY, file)
    assert (lock.open, lock.until) == (True, clearance.until)
    assert state_on(clearance.until, file).open
    assert not state_on(clearance.until + timedelta(days=1), file).open


def test_a_clearance_still_wants_the_coachs_signature():
    file = ScreeningFile((screened(kidney="yes"),), clearances=(cleared("kidney"),))
    assert not state_on(DAY, file).open


def test_a_clearance_covers_what_it_names_and_no_more():
    file = read(screened(kidney="yes", diabetes="yes"), clearances=(cleared("kidney"),))
    assert state_on(DAY, file).why == ("diabetes",)


def test_a_clearance_older_than_the_answer_does_not_count():
    old = cleared("kidney", on=DAY - timedelta(days=1))
    assert not state_on(DAY, read(screened(kidney="yes"), clearances=(old,))).open


def test_the_coachs_own_word_is_no_clearance():
    file = read(screened(kidney="yes"), clearances=(cleared("kidney", by=f" {COACH.upper()} "),))
    assert not state_on(DAY, file).open


def test_a_lasting_hard_stop_opens_by_clearance_and_only_in_company():
    screening = screened(heart="yes")
    clearances = (cleared("heart", "score"),)
    alone = state_on(DAY, read(screening, clearances=clearances))
    assert (alone.open, alone.outcome) == (False, Outcome.LOCKED)
    assert "company" in alone.why[0]
    company = state_on(DAY, read(screening, clearances=clearances, trains_alone=False))
    assert (company.open, company.company) == (True, True)


def test_a_clearance_not_meant_for_training_alone_opens_in_company_only():
    clearances = (cleared("kidney", alone=False),)
    assert not state_on(DAY, read(screened(kidney="yes"), clearances=clearances)).open
    file = read(screened(kidney="yes"), clearances=clearances, trains_alone=False)
    assert state_on(DAY, file).company


def test_the_athletes_word_on_being_alone_outweighs_the_coachs_record():
    file = read(
        screened(heart="yes", alone="yes"),
        clearances=(cleared("heart", "score"),),
        trains_alone=False,
    )
    assert not state_on(DAY, file).open


def test_no_later_answer_takes_back_one_that_needs_a_clinician():
    file = read(screened(clot="yes"), screened(LATER, "s2"))
    lock = state_on(LATER, file)
    assert (lock.open, lock.outcome) == (False, Outcome.LOCKED)
    assert "a blood clot, past or suspected" in lock.why


def test_an_edited_weight_or_birthday_takes_no_lock_back():
    heavy = screened(mass_kg=140, varicose="yes")
    file = read(heavy, screened(LATER, "s2"), clearances=(cleared("varicose"),))
    assert "5 points" in state_on(LATER, file).why[0]
    young = read(screened(born="2010-01-01"), screened(LATER, "s2"))
    assert state_on(LATER, young).outcome is Outcome.DOCTOR_FIRST
    coach_says = read(screened(), born=date(2010, 1, 1))
    assert state_on(DAY, coach_says).outcome is Outcome.LOCKED


def test_what_has_passed_can_be_cleared_for_training_alone():
    file = read(screened(pregnant="yes"), screened(LATER, "s2"))
    assert not state_on(LATER, file).open
    both = replace(file, clearances=(cleared("pregnant", on=LATER),))
    assert state_on(LATER, both).open
    still = read(screened(pregnant="yes"), clearances=(cleared("pregnant"),))
    assert not state_on(DAY, still).open


def test_what_comes_back_asks_for_a_new_clearance():
    again = LATER + timedelta(days=30)
    file = read(
        screened(injury="yes"),
        screened(LATER, "s2"),
        screened(again, "s3", injury="yes"),
        clearances=(cleared("injury", on=LATER, prescription=PRESCRIPTION),),
    )
    assert not state_on(again, file).open


def test_a_lasting_condition_answered_again_keeps_its_clearance():
    file = read(
        screened(kidney="yes"),
        screened(LATER, "s2", kidney="yes"),
        clearances=(cleared("kidney"),),
    )
    assert state_on(LATER, file).open


def test_no_clearance_opens_for_somebody_under_age_and_alone():
    minor = screened(born="2010-01-01")
    clearances = (cleared("under-age"),)
    assert not state_on(DAY, read(minor, clearances=clearances)).open
    company = state_on(DAY, read(minor, clearances=clearances, trains_alone=False))
    assert (company.open, company.company) == (True, True)
    assert not state_on(DAY, read(minor, trains_alone=False)).open


def test_an_athlete_who_comes_of_age_is_asked_as_an_adult():
    file = read(screened(born="2008-03-05"))
    assert state_on(DAY, file).outcome is Outcome.LOCKED
    assert state_on(date(2026, 3, 5), file).open


def test_recovery_waits_for_the_clinicians_own_prescription():
    """Bond et al. 2019, Hughes et al. 2019 (seen): clinic only; own choice on the rest."""
    recovering = screened(rehab="yes")
    assert state_on(DAY, read(recovering)).outcome is Outcome.CLINICAL
    word = read(recovering, clearances=(cleared("rehab"),))
    assert not state_on(DAY, word).open
    recorded = read(recovering, clearances=(cleared("rehab", prescription=PRESCRIPTION),))
    lock = state_on(DAY, recorded)
    assert (lock.open, lock.as_prescribed) == (True, True)


def test_a_coach_who_means_recovery_gets_the_clinic():
    signed = Signature("s1", COACH, DAY, "knee, five weeks after surgery", Aim.RECOVERY)
    lock = state_on(DAY, replace(read(screened()), signatures=(signed,)))
    assert (lock.open, lock.outcome) == (False, Outcome.CLINICAL)


def test_a_coach_who_meant_recovery_cannot_sign_it_away():
    recovery = Signature("s1", COACH, DAY, "knee", Aim.RECOVERY)
    file = replace(
        read(screened(), screened(LATER, "s2")),
        signatures=(recovery, Signature("s2", COACH, LATER)),
    )
    assert state_on(LATER, file).outcome is Outcome.CLINICAL
    over = replace(file, clearances=(cleared("recovery-as-aim", on=LATER),))
    assert (state_on(LATER, over).open, state_on(LATER, over).as_prescribed) == (True, False)


def test_an_injury_that_is_over_wants_a_clearance_and_no_prescription():
    file = read(screened(injury="yes"), screened(LATER, "s2"))
    assert state_on(LATER, file).outcome is Outcome.CLINICAL
    assert state_on(LATER, replace(file, clearances=(cleared("injury", on=LATER),))).open


def test_a_lasting_hard_stop_that_is_denied_later_stays_for_company_only():
    file = read(
        screened(heart="yes"), screened(LATER, "s2"), clearances=(cleared("heart", "score"),)
    )
    assert not state_on(LATER, file).open
    assert state_on(LATER, replace(file, trains_alone=False)).company


def test_of_two_clearances_for_one_reason_the_longer_counts():
    clearances = (cleared("kidney", days=40), cleared("kidney", days=90))
    lock = state_on(DAY, read(screened(kidney="yes"), clearances=clearances))
    assert lock.until == clearances[1].until


def test_a_new_caution_wants_a_new_note_or_a_new_clearance():
    file = read(screened(), screened(LATER, "s2", smoking="yes"), clearances=(cleared("smoking"),))
    assert state_on(LATER, file).outcome is Outcome.NEEDS_READING


def test_an_answer_that_was_not_asked_there_is_not_lost():
    swollen = screened(**{"one-limb": "yes"})
    lock = state_on(LATER, read(swollen, screened(LATER, "s2")))
    assert (lock.outcome, lock.why) == (Outcome.LOCKED, ("one limb swollen, warm or discoloured",))


def test_an_empty_set_of_answers_is_a_screening_left_open():
    file = read(screened(), Answered("s2", DAY, {}))
    assert state_on(DAY, file).outcome is Outcome.INCOMPLETE


def test_being_alone_closes_nothing_that_is_open_to_somebody_alone():
    assert start_on(DAY, read(screened(), today(alone_today="yes"))).open


def test_clinicians_limits_go_along_and_the_tighter_counts():
    file = read(
        screened(kidney="yes", diabetes="yes"),
        clearances=(
            cleared("kidney", limits=ClinicianLimits(load_percent=30, in_words="seated only")),
            cleared("diabetes", limits=ClinicianLimits(load_percent=25, wear_minutes=6)),
        ),
    )
    limits = state_on(DAY, file).limits
    assert (limits.load_percent, limits.wear_minutes) == (25, 6)
    assert limits.in_words == "seated only"


@pytest.mark.parametrize("key", ["changed", "fever", "journey"])
def test_a_change_since_the_screening_asks_for_a_new_one(key):
    told = today(LATER, **{key: "yes"})
    stale = state_on(LATER + timedelta(days=7), read(screened(), told))
    assert (stale.open, stale.outcome) == (False, Outcome.INCOMPLETE)
    anew = screened(LATER, "s2")
    assert state_on(LATER + timedelta(days=7), read(screened(), told, anew)).open


@pytest.mark.parametrize("key", ["fever", "dry", "alcohol", "journey", "new_pain"])
def test_not_today_is_not_today_whatever_is_answered_later_that_day(key):
    told = today(**{key: "yes"})
    lock = start_on(DAY, read(told, screened(), today(id="t2")))
    assert (lock.open, lock.outcome) == (False, Outcome.NOT_TODAY)


def test_alcohol_yesterday_is_no_lock_today():
    tomorrow = DAY + timedelta(days=1)
    file = read(screened(), today(alcohol="yes"), today(tomorrow, "t2"))
    assert not start_on(DAY, file).open
    assert start_on(tomorrow, file).open


def test_before_the_first_wrap_the_questions_of_the_day_are_answered():
    assert start_on(DAY, read(screened())).why == ("the questions of the day are open",)
    assert start_on(DAY, read(screened(), today())).open
    part = Answered("t1", DAY, {"fever": "no"})
    assert not start_on(DAY, read(screened(), part)).open
    assert not start_on(DAY, read(screened(), today(DAY - timedelta(days=1)))).open


def test_an_open_question_on_the_last_session_keeps_it_closed():
    file = read(screened(), today())
    assert not start_on(DAY, file, after_check_due=True).open


def test_what_is_open_for_company_stays_closed_for_whoever_is_alone_today():
    clearances = (cleared("heart", "score"),)
    for alone, opens in (("yes", False), ("not-sure", False), ("no", True)):
        file = read(
            screened(heart="yes"),
            today(alone_today=alone),
            clearances=clearances,
            trains_alone=False,
        )
        assert start_on(DAY, file).open is opens


@pytest.mark.parametrize("sign", ["dark-urine", "one-limb", "breathless", "weakness", "what?"])
def test_a_grave_sign_afterwards_locks_until_a_clinician_has_cleared_it(sign):
    file = read(screened(), after=(AfterCheck(LATER, 48, (sign, "sore")),))
    lock = state_on(LATER, file)
    assert (lock.open, lock.outcome) == (False, Outcome.LOCKED)
    assert lock.do_now
    key = "unknown-sign" if sign == "what?" else sign
    assert not state_on(LATER, replace(file, clearances=(cleared(key),))).open
    assert state_on(LATER, replace(file, clearances=(cleared(key, on=LATER),))).open


def test_soreness_afterwards_locks_nothing():
    assert state_on(LATER, read(screened(), after=(AfterCheck(LATER, 48, ("sore",)),))).open


def test_a_sign_in_a_set_ends_that_day_and_a_grave_one_locks():
    tomorrow = DAY + timedelta(days=1)
    numb = read(screened(), stopped=(Stopped(DAY, ("numb",)),))
    assert state_on(DAY, numb).outcome is Outcome.NOT_TODAY
    assert state_on(tomorrow, numb).open
    chest = read(screened(), stopped=(Stopped(DAY, ("chest-pain",)),))
    assert state_on(tomorrow, chest).outcome is Outcome.LOCKED
    assert state_on(tomorrow, chest).do_now == ("Call the emergency number now.",)


def test_untrained_waits_for_training_and_not_for_a_doctor():
    lock = state_on(DAY, read(screened(untrained="yes")))
    assert lock.outcome is Outcome.NOT_TODAY
    assert "eight weeks" in lock.what_opens_it[0]
    assert state_on(LATER, read(screened(untrained="yes"), screened(LATER, "s2"))).open


def test_a_screening_with_a_question_open_replaces_none_that_was_whole():
    file = read(screened(), replace(without("clot"), id="s2"))
    assert not state_on(DAY, file).open


@pytest.mark.parametrize(
    ("field", "make"),
    [
        ("clearance.by", lambda: cleared("kidney", by=" ")),
        ("clearance.until", lambda: cleared("kidney", days=-1)),
        ("clearance.until", lambda: cleared("kidney", days=367)),
        ("clearance.covers", cleared),
        ("clearance.covers", lambda: cleared("kidny")),
        ("clearance.covers", lambda: cleared("fever")),
        ("clearance.licence", lambda: Clearance(
            DOCTOR, Profession.DOCTOR, "", DAY, DAY, frozenset({"kidney"}))),
        ("limits.load_percent", lambda: ClinicianLimits(load_percent=50)),
        ("limits.tightness", lambda: ClinicianLimits(tightness=10)),
        ("limits.days_a_week", lambda: ClinicianLimits(days_a_week=0)),
        ("prescription.cuff", lambda: Prescription("", 115, "nylon", "60 %", "3 x 15")),
        ("prescription.width_mm", lambda: Prescription("cuff", 11.5, "nylon", "60 %", "3 x 15")),
        ("signature.by", lambda: Signature("s1", "", DAY)),
        ("signature.of", lambda: Signature("", COACH, DAY)),
        ("hours", lambda: AfterCheck(DAY, -1)),
    ],
)  # fmt: skip
def test_a_record_that_cannot_be_is_refused_by_its_field(field, make):
    with pytest.raises(LoadError) as fault:
        make()
    assert fault.value.where == field
    assert fault.value.right.startswith("should be ")
