"""Keeping the data: copies taken while serving, put back, verified."""

import shutil
import sqlite3 as driver
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from tests.people import AtDesk, Phone

from undercroft.cli import main
from undercroft.services import auditing
from undercroft.store import database
from undercroft.store.feed import athlete_lock, publish
from undercroft.store.models import Change, Entry


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


def count_entries(path: Path) -> int:
    database.close_all()
    database.open_database(str(path))
    database.connect()
    count = Entry.select().count()
    database.close_all()
    return int(count)


class TestBackup:
    def test_a_copy_taken_while_serving_has_what_was_committed(
        self, sqlite: Path, device_on_file: Phone, tmp_path: Path
    ) -> None:
        device_on_file.syncs(*device_on_file.writes.many(20))
        copy = tmp_path / "copy.sqlite3"
        assert run("backup", str(copy), "--database", str(sqlite)).exit_code == 0
        device_on_file.syncs(*device_on_file.writes.many(5))
        assert count_entries(copy) == 20
        assert not list(tmp_path.glob("*.unfinished"))

    def test_nobody_else_may_read_it(
        self, sqlite: Path, device_on_file: Phone, tmp_path: Path
    ) -> None:
        copy = tmp_path / "copy.sqlite3"
        run("backup", str(copy), "--database", str(sqlite))
        assert copy.stat().st_mode & 0o077 == 0

    def test_a_folder_gets_a_file_with_the_time_in_its_name(
        self, sqlite: Path, tmp_path: Path
    ) -> None:
        folder = tmp_path / "copies"
        folder.mkdir()
        answer = run("backup", str(folder), "--database", str(sqlite))
        (made,) = folder.iterdir()
        assert answer.stdout.strip() == str(made)
        assert made.name.startswith("undercroft-2")

    def test_it_overwrites_nothing(self, sqlite: Path, tmp_path: Path) -> None:
        taken = tmp_path / "taken"
        taken.write_text("something else")
        answer = run("backup", str(taken), "--database", str(sqlite))
        assert answer.exit_code == 1
        assert "exists" in answer.output
        assert taken.read_text() == "something else"

    def test_of_postgresql_it_says_which_tools_to_use(self, tmp_path: Path) -> None:
        answer = run("backup", str(tmp_path), "--database", "postgresql://nowhere/x")
        assert answer.exit_code == 1
        assert "pg_dump" in answer.output


class TestRestore:
    def test_phones_send_again_what_the_copy_lacks(
        self, sqlite: Path, device_on_file: Phone, tmp_path: Path
    ) -> None:
        phone, copy = device_on_file, tmp_path / "copy.sqlite3"
        entries = phone.writes.many(8)
        phone.syncs(*entries[:3])
        run("backup", str(copy), "--database", str(sqlite))
        phone.syncs(*entries[3:])
        answer = run("restore", str(copy), "--database", str(sqlite))
        assert answer.exit_code == 0, answer.output

        database.open_database(str(sqlite))
        told = phone.sends().json
        assert told["epoch"] != phone.epoch
        assert told["stored_through"] == 3
        phone.epoch, phone.cursor = told["epoch"], 0
        assert phone.syncs(*entries[3:])["stored_through"] == 8

    def test_what_was_there_is_kept_beside_it(
        self, sqlite: Path, device_on_file: Phone, tmp_path: Path
    ) -> None:
        copy = tmp_path / "copy.sqlite3"
        run("backup", str(copy), "--database", str(sqlite))
        device_on_file.syncs(*device_on_file.writes.many(4))
        run("restore", str(copy), "--database", str(sqlite))
        (aside,) = sqlite.parent.glob("undercroft.sqlite3.until-*")
        assert count_entries(aside) == 4
        assert count_entries(sqlite) == 0

    @pytest.mark.parametrize("damage", ["no database", "cut", "other program"])
    def test_what_is_no_sound_copy_is_refused_and_changes_nothing(
        self, sqlite: Path, device_on_file: Phone, tmp_path: Path, damage: str
    ) -> None:
        device_on_file.syncs(*device_on_file.writes.many(200))
        bad = tmp_path / "bad.sqlite3"
        run("backup", str(bad), "--database", str(sqlite))
        if damage == "no database":
            bad.write_text("a shopping list")
        elif damage == "cut":
            bad.write_bytes(bad.read_bytes()[: 4096 * 10])
        else:
            bad.unlink()
            with closing(driver.connect(bad)) as connection:
                connection.execute("CREATE TABLE songs (title TEXT)")
        answer = run("restore", str(bad), "--database", str(sqlite))
        assert answer.exit_code == 1
        assert str(bad) in answer.output
        assert count_entries(sqlite) == 200

    def test_it_wants_a_copy_or_to_hear_that_the_data_are_back(self, sqlite: Path) -> None:
        assert run("restore", "--database", str(sqlite)).exit_code == 1

    def test_data_put_back_by_other_means_begin_a_new_life_too(
        self, sqlite: Path, device_on_file: Phone
    ) -> None:
        assert run("restore", "--epoch-only", "--database", str(sqlite)).exit_code == 0
        database.open_database(str(sqlite))
        assert device_on_file.sends().json["epoch"] != device_on_file.epoch


