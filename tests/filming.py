"""Photos and clips as phones make them, with all that they tell besides: invented, drawn here."""

from collections.abc import Mapping
from fractions import Fraction
from io import BytesIO
from types import MappingProxyType

import av
import numpy as np
from av.video.frame import VideoFrame
from PIL import Image

NOTHING: Mapping[str, str] = MappingProxyType({})
NORTH = b"N"
PLACE = "+61.5000+008.2500/"
"""A place of nobody's, as clips write it down (ISO 6709)."""

TURNED = 0x0112
"""EXIF's orientation; 6 is "turn a quarter clockwise" (Exif 2.32; from memory)."""

GPS = 0x8825


def halves(width: int, height: int) -> Image.Image:
    """White on the left, black on the right."""
    drawn = Image.new("RGB", (width, height))
    drawn.paste((255, 255, 255), (0, 0, width // 2, height))
    return drawn


def photo(sort: str = "JPEG", size: tuple[int, int] = (2000, 1000), *, turned: int = 1) -> bytes:
    """With the place where it was taken, and a comment."""
    drawn, out = halves(*size), BytesIO()
    exif = drawn.getexif()
    exif[TURNED] = turned
    exif.get_ifd(GPS).update({1: "N", 2: (61.0, 30.0, 0.0), 3: "E", 4: (8.0, 15.0, 0.0)})
    exif[0x010E] = "behind the shed"
    drawn.save(out, sort, exif=exif)
    return out.getvalue()


def clip(
    sort: str = "mp4",
    seconds: float = 1,
    size: tuple[int, int] = (320, 180),
    tags: Mapping[str, str] = NOTHING,
    rate: int = 25,
) -> bytes:
    """White on the left, black on the right, with a beep."""
    out = BytesIO()
    options = {} if sort == "webm" else {"movflags": "use_metadata_tags"}
    with av.open(out, "w", format=sort, options=options) as film:
        film.metadata.update(tags)
        coded = ("libvpx", {"deadline": "realtime"}) if sort == "webm" else ("libx264", {})
        seen = film.add_stream(coded[0], rate=rate, options=coded[1])
        seen.width, seen.height, seen.pix_fmt = *size, "yuv420p"
        heard = film.add_stream("libopus" if sort == "webm" else "aac", rate=48_000)
        frame = VideoFrame.from_image(halves(*size))
        for count in range(round(seconds * rate)):
            frame.pts, frame.time_base = count, Fraction(1, rate)
            film.mux(seen.encode(frame))
        film.mux(seen.encode(None))
        sound = av.AudioFrame.from_ndarray(np.zeros((2, 960), np.float32), "fltp", "stereo")
        sound.rate, sound.pts = 48_000, 0
        film.mux(heard.encode(sound))
        film.mux(heard.encode(None))
    return out.getvalue()


def turned_a_quarter(film: bytes) -> bytes:
    """The same MP4 held upright: its matrix says to turn it clockwise (ISO/IEC 14496-12, tkhd)."""
    one, none, deep = (number.to_bytes(4, "big") for number in (0x10000, 0, 0x40000000))
    level = one + none + none + none + one + none + none + none + deep
    upright = none + one + none + (-0x10000).to_bytes(4, "big", signed=True) + none * 4 + deep
    head, matrix, rest = film.partition(b"tkhd")
    assert level in rest
    return head + matrix + rest.replace(level, upright, 1)


def seen(film: bytes) -> list[Image.Image]:
    """Every picture of a clip, as it is shown."""
    with av.open(BytesIO(film), "r") as shown:
        assert [stream.type for stream in shown.streams] == ["video"]
        return [frame.to_image() for frame in shown.decode(video=0)]


def is_white(picture: Image.Image, across: float, down: float) -> bool:
    """At that share of its width and height."""
    at = (int(across * picture.width), int(down * picture.height))
    colour = picture.convert("RGB").getpixel(at)
    assert isinstance(colour, tuple)
    return min(colour) > 200
