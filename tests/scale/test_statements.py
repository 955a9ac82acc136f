"""However many athletes and weeks there are, a screen of the desk asks the database as often."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from flask import Flask
from tests.scale import squad
from tests.scale.screens import ASIDE, ROWS, Scene, scene_in
from tests.scale.timings import ask, requests_of, without_row
from tests.scale.years import SORTS, at
from tests.store.counting import counted

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.services.auditing import check
from undercroft.store import database

UNTIL = date(2026, 2, 20)
FEW = squad.Size(athletes=3, weeks=2, until=UNTIL)
ONE = squad.Size(athletes=1, weeks=2, until=UNTIL)
MANY = squad.Size(athletes=30, weeks=6, until=UNTIL)


@contextmanager
def seeded(path: Path, pattern: Path, size: squad.Size) -> Iterator[Scene]:
    """The desk of a squad of that size, on a database of its own."""
    shutil.copy(pattern, path)
    database.open_database(str(path))
    database.connect()
    squad.seed(size, sorts=SORTS[1:2])
    database.close_all()
    settings = Settings(database=str(path), cheap_passwords=True)
    try:
        yield scene_in(create_app(settings, lambda: at(UNTIL)), most=1)
    finally:
        database.close_all()


def statements(scene: Scene) -> dict[str, int]:
    """By request, how many statements it asks."""
    found = {}
    for rule, asked, (request,) in requests_of(scene, rounds=1):
        with counted() as told:
            ask(scene, request)
        found[f"{rule.endpoint} {asked.words}"] = len(told)
    return found


def test_ten_times_the_athletes_and_thrice_the_weeks_need_as_many_statements(
    tmp_path: Path, sqlite_pattern: Path
) -> None:
    with seeded(tmp_path / "few.sqlite3", sqlite_pattern, FEW) as scene:
        few = statements(scene)
    with seeded(tmp_path / "many.sqlite3", sqlite_pattern, MANY) as scene:
        many = statements(scene)
        database.connect()
        assert list(check()) == []
    assert many == few


def test_everything_that_the_desk_reads_is_measured(sqlite_app: Flask) -> None:
    assert without_row(sqlite_app) == set()
    assert {*ROWS, *ASIDE} <= set(sqlite_app.view_functions)


def test_the_same_seed_makes_the_same_training(tmp_path: Path, sqlite_pattern: Path) -> None:
    told = []
    for name in ("once", "again"):
        with seeded(tmp_path / f"{name}.sqlite3", sqlite_pattern, ONE) as scene:
            told.append(scene.coach.get(f"/desk/athletes/{scene.athletes[0]}/results").json)
    assert told[0] == told[1]
