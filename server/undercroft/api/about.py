"""The server about itself: alive, ready, what it offers."""

from typing import Any

from flask import Response, current_app

from undercroft import __version__
from undercroft.api import openapi, shapes
from undercroft.api.contract import ANYONE, Section, by, gives, refuses, sends
from undercroft.api.published import PUBLISHED
from undercroft.services import readiness
from undercroft.services.refusals import NotFound, Unavailable

section = Section("about", "/api/v1")


@section.get("/health")
@by(ANYONE)
@gives(shapes.Health)
def health() -> dict[str, str]:
    """Is the process alive? Asks the database nothing."""
    return {"status": "alive", "version": __version__}


@section.get("/ready")
@by(ANYONE)
@gives(shapes.Health)
@refuses(Unavailable)
def ready() -> dict[str, str]:
    """Can it serve: does the database answer, and has it this program's tables?"""
    readiness.require_ready()
    return {"status": "ready", "version": __version__}


@section.get("/openapi.json")
@by(ANYONE)
@sends("application/json")
def openapi_document() -> Response:
    """This API as an OpenAPI 3.1 document."""
    return _json(openapi.document(current_app), "application/json")


@section.get("/schemas/<name>")
@by(ANYONE)
@sends("application/schema+json")
@refuses(NotFound)
def schema(name: str) -> Response:
    """The JSON Schema of one kind of document."""
    if name not in PUBLISHED:
        raise NotFound(f"no schema has this name; there are {', '.join(sorted(PUBLISHED))}")
    return _json(PUBLISHED[name](), "application/schema+json")


def _json(data: Any, media: str) -> Response:
    return Response(current_app.json.dumps(data), content_type=media)
