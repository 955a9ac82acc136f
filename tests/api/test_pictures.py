"""A photo or clip of an exercise: the coach's and their athletes', and nobody else's."""

from hashlib import sha256
from typing import Any

import pytest
from tests.api.training import by_kind
from tests.filming import PLACE, clip, photo
from tests.people import AtDesk, Phone
from tests.storing import everything
from werkzeug.test import TestResponse

from undercroft.services import auditing
from undercroft.services import pictures as services
from undercroft.services.refusals import Conflict
from undercroft.store import database

WORDS = "Side view: the bar stays over mid-foot."


def shows(coach: AtDesk, key: str, data: bytes, words: str = WORDS) -> TestResponse:
    return coach.sends_file(f"/desk/exercises/{key}/picture?words={words}", data)


def shown(coach: AtDesk, key: str, data: bytes, words: str = WORDS) -> str:
    """The hash under which it stands."""
    answer = shows(coach, key, data, words)
    assert answer.status_code == 201, answer.text
    return str(answer.json["hash"])


def page(coach: AtDesk, key: str = "back-squat") -> Any:
    return coach.get(f"/desk/exercises/{key}").json["picture"]


@pytest.fixture
def trains(coach: AtDesk, ready: str, block: str, device: Phone) -> Phone:
    """The athlete's phone, with a block that has her squat, and all of it read."""
    answer = coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert answer.json["sent"][0]["revision"] == 1
    device.reads_all()
    return device


def told(phone: Phone) -> list[Any]:
    """What the feed says of pictures, as news."""
    return [item["body"] for item in phone.reads_all() if item["kind"] == "pictures"]


def test_the_exercises_page_tells_of_its_picture(coach: AtDesk) -> None:
    assert page(coach) is None
    digest = shown(coach, "back-squat", photo())
    picture = page(coach)
    assert picture == {
        "hash": digest,
        "media": "image/webp",
        "bytes": picture["bytes"],
        "words": WORDS,
    }
    data = coach.get(f"/desk/pictures/{digest}").data
    assert (len(data), sha256(data).hexdigest()) == (picture["bytes"], digest)
    assert page(coach, "front-squat") is None


def test_a_picture_is_handed_out_as_what_it_is_and_never_as_a_page(coach: AtDesk) -> None:
    for data, media, ending in (
        (photo(), "image/webp", "webp"),
        (clip(seconds=0.2), "video/mp4", "mp4"),
    ):
        digest = shown(coach, "back-squat", data)
        headers = coach.get(f"/desk/pictures/{digest}").headers
        assert headers["Content-Type"] == media
        assert headers["X-Content-Type-Options"] == "nosniff"
        assert headers["Content-Disposition"] == f'attachment; filename="{digest[:12]}.{ending}"'
        assert headers["Cache-Control"] == "private, max-age=31536000, immutable"
        assert headers["Content-Security-Policy"].startswith("default-src 'none'")
        assert headers["Cross-Origin-Resource-Policy"] == "same-origin"


def test_a_clip_can_be_read_in_parts_as_iphones_do(coach: AtDesk) -> None:
    digest = shown(coach, "back-squat", clip(seconds=0.2))
    path = f"/api/v1/desk/pictures/{digest}"
    part = coach.browser.get(path, headers={"Range": "bytes=4-7"})
    assert (part.status_code, part.data) == (206, b"ftyp")
    again = coach.browser.get(path, headers={"If-None-Match": f'"{digest}"'})
    assert again.status_code == 304


def test_what_a_file_tells_of_its_place_is_not_kept(coach: AtDesk) -> None:
    for data in (photo(), clip(seconds=0.2, tags={"location": PLACE})):
        digest = shown(coach, "back-squat", data)
        kept = coach.get(f"/desk/pictures/{digest}").data
        assert b"EXIF" not in kept
        assert b"behind the shed" not in kept
        assert PLACE[:8].encode() not in kept
        assert data not in kept


@pytest.mark.parametrize(
    ("data", "status", "says"),
    [
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", 422, "neither a photo nor a clip"),
        (b"GIF89a<script>alert(1)</script>", 422, "neither a photo nor a clip"),
        (b"\xff\xd8\xff<html>", 422, "damaged"),
        (b"", 400, "empty"),
        (b"\xff\xd8\xff" + bytes(services.MOST_SENT), 413, "larger than"),
    ],
    ids=["svg", "gif", "half a photo", "nothing", "too large"],
)
def test_what_cannot_be_shown_is_refused_in_words_and_changes_nothing(
    coach: AtDesk, data: bytes, status: int, says: str
) -> None:
    shown(coach, "back-squat", photo())
    before = everything()
    answer = shows(coach, "back-squat", data)
    assert (answer.status_code, answer.mimetype) == (status, "application/problem+json")
    assert says in answer.json["detail"]
    assert everything() == before


def test_a_picture_goes_with_words_for_those_who_do_not_see_it(coach: AtDesk) -> None:
    for query in ("", "?words=", f"?words={'a' * 201}"):
        answer = coach.sends_file(f"/desk/exercises/back-squat/picture{query}", photo())
        assert answer.status_code == 422
        assert answer.json["errors"][0]["path"] == "words"
    shown(coach, "back-squat", photo())
    path = "/desk/exercises/back-squat/picture/words"
    assert coach.post(path, {"words": "Knees out."}).status_code == 204
    assert page(coach)["words"] == "Knees out."
    assert coach.post("/desk/exercises/deadlift/picture/words", {"words": "?"}).status_code == 404


