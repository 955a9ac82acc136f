"""Bringing a database to this program's tables, and leaving a newer one alone."""

import threading
from pathlib import Path

import pytest
from playhouse.schema_diff import diff_models

from undercroft.store import database as stored
from undercroft.store import migrate, upgrade
from undercroft.store.models import ALL, Coach

SECOND = """
def up(_, db):
    db.execute_sql("ALTER TABLE coach ADD COLUMN motto TEXT NOT NULL DEFAULT ''")
"""
BROKEN = """
def up(_, db):
    db.execute_sql("ALTER TABLE coach ADD COLUMN motto TEXT NOT NULL DEFAULT ''")
    db.execute_sql("ALTER TABLE nowhere ADD COLUMN a TEXT")
"""


@pytest.fixture
def opened(database: str) -> str:
    stored.open_database(database)
    stored.connect()
    return database


@pytest.fixture
def scripts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of scripts that begins with the real first one and can be added to."""
    folder = tmp_path / "migrations"
    folder.mkdir()
    for script in migrate.SCRIPTS.glob("0*.py"):
        (folder / script.name).write_text(script.read_text())
    monkeypatch.setattr(migrate, "SCRIPTS", folder)
    return folder


def test_the_scripts_make_the_tables_that_the_models_describe(opened: str) -> None:
    difference = diff_models(stored.database.obj, list(ALL))
    assert not difference, str(difference)


def test_running_them_again_does_nothing(opened: str) -> None:
    before = migrate.epoch()
    assert migrate.migrate() == ()
    assert migrate.epoch() == before


def test_an_older_sqlite_file_is_copied_before_it_is_changed(sqlite: Path, scripts: Path) -> None:
    stored.open_database(str(sqlite))
    stored.connect()
    Coach.create(id="c", email="a@b", name="Ottilie", password_hash="", created_at=1)
    (scripts / "9001_motto.py").write_text(SECOND)
    done = upgrade.bring_up_to_date(str(sqlite))
    assert done.scripts == ("9001_motto",)
    assert done.backup == sqlite.with_name("undercroft.sqlite3.before-9001_motto")
    assert stored.database.execute_sql("SELECT motto FROM coach").fetchall() == [("",)]
    stored.close_all()

    stored.open_database(str(done.backup))
    stored.connect()
    assert [coach.name for coach in Coach.select()] == ["Ottilie"]
    assert "motto" not in [c.name for c in stored.database.get_columns("coach")]


def test_every_block_sent_so_far_had_one_run(tmp_path: Path, scripts: Path) -> None:
    later = {path: path.read_text() for path in scripts.glob("*.py") if path.name >= "0003"}
    for path in later:
        path.unlink()
    stored.open_database(str(tmp_path / "older.sqlite3"))
    stored.connect()
    migrate.migrate()
    run = stored.database.execute_sql
    run("INSERT INTO coach VALUES ('c', 'a@b', 'Ottilie', '', 1)")
    run("INSERT INTO athlete (id, coach_id, name, position, created_at) VALUES ('a','c','R',0,1)")
    for number, block in enumerate(("base", "peak", "base", "base"), start=1):
        values = ("a", number, block, "{}", "2026-02-02", "[]", 1, "c")
        run("INSERT INTO revision VALUES (?, ?, ?, ?, ?, ?, ?, ?)", values)
    for path, text in later.items():
        path.write_text(text)
    migrate.migrate()
    runs = run("SELECT run FROM revision ORDER BY number").fetchall()
    stored.close_all()
    assert runs == [(1,), (2,), (1,), (1,)]


def test_a_new_database_needs_no_copy(tmp_path: Path) -> None:
    path = tmp_path / "new" / "undercroft.sqlite3"
    stored.open_database(str(path))
    stored.connect()
    done = upgrade.bring_up_to_date(str(path))
    stored.close_all()
    assert done.scripts[0] == "0001_first"
    assert done.backup is None
    assert path.stat().st_mode & 0o077 == 0, "nobody else may read it"


def test_a_script_that_fails_changes_nothing(sqlite: Path, scripts: Path) -> None:
    stored.open_database(str(sqlite))
    stored.connect()
    (scripts / "9001_broken.py").write_text(BROKEN)
    with pytest.raises(Exception, match="nowhere"):
        upgrade.bring_up_to_date(str(sqlite))
    assert "motto" not in [c.name for c in stored.database.get_columns("coach")]
    assert migrate.pending() == ("9001_broken",)


def test_a_newer_database_is_left_alone(opened: str, scripts: Path) -> None:
    newest = sorted(scripts.glob("0*.py"))[-1]
    newest.unlink()
    with pytest.raises(migrate.NewerDatabase, match=newest.stem):
        upgrade.bring_up_to_date(opened)


def test_several_processes_may_start_on_one_empty_database_at_once(tmp_path: Path) -> None:
    """Threads here, each with a connection of its own, as processes would have."""
    path = tmp_path / "undercroft.sqlite3"
    stored.open_database(str(path))
    faults: list[Exception] = []

    def start() -> None:
        stored.connect()
        try:
            migrate.migrate()
        except Exception as fault:
            faults.append(fault)
        finally:
            stored.disconnect()

    threads = [threading.Thread(target=start) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    stored.close_all()
    assert faults == []
