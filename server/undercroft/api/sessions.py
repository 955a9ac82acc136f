"""Who is asking: random reference tokens in cookies that scripts cannot read.

A cookie carries the `__Host-` prefix, and is Secure, where the server's origin is https. On plain
http (a laptop at home, tests) browsers would refuse such a cookie, so it goes without.
"""

from flask import after_this_request, request
from werkzeug import Response

from undercroft.api.context import origin, settings
from undercroft.api.problems import OtherSite
from undercroft.services import accounts, devices

COACH_COOKIE = "undercroft-coach"
DEVICE_COOKIE = "undercroft-device"
SECURE_PREFIX = "__Host-"


def coach_now(now: int) -> accounts.CoachSeen:
    """The coach who is logged in here. Raises LogInNeeded."""
    return accounts.coach_by_token(_cookie(COACH_COOKIE), now)


def device_now(now: int) -> devices.DeviceSeen:
    """The device that is paired here, which may be revoked. Raises LogInNeeded."""
    return devices.device_by_token(_cookie(DEVICE_COOKIE), now)


def end_coach_here() -> None:
    """A log-in that this browser still has gives way to the one that follows."""
    accounts.end(_cookie(COACH_COOKIE))


def remember_coach(token: str) -> None:
    _set(COACH_COOKIE, token, accounts.LOGIN_MS // 1000)


def remember_device(token: str) -> None:
    _set(DEVICE_COOKIE, token, devices.IDLE_MS // 1000)


def remember_device_longer() -> None:
    """Send the same cookie again, so that the browser keeps it for another term."""
    remember_device(_cookie(DEVICE_COOKIE))


def forget_coach() -> None:
    _set(COACH_COOKIE, "", 0)


def forget_device() -> None:
    _set(DEVICE_COOKIE, "", 0)


def refuse_other_sites() -> None:
    """Let only this site's own pages, or something that is no browser, change anything.

    Browsers say in Sec-Fetch-Site where a request was started; pages cannot forge it. Where it is
    missing (an old browser, or plain http on a local network) Origin is compared instead.
    A request with neither comes from no browser, so it carries no cookie it was tricked to send.
    """
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        allowed = site in ("same-origin", "none")
    else:
        came_from = request.headers.get("Origin")
        allowed = came_from is None or came_from in (origin(), request.host_url.rstrip("/"))
    if not allowed:
        raise OtherSite("another site asked for this", "open Undercroft itself and do it there")


def _name(cookie: str) -> str:
    return SECURE_PREFIX + cookie if settings().secure else cookie


def _cookie(cookie: str) -> str:
    return request.cookies.get(_name(cookie), "")


def _set(cookie: str, value: str, seconds: int) -> None:
    name, secure = _name(cookie), settings().secure

    @after_this_request
    def put(response: Response) -> Response:
        response.set_cookie(
            name, value, max_age=seconds, path="/", secure=secure, httponly=True, samesite="Strict"
        )
        return response
