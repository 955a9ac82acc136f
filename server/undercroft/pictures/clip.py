"""A clip filmed anew: short, small, silent, upright, and of nothing but its pictures.

A phone's file holds more than it shows: sound, a track of where it was, tags. Only decoded pictures
are taken over, so that none of it can come along.
"""

from collections.abc import Iterator
from fractions import Fraction
from io import BytesIO

import av
from av.container import InputContainer, OutputContainer
from av.error import FFmpegError
from av.video.frame import VideoFrame
from av.video.stream import VideoStream

from undercroft.pictures.frames import FRAMES_A_SECOND, steady, upright_and_small
from undercroft.pictures.unusable import Unusable

MOST_PIXELS = 4096 * 2304
CODED = {"crf": "28", "preset": "veryfast", "maxrate": "1500k", "bufsize": "3000k"}
"""At most 190 kB a second, so that 20 s stay under 4 MB (own choice)."""

CLOCK = Fraction(1, 1000)
NO_PICTURES = Unusable("there are no moving pictures in it", "send a clip that shows something")


def clip(data: bytes) -> bytes:
    """The clip as MP4 (H.264), of the size and length that `frames` allows. Raises Unusable."""
    try:
        with av.open(BytesIO(data), "r", format=_format(data), metadata_errors="ignore") as taken:
            return _filmed_anew(taken)
    except (FFmpegError, EOFError) as fault:
        raise Unusable("the clip is damaged", "send it again, or take another one") from fault


def _format(data: bytes) -> str:
    """Named, so that bytes that lie about themselves reach no other of FFmpeg's readers."""
    return "mov" if data[4:8] == b"ftyp" else "matroska"


def _filmed_anew(taken: InputContainer) -> bytes:
    if not taken.streams.video:
        raise NO_PICTURES
    stream = taken.streams.video[0]
    if stream.width * stream.height > MOST_PIXELS:
        raise Unusable(f"the clip has {stream.width} × {stream.height} pixels", "film it in 1080p")
    stream.thread_type = "AUTO"
    out = BytesIO()
    with av.open(out, "w", format="mp4") as film:
        _write(film, map(upright_and_small, steady(taken.decode(stream))))
    return out.getvalue()


def _write(film: OutputContainer, frames: Iterator[tuple[float, VideoFrame]]) -> None:
    stream: VideoStream | None = None
    for at_s, frame in frames:
        stream = stream or _stream(film, frame)
        frame.time_base, frame.pts = CLOCK, round(at_s / CLOCK)
        film.mux(stream.encode(frame))
    if stream is None:
        raise NO_PICTURES
    film.mux(stream.encode(None))


def _stream(film: OutputContainer, first: VideoFrame) -> VideoStream:
    stream = film.add_stream("libx264", rate=FRAMES_A_SECOND, options=CODED)
    stream.width, stream.height, stream.pix_fmt = first.width, first.height, first.format.name
    stream.codec_context.time_base = CLOCK
    return stream
