"""A right that ends while its coach waits for the athlete's lock: nothing is written with it."""

import time
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from tests.fixtures import athlete_data, block_data, kit_data
from tests.people import AtDesk
from tests.storing import everything

from undercroft.store import database, rights
from undercroft.store.feed import athlete_lock


@pytest.fixture
def asked(writing_coach: AtDesk, ready: str) -> list[tuple[str, Any]]:
    """What the writing coach asks for: each good as long as the right lasts."""
    block = writing_coach.post("/desk/blocks", {"document": block_data()}).json["id"]
    own = f"/desk/blocks/{block}/own/{ready}"
    found = writing_coach.get(own).json
    found["document"]["weeks"][0]["sessions"][0]["exercises"][0]["sets"][0]["reps"] = 2
    place = {"session": "w1-mon", "exercise": "squat"}
    athlete = f"/desk/athletes/{ready}"
    return [
        (own, {name: found[name] for name in ("document", "as_of")}),
        (f"{own}/decide", {"places": [place], "take": "block"}),
        (f"{athlete}/document", {"document": {**athlete_data(), "name": "Runa F."}}),
        (f"{athlete}/kit", {"document": {**kit_data(), "name": "Another shed"}}),
        (f"{athlete}/screening/ask", {}),
    ]


def answers_after(
    change: Any, coach: AtDesk, athlete: str, asked: list[tuple[str, Any]]
) -> list[int]:
    """What became of each: asked with the right, and let in once it was changed."""
    with ThreadPoolExecutor(len(asked)) as tabs:
        database.connect()
        with athlete_lock(athlete):
            waiting = [tabs.submit(coach.post, path, body) for path, body in asked]
            time.sleep(1)
            change()
        database.disconnect()
    return [one.result().status_code for one in waiting]


def test_a_right_that_was_taken_back_meanwhile_writes_nothing(
    coach: AtDesk, writing_coach: AtDesk, ready: str, asked: list[tuple[str, Any]]
) -> None:
    before = everything()
    ended = answers_after(
        lambda: rights.take_back(ready, writing_coach.id), writing_coach, ready, asked
    )
    assert ended == [404] * len(asked)
    del before["CoachRight"]
    after = everything()
    assert {name: after[name] for name in before} == before


def test_one_that_was_made_less_meanwhile_says_who_can_give_more(
    writing_coach: AtDesk, ready: str, asked: list[tuple[str, Any]]
) -> None:
    before = everything()
    less = answers_after(
        lambda: rights.give(ready, writing_coach.id, "read", 1), writing_coach, ready, asked
    )
    assert less == [403] * len(asked)
    after = everything()
    assert (after["OwnLayer"], after["Change"]) == (before["OwnLayer"], before["Change"])


def test_one_that_lasts_writes_all_of_it(
    writing_coach: AtDesk, ready: str, asked: list[tuple[str, Any]]
) -> None:
    assert {writing_coach.post(path, body).status_code for path, body in asked} <= {200, 204}
