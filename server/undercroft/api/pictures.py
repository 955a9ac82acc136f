"""Photos and clips of exercises: sent by the coach, seen by the coach and paired phones alone."""

from typing import Any

from flask import Response, request

from undercroft.api import picture_shapes as shapes
from undercroft.api.contract import (
    COACH,
    DEVICE,
    Section,
    asks,
    by,
    gives,
    refuses,
    sends,
    takes,
    takes_file,
)
from undercroft.services import pictures
from undercroft.services.accounts import CoachSeen
from undercroft.services.devices import DeviceSeen
from undercroft.services.refusals import Conflict, TooOften

section = Section("pictures", "/api/v1")

MEDIA = ("image/webp", "video/mp4")
KEPT = "private, max-age=31536000, immutable"


@section.post("/desk/exercises/<key>/picture")
@by(COACH)
@asks(shapes.InWords)
@takes_file(pictures.MOST_SENT)
@gives(shapes.PictureMade, 201)
@refuses(Conflict, TooOften)
def add_picture(
    key: str, coach: CoachSeen, body: bytes, query: dict[str, str], now: int
) -> dict[str, str]:
    """Show an exercise by a photo or clip, which is drawn anew without what it says of its place.

    The body is the file as it is. A photo may be JPEG, PNG or WebP, a clip MP4, MOV or WebM.
    """
    return {"hash": pictures.add(coach.id, key, body, query["words"], now)}


@section.post("/desk/exercises/<key>/picture/words")
@by(COACH)
@takes(shapes.InWords)
def set_picture_words(key: str, coach: CoachSeen, body: dict[str, Any], now: int) -> None:
    """Tell an exercise's picture in other words, for those who do not see it."""
    pictures.set_words(coach.id, key, body["words"], now)


@section.post("/desk/exercises/<key>/picture/remove")
@by(COACH)
def remove_picture(key: str, coach: CoachSeen) -> None:
    """Show an exercise by no picture any more; phones forget theirs."""
    pictures.remove(coach.id, key)


@section.get("/desk/pictures/<digest>")
@by(COACH)
@sends(*MEDIA)
def show_picture(digest: str, coach: CoachSeen) -> Response:
    """Get a picture of the coach's by its hash; what stands under a hash never changes."""
    return _file(digest, pictures.of_coach(coach.id, digest))


@section.get("/pictures/<digest>")
@by(DEVICE)
@sends(*MEDIA)
def show_picture_to_phone(digest: str, device: DeviceSeen) -> Response:
    """Get a picture of the athlete's coach by its hash."""
    return _file(digest, pictures.for_athlete(device.athlete_id, digest))


def _file(digest: str, file: pictures.File) -> Response:
    """As an attachment, so that opened by itself it is saved and never shown as a page of ours."""
    response = Response(file.data, content_type=file.media)
    ending = file.media.partition("/")[2]
    response.headers["Content-Disposition"] = f'attachment; filename="{digest[:12]}.{ending}"'
    response.headers["Cache-Control"] = KEPT
    response.set_etag(digest)
    response.make_conditional(request, True, len(file.data))
    return response
