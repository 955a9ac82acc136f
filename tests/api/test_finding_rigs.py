"""Find bands: what the desk is told of the rigs that an athlete's kit can make."""

from typing import Any

import pytest
from tests.fixtures import fixture, kit_data
from tests.people import AtDesk

DRAFT = "every-method"
PULL = {"session": "wed", "exercise": "w-a"}


def draft() -> Any:
    return fixture("blocks", DRAFT)


def asks(coach: AtDesk, athlete: str, rig: Any, document: Any = None, **place: str) -> Any:
    where = place or PULL
    body = {"athlete": athlete, "document": document or draft(), **where, "rig": rig}
    return coach.post("/desk/rigs", body)


def quarter(**more: Any) -> dict[str, Any]:
    return {"part": "bands", "share_percent": 25, **more}


def with_rig(rig: Any) -> Any:
    """The draft with that rig taken for the pull."""
    document = draft()
    for week in document["weeks"]:
        for session in week["sessions"]:
            for plan in session["exercises"]:
                if plan["key"] == PULL["exercise"]:
                    plan["rig"] = rig
    return document


def test_share_times_load_is_what_hangs_at_lockout(coach: AtDesk, ready: str) -> None:
    told = asks(coach, ready, quarter()).json["found"]
    assert told["wanted_kg"] == pytest.approx(0.25 * told["load_kg"])
    for one in told["offers"]:
        assert one["share_percent"] * told["base_kg"] / 100 == pytest.approx(one["lockout_kg"])
        assert one["off_kg"] == pytest.approx(one["lockout_kg"] - told["wanted_kg"])
        assert one["rig"]["things"][-1] == "platform-pegs"
        assert one["unmeasured"] == []
        assert 0 < one["doubt_kg"] < 0.05 * one["lockout_kg"]


def test_the_rig_that_is_taken_hangs_on_the_load_sheet(coach: AtDesk, ready: str) -> None:
    second = asks(coach, ready, quarter()).json["found"]["offers"][1]
    body = {"athlete": ready, "document": with_rig(second["rig"])}
    sheets = coach.post("/desk/loads", body).json["sheets"]
    (wednesday,) = [one for one in sheets if one["session"] == PULL["session"]]
    pull = next(one for one in wednesday["exercises"] if one["key"] == PULL["exercise"])
    assert pull["rig"] == [second["words"]]


def test_things_that_the_rig_names_already_do_not_narrow_the_search(
    coach: AtDesk, ready: str
) -> None:
    first = asks(coach, ready, quarter()).json["found"]
    again = asks(coach, ready, {**first["offers"][1]["rig"], "route": "inverted-v"}).json["found"]
    assert again["offers"][0] == first["offers"][0]


def test_without_a_kit_it_says_so(coach: AtDesk, athlete: str) -> None:
    answer = asks(coach, athlete, quarter()).json
    assert answer["found"] is None
    assert answer["none"]["right"] == "should be what stands in the gym"


def test_a_kit_without_bands_says_what_would_do(coach: AtDesk, ready: str) -> None:
    coach.post(f"/desk/athletes/{ready}/kit", {"document": {**kit_data(), "bands": []}})
    answer = asks(coach, ready, quarter()).json
    assert answer == {
        "found": None,
        "none": {
            "where": "bands of The old forge cellar",
            "what": "is none",
            "right": "should be one at least, measured",
        },
    }


@pytest.mark.parametrize(
    ("rig", "path", "right"),
    [
        ({"part": "bands"}, "rig.share_percent", "it is needed"),
        (quarter(share_percent=81), "rig.share_percent", "at most 80 %"),
        (quarter(share_percent=0), "rig.share_percent", "more than 0"),
        (quarter(point="bar"), "rig.point", "start, mean or lockout"),
        (quarter(route="sideways"), "rig.route", "single, doubled"),
    ],
)
def test_what_cannot_be_asked_is_refused_at_its_field(
    coach: AtDesk, ready: str, rig: Any, path: str, right: str
) -> None:
    answer = asks(coach, ready, rig)
    assert answer.status_code == 422
    found = {one["path"]: one["right"] for one in answer.json["errors"]}
    assert right in found[path]


def test_a_draft_with_faults_tells_them(coach: AtDesk, ready: str) -> None:
    document = draft()
    document["weeks"][0]["sessions"][0]["exercises"][0]["exercise"] = "levitation"
    answer = asks(coach, ready, quarter(), document)
    assert answer.status_code == 422
    assert answer.json["errors"][0]["path"] == "weeks.0.sessions.0.exercises.0.exercise"


def test_an_exercise_that_the_block_has_not_is_named(coach: AtDesk, ready: str) -> None:
    answer = asks(coach, ready, quarter(), session="wed", exercise="missing")
    assert answer.status_code == 422
    assert "'missing'" in answer.json["detail"]
