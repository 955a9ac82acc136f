"""Commands that work on the data: demo, import, export."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from tests.fixtures import FOLDER, athlete_data, block_data

from undercroft.cli import main
from undercroft.services import archive, own_exercises
from undercroft.services.ledger import entries_of
from undercroft.store import database, revisions
from undercroft.store.models import Athlete

EMAIL = "ottilie@example.org"


@pytest.fixture(autouse=True)
def _nothing_left_open() -> None:
    database.close_all()


@pytest.fixture
def data(tmp_path: Path) -> str:
    """A database file with one coach."""
    location = str(tmp_path / "data.sqlite3")
    made = run("coach", "add", EMAIL, "--name", "Ottilie", "--password", "rope, pulley, chalk",
               "--database", location)  # fmt: skip
    assert made.exit_code == 0, made.output
    return location


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


def test_help_tells_a_newcomer_what_to_do_first() -> None:
    assert "undercroft demo" in run("--help").output


def test_a_block_goes_in_as_a_table_and_comes_out_the_same(data: str) -> None:
    table = FOLDER / "blocks" / "two-weeks.csv"
    place = ("--coach", EMAIL, "--database", data)
    assert run("import", "block", str(table), *place).exit_code == 0
    out = run("export", "block", "First two weeks", "--format", "csv", *place)
    assert out.stdout == table.read_text()
    out = run("export", "block", "First two weeks", *place)
    assert json.loads(out.stdout) == block_data()


def test_a_block_may_name_an_exercise_of_its_coachs_own(data: str, tmp_path: Path) -> None:
    database.open_database(data)
    database.connect()
    barrel = {"name": "Barrel lift", "implement": "body", "prime": ["glutes"]}
    key = own_exercises.add(archive.coach_id(EMAIL), barrel, 1)
    database.close_all()
    block = block_data()
    block["weeks"][0]["sessions"][0]["exercises"][0]["exercise"] = key
    file = tmp_path / "block.json"
    file.write_text(json.dumps(block))
    place = ("--coach", EMAIL, "--database", data)
    assert run("import", "block", str(file), *place).exit_code == 0
    assert json.loads(run("export", "block", "First two weeks", *place).stdout) == block


def test_an_athlete_comes_out_with_documents_and_ledger(data: str) -> None:
    place = ("--coach", EMAIL, "--database", data)
    runa, cellar = FOLDER / "athletes" / "runa.json", FOLDER / "kits" / "forge-cellar.json"
    assert run("import", "athlete", str(runa), "--kit", str(cellar), *place).exit_code == 0
    told = json.loads(run("export", "athlete", "Runa Tealdi", *place).stdout)
    assert told["document"] == athlete_data()
    assert told["entries"] == []


@pytest.mark.parametrize("what", ["block", "athlete"])
def test_what_is_not_there_is_answered_with_what_is(data: str, what: str) -> None:
    answer = run("export", what, "Nobody", "--coach", EMAIL, "--database", data)
    assert answer.exit_code == 1
    assert "'Nobody'; there are: none" in answer.output


def test_an_unknown_coach_is_told_how_to_be_added(data: str) -> None:
    answer = run("export", "block", "x", "--coach", "nobody@example.org", "--database", data)
    assert answer.exit_code == 1
    assert "undercroft coach add" in answer.output


def test_the_demo_says_that_it_is_invented_and_where_to_go(tmp_path: Path) -> None:
    answer = run("demo", "--folder", str(tmp_path / "demo"), "--no-serve")
    assert answer.exit_code == 0, answer.output
    assert "invented" in answer.stdout
    assert "http://localhost:8000/desk" in answer.stdout
    assert "http://localhost:8000/pair#" in answer.stdout


def test_the_demo_has_open_occlusion_work_in_the_next_session(tmp_path: Path) -> None:
    run("demo", "--folder", str(tmp_path / "demo"), "--no-serve")
    database.open_database(str(tmp_path / "demo" / "undercroft.sqlite3"))
    database.connect()
    (runa,) = [one.id for one in Athlete.select() if one.name == "Runa Tealdi"]
    newest = revisions.latest_revision(runa)
    assert newest is not None
    ended = {e.session for e in entries_of(runa, kinds=("session.finished",))}
    sheets = revisions.sheets_of(runa, newest.number).values()
    following = min((s for s in sheets if s["session"] not in ended), key=lambda s: str(s["on"]))
    (wrapped,) = [e for e in following["exercises"] if e["method"] == "occlusion"]
    assert "locked" not in wrapped
    assert wrapped["occlusion"]["exposure"] == 1


def test_a_second_start_of_the_demo_keeps_what_was_done(tmp_path: Path) -> None:
    folder = tmp_path / "demo"
    first = run("demo", "--folder", str(folder), "--no-serve")
    again = run("demo", "--folder", str(folder), "--no-serve")
    log_in = [line for line in first.stdout.splitlines() if "log in" in line]
    assert [line for line in again.stdout.splitlines() if "log in" in line] == log_in
    assert "filling" not in again.stdout
    fresh = run("demo", "--folder", str(folder), "--no-serve", "--fresh")
    assert "filling" in fresh.stdout


@pytest.mark.parametrize("more", [(), ("--fresh",)])
@pytest.mark.parametrize("name", ["precious.txt", "undercroft.sqlite3"])
def test_a_folder_that_is_no_demo_is_left_alone(
    tmp_path: Path, name: str, more: tuple[str, ...]
) -> None:
    (tmp_path / name).write_text("mine")
    answer = run("demo", "--folder", str(tmp_path), "--no-serve", *more)
    assert answer.exit_code == 1
    assert f"{tmp_path} holds something that is not the demo's" in answer.output
    assert [file.name for file in tmp_path.iterdir()] == [name]
    assert (tmp_path / name).read_text() == "mine"


@pytest.mark.parametrize("more", [(), ("--fresh",)])
def test_a_demo_that_was_broken_off_while_filling_is_begun_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, more: tuple[str, ...]
) -> None:
    folder = tmp_path / "demo"

    def breaks_off(*_: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patched:
        patched.setattr("undercroft.demo.seed.athlete_page.save_kit", breaks_off)
        assert run("demo", "--folder", str(folder), "--no-serve").exit_code != 0
    answer = run("demo", "--folder", str(folder), "--no-serve", *more)
    assert answer.exit_code == 0, answer.output
    assert "filling" in answer.stdout
    again = run("demo", "--folder", str(folder), "--no-serve")
    assert "filling" not in again.stdout


def test_fresh_throws_away_what_is_the_demos_and_nothing_else(tmp_path: Path) -> None:
    run("demo", "--folder", str(tmp_path), "--no-serve")
    (tmp_path / "precious.txt").write_text("mine")
    assert "filling" in run("demo", "--folder", str(tmp_path), "--no-serve", "--fresh").stdout
    assert (tmp_path / "precious.txt").read_text() == "mine"


def test_nobody_else_may_read_the_demos_password(tmp_path: Path) -> None:
    run("demo", "--folder", str(tmp_path), "--no-serve")
    assert (tmp_path / "demo.json").stat().st_mode & 0o077 == 0
