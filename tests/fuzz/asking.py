"""Ask one endpoint many times, as one person, from one seed; keep every answer that surprises.

What is asked is drawn from the served OpenAPI document, for it and against it, and from a body
that is right with a few places spoiled.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import parse_qsl

import schemathesis
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import seed as from_seed
from hypothesis import strategies as st
from schemathesis import GenerationMode
from schemathesis.checks import not_a_server_error
from schemathesis.core.failures import FailureGroup
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)
from tests.api.roles import NOBODY, OWNER, PHONE, READER, ROWS, WRITER
from tests.fuzz.spoiling import spoiled, spoiled_file
from tests.fuzz.stage import Stage

from undercroft.services.clock import HOUR_MS

CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_schema_conformance,
]
ROLES = (OWNER, READER, WRITER, PHONE, NOBODY)
ENDPOINTS = sorted(set(ROWS) - {"about.openapi_document"})
LAST = ("leaving.erase_athlete", "sharing.leave_athlete")
"""Once done, whoever did it has nothing more to do with the athlete."""


@dataclass(frozen=True)
class Round:
    """So many cases of one endpoint as one role. The same round asks the same."""

    endpoint: str
    role: str
    seed: int
    cases: int

    def __str__(self) -> str:
        return (
            f"python -m tests.fuzz --endpoint {self.endpoint} --role '{self.role}'"
            f" --seed {self.seed} --cases {self.cases}"
        )


@dataclass(frozen=True)
class Surprise:
    """An answer that the document does not promise, or none at all; `request` can be pasted."""

    round: Round
    case: int
    what: str
    request: str

    def __str__(self) -> str:
        return (
            f"{self.round.endpoint} as {self.round.role}, case {self.case}: {self.what}\n"
            f"  {self.request}\n  again: {self.round}"
        )


@dataclass
class Heard:
    """What came of a round: how many answers of each status, and the surprises."""

    statuses: Counter[int] = field(default_factory=Counter)
    surprises: list[Surprise] = field(default_factory=list)

    @property
    def cases(self) -> int:
        return self.statuses.total()

    def add(self, more: "Heard") -> None:
        self.statuses += more.statuses
        self.surprises += more.surprises


def may_ask(endpoint: str, role: str) -> bool:
    """Whether this person may do it; else a few questions are enough."""
    return ROWS[endpoint].expected(role) not in (401, 403)


def operations(app: Flask) -> dict[str, Any]:
    """By operationId, as the published document has them."""
    schema = schemathesis.openapi.from_wsgi("/api/v1/openapi.json", app)
    found = [result.ok() for result in schema.get_all_operations()]
    return {operation.definition.raw["operationId"]: operation for operation in found}


def ask(stage: Stage, operation: Any, one: Round) -> Heard:
    """Every case of a round, an hour apart, against the squad as it was."""
    stage.put_back()
    heard = Heard()
    cases = _cases(stage, operation, one)

    @settings(
        max_examples=one.cases,
        deadline=None,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @from_seed(one.seed)
    @given(case=cases)
    def every(case: Any) -> None:
        stage.clock.passes(HOUR_MS)
        _one(stage, one, case, heard)

    every()
    return heard


def _cases(stage: Stage, operation: Any, one: Round) -> st.SearchStrategy[Any]:
    row, scene = ROWS[one.endpoint], stage.scene
    right = {name: fill(scene) for name, fill in row.path.items()}
    right["athlete_id"] = scene.athlete_id
    path = {name: right[name] for name in _names(operation) & right.keys()}
    there = _at(operation.as_strategy(), path)
    ways = [operation.as_strategy(), there, there]
    if operation.body or operation.query:
        ways.append(_at(operation.as_strategy(generation_mode=GenerationMode.NEGATIVE), path))
    if operation.body:
        body = row.body_for(scene, one.role)
        file = isinstance(body, bytes)
        about = {"path_parameters": path, "query": dict(parse_qsl(row.query.lstrip("?")))}
        media = "application/octet-stream" if file else "application/json"
        nearly = (spoiled_file if file else spoiled)(body).map(
            lambda body: operation.Case(**about, body=body, media_type=media)
        )
        ways += [nearly] * len(ways)
    return st.one_of(ways)


def _names(operation: Any) -> set[str]:
    return {parameter.name for parameter in operation.path_parameters}


def _at(cases: st.SearchStrategy[Any], path: Mapping[str, Any]) -> st.SearchStrategy[Any]:
    """The same cases of what exists."""

    def there(case: Any) -> Any:
        case.path_parameters = {**case.path_parameters, **path}
        return case

    return cases.map(there)


def _one(stage: Stage, one: Round, case: Any, heard: Heard) -> None:
    try:
        answer = case.call(
            cookies=_cookies(stage.scene.browser_of(one.role)),
            headers={"Accept-Encoding": "identity"},
        )
        heard.statuses[answer.status_code] += 1
        if _over(answer.status_code, one):
            stage.put_back()
        case.validate_response(answer, checks=CHECKS)
    except (Exception, FailureGroup) as fault:
        told = " ".join(str(part) for part in getattr(fault, "exceptions", None) or [fault])
        heard.surprises.append(
            Surprise(one, heard.cases, f"{type(fault).__name__}: {told[:600]}", _pasted(case))
        )


def _over(status: int, one: Round) -> bool:
    """It logged out, unpaired, left or erased, and would be refused from now on."""
    if status == 401:
        return may_ask(one.endpoint, one.role)
    return status == 204 and one.endpoint in LAST


def _cookies(browser: FlaskClient) -> dict[str, str]:
    found = {name: browser.get_cookie(f"undercroft-{name}") for name in ("coach", "device")}
    return {cookie.key: cookie.value for cookie in found.values() if cookie is not None}


def _pasted(case: Any) -> str:
    try:
        return str(case.as_curl_command())[:3000]
    except Exception as fault:
        return f"{case.method} {case.path} {case.path_parameters!r} {case.body!r} ({fault})"[:3000]
