"""A week of a draft unfolded into a block, with the loads it becomes; nothing is kept."""

from typing import Any

import pytest
from tests.api.test_refusals import assert_problem
from tests.api.training import entries_of, send, sheets
from tests.people import AtDesk, Phone
from tests.storing import everything

SQUAT, ROW = "back-squat", "barbell-row"


def plan(exercise: str, *loads: Any, reps: int = 5) -> Any:
    """An exercise with a set for each load."""
    made = [{"key": f"{exercise}-{n}", "reps": reps, "load": load} for n, load in enumerate(loads)]
    return {"key": exercise, "exercise": exercise, "method": "straight", "sets": made}


def kg(value: float) -> Any:
    return {"basis": "kg", "kg": value}


def percent(value: float) -> Any:
    return {"basis": "percent", "percent": value}


def draft(*exercises: Any) -> Any:
    """A block of one week with one session on Monday."""
    monday = {"key": "mon", "name": "Squat and row", "day": 1, "exercises": list(exercises)}
    week = {"key": "w1", "name": "Week 1", "sessions": [monday]}
    return {"key": "ridge", "name": "Up the ridge", "weeks": [week]}


def rule(exercise: str, name: str, **fields: Any) -> Any:
    return {"session": "mon", "exercise": exercise, "progression": {"rule": name, **fields}}


def unfold(coach: AtDesk, document: Any, weeks: int, *rules: Any, **more: Any) -> Any:
    asked = {"document": document, "week": "w1", "weeks": weeks, "rules": list(rules), **more}
    answer = coach.post("/desk/unfold", asked)
    assert answer.status_code == 200, answer.text
    return answer.json


def wishes(answer: Any, exercise: str, field: str) -> list[list[float]]:
    """By week, what the sets of an exercise wish."""
    plans = [
        plan
        for week in answer["document"]["weeks"]
        for session in week["sessions"]
        for plan in session["exercises"]
        if plan["key"] == exercise
    ]
    return [[one["load"][field] for one in plan["sets"]] for plan in plans]


def loads(answer: Any, exercise: str) -> list[list[float | None]]:
    """By week, what the sets of an exercise weigh for the athlete."""
    (row,) = [row for row in answer["table"] if row["exercise"] == exercise]
    return [[cell["kg"] for cell in cells] for cells in row["weeks"]]


def test_kilograms_are_added_week_by_week_and_the_kit_makes_them(coach: AtDesk, ready: str) -> None:
    """The cellar's bar has two collars of 0.25 kg, so each load comes out half a kilogram over."""
    document = draft(plan(SQUAT, kg(100), kg(90)))
    answer = unfold(coach, document, 4, rule(SQUAT, "add-kg", kg=2.5), athlete=ready)
    assert answer["faults"] == []
    assert wishes(answer, SQUAT, "kg") == [[100, 90], [102.5, 92.5], [105, 95], [107.5, 97.5]]
    assert loads(answer, SQUAT) == [[100.5, 90.5], [103, 93], [105.5, 95.5], [108, 98]]


def test_a_wave_comes_again_and_the_table_says_how_much_more_each_week_is(
    coach: AtDesk, ready: str
) -> None:
    wave = rule(SQUAT, "wave", percents=[70, 75, 80])
    answer = unfold(coach, draft(plan(SQUAT, percent(70))), 4, wave, athlete=ready)
    assert wishes(answer, SQUAT, "percent") == [[70], [75], [80], [70]]
    (row,) = answer["table"]
    cells = [cell for (cell,) in row["weeks"]]
    # 70, 75, 80, 70 % of 105 kg and of what the tracker expects later: 73.7, 79.2, 84.6, 74.2 kg,
    # on a bar of 20.5 kg in steps of 2.5 kg.
    assert [cell["kg"] for cell in cells] == [73, 78, 85.5, 73]
    assert [cell["change_kg"] for cell in cells] == [None, 5, 7.5, -12.5]


