"""`undercroft sheet`: what goes on each side, the total, how far off the wish, and the ramp."""

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from tests.fixtures import FOLDER, fixture

from undercroft.cli import main
from undercroft.domain.program.methods import Method

BLOCK = FOLDER / "blocks" / "two-weeks.json"
KIT = FOLDER / "kits" / "forge-cellar.json"
ATHLETE = FOLDER / "athletes" / "runa.json"

Change = Callable[[Any], None]


def sheet(*arguments: Any) -> Result:
    return CliRunner().invoke(main, ["sheet", *map(str, arguments)])


def first_set(block: Any) -> Any:
    return block["weeks"][0]["sessions"][0]["exercises"][0]["sets"][0]


def test_every_loaded_set_says_what_hangs_the_total_and_how_far_off_it_is() -> None:
    answer = sheet(BLOCK, KIT, ATHLETE, "--starts-on", "2026-02-02")
    assert answer.exit_code == 0, answer.stderr
    lines = [line for line in answer.stdout.splitlines() if re.match(r"  set \d", line)]
    assert len(lines) == 2 * (10 + 13 + 7)
    loaded = [line for line in lines if " kg  [" in line]
    assert len(loaded) == 2 * (10 + 9 + 7)
    assert all("off the wish" in line or "as wished" in line for line in loaded)


def test_a_squat_is_told_with_its_ramp_and_its_plates() -> None:
    text = sheet(BLOCK, KIT, ATHLETE, "--starts-on", "2026-02-02").stdout
    squat = text[text.index("Back squat") : text.index("Bench press")]
    assert squat.count("warm-up") == 5
    assert "each side:" in squat
    assert "3 in reserve" in squat


def test_a_table_gives_the_same_sheets_as_the_document() -> None:
    table = FOLDER / "blocks" / "two-weeks.csv"
    when = ("--starts-on", "2026-02-02")
    assert sheet(table, KIT, ATHLETE, *when).stdout == sheet(BLOCK, KIT, ATHLETE, *when).stdout


def test_as_json_it_is_the_document_that_phones_get() -> None:
    answer = sheet(BLOCK, KIT, ATHLETE, "--json", "--starts-on", "2026-02-02")
    sheets = json.loads(answer.stdout)["sheets"]
    assert [one["session"] for one in sheets][:3] == ["w1-mon", "w1-wed", "w1-fri"]
    assert sheets[0]["on"] == "2026-02-02"


def test_a_gym_without_a_hex_bar_says_so_and_offers_others() -> None:
    text = sheet(BLOCK, FOLDER / "kits" / "boathouse.json", ATHLETE).stdout
    assert "No hex bar stands here." in text
    assert "instead, with what stands here: Deadlift, Goblet squat" in text


def spoil(path: Path, change: Change, folder: Path) -> Path:
    data = fixture(path.parent.name, path.stem)
    change(data)
    spoiled = folder / path.name
    spoiled.write_text(json.dumps(data))
    return spoiled


@pytest.mark.parametrize(
    ("change", "where", "right"),
    [
        (
            lambda b: first_set(b).update(load={"basis": "percent", "percent": 80, "unit": "lb"}),
            "week 1, Monday, exercise 1 (back-squat), set 1, load, unit",
            "remove it or correct its spelling",
        ),
        (
            lambda b: b["weeks"][0]["sessions"][0]["exercises"][0].update(exercise="bck-squat"),
            "week 1, Monday, exercise 1 (bck-squat)",
            "did you mean back-squat",
        ),
        (
            lambda b: first_set(b).update(reps=0),
            "week 1, Monday, exercise 1 (back-squat), set 1, reps",
            "give at least 1",
        ),
        (
            lambda b: first_set(b).update(load={"basis": "percent", "percent": 600}),
            "week 1, Monday, exercise 1 (back-squat), set 1, load, percent",
            "at most 150 %",
        ),
        (
            lambda b: first_set(b).update(
                load={"basis": "percent", "percent": 80, "of": "deadlift"}
            ),
            "week 1, Monday, exercise 1 (back-squat)",
            "give the athlete one, tested or guessed",
        ),
    ],
    ids=["wrong unit", "unknown exercise", "no reps", "600 percent", "unknown maximum"],
)
def test_a_bad_block_is_refused_with_place_and_mend(
    change: Change, where: str, right: str, tmp_path: Path
) -> None:
    answer = sheet(spoil(BLOCK, change, tmp_path), KIT, ATHLETE)
    assert answer.exit_code == 2
    assert f"{where}: " in answer.stderr
    assert right in answer.stderr
    assert answer.stdout == ""


def test_a_negative_plate_is_refused_with_place_and_mend(tmp_path: Path) -> None:
    kit = spoil(KIT, lambda k: k["plates"][0].update(mass_kg=-20), tmp_path)
    answer = sheet(BLOCK, kit, ATHLETE)
    assert answer.exit_code == 2
    assert "plate 1, mass_kg: -20 is out of range; give more than 0" in answer.stderr


def test_a_file_that_is_no_json_is_refused_with_its_line(tmp_path: Path) -> None:
    broken = tmp_path / "broken.json"
    broken.write_text('{"key": "b",\n "name": }')
    answer = sheet(broken, KIT, ATHLETE)
    assert answer.exit_code == 2
    assert "line 2: is no JSON" in answer.stderr


def test_a_file_that_is_not_there_is_told_by_name() -> None:
    answer = sheet("no-such-block.json", KIT, ATHLETE)
    assert answer.exit_code == 2
    assert "no-such-block.json" in answer.stderr


