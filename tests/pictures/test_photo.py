"""A photo comes out of a phone's size, the right way up, and silent about its place."""

from io import BytesIO

import pytest
from PIL import Image
from tests.filming import halves, is_white, photo

from undercroft.pictures import Unusable, cleaned
from undercroft.pictures import photo as photos


def shown(data: bytes) -> Image.Image:
    clean = cleaned(data)
    assert clean.media == "image/webp"
    return Image.open(BytesIO(clean.data), formats=["WEBP"])


@pytest.mark.parametrize("sort", ["JPEG", "PNG", "WEBP"])
def test_a_photo_is_told_by_its_content_and_drawn_anew(sort: str) -> None:
    picture = shown(photo(sort))
    assert picture.size == (photos.LONG_SIDE, photos.LONG_SIDE // 2)
    assert is_white(picture, 0.25, 0.5)
    assert not is_white(picture, 0.75, 0.5)


@pytest.mark.parametrize("sort", ["JPEG", "PNG", "WEBP"])
def test_where_it_was_taken_is_gone(sort: str) -> None:
    taken = photo(sort)
    assert b"behind the shed" in taken
    clean = cleaned(taken).data
    assert b"behind the shed" not in clean
    assert not {b"EXIF", b"XMP ", b"ICCP"} & {clean[at : at + 4] for at in range(len(clean))}
    assert dict(shown(taken).getexif()) == {}


def test_a_photo_taken_upright_is_shown_upright() -> None:
    picture = shown(photo(turned=6))
    assert picture.size == (photos.LONG_SIDE // 2, photos.LONG_SIDE)
    assert is_white(picture, 0.5, 0.25), "what was on the left is on top"


def test_a_small_photo_stays_as_small_as_it_is() -> None:
    assert shown(photo(size=(300, 200))).size == (300, 200)


def test_what_can_be_seen_through_stays_so() -> None:
    out = BytesIO()
    Image.new("RGBA", (10, 10), (255, 0, 0, 0)).save(out, "PNG")
    assert shown(out.getvalue()).convert("RGBA").getpixel((5, 5))[3] == 0  # type: ignore[index]


@pytest.mark.parametrize("sort", ["JPEG", "PNG"])
def test_a_page_hidden_behind_a_photo_does_not_come_along(sort: str) -> None:
    """Read as a page by whoever does not look at types."""
    script = b"<script>alert(document.cookie)</script>"
    assert script not in cleaned(photo(sort) + b"<!doctype html>" + script).data


SVG = b'<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'


def drawn_as(sort: str) -> bytes:
    out = BytesIO()
    halves(10, 10).save(out, sort)
    return out.getvalue()


@pytest.mark.parametrize(
    "data",
    [SVG, b"<!doctype html><script>1</script>", b"%PDF-1.7", b"hello", drawn_as("GIF"),
     drawn_as("BMP"), b"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00"],
    ids=["svg", "html", "pdf", "text", "gif", "bmp", "heic"],
)  # fmt: skip
def test_anything_else_is_refused_with_what_would_be_right(data: bytes) -> None:
    with pytest.raises(Unusable) as told:
        cleaned(data)
    assert "JPEG, PNG or WebP" in told.value.right


@pytest.mark.parametrize("sort", ["JPEG", "PNG", "WEBP"])
def test_a_photo_cut_short_is_damaged(sort: str) -> None:
    whole = photo(sort)
    with pytest.raises(Unusable, match="damaged"):
        cleaned(whole[: len(whole) // 2])


@pytest.mark.parametrize(
    "magic", [b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"RIFF\x00\x00\x00\x00WEBP"]
)
def test_first_bytes_alone_make_no_photo(magic: bytes) -> None:
    with pytest.raises(Unusable, match="damaged"):
        cleaned(magic + SVG)


@pytest.mark.parametrize(
    ("size", "told"), [((10_000, 7_000), "10000 × 7000"), ((20_000, 10_000), "far too many")]
)
def test_a_small_file_that_would_be_a_wall_of_pixels_is_not_drawn(
    size: tuple[int, int], told: str
) -> None:
    out = BytesIO()
    Image.new("1", size).save(out, "PNG")
    assert len(out.getvalue()) < 100_000
    with pytest.raises(Unusable, match=told):
        cleaned(out.getvalue())
