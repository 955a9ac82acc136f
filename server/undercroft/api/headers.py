"""Headers on every answer: what pages may do, what may be kept, that it is us who answer."""

import gzip
from collections.abc import Callable, Iterable
from typing import Any

from flask import Flask, Response, request

CONTENT_SECURITY_POLICY = "; ".join(
    (
        "default-src 'none'",
        "object-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "media-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
        "require-trusted-types-for 'script'",
        "trusted-types undercroft",
    )
)

PERMISSIONS_POLICY = (
    "screen-wake-lock=(self), camera=(self), microphone=(), geolocation=(), payment=(), usb=(),"
    " serial=(), midi=(), display-capture=(), browsing-topics=()"
)

EVERYWHERE = {
    "Content-Security-Policy": CONTENT_SECURITY_POLICY,
    "Permissions-Policy": PERMISSIONS_POLICY,
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}

STRICT_TRANSPORT = "max-age=63072000; includeSubDomains"
PROTOCOL = "1"
SMALLEST_ZIPPED = 860
"""Below this many bytes a zipped answer saves no packet (common practice)."""

ZIPPED_TYPES = ("application/json", "application/problem+json", "application/manifest+json",
                "text/", "image/svg+xml")  # fmt: skip


def install(app: Flask, *, secure: bool) -> None:
    """`secure`: people reach this server by https."""
    app.after_request(_zip)
    strict = {"Strict-Transport-Security": STRICT_TRANSPORT} if secure else {}
    app.wsgi_app = _adding([*EVERYWHERE.items(), *strict.items()], app.wsgi_app)  # type: ignore[method-assign]


def _adding(always: list[tuple[str, str]], inside: Callable[..., Iterable[bytes]]) -> Any:
    """The application with these headers on whatever it answers, faults of the framework among it.

    Around Flask and not within: a list is longer by eight in no time.
    """
    # A captive portal answers 200 as well, but not with this: phones look for it.
    of_the_api = [*always, ("Undercroft", PROTOCOL)]

    def outside(environ: dict[str, Any], start: Callable[..., Any]) -> Iterable[bytes]:
        def begin(status: str, headers: list[tuple[str, str]], *fault: Any) -> Any:
            if not environ["PATH_INFO"].startswith("/api/"):
                return start(status, headers + always, *fault)
            if not any(name == "Cache-Control" for name, _ in headers):
                headers.append(("Cache-Control", "no-store"))
            return start(status, headers + of_the_api, *fault)

        return inside(environ, begin)

    return outside


def _zip(response: Response) -> Response:
    if not _worth_zipping(response):
        return response
    response.direct_passthrough = False
    response.set_data(gzip.compress(response.get_data(), 6, mtime=0))
    response.headers["Content-Encoding"] = "gzip"
    response.vary.add("Accept-Encoding")
    tag, weak = response.get_etag()
    if tag and not weak:
        response.set_etag(tag, weak=True)
    return response


def _worth_zipping(response: Response) -> bool:
    """Cheapest question first: most answers are short."""
    length = response.content_length
    return (
        (length is None or length >= SMALLEST_ZIPPED)
        and response.status_code == 200
        and request.method in ("GET", "POST")
        and "Content-Encoding" not in response.headers
        and (response.mimetype or "").startswith(ZIPPED_TYPES)
        and request.accept_encodings["gzip"] > 0
    )