EVERY = FOLDER / "blocks" / "every-method.json"


@pytest.mark.parametrize("kit", ["forge-cellar", "boathouse", "station-basement"])
def test_every_method_is_worked_out_on_every_kit(kit: str) -> None:
    answer = sheet(EVERY, FOLDER / "kits" / f"{kit}.json", ATHLETE)
    assert answer.exit_code == 0, answer.stderr
    planned = sum(
        len(exercise["sets"])
        for week in fixture("blocks", "every-method")["weeks"]
        for session in week["sessions"]
        for exercise in session["exercises"]
    )
    lines = [line for line in answer.stdout.splitlines() if re.match(r"  set \d", line)]
    assert len(lines) == planned


def test_the_block_of_every_method_has_every_method() -> None:
    used = {
        exercise["method"]
        for week in fixture("blocks", "every-method")["weeks"]
        for session in week["sessions"]
        for exercise in session["exercises"]
    }
    assert used == {method.value for method in Method}


def test_with_bands_the_sheet_tells_the_rig_and_what_the_lift_feels_like() -> None:
    text = sheet(EVERY, KIT, ATHLETE).stdout
    pull = text[text.index("Hex bar deadlift · speed") : text.index("Bench press on the osc")]
    assert "rig: Left “thin, marked L”" in pull
    assert re.search(r"\{\d+\.\d at the start, \d+\.\d on average, \d+\.\d at the end, ±", pull)


def test_without_bands_it_says_so_and_loads_the_bar_alone() -> None:
    text = sheet(EVERY, FOLDER / "kits" / "station-basement.json", ATHLETE).stdout
    assert "The load shown is without bands" in text


def test_a_light_bar_is_told_in_which_order_to_be_loaded_and_stripped() -> None:
    text = sheet(EVERY, KIT, ATHLETE).stdout
    assert "load in this order: left" in text
    assert "strip in this order: left" in text


def test_one_sets_load_can_be_followed_step_by_step() -> None:
    answer = sheet(BLOCK, KIT, ATHLETE, "--starts-on", "2026-02-02", "--explain", "w1m-a-1")
    assert answer.exit_code == 0, answer.stderr
    titles = re.findall(r"^\d+\. (.+)$", answer.stdout, flags=re.MULTILINE)
    assert titles == [
        "Maximum",
        "Wish",
        "Target",
        "Nearest on each side",
        "Chosen",
        "Notches around it",
        "Bounds of a suggestion",
    ]
    assert re.search(r"bar 20 \+ collars 0\.5 \+ 2 × \(.*\) = 83 kg", answer.stdout)


def test_an_unknown_set_to_explain_is_told() -> None:
    answer = sheet(BLOCK, KIT, ATHLETE, "--explain", "w9-a-1")
    assert answer.exit_code == 1
    assert "'w9-a-1'; there are w1m-a-1" in answer.stderr


@pytest.mark.parametrize("day", ["2026-02-03", "9999-12-27", "9999-12-31"])
def test_a_block_that_starts_on_no_monday_of_this_calendar_is_refused(day: str) -> None:
    """27 December 9999 is a Monday, but the block's last week would lie beyond the last year."""
    answer = sheet(BLOCK, KIT, ATHLETE, "--starts-on", day)
    assert answer.exit_code == 2
    assert f"{day} is no Monday up to 9998-12-28; give one" in answer.output


SIGNED = FOLDER / "screening" / "signed.json"
OCCLUDED = (EVERY, KIT, ATHLETE, "--starts-on", "2026-02-02")


def test_occlusion_work_is_locked_without_a_record_of_screening() -> None:
    text = sheet(*OCCLUDED).stdout
    assert "! Occlusion work is locked: no screening has been answered." in text


def test_with_a_signed_screening_it_says_how_tight_how_long_and_what_next() -> None:
    text = sheet(*OCCLUDED, "--screening", SIGNED).stdout
    assert "is locked" not in text
    curl = text[text.index("· occlusion") :]
    assert "tightness at most 6 of 10" in curl
    # Derived: 30 + 18 + 15 repetitions at 4 s, two rests of 30 s, 30 s on and off.
    assert "about 5:42 min on, off by 15:00 at the very most" in curl
    assert re.search(r"next time \d+ kg if the last set went above 15", curl)


def test_the_time_with_a_wrap_on_can_be_followed_step_by_step() -> None:
    answer = sheet(*OCCLUDED, "--screening", SIGNED, "--explain", "f-c-1")
    found = re.search(r"(\d+) reps × (\d+) s \+ (\d+) rests × (\d+) s \+ (\d+) s .* = (\d+) s",
                      answer.stdout)  # fmt: skip
    assert found is not None, answer.stdout
    reps, rep_s, rests, rest_s, handling_s, total_s = map(int, found.groups())
    assert reps * rep_s + rests * rest_s + handling_s == total_s


def test_a_record_with_faults_is_refused_with_their_places(tmp_path: Path) -> None:
    record = fixture("screening", "signed")
    record["screening"]["signatures"][0]["on"] = "yesterday"
    record["pressures"][0]["mmhg"] = 20
    path = tmp_path / "record.json"
    path.write_text(json.dumps(record))
    answer = sheet(*OCCLUDED, "--screening", path)
    assert answer.exit_code == 2
    assert "signature 1, on: " in answer.stderr
    assert "pressure 1, mmhg: " in answer.stderr