def test_another_site_cannot_send_one_and_no_form_can(coach: AtDesk) -> None:
    path = f"/api/v1/desk/exercises/back-squat/picture?words={WORDS}"
    for media in ("multipart/form-data", "text/plain", "image/jpeg", "application/json"):
        answer = coach.browser.post(path, data=photo(), content_type=media)
        assert answer.status_code == 415
    headers = {"Sec-Fetch-Site": "cross-site"}
    octets = "application/octet-stream"
    answer = coach.browser.post(path, data=photo(), content_type=octets, headers=headers)
    assert answer.status_code == 403
    assert page(coach) is None


def test_an_exercise_that_is_not_there_has_no_picture(coach: AtDesk, other_coach: AtDesk) -> None:
    document = {"name": "Barrel lift", "implement": "body", "prime": ["glutes"]}
    own = coach.post("/desk/exercises", {"document": document}).json["key"]
    assert shows(coach, "no-such-lift", photo()).status_code == 404
    assert shows(other_coach, own, photo()).status_code == 404
    shown(coach, own, photo())
    assert coach.post(f"/desk/exercises/{own}/remove").status_code == 204
    assert coach.post("/desk/exercises", {"document": document}).json["key"] == own
    assert page(coach, own) is None, "a new exercise begins without the old one's picture"


def test_a_phone_sees_its_coachs_pictures_and_no_others(
    coach: AtDesk, other_coach: AtDesk, device: Phone, other_device: Phone
) -> None:
    mine = shown(coach, "back-squat", photo())
    others = shown(other_coach, "back-squat", photo(size=(30, 20)))
    assert device.get(f"/pictures/{mine}").status_code == 200
    assert device.get(f"/pictures/{others}").status_code == 404
    assert other_device.get(f"/pictures/{mine}").status_code == 404
    assert other_coach.get(f"/desk/pictures/{mine}").status_code == 404
    assert coach.app.test_client().get(f"/api/v1/pictures/{mine}").status_code == 401
    coach.revokes(device)
    assert device.get(f"/pictures/{mine}").status_code == 401


def test_a_phone_hears_of_the_pictures_of_its_programme_as_they_change(
    coach: AtDesk, trains: Phone
) -> None:
    first = shown(coach, "back-squat", photo())
    size = page(coach)["bytes"]
    picture = {"hash": first, "media": "image/webp", "bytes": size, "words": WORDS}
    assert told(trains) == [{"back-squat": picture}]
    shown(coach, "back-squat", photo())
    assert told(trains) == [], "the same again is no news"
    coach.post("/desk/exercises/back-squat/picture/words", {"words": "Knees out."})
    assert told(trains) == [{"back-squat": {**picture, "words": "Knees out."}}]
    second = shown(coach, "back-squat", clip(seconds=0.2))
    (now,) = told(trains)
    assert (now["back-squat"]["hash"], now["back-squat"]["media"]) == (second, "video/mp4")
    assert trains.get(f"/pictures/{first}").status_code == 404, "replaced, and kept nowhere"
    assert coach.post("/desk/exercises/back-squat/picture/remove").status_code == 204
    assert told(trains) == [{}]


def test_pictures_of_other_exercises_are_no_news_but_what_may_be_done_instead_is(
    coach: AtDesk, trains: Phone
) -> None:
    shown(coach, "wrist-curl", photo())
    assert told(trains) == []
    shown(coach, "front-squat", photo())
    (now,) = told(trains)
    assert list(now) == ["front-squat"]


def test_pictures_of_what_is_offered_instead_of_an_alternative_are_news_too(
    coach: AtDesk, trains: Phone
) -> None:
    sheets = by_kind(trains.get("/snapshot?after=0").json["feed"], "sheet").values()
    lines = [line for sheet in sheets for line in sheet["exercises"]]
    offered = {one["exercise"] for line in lines for one in line.get("alternatives", ())}
    for key in sorted(offered):
        shown(coach, key, photo())
    assert list(told(trains)[-1]) == sorted(offered)


def test_a_block_that_is_sent_brings_its_pictures(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    shown(coach, "back-squat", photo())
    assert told(device) == []
    coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert [list(body) for body in told(device)] == [["back-squat"]]
    coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]})
    assert told(device) == [], "nothing has changed"


def test_a_coach_has_room_for_so_much_and_is_told_how_full_it_is(coach: AtDesk) -> None:
    shown(coach, "back-squat", photo())
    size = page(coach)["bytes"]
    database.connect()
    try:
        with pytest.raises(Conflict, match=r"your pictures take 0\.0 of 0\.0 MB"):
            services.add(coach.id, "front-squat", photo(), WORDS, 0, room=size + 1)
        services.add(coach.id, "back-squat", photo(), WORDS, 0, room=size)
    finally:
        database.disconnect()
    assert page(coach, "front-squat") is None


def test_a_check_of_the_database_finds_a_picture_that_is_not_what_was_kept(coach: AtDesk) -> None:
    shown(coach, "back-squat", photo())
    database.connect()
    try:
        assert list(auditing.check()) == []
        database.database.execute_sql("UPDATE picture SET hash = 'other'")
        (found,) = auditing.check()
    finally:
        database.disconnect()
    assert found.what == "the picture of back-squat is not what was kept"


def test_an_athlete_who_passes_to_another_coach_sees_that_coachs_pictures(
    coach: AtDesk, other_coach: AtDesk, trains: Phone
) -> None:
    """Whoever filmed it decides where it goes."""
    mine = shown(coach, "back-squat", photo())
    theirs = shown(other_coach, "bench-press", photo(size=(30, 20)))
    assert told(trains)
    other_coach.accepts(coach.offers("own", trains.athlete_id))
    (now,) = told(trains)
    assert list(now) == ["bench-press"]
    assert trains.get(f"/pictures/{theirs}").status_code == 200
    assert trains.get(f"/pictures/{mine}").status_code == 404
