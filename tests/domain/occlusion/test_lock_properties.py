"""Whatever is on file: a further "yes" opens nothing, and what needs a clinician stays."""

from dataclasses import replace
from datetime import timedelta

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.domain.occlusion.people import (
    DAY,
    HEALTHY,
    PRESCRIPTION,
    WELL_TODAY,
    cleared,
    read,
)

from undercroft.domain.occlusion import (
    CLEARABLE,
    SCREENING,
    TODAY,
    AfterCheck,
    Answered,
    Kind,
    Outcome,
    ScreeningFile,
    start_on,
    state_on,
)

ASKED = [one.key for one in SCREENING if one.kind is Kind.YES_NO]
FOR_A_CLINICIAN = {Outcome.LOCKED, Outcome.CLINICAL, Outcome.DOCTOR_FIRST}
GRAVE = [one.key for one in SCREENING if one.outcome in FOR_A_CLINICIAN]
MOSTLY_NO = st.sampled_from(["no"] * 3 + ["yes", "not-sure"])
DAYS = st.integers(0, 30).map(lambda days: DAY + timedelta(days=days))


@st.composite
def answers(draw, base, keys):
    chosen = draw(st.dictionaries(st.sampled_from(keys), MOSTLY_NO, max_size=3))
    return base | chosen


@st.composite
def files(draw) -> ScreeningFile:
    """One or two screenings, some answers of the day, clearances for some of what they say."""
    sets = [draw(answers(HEALTHY, ASKED)) for _ in range(draw(st.integers(1, 2)))]
    sets += [draw(answers(WELL_TODAY, [one.key for one in TODAY]))]
    days = sorted(draw(DAYS) for _ in sets)
    dated = enumerate(zip(days, sets, strict=True))
    answered = [Answered(f"a{i}", on, one) for i, (on, one) in dated]
    keys = {key for one in sets for key, reply in one.items() if reply in ("yes", "not-sure")}
    covers = sorted((keys | {"score", draw(st.sampled_from(GRAVE))}) & CLEARABLE)
    clearances = [
        cleared(*covers, on=draw(DAYS), alone=draw(st.booleans()), prescription=draw(
            st.sampled_from([None, PRESCRIPTION])))
        for _ in range(draw(st.integers(0, 2)))
    ]  # fmt: skip
    alone = draw(st.booleans())
    return read(*answered, clearances=tuple(clearances), note="read", trains_alone=alone)


ON = DAY + timedelta(days=30)


def with_yes(file: ScreeningFile, place: int, key: str) -> ScreeningFile:
    one = file.answered[place]
    changed = replace(one, given=dict(one.given) | {key: "yes"})
    return replace(file, answered=(*file.answered[:place], changed, *file.answered[place + 1 :]))


@settings(max_examples=150, deadline=None)
@given(files(), st.data())
def test_a_further_yes_opens_nothing(file, data):
    place = data.draw(st.integers(0, len(file.answered) - 1))
    open_questions = [k for k, reply in file.answered[place].given.items() if reply == "no"]
    more = with_yes(file, place, data.draw(st.sampled_from(open_questions)))
    assert state_on(ON, file).open or not state_on(ON, more).open
    assert start_on(ON, file).open or not start_on(ON, more).open


@settings(max_examples=80, deadline=None)
@given(files(), st.sampled_from(GRAVE), st.data())
def test_no_later_answers_open_what_needs_a_clinician(file, key, data):
    """Only clearances can, and these name everything but the reason in question."""
    screenings = [i for i, one in enumerate(file.answered) if key in one.given]
    place = data.draw(st.sampled_from(screenings))
    told = with_yes(file, place, key)
    clearances = tuple(
        replace(one, covers=one.covers - {key} | {"smoking"}) for one in file.clearances
    )
    clean = Answered("last", ON, HEALTHY | {"pressure-on": ON.isoformat()})
    signed = read(clean, note="read").signatures
    after = replace(
        told,
        answered=(*told.answered, clean),
        signatures=(*told.signatures, *signed),
        clearances=clearances,
    )
    assert not state_on(ON, after).open


@settings(max_examples=80, deadline=None)
@given(files())
def test_taking_a_clearance_or_a_signature_away_opens_nothing(file):
    assume(not state_on(ON, file).open)
    assert not state_on(ON, replace(file, clearances=file.clearances[1:])).open
    assert not state_on(ON, replace(file, signatures=file.signatures[1:])).open


@settings(max_examples=80, deadline=None)
@given(files(), st.lists(st.sampled_from(["sore", "dark-urine", "one-limb"]), max_size=3))
def test_ticks_afterwards_open_nothing(file, signs):
    more = replace(file, after=(AfterCheck(ON, 48, tuple(signs)),))
    assert state_on(ON, file).open or not state_on(ON, more).open


@settings(max_examples=80, deadline=None)
@given(files())
def test_a_closed_lock_says_why_and_what_opens_it(file):
    lock = state_on(ON, file)
    assert lock.open == (lock.outcome is Outcome.OPEN)
    assert lock.open == (not lock.why)
    assert bool(lock.why) == bool(lock.what_opens_it)
    assert lock.open == (lock.until is not None)


@settings(max_examples=80, deadline=None)
@given(files())
def test_alone_is_never_easier_than_in_company(file):
    alone, company = replace(file, trains_alone=True), replace(file, trains_alone=False)
    assert state_on(ON, company).open or not state_on(ON, alone).open


@settings(max_examples=80, deadline=None)
@given(files())
def test_right_before_the_wrap_is_never_easier_than_on_the_sheet(file):
    assert state_on(ON, file).open or not start_on(ON, file).open
