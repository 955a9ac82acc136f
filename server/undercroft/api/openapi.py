"""The OpenAPI 3.1 document, made from the contracts in the endpoints' headers."""

import re
from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from flask import Flask
from werkzeug.routing import Rule

from undercroft import __version__
from undercroft.api import problems, shapes
from undercroft.api.contract import Contract, Who, contract_of
from undercroft.api.problems import BadBody, OtherSite, WrongMedia
from undercroft.api.reading import FILE_MEDIA
from undercroft.api.sessions import COACH_COOKIE, DEVICE_COOKIE
from undercroft.documents.json_schema import component_name, teach
from undercroft.services import refusals
from undercroft.services.refusals import Refusal
from undercroft.services.rights import Right

ABOUT = (
    "Undercroft carries a coach's program to athletes who train without a network. Phones speak "
    "`sync` and `snapshot`; the desk speaks the rest. Every answer of the API has the header "
    "`Undercroft: 1`; everything that goes wrong is a problem document (RFC 9457)."
)


def document(app: Flask) -> dict[str, Any]:
    """Every endpoint of the app with body, answer and refusals."""
    plugin = MarshmallowPlugin(schema_name_resolver=component_name)
    spec = APISpec(
        title="Undercroft",
        version=__version__,
        openapi_version="3.1.0",
        info={"description": ABOUT},
        plugins=[plugin],
    )
    teach(plugin)
    _security(spec)
    _problems(spec)
    for rule in sorted(app.url_map.iter_rules(), key=lambda r: r.rule):
        view = app.view_functions[rule.endpoint]
        if hasattr(view, "contract"):
            _add(spec, rule, view.__doc__ or "", contract_of(view))
    found: dict[str, Any] = spec.to_dict()
    return found


def refusals_of(contract: Contract, has_path: bool) -> list[type[Refusal]]:
    """Every refusal that can come: those that follow from the header, and those it names."""
    kinds: list[type[Refusal]] = [refusals.Unavailable]
    if contract.who is not Who.ANYONE:
        kinds.append(refusals.LogInNeeded)
    if contract.changes:
        kinds += [BadBody, OtherSite, refusals.TooLarge, WrongMedia, refusals.Invalid]
    if contract.query is not None:
        kinds.append(refusals.Invalid)
    if has_path:
        kinds.append(refusals.NotFound)
    if contract.needs not in (None, Right.READ):
        kinds.append(refusals.NotAllowed)
    return kinds + contract.refusals


def _add(spec: APISpec, rule: Rule, doc: str, contract: Contract) -> None:
    summary, _, description = doc.strip().partition("\n")
    operation: dict[str, Any] = {
        "operationId": rule.endpoint,
        "tags": [rule.endpoint.split(".")[0]],
        "summary": summary,
        "parameters": _parameters(rule, contract),
        "responses": _responses(contract, bool(rule.arguments)),
    }
    if description.strip():
        operation["description"] = re.sub(r"\n\s+", "\n", description.strip())
    if contract.changes:
        operation["requestBody"] = {"required": True, "content": _body(contract)}
    if contract.who is not Who.ANYONE:
        operation["security"] = [{"coach" if contract.who is Who.COACH else "device": []}]
    method = "post" if "POST" in (rule.methods or ()) else "get"
    spec.path(re.sub(r"<(?:\w+:)?(\w+)>", r"{\1}", rule.rule), operations={method: operation})


def _body(contract: Contract) -> dict[str, Any]:
    if contract.body is None:
        return {FILE_MEDIA: {"schema": {"type": "string", "format": "binary"}}}
    return {"application/json": {"schema": contract.body}}


def _parameters(rule: Rule, contract: Contract) -> list[dict[str, Any]]:
    path: list[dict[str, Any]] = [
        {"in": "path", "name": name, "required": True, "schema": _path_schema(rule, name)}
        for name in sorted(rule.arguments)
    ]
    return path + ([{"in": "query", "schema": contract.query}] if contract.query else [])


def _path_schema(rule: Rule, name: str) -> dict[str, Any]:
    whole = f"<int:{name}>" in rule.rule
    return {"type": "integer", "minimum": 0} if whole else {"type": "string", "minLength": 1}


def _responses(contract: Contract, has_path: bool) -> dict[str, Any]:
    media = contract.media or (() if contract.answer is None else ("application/json",))
    if media:
        content: dict[str, Any] = {one: {"schema": contract.answer or {}} for one in media}
        good = {"description": "Done", "content": content}
        found: dict[str, Any] = {str(contract.status): good}
    else:
        found = {"200" if contract.plain else "204": {"description": "Done"}}
    for kind in refusals_of(contract, has_path):
        problem = problems.problem_of(kind)
        found[str(problem.status)] = {"$ref": f"#/components/responses/{problem.name}"}
    return found


def _problems(spec: APISpec) -> None:
    """Each refusal once, by its name; endpoints refer to it."""
    spec.components.schema("Problem", schema=shapes.ProblemDocument)
    content = {"application/problem+json": {"schema": {"$ref": "#/components/schemas/Problem"}}}
    for problem in problems.PROBLEMS.values():
        told = {"description": problem.title, "content": content}
        spec.components.response(problem.name, told)


def _security(spec: APISpec) -> None:
    for name, cookie in (("coach", COACH_COOKIE), ("device", DEVICE_COOKIE)):
        scheme = {"type": "apiKey", "in": "cookie", "name": cookie}
        spec.components.security_scheme(name, scheme)
