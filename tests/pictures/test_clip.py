"""A clip comes out short, small, silent, the right way up, and with nothing but its pictures."""

import pytest
from tests.filming import PLACE, clip, is_white, seen, turned_a_quarter

from undercroft.pictures import Unusable, cleaned
from undercroft.pictures import frames as limits


def shown(data: bytes) -> bytes:
    clean = cleaned(data)
    assert clean.media == "video/mp4"
    assert clean.data[4:8] == b"ftyp"
    return clean.data


@pytest.mark.parametrize("sort", ["mp4", "mov", "webm"])
def test_a_clip_is_told_by_its_content_and_loses_its_sound(sort: str) -> None:
    film = seen(shown(clip(sort)))
    assert len(film) == 25
    assert film[0].size == (320, 180)
    assert is_white(film[-1], 0.25, 0.5)
    assert not is_white(film[-1], 0.75, 0.5)


def test_a_clip_is_made_of_a_phones_size() -> None:
    assert seen(shown(clip(size=(1280, 720), seconds=0.2)))[0].size == (720, 404)


@pytest.mark.parametrize("sort", ["mp4", "mov", "webm"])
def test_where_it_was_filmed_is_gone(sort: str) -> None:
    taken = clip(sort, tags={"location": PLACE, "com.apple.quicktime.location.ISO6709": PLACE})
    assert PLACE.encode() in taken
    assert PLACE[:8].encode() not in shown(taken)


def test_a_clip_filmed_upright_is_shown_upright() -> None:
    film = seen(shown(turned_a_quarter(clip())))
    assert film[0].size == (180, 320)
    assert is_white(film[0], 0.5, 0.25), "what was on the left is on top"
    assert not is_white(film[0], 0.5, 0.75)


def test_slow_motion_keeps_its_time_and_drops_pictures_that_no_phone_shows() -> None:
    film = seen(shown(clip(rate=120, seconds=0.5)))
    assert 12 <= len(film) <= 17


def test_a_clip_that_is_too_long_says_how_long_it_may_be() -> None:
    with pytest.raises(Unusable, match=f"longer than {limits.MOST_SECONDS} s"):
        cleaned(clip(seconds=limits.MOST_SECONDS + 1, size=(16, 16), rate=5))


def test_a_page_hidden_behind_a_clip_does_not_come_along() -> None:
    script = b"<script>alert(document.cookie)</script>"
    assert script not in shown(clip() + script)


@pytest.mark.parametrize("sort", ["mp4", "webm"])
def test_first_bytes_alone_make_no_clip(sort: str) -> None:
    with pytest.raises(Unusable):
        cleaned(clip(sort)[:40] + b"<html>" * 100)


def test_a_list_of_addresses_is_no_clip() -> None:
    """FFmpeg would read such a list and fetch what it names."""
    with pytest.raises(Unusable, match="neither a photo nor a clip"):
        cleaned(b"#EXTM3U\n#EXTINF:1\nfile:///etc/passwd\n")
