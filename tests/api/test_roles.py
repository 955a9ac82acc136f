"""Each endpoint as coach, coaches with rights and without, athletes, revoked device, nobody."""

from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from tests.api.roles import (
    NOBODY,
    OTHER_COACH,
    OTHER_PHONE,
    OWNER,
    PHONE,
    READER,
    REVOKED,
    ROWS,
    WRITER,
    Row,
    Scene,
)
from tests.people import AtDesk, Phone
from tests.storing import everything
from werkzeug.routing import Rule

from undercroft.api.contract import contract_of

# Those who are refused come first, so that what they try is still there to be spoiled.
ROLES = (NOBODY, REVOKED, OTHER_PHONE, OTHER_COACH, READER, PHONE, WRITER, OWNER)


@pytest.fixture
def scene(
    coach: AtDesk,
    reading_coach: AtDesk,
    writing_coach: AtDesk,
    other_coach: AtDesk,
    athlete: str,
    device: Phone,
    other_device: Phone,
    client: FlaskClient,
) -> Scene:
    revoked = coach.pairs_phone(athlete, "a lost phone")
    coach.revokes(revoked)
    coaches = (coach, reading_coach, writing_coach, other_coach)
    return Scene(*coaches, athlete, device, other_device, revoked, client)


def rules(app: Flask) -> dict[str, Rule]:
    """By endpoint, all that the API has; the screens' files are anybody's."""
    return {r.endpoint: r for r in app.url_map.iter_rules() if r.endpoint != "web.page"}


def test_every_endpoint_has_a_row_that_agrees_with_its_contract(sqlite_app: Flask) -> None:
    declared = {
        endpoint: contract_of(sqlite_app.view_functions[endpoint]).who
        for endpoint in rules(sqlite_app)
    }
    assert declared == {endpoint: row.who for endpoint, row in ROWS.items()}


def test_every_endpoint_reads_by_get_or_changes_by_post(sqlite_app: Flask) -> None:
    methods = {
        tuple(sorted((rule.methods or set()) - {"HEAD", "OPTIONS"}))
        for rule in rules(sqlite_app).values()
    }
    assert methods == {("GET",), ("POST",)}


@pytest.mark.parametrize("endpoint", ROWS)
def test_each_role_gets_what_its_row_says(endpoint: str, app: Flask, scene: Scene) -> None:
    row, rule = ROWS[endpoint], rules(app)[endpoint]
    for role in ROLES:
        path, body = _address(rule, row, scene), row.body_for(scene, role)
        before = everything()
        answer = _ask(scene.browser_of(role), rule, path, body)
        expected = row.expected(role)
        assert answer.status_code == expected, f"{role}: {answer.text}"
        if expected in (401, 403, 404):
            assert answer.mimetype == "application/problem+json"
            assert everything() == before, f"{role} was refused and yet changed something"


def _address(rule: Rule, row: Row, scene: Scene) -> str:
    parts: dict[str, Any] = {name: fill(scene) for name, fill in row.path.items()}
    if "athlete_id" in rule.arguments:
        parts["athlete_id"] = scene.athlete_id
    path = rule.rule
    for name, value in parts.items():
        path = path.replace(f"<int:{name}>", str(value)).replace(f"<{name}>", str(value))
    assert "<" not in path, f"the row of {rule.endpoint} does not fill {path}"
    return path + row.query


def _ask(browser: FlaskClient, rule: Rule, path: str, body: Any) -> Any:
    if isinstance(body, bytes):
        return browser.post(path, data=body, content_type="application/octet-stream")
    if "POST" in (rule.methods or ()):
        return browser.post(path, json=body)
    return browser.get(path)
