"""One shape for everything that goes wrong: RFC 9457 problem documents."""

import logging
import traceback
from dataclasses import dataclass
from typing import Any

from flask import Flask, Response, json
from marshmallow import ValidationError
from werkzeug.exceptions import HTTPException

from undercroft.documents.faults import Fault, FaultyDocument, faults_of
from undercroft.services import refusals
from undercroft.services.connections import DatabaseFault, UnknownAthlete, is_full

log = logging.getLogger("undercroft.problem")


@dataclass(frozen=True, slots=True)
class Problem:
    status: int
    name: str
    title: str

    @property
    def type(self) -> str:
        return f"urn:undercroft:problem:{self.name}"


class BadBody(refusals.Refusal):
    """The body is no JSON that could be read."""


class WrongMedia(refusals.Refusal):
    """The body is not of the type or encoding that is taken here."""


class OtherSite(refusals.Refusal):
    """Another site made the browser ask."""


PROBLEMS: dict[type[refusals.Refusal], Problem] = {
    BadBody: Problem(400, "bad-body", "The body cannot be read"),
    refusals.Revoked: Problem(401, "revoked", "This device is no longer paired"),
    refusals.Erased: Problem(401, "erased", "This athlete was erased"),
    refusals.CodeNeeded: Problem(401, "code-needed", "A code is wanted as well"),
    refusals.LogInNeeded: Problem(401, "log-in-needed", "Log in or pair first"),
    OtherSite: Problem(403, "other-site", "Not from another site"),
    refusals.NotAllowed: Problem(403, "not-allowed", "Not allowed"),
    refusals.NotFound: Problem(404, "not-found", "Not found"),
    refusals.Conflict: Problem(409, "conflict", "Changed or used up meanwhile"),
    refusals.TooLarge: Problem(413, "too-large", "Too much at once"),
    WrongMedia: Problem(415, "wrong-media", "Not of the type that is taken here"),
    refusals.Invalid: Problem(422, "invalid", "Understood, but cannot be used"),
    refusals.TooOften: Problem(429, "too-often", "Tried too often"),
    refusals.Unavailable: Problem(503, "unavailable", "Not now"),
}
"""Every refusal and how it goes out; a subclass stands before its base."""


def problem_of(kind: type[refusals.Refusal]) -> Problem:
    return next(problem for refusal, problem in PROBLEMS.items() if issubclass(kind, refusal))


def answer(
    problem: Problem,
    detail: str,
    faults: tuple[Fault, ...] = (),
    retry_after_s: int | None = None,
) -> Response:
    body: dict[str, Any] = {
        "type": problem.type,
        "title": problem.title,
        "status": problem.status,
        "detail": detail,
    }
    if faults:
        body["errors"] = [
            {"where": f.where, "path": f.path, "what": f.what, "right": f.right} for f in faults
        ]
    response = Response(
        json.dumps(body), status=problem.status, content_type="application/problem+json"
    )
    if retry_after_s is not None:
        response.headers["Retry-After"] = str(retry_after_s)
    return response


def install(app: Flask) -> None:
    """Turn every exception into a problem document."""
    app.register_error_handler(refusals.Refusal, _refusal)
    app.register_error_handler(FaultyDocument, _faulty)
    app.register_error_handler(ValidationError, _invalid)
    app.register_error_handler(UnknownAthlete, lambda _: _refusal(refusals.NotFound()))
    app.register_error_handler(DatabaseFault, _database)
    app.register_error_handler(HTTPException, _http)
    app.register_error_handler(Exception, _fault)


def _refusal(refused: refusals.Refusal) -> Response:
    detail = f"{refused.what}; {refused.right}" if refused.right else refused.what
    wait = getattr(refused, "retry_after_s", None)
    return answer(problem_of(type(refused)), detail, refused.faults, wait)


def _faulty(fault: FaultyDocument) -> Response:
    count = len(fault.faults)
    detail = f"{count} thing{'s' if count > 1 else ''} to correct: {fault}"
    return answer(PROBLEMS[refusals.Invalid], detail, fault.faults)


def _invalid(fault: ValidationError) -> Response:
    return _faulty(FaultyDocument(faults_of(fault.messages, fault.data)))


def _database(fault: DatabaseFault) -> Response:
    """Nothing was stored: every write is one transaction."""
    log.error("database %s", type(fault).__name__)
    what = "the server's disk is full" if is_full(fault) else "the database did not answer"
    return _refusal(refusals.Unavailable(f"{what}, and nothing was stored"))


def _http(fault: HTTPException) -> Response:
    status = fault.code or 500
    name = fault.name.lower().replace(" ", "-")
    response = answer(Problem(status, name, fault.name), fault.description or fault.name)
    for header, value in fault.get_headers():
        if header not in ("Content-Type", "Content-Length"):
            response.headers[header] = value
    return response


def _fault(fault: Exception) -> Response:
    """A fault of ours. The log says where, but not what was in hand: that may be health data."""
    place = traceback.extract_tb(fault.__traceback__)[-1]
    log.error("fault %s at %s:%s", type(fault).__name__, place.filename, place.lineno)
    return answer(
        Problem(500, "fault", "A fault of the server"),
        "the server met a fault of its own and has noted it; nothing was stored",
    )
