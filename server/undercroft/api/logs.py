"""One line of JSON per request: what was asked and how it went, never what it was about.

The route is logged and not the address, so neither secrets nor names come into the log.
"""

import json
import logging
import sys
import time
from collections.abc import Iterable
from typing import Any, TextIO

from flask import Flask

from undercroft.services.clock import iso, now_ms

log = logging.getLogger("undercroft.request")


class OneLine(logging.Formatter):
    """A record as one line of JSON."""

    def format(self, record: logging.LogRecord) -> str:
        fields = getattr(record, "fields", None) or {"message": record.getMessage()}
        head = {"time": iso(now_ms()), "level": record.levelname.lower(), "from": record.name}
        return json.dumps({**head, **fields})


def to_stderr() -> None:
    """Send this program's log lines to standard error."""
    send_to(sys.stderr)


def send_to(stream: TextIO, level: int = logging.INFO) -> None:
    """Send this program's log lines to a stream, and nowhere else."""
    handler = logging.StreamHandler(stream)
    handler.setFormatter(OneLine())
    root = logging.getLogger("undercroft")
    root.handlers[:] = [handler]
    root.setLevel(level)
    root.propagate = False


def install(app: Flask) -> None:
    """Write a line for each request, as its answer begins: Flask still knows the request then."""
    inside = app.wsgi_app

    def outside(environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        started = time.perf_counter()

        def begin(status: str, headers: list[tuple[str, str]], *fault: Any) -> Any:
            if log.isEnabledFor(logging.INFO):
                ms = round((time.perf_counter() - started) * 1000, 1)
                log.handle(_record(_fields(environ, status, headers, ms)))
            return start(status, headers, *fault)

        return inside(environ, begin)

    app.wsgi_app = outside  # type: ignore[assignment, method-assign]


def _record(fields: dict[str, object]) -> logging.LogRecord:
    """Made by hand: logging would first look through the stack for who is speaking."""
    record = logging.LogRecord(log.name, logging.INFO, "", 0, "request", None, None)
    record.__dict__["fields"] = fields
    return record


def _fields(
    environ: dict[str, Any], status: str, headers: list[tuple[str, str]], ms: float
) -> dict[str, object]:
    rule = environ["werkzeug.request"].url_rule
    lengths = (int(value) for name, value in headers if name == "Content-Length")
    return {
        "method": environ["REQUEST_METHOD"],
        "route": rule.rule if rule else None,
        "status": int(status[:3]),
        "ms": ms,
        "bytes": next(lengths, None),
    }
