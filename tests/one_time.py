"""A coach's app that makes one-time codes."""

import hashlib
import hmac
from base64 import b32decode
from typing import Any

from tests.people import PASSWORD, AtDesk

from undercroft.api.context import NAME

STEP_MS = 30_000


def code_at(secret: str, ms: int) -> str:
    """RFC 6238 of the standard library alone: what the server's answer is held against."""
    counter = (ms // STEP_MS).to_bytes(8, "big")
    digest = hmac.digest(b32decode(secret), counter, hashlib.sha1)
    start = digest[-1] & 15
    number = int.from_bytes(digest[start : start + 4], "big") & 0x7FFFFFFF
    return f"{number % 10**6:06}"


def begun_factor(desk: AtDesk) -> dict[str, Any]:
    """What turns on a second factor that the coach has just begun."""
    secret = desk.post("/coach/second-factor/begin").json["secret"]
    return {"password": PASSWORD, "code": code_at(secret, desk.app.extensions[NAME].clock())}


def turns_factor_on(desk: AtDesk) -> list[str]:
    """The recovery codes of a second factor that the coach turns on."""
    answer = desk.post("/coach/second-factor/on", begun_factor(desk))
    assert answer.status_code == 200, answer.text
    return list(answer.json["codes"])
