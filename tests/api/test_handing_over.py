"""An athlete passes to another coach: what was done stays whole, nobody keeps more than told."""

import time
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from tests.api.training import done_sets, entries_of, finished, send, sheets
from tests.people import AtDesk, Clock, Phone

from undercroft.services.auditing import check
from undercroft.store import database
from undercroft.store.feed import athlete_lock
from undercroft.store.models import Entry, Revision


def kept(athlete: str) -> dict[str, list[Any]]:
    database.connect()
    entries = Entry.select().where(Entry.athlete == athlete).order_by(Entry.position)
    revisions = Revision.select().where(Revision.athlete == athlete).order_by(Revision.number)
    found = {
        "entries": list(entries.dicts()),
        "revisions": [(r.number, r.document, r.starts_on, r.sent_by, r.run) for r in revisions],
    }
    database.disconnect()
    return found


@pytest.fixture
def trained(coach: AtDesk, ready: str, block: str, device: Phone) -> str:
    """The athlete, with Monday of the block done."""
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    return ready


def hand_over(coach: AtDesk, to: AtDesk, athlete: str, keeps: str | None = None) -> dict[str, Any]:
    return to.accepts(coach.offers("own", athlete, keeps=keeps))


def test_ledger_and_revisions_stay_whole(coach: AtDesk, other_coach: AtDesk, trained: str) -> None:
    before, told = kept(trained), done_sets(coach, trained, "w1-mon")
    hand_over(coach, other_coach, trained)
    assert kept(trained) == before
    assert done_sets(other_coach, trained, "w1-mon") == told
    database.connect()
    assert list(check()) == []
    database.disconnect()


def test_nothing_happens_before_the_other_one_accepts(
    coach: AtDesk, other_coach: AtDesk, trained: str
) -> None:
    coach.offers("own", trained)
    assert coach.get(f"/desk/athletes/{trained}").json["right"] == "own"
    assert other_coach.get(f"/desk/athletes/{trained}").status_code == 404


@pytest.mark.parametrize(("keeps", "status"), [(None, 404), ("read", 200)])
def test_the_first_coach_keeps_what_was_chosen(
    coach: AtDesk, other_coach: AtDesk, trained: str, keeps: str | None, status: int
) -> None:
    hand_over(coach, other_coach, trained, keeps)
    assert coach.get(f"/desk/athletes/{trained}/results").status_code == status
    kit = {"document": {"key": "shed", "name": "The shed"}}
    changed = coach.post(f"/desk/athletes/{trained}/kit", kit)
    assert changed.status_code == (403 if keeps else 404)
    assert other_coach.post(f"/desk/athletes/{trained}/kit", kit).status_code == 200


def test_the_phone_goes_on_and_learns_who_coaches_now(
    coach: AtDesk, other_coach: AtDesk, trained: str, device: Phone
) -> None:
    hand_over(coach, other_coach, trained)
    news = [item["body"] for item in device.reads_all() if item["kind"] == "athlete"]
    assert [one["coach"] for one in news] == ["Casper Nyberg"]


def test_the_running_block_goes_on_where_it_stands(
    coach: AtDesk, other_coach: AtDesk, trained: str, block: str, device: Phone
) -> None:
    hand_over(coach, other_coach, trained)
    (line,) = other_coach.get("/desk/squad").json["athletes"]
    assert line["block"]["mine"]
    assert line["block"]["id"] != block
    send(other_coach, line["block"]["id"], trained)
    page = other_coach.get("/desk/squad").json["athletes"][0]
    assert (page["revision"], page["next"]["session"]) == (2, "w1-wed")
    assert [one["id"] for one in coach.get("/desk/blocks").json["blocks"]] == [block]


def test_rights_and_links_of_before_end(
    coach: AtDesk, other_coach: AtDesk, writing_coach: AtDesk, trained: str
) -> None:
    share, pairing = coach.offers("read", trained), coach.invites(trained)
    hand_over(coach, other_coach, trained)
    assert writing_coach.get(f"/desk/athletes/{trained}").status_code == 404
    assert writing_coach.post("/desk/offers/accept", {"secret": share}).status_code == 404
    looked = coach.app.test_client().post("/api/v1/pairing/look", json={"secret": pairing})
    assert looked.status_code == 404


