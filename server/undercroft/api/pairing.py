"""Pairing a phone. Nothing happens before an explicit tap that shows who invites whom."""

from typing import Any

from undercroft.api import sessions, shapes
from undercroft.api.context import address
from undercroft.api.contract import ANYONE, DEVICE, Section, by, gives, refuses, takes
from undercroft.services import devices, pairing
from undercroft.services.devices import DeviceSeen
from undercroft.services.refusals import NotFound, TooOften

section = Section("pairing", "/api/v1")


@section.post("/pairing/look")
@by(ANYONE)
@takes(shapes.SecretOrCode)
@gives(shapes.InvitedAnswer)
@refuses(NotFound, TooOften)
def look(body: dict[str, str], now: int) -> pairing.Invited:
    """See who invites whom; uses nothing up, save a try for a wrong code."""
    return pairing.look(body.get("secret"), body.get("code"), address(), now)


@section.post("/pairing/code")
@by(ANYONE)
@takes(shapes.Secret)
@gives(shapes.CodeAnswer, 201)
@refuses(NotFound, TooOften)
def code_from_invitation(body: dict[str, str], now: int) -> dict[str, Any]:
    """Make a code from an opened invitation, to be typed into the installed app."""
    code, expires_at = pairing.code_for_secret(body["secret"], address(), now)
    return {"code": code, "expires_at": expires_at}


@section.post("/pairing/accept")
@by(ANYONE)
@takes(shapes.Acceptance)
@gives(shapes.PairedAnswer, 201)
@refuses(NotFound, TooOften)
def accept(body: dict[str, str], now: int) -> dict[str, Any]:
    """Use up an invitation or code and pair this phone; the answer sets a cookie."""
    paired = pairing.accept(
        body.get("secret"), body.get("code"), body["device_name"], address(), now
    )
    sessions.remember_device(paired.token)
    return _paired(paired)


@section.post("/unpair")
@by(DEVICE)
@gives(None)
def unpair(device: DeviceSeen, now: int) -> None:
    """Give up this phone's pairing; what it stored stays."""
    pairing.unpair(device, now)
    sessions.forget_device()


@section.post("/device/renew")
@by(DEVICE)
@gives(shapes.DeviceRenewed, 201)
def renew(device: DeviceSeen, now: int) -> dict[str, str]:
    """Take a new device id, for a phone whose numbers a copy of itself has used."""
    renewed = devices.renew(device, now)
    sessions.remember_device(renewed.token)
    return {"device": renewed.device, "epoch": renewed.epoch}


def _paired(paired: pairing.Paired) -> dict[str, Any]:
    invited = paired.invited
    return {
        "device": paired.device,
        "athlete": {"id": invited.athlete_id, "name": invited.athlete},
        "coach": invited.coach,
        "epoch": paired.epoch,
        "cursor": 0,
    }
