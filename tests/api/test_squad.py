"""The squad at a glance, for blocks that were sent more than once."""

from collections.abc import Iterator
from typing import Any

import pytest
from tests.api.training import entries_of, finished, send, sheets
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS
from undercroft.services.squad import squad
from undercroft.store import database, glance, revisions, sql
from undercroft.store.feed import hold, publish


def test_what_was_done_before_the_block_was_sent_again_is_not_next(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    send(coach, block, ready)
    clock.passes(DAY_MS)
    device.reads_all()
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["revision"] == 2
    assert line["next"]["session"] == "w1-wed"
    assert line["attention"] == []
    assert line["states"]["finished_at"] is not None


def test_a_session_that_was_opened_is_not_begun(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    opened = device.writes.entry("session.opened", {}, session="w1-mon", revision=1)
    device.syncs(opened)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["states"]["opened_at"] is not None
    assert line["states"]["started_at"] is None
    assert line["next"]["session"] == "w1-mon"
    (shown,) = [
        one
        for one in coach.get(f"/desk/athletes/{ready}/results").json["sessions"]
        if one["session"] == "w1-mon"
    ]
    assert shown["state"] == "planned"
    send(coach, block, ready)
    assert sheets(device.reads_all())["w1-mon"]["revision"] == monday["revision"] + 1


def test_opened_speaks_of_the_newest_revision(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    device.syncs(device.writes.entry("session.opened", {}, session="w1-mon", revision=1))
    send(coach, block, ready)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["states"]["opened_at"] is None


def test_what_was_done_of_another_block_says_nothing_of_this_one(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    document = coach.get(f"/desk/blocks/{block}").json["document"]
    other = coach.post("/desk/blocks", {"document": {**document, "key": "other"}}).json["id"]
    send(coach, other, ready)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["next"]["session"] == "w1-mon"
    assert line["states"]["started_at"] is None


def test_each_athletes_held_entries_are_counted_for_them_alone(
    coach: AtDesk, device: Phone
) -> None:
    other = coach.adds_athlete("Aada Berg")
    strange = [{**device.writes.done(key), "kind": "set.juggled"} for key in ("a", "b")]
    device.syncs(device.writes.done("c"), *strange)
    lines = {one["id"]: one["unplaced"] for one in coach.get("/desk/squad").json["athletes"]}
    assert lines == {device.athlete_id: 2, other: 0}


def test_only_the_newest_revision_of_each_athlete_is_read(coach: AtDesk, athlete: str) -> None:
    others = [coach.adds_athlete(name) for name in ("Aada Berg", "Nils Without")]
    database.connect()
    for whose, sendings in ((athlete, 12), (others[0], 2)):
        for number in range(1, sendings + 1):
            revisions.add_revision(whose, number, "b", {}, "2026-02-02", [], 1, coach.id, 1)
            with hold(whose):
                publish(whose, "revision", str(number), {"block_name": f"draft {number}"})
    found = glance.newest_sent(coach.id)
    database.disconnect()
    named = {whose: sent.notice["block_name"] for whose, sent in found.items()}
    assert named == {athlete: "draft 12", others[0]: "draft 2"}


def test_work_outside_the_plan_is_told_for_a_fortnight(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    monday = {**sheets(device.reads_all())["w1-mon"], "revision": 4}
    device.syncs(*entries_of(device, monday))

    def told(days: int) -> list[str]:
        (line,) = squad(coach.id, clock() + days * DAY_MS)
        assert line.states.started_at is None
        return [one.text for one in line.attention]

    database.connect()
    assert "Did work outside the plan" in told(13)
    assert "Did work outside the plan" not in told(15)
    database.disconnect()


@pytest.fixture
def statements(app: object, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[str]]:
    """Every statement that reaches the database, plain or built."""
    database.connect()
    real = database.database.obj
    heard: list[str] = []

    def listening(run: Any) -> Any:
        def ran(statement: str, *rest: Any, **more: Any) -> Any:
            heard.append(statement)
            return run(statement, *rest, **more)

        return ran

    monkeypatch.setattr(real, "execute_sql", listening(real.execute_sql))
    monkeypatch.setattr(sql, "_execute", listening(sql._execute))
    yield heard
    database.disconnect()


def test_thirty_athletes_cost_as_many_statements_as_three(
    coach: AtDesk, clock: Clock, statements: list[str]
) -> None:
    def statements_of(number: int) -> int:
        statements.clear()
        lines = squad(coach.id, clock())
        assert [line.revision for line in lines] == [2] * number
        assert {line.next and line.next["session"] for line in lines} == {"mon"}
        return len(statements)

    def joins(name: str) -> None:
        clock.passes(61_000)
        whose = coach.adds_athlete(name)
        phone = coach.pairs_phone(whose)
        for number in (1, 2):
            revisions.add_revision(whose, number, "b", {}, "2026-02-02", [], 1, coach.id, 1)
            monday = {"session": "mon", "name": "M", "week_name": "A", "day": 1, "on": "2026-02-02"}
            with hold(whose):
                notice = {"block_name": "B", "sessions": [monday]}
                publish(whose, "revision", str(number), notice)
        phone.syncs(phone.writes.entry("pain.reported", {"where": "knee", "level": 3}))

    for number in range(3):
        joins(f"Athlete {number}")
    few = statements_of(3)
    for number in range(3, 30):
        joins(f"Athlete {number}")
    assert statements_of(30) == few <= 8
