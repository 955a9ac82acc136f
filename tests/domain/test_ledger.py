"""The fold: what was done, whatever the order in which entries came and however often."""

import json
from collections import defaultdict
from collections.abc import Iterable
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.folded import plain_fold
from tests.domain.ledgers import CASES, FOLDER, at_random, done, files, id_of, loose

from undercroft.domain.ledger import Entry, Ledger, SessionRecord, fold, heads

MONDAY = (1, "w1.mon")


def session(name: str) -> SessionRecord:
    """The one session of a case."""
    return fold(CASES[name]).sessions[MONDAY]


REPS = {
    "a set that was done": 3,
    "a correction counts once": 5,
    "a chain of corrections": 4,
    "a correction that came first": 5,
    "a correction of what never came": 5,
    "a correction by a clock that goes back": 5,
    "a cleared set is done again": 2,
    "the same entry three times": 3,
    "an entry that replaces itself": 3,
    "a circle of three and one that replaces a part of it": 6,
    "a clock that jumps changes nothing": 5,
}


@pytest.mark.parametrize("name", REPS)
def test_the_last_correction_counts(name: str) -> None:
    assert session(name).sets["squat.1"].body["reps"] == REPS[name]


TWO_ANSWERS = {
    "two phones give two answers": 5,
    "two answers in the other order": 5,
    "two answers, one of them corrected": 4,
    "two answers, the cleared one is less": 3,
    "two phones correct the same entry": 4,
    "the middle of a chain is missing": 4,
    "a circle of two": 5,
    "a tail that leads into a circle": 1,
}


@pytest.mark.parametrize("name", TWO_ANSWERS)
def test_of_two_answers_the_greatest_id_counts_and_both_are_shown(name: str) -> None:
    record = session(name).sets["squat.1"]
    assert (record.body["reps"], record.conflict) == (TWO_ANSWERS[name], True)
    assert session(name).conflicts == ("squat.1",)


def test_a_cleared_set_is_not_done() -> None:
    assert session("a cleared set is not done").sets == {}
    assert session("a cleared set is not done").conflicts == ()


def test_two_answers_are_shown_even_where_the_cleared_one_counts() -> None:
    assert session("two answers, the cleared one is greater").sets == {}
    assert session("two answers, the cleared one is greater").conflicts == ("squat.1",)


def test_a_skipped_set_says_why() -> None:
    record = session("a set that was skipped").sets["squat.1"]
    assert (record.kind, record.body["why"]) == ("skipped", "the band has snapped")


@pytest.mark.parametrize(
    ("name", "count"),
    [
        ("nothing is replaced in another set", 2),
        ("nothing is replaced in another session", 2),
        ("nothing is replaced in another revision", 2),
        ("a message that names a set's entry replaces it not", 1),
    ],
)
def test_an_entry_replaces_only_what_answers_the_same_question(name: str, count: int) -> None:
    sessions = fold(CASES[name]).sessions.values()
    assert sum(len(record.sets) for record in sessions) == count


@pytest.mark.parametrize(
    ("name", "reps"),
    [
        ("left and right of a one-sided set", {"left": 3, "right": 5}),
        ("one side of a set, the other one open", {"left": 3}),
        ("one side is corrected, the other one stays", {"left": 4, "right": 5}),
        ("one side is cleared, the other one stays", {"left": 3}),
    ],
)
def test_left_and_right_are_two_questions(name: str, reps: dict[str, int]) -> None:
    record = session(name).sets["squat.1"]
    assert {side: one.body["reps"] for side, one in record.sides.items()} == reps
    assert not record.conflict


def test_a_set_whose_sides_are_both_cleared_is_open() -> None:
    assert session("both sides are cleared").sets == {}


def test_one_side_may_be_done_and_the_other_skipped() -> None:
    sides = session("one side done and one skipped").sets["squat.1"].sides
    assert {side: one.kind for side, one in sides.items()} == {"left": "done", "right": "skipped"}


@pytest.mark.parametrize(
    "name",
    [
        "two phones give two answers for one side",
        "one phone tells a side and one the whole set",
    ],
)
def test_two_answers_for_the_same_side_are_told(name: str) -> None:
    assert session(name).conflicts == ("squat.1",)


