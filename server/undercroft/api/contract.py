"""An endpoint's header is its whole contract; its body is the one service call.

    desk = Section("desk", "/api/v1/desk")

    @desk.post("/athletes/<athlete_id>/codes")
    @by(COACH)
    @takes(CodeRequest)
    @gives(CodeAnswer, 201)
    @refuses(Conflict)
    def make_code(coach, athlete_id, body, now):
        '''Make a code that the athlete can type.'''
        return pairing.make_code(athlete_id, now)

A function names what it wants among `coach`, `device`, `body`, `query`, `now` and the parts of its
path. The first line of its docstring is the published reference. Where a coach's path holds an
`athlete_id`, it needs the right to read for GET and to write for POST, or what `@needs` says; where
it holds one of the names in OWNED, that is checked to be the coach's. Both before anything is read.
"""

import inspect
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, field
from enum import StrEnum
from functools import wraps
from typing import Any

from flask import Blueprint, Response, current_app, request
from marshmallow import RAISE, Schema

from undercroft.api import context, sessions
from undercroft.api.reading import read_file, read_json
from undercroft.services import blocks, rights
from undercroft.services.refusals import NotFound, Refusal, Revoked
from undercroft.services.rights import READ, WRITE, Right

View = Callable[..., Any]
MOST_BYTES = 256 * 1024


class Who(StrEnum):
    """Who may ask."""

    ANYONE = "anyone"
    COACH = "coach"
    DEVICE = "device"
    ANY_DEVICE = "device, revoked or not"


ANYONE, COACH, DEVICE, ANY_DEVICE = Who.ANYONE, Who.COACH, Who.DEVICE, Who.ANY_DEVICE

OWNED: dict[str, Callable[[str, str], object]] = {
    "block_id": blocks.block_of,
}
"""By name in a path: a check (coach id, the id) that raises NotFound for another coach's."""


class Empty(Schema):
    """A body that says nothing: {}."""

    class Meta:
        unknown = RAISE


@dataclass(slots=True)
class Contract:
    """What an endpoint asks and promises; filled by the decorators below, fixed by a Section."""

    who: Who | None = None
    needs: Right | None = None
    body: Schema | None = None
    file: bool = False
    most_bytes: int = MOST_BYTES
    query: Schema | None = None
    answer: Schema | None = None
    status: int = 200
    plain: bool = False
    media: tuple[str, ...] = ()
    refusals: list[type[Refusal]] = field(default_factory=list)

    @property
    def changes(self) -> bool:
        """Only what has a body changes anything."""
        return self.file or self.body is not None


def contract_of(view: View) -> Contract:
    """The contract of a view, begun here if it has none yet."""
    if not hasattr(view, "contract"):
        view.contract = Contract()  # type: ignore[attr-defined]
    found: Contract = view.contract  # type: ignore[attr-defined]
    return found


def by(who: Who) -> Callable[[View], View]:
    """Who may ask. Every endpoint says it."""
    return _note(who=who)


def needs(right: Right) -> Callable[[View], View]:
    """The right to the athlete in the path, where it is not the usual one of the method."""
    return _note(needs=right)


def takes(body: type[Schema], most_bytes: int = MOST_BYTES) -> Callable[[View], View]:
    """The schema of the JSON body; unknown fields are refused."""
    return _note(body=body(unknown=RAISE), most_bytes=most_bytes)


def takes_file(most_bytes: int) -> Callable[[View], View]:
    """The body is a file as it is; the function gets its bytes."""
    return _note(file=True, most_bytes=most_bytes)


def asks(query: type[Schema]) -> Callable[[View], View]:
    """The schema of the query string."""
    return _note(query=query(unknown=RAISE))


def gives(
    answer: type[Schema] | Schema | None, status: int = 200, *, plain: bool = False
) -> Callable[[View], View]:
    """The schema of the answer; None for an empty one.

    plain: the function returns finished JSON data, and the schema only describes it.
    """
    made = answer() if isinstance(answer, type) else answer
    return _note(answer=made, status=status, plain=plain)


