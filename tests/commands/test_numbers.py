"""A restored backup gives no revision the number of one that it does not know any more."""

from pathlib import Path

from click.testing import CliRunner
from flask import Flask
from tests.api.test_replanning import block, did, lift, maxima, said, send, session
from tests.fixtures import athlete_data, kit_data
from tests.people import Clock, enlist

from undercroft.cli import main
from undercroft.store import database


def run(*words: str) -> None:
    answer = CliRunner().invoke(main, words)
    assert answer.exit_code == 0, answer.output


def test_what_was_done_by_a_lost_revision_is_not_read_by_a_later_one(
    sqlite: Path, sqlite_app: Flask, clock: Clock, tmp_path: Path
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    athlete = coach.adds_athlete("Runa Falk")
    for name, data in (("document", athlete_data()), ("kit", kit_data())):
        coach.post(f"/desk/athletes/{athlete}/{name}", {"document": data})
    phone = coach.pairs_phone(athlete)
    id_ = send(coach, athlete, block(session("s1", lift("e", "back-squat"))))
    copy = str(tmp_path / "copy.sqlite3")
    run("backup", copy, "--database", str(sqlite))
    send(coach, athlete, block(session("s1", lift("e", "bench-press"))), id_)
    assert [i["key"] for i in phone.reads_all() if i["kind"] == "revision"][-1] == "2"

    run("restore", copy, "--database", str(sqlite))
    database.open_database(str(sqlite))
    send(coach, athlete, block(session("s1", lift("e", "back-squat"))), id_)
    before = maxima(coach, athlete)
    phone.syncs(
        said(phone, "session.started", "s1", 2),
        did(phone, "s1", "e.1", 120, 2),
        said(phone, "session.finished", "s1", 2),
    )
    assert maxima(coach, athlete) == before
    (lost,) = coach.get(f"/desk/athletes/{athlete}/results").json["outside"]
    assert lost["why"] == "revision 2 was not sent to this athlete"
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert "Did work outside the plan" in [one["text"] for one in line["attention"]]


def test_after_a_restore_numbers_go_on_from_it(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    athlete = coach.adds_athlete("Runa Falk")
    for name, data in (("document", athlete_data()), ("kit", kit_data())):
        coach.post(f"/desk/athletes/{athlete}/{name}", {"document": data})
    run("restore", "--epoch-only", "--database", str(sqlite))
    database.open_database(str(sqlite))
    id_ = send(coach, athlete, block(session("s1", lift("e", "back-squat"))))
    send(coach, athlete, block(session("s1", lift("e", "bench-press"))), id_)
    numbers = [
        int(item["key"])
        for item in coach.pairs_phone(athlete).reads_all()
        if item["kind"] == "revision"
    ]
    assert len(numbers) == 2
    assert numbers[0] > 1000
    assert numbers[1] == numbers[0] + 1