def test_a_stop_stays_beside_a_finish() -> None:
    record = session("a finish replaces no stop")
    assert record.stopped is not None
    assert record.finished is not None


def test_a_session_that_was_opened_is_not_begun() -> None:
    record = session("a session that was opened is not begun")
    assert (record.opened_at, record.started_at) == ("2026-02-03T18:03:00+01:00", None)


def test_a_session_was_opened_when_it_was_first_seen() -> None:
    record = session("a session that was opened twice, then begun")
    assert record.opened_at == "2026-02-03T18:01:00+01:00"


def test_of_several_starts_the_first_counts() -> None:
    assert session("of several starts the first counts").started_at == "2026-02-03T18:02:00+01:00"


def test_a_corrected_finish_counts_once() -> None:
    finished = session("a finish that was corrected").finished
    assert finished is not None
    assert finished.body["rpe"] == 6


def test_an_added_set_names_its_exercise_done_or_not() -> None:
    assert session("a set that was added and done").sets["extra.1"].added_to == "curl"
    record = session("a set that was added and not done")
    assert (record.sets, record.added) == ({}, {"extra.1": "curl"})
    assert session("an added set that was taken away").added == {}


def test_a_set_of_the_plan_was_added_to_nothing() -> None:
    assert session("a set that was done").sets["squat.1"].added_to is None


@pytest.mark.parametrize(
    ("name", "swaps"),
    [
        ("an exercise that was swapped", {"squat": "box-squat"}),
        ("a swap that was changed", {"squat": "split-squat"}),
        ("a swap back is no swap", {}),
        ("two phones swap for different things", {"squat": "split-squat"}),
    ],
)
def test_a_swap_says_what_was_done_instead(name: str, swaps: dict[str, str]) -> None:
    assert session(name).swaps == swaps


def test_a_set_stays_what_it_was_done_as_when_it_is_corrected_after_a_swap() -> None:
    swapped = session("an exercise that was swapped")
    assert swapped.done_as("squat", "back-squat", swapped.sets["squat.1"]) == "box-squat"
    between = session("a swap in the middle of its sets, one corrected after it")
    done_as = {key: between.done_as("squat", "squat", one) for key, one in between.sets.items()}
    assert done_as == {"squat.1": "squat", "squat.2": "squat"}


def test_the_same_session_from_two_revisions_is_two_records() -> None:
    assert set(fold(CASES["the same session from two revisions"]).sessions) == {
        (1, "w1.mon"),
        (2, "w1.mon"),
    }


def test_wraps_and_pain_stand_in_their_session_and_in_the_whole() -> None:
    ledger = fold(CASES["wraps on and off, one corrected"])
    assert [e.n for e in ledger.sessions[MONDAY].wraps] == [1, 2, 4]
    assert [e.n for e in ledger.wraps] == [1, 2, 4, 5]
    ledger = fold(CASES["pain in a session and outside"])
    assert [e.n for e in ledger.sessions[MONDAY].pains] == [3]
    assert [e.n for e in ledger.pains] == [2, 3]


def test_what_belongs_to_no_session_is_listed_by_sort() -> None:
    ledger = fold(CASES["what belongs to no session"])
    assert [e.body["kg"] for e in ledger.body_masses] == [74.1]
    assert [e.body["text"] for e in ledger.messages] == ["Can we move Thursday?", "Or Friday."]
    lists = (ledger.max_tests, ledger.after_checks, ledger.kit_changes, ledger.screenings)
    assert [len(found) for found in lists] == [1, 1, 1, 1]
    assert ledger.sessions == {}


def test_a_kind_of_the_future_hides_nothing() -> None:
    assert list(session("a kind of the future").sets) == ["squat.1"]


def test_ten_thousand_corrections_of_one_set_fold_at_once() -> None:
    chain = [done(n, replaces=n - 1 or None) for n in range(1, 10_001)]
    Random(1).shuffle(chain)
    assert fold(chain).sessions[MONDAY].sets["squat.1"].id == id_of(10_000)


