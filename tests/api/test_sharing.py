"""A second coach with rights, by a link that has to be accepted, until they are taken back."""

from typing import Any

import pytest
from tests.api.training import done_sets, entries_of, finished, send, sheets
from tests.fixtures import block_data
from tests.people import AtDesk, Clock, Phone
from tests.storing import everything

from undercroft.services.clock import DAY_MS


def own_block(coach: AtDesk, **changes: Any) -> str:
    return str(coach.post("/desk/blocks", {"document": {**block_data(), **changes}}).json["id"])


def seen_by(coach: AtDesk) -> list[tuple[str, str, str]]:
    lines = coach.get("/desk/squad").json["athletes"]
    return [(line["name"], line["right"], line["owner"]) for line in lines]


def test_a_link_shows_who_offers_what_and_gives_nothing_by_being_looked_at(
    coach: AtDesk, other_coach: AtDesk, athlete: str
) -> None:
    secret = coach.offers("read", athlete)
    seen = other_coach.post("/desk/offers/look", {"secret": secret}).json
    assert (seen["coach"], seen["gives"]) == ("Ottilie Brandt", "read")
    assert [one["name"] for one in seen["athletes"]] == ["Runa Falk"]
    assert seen_by(other_coach) == []
    other_coach.accepts(secret)
    assert seen_by(other_coach) == [("Runa Falk", "read", "Ottilie Brandt")]


def test_all_athletes_can_be_shared_by_one_link(coach: AtDesk, other_coach: AtDesk) -> None:
    names = ["Aada Berg", "Runa Falk", "Tove Lind"]
    taken = other_coach.accepts(coach.offers("write", *map(coach.adds_athlete, names)))
    assert [one["name"] for one in taken["athletes"]] == names


def test_a_link_is_good_once(coach: AtDesk, other_coach: AtDesk, athlete: str) -> None:
    secret = coach.offers("read", athlete)
    other_coach.accepts(secret)
    again = other_coach.post("/desk/offers/accept", {"secret": secret})
    unknown = other_coach.post("/desk/offers/accept", {"secret": "nobody's"})
    assert again.status_code == unknown.status_code == 404
    assert again.json["detail"] == unknown.json["detail"]


def test_a_link_is_good_for_seven_days(
    coach: AtDesk, other_coach: AtDesk, athlete: str, clock: Clock
) -> None:
    secret = coach.offers("read", athlete)
    clock.passes(7 * DAY_MS - 1)
    late = coach.app.test_client()
    log_in = {"email": other_coach.email, "password": "rope, pulley, chalk"}
    assert late.post("/api/v1/coach/log-in", json=log_in).status_code == 200
    assert late.post("/api/v1/desk/offers/look", json={"secret": secret}).status_code == 200
    clock.passes(1)
    assert late.post("/api/v1/desk/offers/look", json={"secret": secret}).status_code == 404


def test_a_link_that_was_revoked_gives_nothing(
    coach: AtDesk, other_coach: AtDesk, athlete: str
) -> None:
    secret = coach.offers("read", athlete)
    (waiting,) = coach.get("/desk/offers").json["offers"]
    assert coach.post(f"/desk/offers/{waiting['id']}/revoke").status_code == 204
    assert other_coach.post("/desk/offers/accept", {"secret": secret}).status_code == 404
    assert coach.get("/desk/offers").json["offers"] == []


def test_nobody_takes_a_link_of_their_own(coach: AtDesk, athlete: str) -> None:
    answer = coach.post("/desk/offers/accept", {"secret": coach.offers("read", athlete)})
    assert answer.status_code == 409
    assert "link of your own" in answer.json["detail"]


def test_only_ones_own_athletes_can_be_offered(
    writing_coach: AtDesk, other_coach: AtDesk, athlete: str
) -> None:
    body = {"athletes": [athlete], "gives": "read"}
    refused = writing_coach.post("/desk/offers", body)
    assert refused.status_code == 403
    assert "Ottilie Brandt" in refused.json["detail"]
    assert other_coach.post("/desk/offers", body).status_code == 404