def findings(athlete_id: str) -> list[str]:
    database.connect()
    found = list(auditing.check_athlete(athlete_id))
    database.disconnect()
    return found


class TestCheck:
    @pytest.fixture
    def used(self, coach: AtDesk, athlete: str, device: Phone) -> Phone:
        """A phone whose ledger has a bit of everything in it."""
        entry = device.writes.done("squat.1")
        twin = {**entry, "body": {"reps": 9}}
        device.syncs(entry, twin, "odd", {"v": 9}, *device.writes.many(10))
        database.connect()
        with athlete_lock(athlete):
            for load in (90, 95):
                publish(athlete, "sheet", "w1.mon", {"load": load})
        database.disconnect()
        coach.revokes(device)
        device.syncs(*device.writes.many(2))
        for held in coach.held(athlete):
            coach.post(f"/desk/athletes/{athlete}/held/{held['position']}/accept")
        return device

    def test_a_sound_database_has_no_findings(self, used: Phone) -> None:
        assert findings(used.athlete_id) == []

    def test_the_command_says_so(self, sqlite: Path, device_on_file: Phone) -> None:
        device_on_file.syncs(*device_on_file.writes.many(3))
        answer = run("check", "--database", str(sqlite))
        assert answer.exit_code == 0
        assert answer.stdout == "everything is as it was promised\n"

    def test_an_entry_whose_whole_numbers_have_a_point_is_as_it_was_sent(
        self, device: Phone
    ) -> None:
        entry = device.writes.done("squat.1", reps=3.0)
        pointed = {**entry, "n": float(entry["n"]), "revision": 1.0}
        for sent, status in ((pointed, "stored"), (entry, "duplicate")):
            told = device.syncs(sent)
            assert [one["status"] for one in told["verdicts"]] == [status]
            assert told["stored_through"] == 1
        assert findings(device.athlete_id) == []

    def test_a_changed_entry_is_found(self, used: Phone) -> None:
        database.connect()
        Entry.update(body={"load_kg": 100}).where(Entry.position == 1).execute()
        database.disconnect()
        assert findings(used.athlete_id) == ["the entry at position 1 is not what was sent"]

    def test_a_lost_entry_is_found_by_its_position_and_its_number(self, used: Phone) -> None:
        database.connect()
        Entry.delete().where(Entry.position == 6).execute()
        database.disconnect()
        positions, numbers = findings(used.athlete_id)
        assert positions == "1 positions are missing, the first is 6"
        assert "lacks number 3" in numbers

    def test_two_changes_that_count_at_once_are_found(self, used: Phone) -> None:
        database.connect()
        Change.update(superseded=False).execute()
        database.disconnect()
        assert findings(used.athlete_id) == ["2 changes of sheet w1.mon count at once"]

    def test_a_finding_fails_the_command(self, sqlite: Path, device_on_file: Phone) -> None:
        device_on_file.syncs(*device_on_file.writes.many(3))
        database.connect()
        Entry.delete().where(Entry.position == 2).execute()
        database.close_all()
        answer = run("check", "--database", str(sqlite))
        assert answer.exit_code == 1
        assert "the first is 2" in answer.output


def test_a_copy_of_the_files_alone_is_no_substitute(
    sqlite: Path, device_on_file: Phone, tmp_path: Path
) -> None:
    """Why `backup` is needed: the newest commits lie in the -wal file beside the database."""
    device_on_file.syncs(*device_on_file.writes.many(3))
    shutil.copy(sqlite, tmp_path / "copied-file.sqlite3")
    assert count_entries(tmp_path / "copied-file.sqlite3") < 3
