"""The pictures of a clip: not too many of them, none too large, each the right way up."""

from collections.abc import Iterable, Iterator
from typing import Any

import numpy as np
from av.video.frame import VideoFrame
from numpy.typing import NDArray

from undercroft.pictures.unusable import Unusable

LONG_SIDE = 720
"""Pixels: enough to see a knee's path on a phone (own choice)."""

MOST_SECONDS = 20
"""Two or three repetitions (own choice)."""

FRAMES_A_SECOND = 30
MOST_DECODED = 5_000
"""20 s filmed for slow motion at 240 a second; more is work that nobody waits for (own choice)."""

COLOURS = "yuv420p"
"""What every phone's decoder takes; its sides are even."""


def steady(taken: Iterable[VideoFrame]) -> Iterator[tuple[float, VideoFrame]]:
    """At most so many a second, each with its time in s from the first. Raises Unusable."""
    began: float | None = None
    due = 0.0
    for count, frame in enumerate(taken):
        if frame.pts is None:
            continue
        began = frame.time if began is None else began
        at_s = frame.time - began
        if at_s > MOST_SECONDS or count >= MOST_DECODED:
            what = f"the clip is longer than {MOST_SECONDS} s"
            raise Unusable(what, "cut it to the two or three repetitions that show how")
        if at_s >= due:
            yield at_s, frame
            due = at_s + 0.9 / FRAMES_A_SECOND


def upright_and_small(timed: tuple[float, VideoFrame]) -> tuple[float, VideoFrame]:
    at_s, frame = timed
    share = min(1.0, LONG_SIDE / max(frame.width, frame.height))
    width, height = _even(frame.width * share), _even(frame.height * share)
    turns = round(frame.rotation / 90)
    if turns == 0:
        return at_s, frame.reformat(width, height, COLOURS)
    small = frame.reformat(width, height, "rgb24").to_ndarray()
    turned = VideoFrame.from_ndarray(_turned(small, turns), "rgb24")
    return at_s, turned.reformat(format=COLOURS)


def _turned(colours: NDArray[Any], quarters: int) -> NDArray[np.uint8]:
    return np.ascontiguousarray(np.rot90(colours, quarters), np.uint8)


def _even(length: float) -> int:
    return max(2, 2 * round(length / 2))
