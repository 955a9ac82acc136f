"""The OpenAPI document is true: every route, body, answer and problem of the API is in it."""

import re
from typing import Any

import pytest
from flask import Flask
from jsonschema import Draft202012Validator
from openapi_spec_validator import validate
from tests.api.roles import ROWS
from tests.fixtures import block_data
from tests.people import AtDesk, Phone

from undercroft.api.contract import ANYONE, contract_of


def document_of(app: Flask) -> dict[str, Any]:
    answer = app.test_client().get("/api/v1/openapi.json")
    assert answer.mimetype == "application/json"
    return dict(answer.json)


@pytest.fixture
def document(sqlite_app: Flask) -> dict[str, Any]:
    return document_of(sqlite_app)


def operations(document: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {
        operation["operationId"]: {**operation, "path": path, "method": method}
        for path, methods in document["paths"].items()
        for method, operation in methods.items()
    }


def test_it_is_valid_openapi_3_1(document: dict[str, Any]) -> None:
    validate(document)
    assert document["openapi"] == "3.1.0"


def test_it_has_every_endpoint_and_no_other(document: dict[str, Any]) -> None:
    assert set(operations(document)) == set(ROWS)


def test_every_endpoint_says_in_a_line_what_it_does(document: dict[str, Any]) -> None:
    for name, operation in operations(document).items():
        assert re.fullmatch(r"[A-Z].*[.?]", operation["summary"]), name


def test_every_part_of_a_path_is_declared(document: dict[str, Any]) -> None:
    for name, operation in operations(document).items():
        declared = {p["name"] for p in operation["parameters"] if p["in"] == "path"}
        assert declared == set(re.findall(r"{(\w+)}", operation["path"])), name


def test_every_refusal_that_follows_from_a_header_is_declared(
    sqlite_app: Flask, document: dict[str, Any]
) -> None:
    for name, operation in operations(document).items():
        contract = contract_of(sqlite_app.view_functions[name])
        expected = {"503"}
        if contract.who is not ANYONE:
            expected.add("401")
        if operation["method"] == "post":
            expected |= {"400", "403", "413", "415", "422"}
        if "{" in operation["path"]:
            expected.add("404")
        assert expected <= set(operation["responses"]), name


def test_every_refusal_is_a_problem_document(document: dict[str, Any]) -> None:
    for name, operation in operations(document).items():
        for status in operation["responses"]:
            if int(status) >= 400:
                content = content_of(document, name, status)
                assert list(content) == ["application/problem+json"], (name, status)


def content_of(document: dict[str, Any], name: str, status: str) -> dict[str, Any]:
    """What an endpoint answers with that status; refusals stand among the components."""
    response = operations(document)[name]["responses"][status]
    if "$ref" in response:
        prefix, _, shared = response["$ref"].rpartition("/")
        assert prefix == "#/components/responses"
        response = document["components"]["responses"][shared]
    return dict(response["content"])


def test_whoever_must_be_logged_in_or_paired_is_named(
    sqlite_app: Flask, document: dict[str, Any]
) -> None:
    for name, operation in operations(document).items():
        anyone = contract_of(sqlite_app.view_functions[name]).who is ANYONE
        assert ("security" in operation) is not anyone, name


def checker(document: dict[str, Any], name: str, status: int) -> Draft202012Validator:
    """Validates an answer against its schema, where no field may be missing from the document."""
    (media,) = content_of(document, name, str(status)).values()
    strict = {key: _closed(schema) for key, schema in document["components"]["schemas"].items()}
    return Draft202012Validator({**media["schema"], "components": {"schemas": strict}})


def _closed(schema: dict[str, Any]) -> dict[str, Any]:
    """With every declared field needed, and no other allowed."""
    if schema.get("type") != "object" or not schema.get("properties"):
        return schema
    optional = {"problem", "revoked", "errors"}
    needed = sorted(set(schema["properties"]) - optional)
    return {**schema, "required": needed, "additionalProperties": False}


def test_answers_are_what_the_document_says(
    coach: AtDesk, athlete: str, device: Phone, second_device: Phone
) -> None:
    document = document_of(coach.app)
    good, bad = device.writes.done("squat.1"), {"v": 2}
    sync = device.sends(good, bad)
    checker(document, "sync.sync", 200).validate(sync.json)
    second_device.cursor = 0
    checker(document, "sync.sync", 200).validate(second_device.sends().json)
    checker(document, "sync.take_snapshot", 200).validate(device.get("/snapshot").json)
    checker(document, "held.list_held", 200).validate(
        coach.get(f"/desk/athletes/{athlete}/held").json
    )
    checker(document, "coach.log_ins", 200).validate(coach.get("/coach/log-ins").json)
    checker(document, "desk.list_devices", 200).validate(
        coach.get(f"/desk/athletes/{athlete}/devices").json
    )
    checker(document, "desk.invite", 201).validate(
        coach.post(f"/desk/athletes/{athlete}/invitations").json
    )
    checker(document, "desk.list_invitations", 200).validate(
        coach.get(f"/desk/athletes/{athlete}/invitations").json
    )
    checker(document, "coach.log_in", 401).validate(
        coach.post("/coach/log-in", {"email": "a@b", "password": "c"}).json
    )


@pytest.mark.parametrize("name", ["entry"])
def test_a_published_schema_is_a_valid_schema(sqlite_app: Flask, name: str) -> None:
    answer = sqlite_app.test_client().get(f"/api/v1/schemas/{name}")
    assert answer.mimetype == "application/schema+json"
    Draft202012Validator.check_schema(answer.get_json(force=True))


def test_an_unknown_schema_names_those_there_are(sqlite_app: Flask) -> None:
    answer = sqlite_app.test_client().get("/api/v1/schemas/nothing")
    assert answer.status_code == 404
    assert "entry" in answer.json["detail"]


def test_a_block_is_exported_as_one_of_the_types_that_the_document_names(
    coach: AtDesk,
) -> None:
    block = coach.post("/desk/blocks", {"document": block_data()}).json["id"]
    named = operations(document_of(coach.app))["blocks.export_block"]["responses"]["200"]["content"]
    sent = {
        coach.get(f"/desk/blocks/{block}/export?format={form}").mimetype for form in ("json", "csv")
    }
    assert sent == set(named)
