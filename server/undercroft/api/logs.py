"""One line of JSON per request: what was asked and how it went, never what it was about.

The route is logged and not the address, so neither secrets nor names come into the log.
"""

import json
import logging
import sys
import time
from typing import TextIO

from flask import Flask, Response, g, request

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
    @app.before_request
    def _start() -> None:
        g.started = time.perf_counter()

    @app.after_request
    def _line(response: Response) -> Response:
        if log.isEnabledFor(logging.INFO):
            log.handle(_record(_fields(response)))
        return response


def _record(fields: dict[str, object]) -> logging.LogRecord:
    """Made by hand: logging would first look through the stack for who is speaking."""
    record = logging.LogRecord(log.name, logging.INFO, "", 0, "request", None, None)
    record.__dict__["fields"] = fields
    return record


def _fields(response: Response) -> dict[str, object]:
    rule = request.url_rule
    return {
        "method": request.method,
        "route": rule.rule if rule else None,
        "status": response.status_code,
        "ms": round((time.perf_counter() - g.get("started", time.perf_counter())) * 1000, 1),
        "bytes": response.content_length,
    }
