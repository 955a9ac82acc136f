"""The OpenAPI document fuzzed: whatever is asked, the answer is one that the document promises."""

from typing import Any

import pytest
import schemathesis
from flask import Flask
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)
from tests.api.roles import ROWS
from tests.people import AtDesk, Clock, Phone, enlist

from undercroft.services.clock import HOUR_MS

CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_schema_conformance,
]

FUZZING = settings(
    max_examples=30,
    deadline=None,
    database=None,
    derandomize=True,
    phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)


@pytest.fixture
def operations(sqlite_app: Flask) -> dict[str, Any]:
    """By operationId, as the published document has them."""
    schema = schemathesis.openapi.from_wsgi("/api/v1/openapi.json", sqlite_app)
    found = [result.ok() for result in schema.get_all_operations()]
    return {operation.definition.raw["operationId"]: operation for operation in found}


@pytest.mark.slow
@pytest.mark.parametrize("endpoint", sorted(set(ROWS) - {"about.openapi_document"}))
def test_no_answer_is_a_surprise(
    endpoint: str, operations: dict[str, Any], sqlite_app: Flask, clock: Clock
) -> None:
    """Asked by a coach and a phone at once: both cookies are sent."""
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    phone = coach.pairs_phone(coach.adds_athlete("Runa Falk"))

    @FUZZING
    @given(case=operations[endpoint].as_strategy(), own=st.booleans())
    def ask(case: Any, own: bool) -> None:
        clock.passes(HOUR_MS)
        if own and "athlete_id" in case.path_parameters:
            case.path_parameters["athlete_id"] = phone.athlete_id
        case.call_and_validate(
            cookies=cookies(coach, phone), headers={"Accept-Encoding": "identity"}, checks=CHECKS
        )

    ask()


def cookies(coach: AtDesk, phone: Phone) -> dict[str, str]:
    found = {}
    for name, browser in (("coach", coach.browser), ("device", phone.browser)):
        cookie = browser.get_cookie(f"undercroft-{name}")
        assert cookie is not None
        found[cookie.key] = cookie.value
    return found