def test_a_light_week_takes_its_factor_and_the_rules_go_on_after_it(coach: AtDesk) -> None:
    light = {"every": 4, "factor": 0.6}
    answer = unfold(
        coach, draft(plan(SQUAT, kg(100))), 5, rule(SQUAT, "add-kg", kg=2.5), light_week=light
    )
    # Week 4 would be 100 + 2 × 2.5 = 105 kg again, of which 0.6 are 63 kg; week 5 goes on with it.
    assert wishes(answer, SQUAT, "kg") == [[100], [102.5], [105], [63], [107.5]]
    assert answer["document"]["weeks"][3]["name"] == "Week 4, light"


def test_each_exercise_goes_by_its_own_rule_and_repeats_without_one(coach: AtDesk) -> None:
    document = draft(plan(SQUAT, percent(75)), plan(ROW, kg(40), kg(40)))
    answer = unfold(coach, document, 3, rule(SQUAT, "add-percent", percent=2.5))
    assert wishes(answer, SQUAT, "percent") == [[75], [77.5], [80]]
    assert wishes(answer, ROW, "kg") == [[40, 40]] * 3


def test_a_rule_in_the_draft_counts_until_another_is_asked_for(coach: AtDesk) -> None:
    ruled = {**plan(SQUAT, kg(60)), "progression": {"rule": "add-kg", "kg": 10}}
    assert wishes(unfold(coach, draft(ruled), 2), SQUAT, "kg") == [[60], [70]]
    other = unfold(coach, draft(ruled), 2, rule(SQUAT, "add-kg", kg=5))
    assert wishes(other, SQUAT, "kg") == [[60], [65]]
    assert other["document"]["weeks"][0]["sessions"][0]["exercises"][0]["progression"] == {
        "rule": "add-kg",
        "kg": 5,
    }


def test_keys_are_unique_and_the_same_at_every_unfolding(coach: AtDesk) -> None:
    document = draft(plan(SQUAT, kg(60)))
    answer = unfold(coach, document, 4)
    assert [week["key"] for week in answer["document"]["weeks"]] == [
        "w1",
        "w1.w2",
        "w1.w3",
        "w1.w4",
    ]
    assert unfold(coach, document, 4) == answer
    assert unfold(coach, answer["document"], 4, anew=True)["document"] == answer["document"]


def test_an_unfolded_draft_can_be_saved_and_sent(coach: AtDesk, ready: str) -> None:
    answer = unfold(
        coach, draft(plan(SQUAT, percent(70))), 4, rule(SQUAT, "wave", percents=[70, 75])
    )
    saved = coach.post("/desk/blocks", {"document": answer["document"]}).json
    assert saved["faults"] == []
    (sent,) = send(coach, saved["id"], ready)["sent"]
    assert sent["sessions"] == 4


def test_nothing_is_kept(coach: AtDesk, ready: str) -> None:
    before = everything()
    unfold(coach, draft(plan(SQUAT, percent(70))), 6, athlete=ready)
    assert everything() == before


