"""An athlete leaves: everything as files, from the desk or the phone; and erased for good."""

from flask import Response

from undercroft.api import shapes
from undercroft.api.contract import COACH, DEVICE, Section, by, gives, needs, sends, takes
from undercroft.services import archive_files, erasing
from undercroft.services.devices import DeviceSeen
from undercroft.services.rights import OWN

section = Section("leaving", "/api/v1")

MEDIA = "application/zip"


@section.get("/desk/athletes/<athlete_id>/archive")
@by(COACH)
@needs(OWN)
@sends(MEDIA)
def save_archive(athlete_id: str, now: int) -> Response:
    """Everything about an athlete as one zip of JSON and CSV."""
    return _archive(athlete_id, now)


@section.get("/archive")
@by(DEVICE)
@sends(MEDIA)
def save_own_archive(device: DeviceSeen, now: int) -> Response:
    """Everything about the athlete of this phone as one zip of JSON and CSV."""
    return _archive(device.athlete_id, now)


@section.post("/desk/athletes/<athlete_id>/erase")
@by(COACH)
@needs(OWN)
@takes(shapes.ErasureAsked)
@gives(None)
def erase_athlete(athlete_id: str, body: dict[str, str], now: int) -> None:
    """Erase everything about an athlete, once the name was typed; nothing brings it back."""
    erasing.erase(athlete_id, body["name"], now)


def _archive(athlete_id: str, now: int) -> Response:
    name = archive_files.file_name(now)
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(archive_files.zipped(athlete_id, now), content_type=MEDIA, headers=headers)