def sends(*media: str) -> Callable[[View], View]:
    """The function returns a Response of its own, of one of these media types."""
    return _note(media=media)


def refuses(*kinds: type[Refusal]) -> Callable[[View], View]:
    """Refusals beyond those that follow from the rest of the header."""

    def add(view: View) -> View:
        contract_of(view).refusals.extend(kinds)
        return view

    return add


def _note(**facts: Any) -> Callable[[View], View]:
    def note(view: View) -> View:
        for name, value in facts.items():
            setattr(contract_of(view), name, value)
        return view

    return note


class Section:
    """A group of endpoints under one path: a Flask blueprint that insists on contracts."""

    def __init__(self, name: str, prefix: str) -> None:
        self.prefix = prefix
        self.blueprint = Blueprint(name, __name__, url_prefix=prefix)

    def get(self, path: str) -> Callable[[View], View]:
        return self._route(path, "GET")

    def post(self, path: str) -> Callable[[View], View]:
        return self._route(path, "POST")

    def _route(self, path: str, method: str) -> Callable[[View], View]:
        def register(view: View) -> View:
            contract = contract_of(view)
            if contract.who is None or not view.__doc__:
                raise TypeError(f"{view.__name__} needs @by(...) and a docstring")
            if method == "POST" and contract.body is None and not contract.file:
                contract.body = Empty()
            if contract.who is COACH and "<athlete_id>" in f"{self.prefix}{path}":
                contract.needs = contract.needs or (READ if method == "GET" else WRITE)
            self.blueprint.add_url_rule(
                path, view.__name__, _bound(view, contract), methods=[method]
            )
            return view

        return register


def _bound(view: View, contract: Contract) -> View:
    wanted = frozenset(inspect.signature(view).parameters)

    @wraps(view)
    def endpoint(**path: Any) -> Response:
        given = _who(contract, path)
        given["now"] = context.now()
        if contract.changes:
            sessions.refuse_other_sites()
            given["body"] = _body(contract)
        if contract.query is not None:
            given["query"] = contract.query.load(request.args.to_dict())
        known = {name: value for name, value in given.items() if name in wanted}
        named = {name: part for name, part in path.items() if name in wanted}
        with _right_kept(contract, given, path):
            result = view(**known, **named)
        return _answer(result, contract)

    return endpoint


def _body(contract: Contract) -> Any:
    if contract.body is None:
        return read_file(request, contract.most_bytes)
    return contract.body.load(read_json(request, contract.most_bytes))


def _who(contract: Contract, path: dict[str, Any]) -> dict[str, Any]:
    """Authorise: who is asking, and what they may do with what the path names."""
    if not all(map(_can_exist, path.values())):
        raise NotFound()
    if contract.who is ANYONE:
        return {}
    if contract.who is COACH:
        coach = sessions.coach_now(context.now())
        if contract.needs is not None:
            rights.require(coach.id, path["athlete_id"], contract.needs)
        for name in OWNED.keys() & path.keys():
            OWNED[name](coach.id, path[name])
        return {"coach": coach}
    device = sessions.device_now(context.now())
    if device.revoked and contract.who is DEVICE:
        raise Revoked("this device was unpaired by the coach", "ask the coach to pair it again")
    return {"device": device}


def _right_kept(
    contract: Contract, given: dict[str, Any], path: dict[str, Any]
) -> AbstractContextManager[None]:
    if contract.needs is None:
        return nullcontext()
    return rights.kept(given["coach"].id, path["athlete_id"], contract.needs)


def _can_exist(part: str | int) -> bool:
    """Databases choke on NUL and on numbers beyond 64 bits; neither names anything here."""
    return part <= 2**53 if isinstance(part, int) else "\x00" not in part


def _answer(result: Any, contract: Contract) -> Response:
    if isinstance(result, Response):
        return result
    if contract.answer is None:
        return Response(status=204)
    data = result if contract.plain else contract.answer.dump(result)
    return Response(
        current_app.json.dumps(data), status=contract.status, content_type="application/json"
    )