def test_a_session_begun_stands_in_the_table_as_it_was_begun(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    whole = unfold(coach, draft(plan(SQUAT, percent(70))), 2)["document"]
    block = coach.post("/desk/blocks", {"document": whole}).json["id"]
    send(coach, block, ready)
    monday = sheets(device.reads_all())["mon"]
    device.syncs(*entries_of(device, monday, extra_rir=3))
    heavier = rule(SQUAT, "percent-by-week", percents=[60, 80])
    (begun,), (ahead,) = loads(unfold(coach, whole, 2, heavier, anew=True, athlete=ready), SQUAT)
    exercise = monday["exercises"][0]
    assert begun == exercise["loads"][exercise["sets"][0]["load"]]["kg"]
    assert ahead is not None
    assert ahead > begun


def test_without_a_maximum_the_table_has_the_set_and_the_finding_says_why(
    coach: AtDesk, ready: str
) -> None:
    answer = unfold(coach, draft(plan(ROW, percent(70))), 2, athlete=ready)
    assert loads(answer, ROW) == [[None], [None]]
    (stop,) = {f["what"] for f in answer["findings"] if f["severity"] == "stop"}
    assert "no maximum of 'barbell-row' is known" in stop


def test_a_draft_with_faults_is_answered_with_them(coach: AtDesk) -> None:
    answer = unfold(coach, draft(plan(SQUAT, kg(-5))), 4)
    (fault,) = answer["faults"]
    assert fault["path"] == "weeks.0.sessions.0.exercises.0.sets.0.load.kg"
    assert answer["document"] is None


def test_rules_that_do_not_fit_are_told_at_every_exercise(coach: AtDesk) -> None:
    document = draft(plan(SQUAT, percent(70)), plan(ROW, kg(60)))
    wrong = (rule(SQUAT, "add-kg", kg=2.5), rule(ROW, "add-kg", kg=-20))
    first, second = unfold(coach, document, 4, *wrong)["faults"]
    assert first == {
        "where": "week 1, Monday, exercise 1 (back-squat), progression",
        "path": "weeks.0.sessions.0.exercises.0.progression",
        "what": "no set has kilograms that could be added to",
        "right": "write at least one set in kg, as last time, or as body mass with kg",
    }
    assert second["what"] == "set 1 would come to 0 kg in week 4 of the unfolding"


@pytest.mark.parametrize(
    ("progression", "path", "what"),
    [
        ({"rule": "add-kg", "kg": 80}, "kg", "80 is out of range"),
        ({"rule": "add-kg"}, "kg", "missing"),
        ({"rule": "wave", "percents": []}, "percents", "0 items"),
        ({"rule": "wave", "percents": [70, 0]}, "percents.1", "0 is out of range"),
        ({"rule": "double", "reps_from": 8, "reps_to": 6, "add_kg": 2.5}, "reps_to", "6 is less"),
        ({"rule": "light-week", "every": 1, "factor": 0.6}, "every", "1 is out of range"),
        ({"rule": "falling-reserve", "rirs": [3, -1]}, "rirs.1", "-1 is out of range"),
        ({"rule": "rising-sets", "sets": [3, 3.5]}, "sets.1", "3.5 is no whole number"),
        ({"rule": "double-up"}, "rule", "'double-up' is not known here"),
    ],
)
def test_a_rule_that_cannot_be_meant_is_refused_at_its_field(
    coach: AtDesk, progression: Any, path: str, what: str
) -> None:
    asked = {"session": "mon", "exercise": SQUAT, "progression": progression}
    body = {"document": draft(plan(SQUAT, kg(60))), "week": "w1", "weeks": 4, "rules": [asked]}
    (error,) = assert_problem(coach.post("/desk/unfold", body), 422)["errors"]
    assert error["where"].startswith("rule 1 (back-squat), progression")
    assert error["path"] == f"rules.0.progression.{path}"
    assert error["what"].startswith(what)


@pytest.mark.parametrize(
    ("change", "path", "what"),
    [
        ({"week": "w9"}, "week", "'w9' is no week of this block"),
        ({"weeks": 1}, "weeks", "1 is out of range"),
        ({"weeks": 53}, "weeks", "53 is out of range"),
        ({"rules": [rule("bench-press", "repeat")]}, "rules.0", "that week has no exercise"),
    ],
)
def test_what_is_not_in_the_draft_cannot_be_unfolded(
    coach: AtDesk, change: Any, path: str, what: str
) -> None:
    body = {"document": draft(plan(SQUAT, kg(60))), "week": "w1", "weeks": 4, **change}
    (error,) = assert_problem(coach.post("/desk/unfold", body), 422)["errors"]
    assert error["path"] == path
    assert error["what"].startswith(what)
    assert error["right"]


def test_a_block_does_not_grow_beyond_a_year(coach: AtDesk) -> None:
    document = draft(plan(SQUAT, kg(60)))
    other = {"key": "w2", "name": "Week 2", "sessions": []}
    full = {**document["weeks"][0]["sessions"][0], "key": "other"}
    document["weeks"].append({**other, "sessions": [full]})
    body = {"document": document, "week": "w1", "weeks": 52}
    (error,) = assert_problem(coach.post("/desk/unfold", body), 422)["errors"]
    assert error["what"] == "weeks of the block: would be 53"