def test_who_may_only_read_is_told_who_can_change_that(
    coach: AtDesk, reading_coach: AtDesk, athlete: str
) -> None:
    kit = {"document": {"key": "shed", "name": "The shed"}}
    answer = reading_coach.post(f"/desk/athletes/{athlete}/kit", kit)
    assert answer.status_code == 403
    assert answer.mimetype == "application/problem+json"
    assert answer.json["type"] == "urn:undercroft:problem:not-allowed"
    assert answer.json["detail"] == (
        "you may read what is Runa Falk's and change nothing; "
        "ask Ottilie Brandt, whose athlete this is, for the right to write"
    )


def test_a_writing_coach_sends_own_blocks_and_reads_what_was_done(
    coach: AtDesk, writing_coach: AtDesk, reading_coach: AtDesk, ready: str, device: Phone
) -> None:
    send(writing_coach, own_block(writing_coach), ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    told = done_sets(writing_coach, ready, "w1-mon")
    assert told == done_sets(coach, ready, "w1-mon") == done_sets(reading_coach, ready, "w1-mon")
    assert any(told)


def test_a_block_stays_its_writers(
    coach: AtDesk, writing_coach: AtDesk, ready: str, block: str
) -> None:
    assert writing_coach.get(f"/desk/blocks/{block}").status_code == 404
    assert writing_coach.get("/desk/blocks").json["blocks"] == []
    send(coach, block, ready)
    mine = [each.get("/desk/squad").json["athletes"][0]["block"] for each in (coach, writing_coach)]
    assert [one["mine"] for one in mine] == [True, False]


def test_a_reading_coach_sends_nothing(reading_coach: AtDesk, ready: str, device: Phone) -> None:
    block = own_block(reading_coach)
    before = everything()
    answer = reading_coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert answer.status_code == 403
    assert everything() == before


def test_a_right_that_is_taken_back_is_gone_at_once(
    coach: AtDesk, writing_coach: AtDesk, ready: str, device: Phone
) -> None:
    block = own_block(writing_coach)
    send(writing_coach, block, ready)
    ended = coach.post(f"/desk/athletes/{ready}/sharing/{writing_coach.id}/end")
    assert ended.status_code == 204
    for path in ("", "/results", "/screening", "/sharing", "/held", "/devices"):
        assert writing_coach.get(f"/desk/athletes/{ready}{path}").status_code == 404
    again = writing_coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert again.status_code == 404
    assert seen_by(writing_coach) == []
    assert coach.get(f"/desk/athletes/{ready}").json["revision"] == 1, "what was sent stays"


def ends(coach: AtDesk, writer: AtDesk, athlete: str, how: str) -> None:
    page = f"/desk/athletes/{athlete}/sharing"
    answer = {
        "taken back": lambda: coach.post(f"{page}/{writer.id}/end"),
        "made less": lambda: coach.post(f"{page}/{writer.id}/right", {"right": "read"}),
        "given up": lambda: writer.post(f"{page}/leave"),
    }[how]()
    assert answer.status_code == 204


@pytest.mark.parametrize("how", ["taken back", "made less", "given up"])
def test_when_a_writers_right_ends_the_own_coach_goes_on_with_the_running_block(
    coach: AtDesk, writing_coach: AtDesk, ready: str, device: Phone, how: str
) -> None:
    block = own_block(writing_coach)
    send(writing_coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    ends(coach, writing_coach, ready, how)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert (line["block"]["mine"], line["block"]["id"] != block) == (True, True)
    send(coach, line["block"]["id"], ready)
    (after,) = coach.get("/desk/squad").json["athletes"]
    assert (after["revision"], after["next"]["session"]) == (2, "w1-wed")
    assert [one["id"] for one in writing_coach.get("/desk/blocks").json["blocks"]] == [block]


def test_a_right_that_ends_leaves_anothers_running_block_where_it_is(
    coach: AtDesk, writing_coach: AtDesk, ready: str, block: str
) -> None:
    send(coach, block, ready)
    own_block(writing_coach)
    ends(coach, writing_coach, ready, "taken back")
    assert [one["id"] for one in coach.get("/desk/blocks").json["blocks"]] == [block]


def test_a_right_can_be_made_less(coach: AtDesk, writing_coach: AtDesk, athlete: str) -> None:
    path = f"/desk/athletes/{athlete}/sharing/{writing_coach.id}/right"
    assert coach.post(path, {"right": "read"}).status_code == 204
    assert seen_by(writing_coach) == [("Runa Falk", "read", "Ottilie Brandt")]
    assert coach.post(path, {"right": "own"}).status_code == 422


def test_an_older_link_takes_nothing_from_a_greater_right(
    coach: AtDesk, writing_coach: AtDesk, athlete: str
) -> None:
    writing_coach.accepts(coach.offers("read", athlete))
    assert seen_by(writing_coach) == [("Runa Falk", "write", "Ottilie Brandt")]


def test_a_coach_can_give_up_a_right(coach: AtDesk, reading_coach: AtDesk, athlete: str) -> None:
    assert reading_coach.post(f"/desk/athletes/{athlete}/sharing/leave").status_code == 204
    assert seen_by(reading_coach) == []
    assert coach.post(f"/desk/athletes/{athlete}/sharing/leave").status_code == 409


def test_who_shares_an_athlete_is_no_secret_among_them_but_links_are(
    coach: AtDesk, reading_coach: AtDesk, writing_coach: AtDesk, athlete: str
) -> None:
    coach.offers("read", athlete)
    told = [one.get(f"/desk/athletes/{athlete}/sharing").json for one in (coach, reading_coach)]
    names = [[one["name"] for one in each["coaches"]] for each in told]
    assert names == [["Joran Vik", "Marit Aune"]] * 2
    assert [len(each["offers"]) for each in told] == [1, 0]
    assert "secret" not in str(told)


def test_cues_of_a_coach_who_shares_the_athlete_never_reach_the_phone(
    coach: AtDesk, reading_coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    cues = {"cues": ["Pull from the tray"]}
    assert reading_coach.post("/desk/exercises/bench-press/cues", cues).status_code == 204
    send(coach, block, ready)
    assert cues["cues"][0] not in str(sheets(device.reads_all()))


def test_own_changes_to_a_block_are_told_to_its_writer_alone(
    reading_coach: AtDesk, ready: str, block: str
) -> None:
    asked = {"athlete": ready, "document": block_data(), "block": block}
    assert reading_coach.post("/desk/loads", asked).status_code == 404
    unfolding = {**asked, "week": "w1", "weeks": 4}
    assert reading_coach.post("/desk/unfold", unfolding).status_code == 404


@pytest.mark.parametrize("path", ["sign", "clearances", "pressures"])
def test_what_may_open_occlusion_work_is_for_the_athletes_own_coach(
    writing_coach: AtDesk, athlete: str, path: str
) -> None:
    answer = writing_coach.post(f"/desk/athletes/{athlete}/screening/{path}", {})
    assert answer.status_code == 403
    assert "this is for Ottilie Brandt" in answer.json["detail"]


@pytest.mark.parametrize("change", [{"trains_alone": False}, {"born": "1999-05-01"}])
def test_nor_does_a_writing_coach_open_it_by_what_the_athlete_is(
    coach: AtDesk, writing_coach: AtDesk, athlete: str, change: dict[str, Any]
) -> None:
    path, document = f"/desk/athletes/{athlete}/document", {"key": "runa", "name": "Runa Falk"}
    alone = {**document, "trains_alone": True}
    assert coach.post(path, {"document": alone}).status_code == 200
    taller = {**alone, "stature_m": 1.74}
    assert writing_coach.post(path, {"document": taller}).status_code == 200
    refused = writing_coach.post(path, {"document": {**taller, **change}})
    assert refused.status_code == 403
    assert "this is for Ottilie Brandt" in refused.json["detail"]
    assert coach.post(path, {"document": {**taller, **change}}).status_code == 200