def test_of_two_coaches_who_accept_at_once_one_gets_the_athlete(
    coach: AtDesk, other_coach: AtDesk, reading_coach: AtDesk, athlete: str
) -> None:
    """Both links are good, and both wait for the athlete's lock."""
    links = [(one, coach.offers("own", athlete)) for one in (other_coach, reading_coach)]
    with ThreadPoolExecutor() as at_once:
        database.connect()
        with athlete_lock(athlete):
            waiting = [
                at_once.submit(one.post, "/desk/offers/accept", {"secret": secret})
                for one, secret in links
            ]
            time.sleep(1)
        database.disconnect()
    assert sorted(one.result().status_code for one in waiting) == [200, 404]
    rights = [one.get("/desk/squad").json["athletes"] for one, _ in links]
    assert sorted([line["right"] for line in lines] for lines in rights) == [[], ["own"]]


def test_own_exercises_that_anything_names_go_along(
    coach: AtDesk, other_coach: AtDesk, ready: str, device: Phone
) -> None:
    barrel = {"name": "Barrel lift", "implement": "body", "prime": ["glutes"]}
    unused = {"name": "Log lift", "implement": "body", "prime": ["glutes"]}
    key = coach.post("/desk/exercises", {"document": barrel}).json["key"]
    coach.post("/desk/exercises", {"document": unused})
    other_coach.post("/desk/exercises", {"document": {**barrel, "prime": ["lats"]}})
    document = {"key": "runa", "name": "Runa Falk", "injuries": [{"where": "knee", "avoid": [key]}]}
    saved = coach.post(f"/desk/athletes/{ready}/document", {"document": document})
    assert saved.status_code == 200, saved.text
    taken = hand_over(coach, other_coach, ready)
    assert taken["differing"] == ["Barrel lift"]
    own = [one for one in other_coach.get("/desk/catalogue").json["exercises"] if one["own"]]
    assert [(one["name"], one["prime"]) for one in own] == [("Barrel lift", ["lats"])]


def test_exercises_with_two_meanings_and_phones_are_told_before_it_is_accepted(
    coach: AtDesk, other_coach: AtDesk, trained: str
) -> None:
    barrel = {"name": "Barrel lift", "implement": "body", "prime": ["glutes"]}
    key = coach.post("/desk/exercises", {"document": barrel}).json["key"]
    other_coach.post("/desk/exercises", {"document": {**barrel, "prime": ["lats"]}})
    document = {"key": "runa", "name": "Runa Falk", "injuries": [{"where": "knee", "avoid": [key]}]}
    coach.post(f"/desk/athletes/{trained}/document", {"document": document})
    coach.revokes(coach.pairs_phone(trained, "a lost one"))
    secret = coach.offers("own", trained)
    told = other_coach.post("/desk/offers/look", {"secret": secret}).json
    assert (told["differing"], told["phones"]) == (["Barrel lift"], 1)
    assert other_coach.accepts(secret)["differing"] == told["differing"]


def test_a_right_to_write_brings_neither(coach: AtDesk, other_coach: AtDesk, trained: str) -> None:
    secret = coach.offers("write", trained)
    told = other_coach.post("/desk/offers/look", {"secret": secret}).json
    assert (told["differing"], told["phones"]) == ([], 0)


def test_phones_from_before_the_hand_over_are_told_from_those_paired_since(
    coach: AtDesk, other_coach: AtDesk, trained: str, device: Phone, clock: Clock
) -> None:
    assert coach.get(f"/desk/athletes/{trained}").json["handed_over"] is None
    clock.passes(1)
    hand_over(coach, other_coach, trained)
    clock.passes(1)
    own = other_coach.pairs_phone(trained, "a new one")
    page = other_coach.get(f"/desk/athletes/{trained}").json
    since = page["handed_over"]["at"]
    assert page["handed_over"]["by"] == "Ottilie Brandt"
    before = [one["id"] for one in page["devices"] if one["created_at"] < since]
    assert (before, own.id in before) == ([device.id], False)
