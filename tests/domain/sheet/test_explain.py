"""How a set's load came about: the steps say what the sheet says, and can be followed by hand."""

import re
from itertools import pairwise
from typing import Any

import pytest
from tests.domain.sheet.conftest import order
from tests.fixtures import fixture as load

from undercroft.domain.errors import DomainError
from undercroft.domain.load_sheet import SheetExercise, SheetSet
from undercroft.domain.sheet import Order, Step, explain, work_out
from undercroft.domain.sheet.explain import set_keys

GYMS = ("forge-cellar", "station-basement", "boathouse")
PEOPLE = ("runa", "osk", "tilde", "bram")

Sheets = dict[str, tuple[SheetExercise, SheetSet]]


def of(person: str = "runa", gym: str = "forge-cellar") -> Order:
    block = load("blocks", "two-weeks")
    return order(block, load("athletes", person), load("kits", gym))


def one_set(exercise: str, wish: dict[str, Any], method: str = "straight", **fields: Any) -> Order:
    """One set of five with this wish; further fields of the exercise by name."""
    sets = [{"key": "s-1", "reps": 5, "load": wish}]
    plan = {"key": "e", "exercise": exercise, "method": method, "sets": sets, **fields}
    session = {"key": "s", "name": "One", "day": 1, "exercises": [plan]}
    weeks = [{"key": "w", "name": "W", "sessions": [session]}]
    block = {"key": "b", "name": "B", "weeks": weeks}
    return order(block, load("athletes", "runa"), load("kits", "forge-cellar"))


def on_sheets(given: Order) -> Sheets:
    return {
        one.key: (exercise, one)
        for sheet in work_out(given).sheets
        for exercise in sheet.exercises
        for one in exercise.sets
    }


def told(steps: tuple[Step, ...], title: str) -> str:
    return "\n".join(line for step in steps if step.title == title for line in step.lines)


def number(pattern: str, text: str) -> float:
    found = re.search(pattern, text)
    assert found, f"{pattern!r} is not in {text!r}"
    return float(found[1])


def sum_of(line: str) -> tuple[float, float]:
    """Both sides of a sum such as "bar 20 + collars 0.5 + 2 × (10 + 5) = 50.5 kg"."""
    left, _, right = line.partition(" = ")
    outside, _, inside = left.partition(" + 2 × (")
    once = sum(map(float, re.findall(r"\d+(?:\.\d+)?", outside)))
    twice = sum(map(float, re.findall(r"\d+(?:\.\d+)?", inside)))
    return once + 2 * twice, float(right.split()[0])