def test_a_circle_of_ten_thousand_does_not_hang() -> None:
    circle = [done(n, replaces=n - 1 or 10_000) for n in range(1, 10_001)]
    assert fold(circle).sessions[MONDAY].sets["squat.1"].id == id_of(10_000)


# --- Against a second way of folding, slow and by the letter of the rule -----------------------


def heads_by_the_letter(entries: Iterable[Entry]) -> list[str]:
    """For each entry: does one that is in no circle replace it? Followed step by step."""
    by_id = {entry.id: entry for entry in entries}

    def in_circle(entry: Entry) -> bool:
        here = by_id.get(entry.replaces or "")
        for _ in by_id:
            if here is None or here is entry:
                break
            here = by_id.get(here.replaces or "")
        return here is entry

    return sorted(
        one.id
        for one in by_id.values()
        if not any(other.replaces == one.id and not in_circle(other) for other in by_id.values())
    )


def sets_by_the_letter(entries: Iterable[Entry]) -> dict[Any, tuple[str, bool]]:
    """By revision, session and set: the id of the done or skipped entry that counts, conflict."""
    groups: dict[Any, dict[str, Entry]] = defaultdict(dict)
    for entry in entries:
        if entry.kind.startswith("set."):
            groups[entry.revision, entry.session, entry.set][entry.id] = entry
    found = {}
    for key, group in groups.items():
        left = [group[id_] for id_ in heads_by_the_letter(group.values())]
        answers = [entry for entry in left if entry.kind != "set.added"]
        if answers and answers[-1].kind != "set.cleared":
            found[key] = (answers[-1].id, len(answers) > 1)
    return found


def sets_of(ledger: Ledger) -> dict[Any, tuple[str, bool]]:
    return {
        (revision, key, name): (record.id, record.conflict)
        for (revision, key), session in ledger.sessions.items()
        for name, record in session.sets.items()
    }


@pytest.mark.parametrize("seed", range(1, 40))
def test_a_ledger_at_random_folds_as_the_rule_says_by_the_letter(seed: int) -> None:
    entries = at_random(seed)
    assert sets_of(fold(entries)) == sets_by_the_letter(entries)


replacements = st.lists(
    st.one_of(st.none(), st.integers(min_value=1, max_value=14)), min_size=0, max_size=14
)


@given(replacements)
@settings(max_examples=200)
def test_heads_are_those_that_the_rule_names_whatever_replaces_what(
    replaces: list[int | None],
) -> None:
    entries = [done(number, replaces=old) for number, old in enumerate(replaces, 1)]
    assert [entry.id for entry in heads(entries)] == heads_by_the_letter(entries)


@given(replacements)
@settings(max_examples=100)
def test_a_set_that_was_answered_has_an_answer_whatever_replaces_what(
    replaces: list[int | None],
) -> None:
    entries = [done(number, replaces=old) for number, old in enumerate(replaces, 1)]
    sessions = fold(entries).sessions
    assert bool(sessions and sessions[MONDAY].sets) is bool(entries)


@given(st.integers(min_value=0, max_value=10_000), st.randoms(use_true_random=False))
@settings(max_examples=60)
def test_order_and_repetition_change_nothing(seed: int, chance: Random) -> None:
    entries = at_random(seed, 30)
    shuffled = entries + chance.choices(entries, k=10)
    chance.shuffle(shuffled)
    assert plain_fold(fold(shuffled)) == plain_fold(fold(entries))


# --- The vectors that the phone's fold must reproduce as well ----------------------------------


def test_the_vectors_on_file_are_those_of_this_program() -> None:
    on_file = {path.name: path.read_text(encoding="utf-8") for path in FOLDER.glob("*.json")}
    assert on_file == files(), "run: python -m tests.domain.ledgers"


def test_there_are_vectors_enough_and_each_says_where_it_is_from() -> None:
    found = [json.loads(text) for text in files().values()]
    assert sum(len(data["cases"]) for data in found) >= 40
    assert all(data["origin"] and data["form"] for data in found)


def test_a_reading_that_belongs_to_no_set_is_no_answer() -> None:
    assert fold([loose(1, "body_mass", {"kg": 70})]).sessions == {}
