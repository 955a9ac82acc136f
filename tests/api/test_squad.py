"""The squad at a glance, for blocks that were sent more than once."""

from tests.api.training import entries_of, finished, send, sheets
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS
from undercroft.store import database, revisions


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
            words = {"name": f"draft {number}", "weeks": []}
            revisions.add_revision(whose, number, "b", words, "2026-02-02", [], 1, coach.id, 1)
    found = revisions.latest_revisions([athlete, *others])
    database.disconnect()
    named = {whose: row.document["name"] for whose, row in found.items()}
    assert named == {athlete: "draft 12", others[0]: "draft 2"}