@pytest.mark.parametrize("gym", GYMS)
@pytest.mark.parametrize("person", PEOPLE)
def test_what_is_told_to_hang_is_what_the_sheet_says(person: str, gym: str) -> None:
    given = of(person, gym)
    sheets = on_sheets(given)
    for key in list(sheets)[:: max(1, len(sheets) // 12)]:
        exercise, one = sheets[key]
        chosen = told(explain(given, key), "Chosen")
        if one.load is None:
            assert not chosen
        else:
            assert f"{exercise.loads[one.load].kg:g} kg" in chosen
            assert f"{one.off_kg:+.2f} kg off the wish" in chosen


def test_bar_collars_and_plates_add_up_by_hand() -> None:
    given = of()
    for key in ("w1m-a-1", "w1m-b-1", "w1w-a-1", "w1f-a-1"):
        line = told(explain(given, key), "Chosen").splitlines()[0]
        added, total = sum_of(line)
        assert added == pytest.approx(total, abs=1e-9), line


def test_a_percentage_can_be_followed_from_the_maximum_to_the_wish() -> None:
    steps = explain(of(), "w1m-a-1")
    maximum = told(steps, "Maximum")
    assert "back squat, tested on 12 January 2026: 105.00 kg" in maximum
    used = number(r"that is (\d+\.\d+) kg, which the loads go by", maximum)
    wish = number(r": (\d+\.\d+) kg$", told(steps, "Wish"))
    assert wish == pytest.approx(0.80 * used, abs=0.01)
    assert number(r"^(\d+\.\d+) kg with bar", told(steps, "Target")) == wish


def test_the_way_to_the_day_can_be_followed_by_hand() -> None:
    """0.2 % a week of training, and no more than two weeks of it for a longer gap."""
    maximum = told(explain(of(), "w1m-a-1"), "Maximum")
    assert "46.0 weeks to 30 November 2026, of which 2 count, add 0.40%" in maximum
    assert number(r"0\.40%: (\d+\.\d+) kg", maximum) == pytest.approx(105 * 1.004, abs=0.01)
    level, lean = number(r"level (\d\.\d+)", maximum), number(r"tilt × (\d\.\d+)", maximum)
    assert (level, lean) == pytest.approx((4.6540, 0.1393))


def test_a_reserve_can_be_followed_from_the_table_to_the_wish() -> None:
    """Four repetitions with one in reserve are 87 % by the handbook chart (seen)."""
    wish = told(explain(of(), "w1m-b-1"), "Wish")
    counted = number(r"5 to failure; .* counts (\d+\.\d+) kg", wish)
    assert number(r"87% of .*: (\d+\.\d+) kg", wish) == pytest.approx(0.87 * counted, abs=0.01)


def test_the_neighbours_lie_on_both_sides_of_the_wish() -> None:
    lines = told(explain(of(), "w1m-a-1"), "Nearest on each side").splitlines()
    assert [line.split(":")[0] for line in lines] == ["below", "above"]
    off = [number(r"([+-]\d+\.\d+) kg$", line) for line in lines]
    assert off[0] < 0 < off[1]


def test_the_middle_notch_is_the_plan_and_each_step_is_1_percent() -> None:
    steps = explain(of(), "w1m-a-1")
    lines = told(steps, "Notches around it").splitlines()[1:]
    assert len(lines) == 11
    wished = [number(r": (\d+\.\d+) kg wished", line) for line in lines]
    assert wished[5] == number(r": (\d+\.\d+) kg$", told(steps, "Wish"))
    steps_up = [high / low for low, high in pairwise(wished)]
    assert steps_up == pytest.approx([1.01] * 10, abs=0.0007)


def test_the_bounds_are_those_of_the_sheet() -> None:
    given = of()
    exercise, one = on_sheets(given)["w1m-a-1"]
    assert one.cap is not None
    bounds = told(explain(given, "w1m-a-1"), "Bounds of a suggestion")
    assert f"never above {exercise.loads[one.cap].kg:g} kg" in bounds
    assert "2 notches up from set to set, 5 in the session" in bounds


@pytest.mark.parametrize(("point", "words"), [("start", "at the start"), ("lockout", "at lockout")])
def test_what_bands_give_at_the_point_meant_is_taken_off_the_wish(point: str, words: str) -> None:
    wish = {"basis": "percent", "percent": 85, "point": point}
    bands = {"part": "bands", "share_percent": 25, "point": "lockout"}
    steps = explain(one_set("hex-bar-deadlift", wish, method="speed", rig=bands), "s-1")
    rig = told(steps, "Bands, chains, lever")
    given = number(rf"meant {words}: (\d+\.\d) kg of it", rig)
    assert given == number(rf"(\d+\.\d) kg {words}", rig)
    whole = number(r": (\d+\.\d+) kg$", told(steps, "Wish"))
    left = number(r"^(\d+\.\d+) kg with bar", told(steps, "Target"))
    assert left == pytest.approx(whole - given, abs=0.06)


def test_a_landmine_tells_its_lever_and_what_goes_on_the_sleeve() -> None:
    wish = {"basis": "kg", "kg": 18, "in_hand": True}
    details = {"first": "left", "knee_down": "same"}
    steps = explain(one_set("landmine-press", wish, method="one-sided", details=details), "s-1")
    assert "bar 20 kg at 1.10 m" in told(steps, "Bands, chains, lever")
    assert "18 kg in the hand at the start" in told(steps, "Target")
    added, total = sum_of(told(steps, "Chosen").splitlines()[0])
    assert added == pytest.approx(total)


def test_a_back_off_set_can_be_followed_from_the_top_set() -> None:
    wish = told(explain(of(), "w1m-b-2"), "Wish")
    first = number(r"first set is planned with (\d+\.\d+) kg", wish)
    assert number(r": (\d+\.\d+) kg$", wish) == pytest.approx(0.9 * first, abs=0.01)


def test_a_pin_can_be_followed_over_the_pulleys() -> None:
    chosen = told(explain(of(), "w1w-b-1"), "Chosen")
    ratio, efficiency = number(r"kg/\((\S+) ×", chosen), number(r"× (\S+)\^", chosen)
    sheaves = number(r"\^(\d+)\)", chosen)
    pin, at_handle = number(r"pin (\d+)", chosen), number(r", (\d+\.\d+) kg at", chosen)
    assert at_handle == pytest.approx(pin / (ratio * efficiency**sheaves), abs=0.001)


def test_a_set_by_feel_says_why_it_has_no_load() -> None:
    steps = explain(one_set("deadlift", {"basis": "rir", "rir": 2}), "s-1")
    assert [step.title for step in steps] == ["Maximum", "Wish"]
    assert told(steps, "Maximum") == "deadlift: nothing known"
    assert "start light" in told(steps, "Wish")


def test_every_set_of_the_block_can_be_explained() -> None:
    given = of()
    keys = set_keys(given)
    assert set(keys) == set(on_sheets(given))
    assert all(explain(given, key) for key in keys[::7])


def test_an_unknown_set_is_answered_with_some_that_there_are() -> None:
    with pytest.raises(DomainError, match=r"no-such.*w1m-a-1"):
        explain(of(), "no-such")
