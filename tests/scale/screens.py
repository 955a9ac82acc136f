"""What the desk asks when it shows something: one row or more for each endpoint that reads.

A new GET of the desk needs a row here; so does a POST that only works something out.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlencode

from flask import Flask
from tests.api.calculating import CASES
from tests.handing import hand_over_text
from tests.people import AtDesk, Phone
from tests.scale.squad import COACH_EMAIL, COACH_NAME
from werkzeug.routing import Rule

from undercroft.api.context import NAME
from undercroft.api.contract import COACH, contract_of
from undercroft.api.sessions import COACH_COOKIE
from undercroft.documents.canonical import to_json
from undercroft.services import accounts, tokens
from undercroft.services.monitoring.tables import TABLES
from undercroft.store import coaches, database

BUDGET_MS = 150.0
OF_WEEKS_MS = 300.0
"""For unfolding, which works out the whole block with the new weeks: seven weeks here."""

LIFT = "back-squat"
LONGEST_WEEKS = 52


@dataclass(frozen=True)
class Scene:
    """A coach at the desk, the newest block, and whom the requests ask for in turn."""

    coach: AtDesk
    athletes: tuple[str, ...]
    block_id: str
    document: Mapping[str, Any]


Body = Callable[[Scene, str], Any]
"""What is posted, for one of the athletes."""


@dataclass(frozen=True)
class Asked:
    """`words` tell several requests of one endpoint apart; `budget_ms` is of the server's time."""

    words: str = ""
    path: Mapping[str, str] = field(default_factory=dict)
    query: Mapping[str, Any] = field(default_factory=dict)
    body: Body | None = None
    budget_ms: float = BUDGET_MS


@dataclass(frozen=True)
class Request:
    """One request as it goes out."""

    method: str
    path: str
    body: Any


def _for_athlete(scene: Scene, athlete: str) -> dict[str, Any]:
    return {"athlete": athlete, "document": scene.document}


def _rig(scene: Scene, athlete: str) -> Any:
    session = scene.document["weeks"][0]["sessions"][0]
    rig = {"part": "bands", "share_percent": 25}
    exercise = session["exercises"][0]["key"]
    place = {"session": session["key"], "exercise": exercise}
    return {**_for_athlete(scene, athlete), **place, "rig": rig}


def _unfolding(scene: Scene, athlete: str) -> Any:
    week = scene.document["weeks"][0]["key"]
    return {**_for_athlete(scene, athlete), "week": week, "weeks": 4}


def _text(scene: Scene, _: str) -> Any:
    return {"text": to_json(scene.document), "format": "json"}


def _hand_over(scene: Scene, athlete: str) -> Any:
    """Twenty sets that the phone did not get rid of."""
    (device, *_) = scene.coach.get(f"/desk/athletes/{athlete}/devices").json["devices"]
    epoch = "3f1d2c9a-0000-4000-8000-000000000000"
    phone = Phone(scene.coach.browser, device["id"], athlete, epoch)
    return {"text": hand_over_text(phone, "somebody", phone.writes.many(20))}


def _inputs(number: int) -> Body:
    return lambda _scene, _athlete: {"inputs": CASES[number][1]}


def _calculations() -> tuple[Asked, ...]:
    """Each calculator once."""
    first = {key: n for n, (key, *_) in reversed([*enumerate(CASES)])}
    return tuple(Asked(key, path={"key": key}, body=_inputs(n)) for key, n in sorted(first.items()))


def _spans() -> tuple[Asked, ...]:
    return tuple(Asked(f"{n} weeks", query={"weeks": n}) for n in (12, LONGEST_WEEKS))


ROWS: Mapping[str, tuple[Asked, ...]] = {
    "coach.me": (Asked(),),
    "coach.log_ins": (Asked(),),
    "coach.show_factor": (Asked(),),
    "desk.list_athletes": (Asked(),),
    "desk.list_invitations": (Asked(),),
    "desk.list_devices": (Asked(),),
    "exercises.show_catalogue": (Asked(),),
    "exercises.show_exercise": (Asked(path={"key": LIFT}),),
    "exercises.show_for_athlete": (Asked(),),
    "results.show_squad": (Asked(),),
    "results.show_athlete": (Asked(),),
    "results.show_results": (Asked(),),
    "results.show_trend": (Asked(path={"lift": LIFT}),),
    "monitoring.show_load": _spans(),
    "monitoring.show_work": _spans(),
    "monitoring.show_speed": _spans(),
    "monitoring.show_condition": _spans(),
    "monitoring.show_table": tuple(
        Asked(name, path={"table": name}, query={"weeks": LONGEST_WEEKS}) for name in TABLES
    ),
    "blocks.list_blocks": (Asked(),),
    "blocks.show_block": (Asked(),),
    "blocks.export_block": tuple(Asked(form, query={"format": form}) for form in ("json", "csv")),
    "blocks.read_block": (Asked(body=_text),),
    "blocks.show_loads": (Asked(body=_for_athlete),),
    "blocks.find_rigs": (Asked(body=_rig),),
    "blocks.unfold_week": (Asked(body=_unfolding, budget_ms=OF_WEEKS_MS),),
    "own.show_own": (Asked(),),
    "sharing.list_offers": (Asked(),),
    "sharing.show_sharing": (Asked(),),
    "sheets.show_sheets": (Asked(),),
    "proposals.show_proposals": (Asked(),),
    "calculators.list_calculators": (Asked(),),
    "calculators.calculate": _calculations(),
    "screening.show_occlusion": (Asked(),),
    "screening.show_screening": (Asked(),),
    "hand_over.look_at_hand_over": (Asked(body=_hand_over),),
    "kit.list_proposals": (Asked(),),
    "held.list_held": (Asked(),),
}

ASIDE: Mapping[str, str] = {
    "leaving.save_archive": "everything there is of an athlete: grows with it, asked for once",
    "pictures.show_picture": "a file as it lies there",
}
"""What is not measured, and why."""


def desk_reads(app: Flask) -> dict[str, Rule]:
    """By endpoint, all that a logged-in coach can read without changing anything."""
    return {
        rule.endpoint: rule
        for rule in app.url_map.iter_rules()
        if "GET" in (rule.methods or ())
        and rule.endpoint != "web.page"
        and contract_of(app.view_functions[rule.endpoint]).who is COACH
    }


def scene_in(app: Flask, most: int) -> Scene:
    """The squad that `squad.seed` made, with its coach logged in; `most` athletes are looked at."""
    coach = _at_desk(app)
    squad = coach.get("/desk/squad").json["athletes"]
    (block, *_) = coach.get("/desk/blocks").json["blocks"]
    document = coach.get(f"/desk/blocks/{block['id']}").json["document"]
    return Scene(coach, tuple(one["id"] for one in squad[:most]), block["id"], document)


def _at_desk(app: Flask) -> AtDesk:
    """Logged in without the form, on which there is a limit of tries."""
    browser, now = app.test_client(), app.extensions[NAME].clock()
    token = tokens.new_token()
    database.connect()
    row = coaches.coach_by_email(COACH_EMAIL)
    assert row is not None, "this is no squad that was seeded here"
    ends_at = now + accounts.LOGIN_MS
    print_of = tokens.fingerprint(token)
    coaches.add_login(tokens.new_id(now), row.id, print_of, now, ends_at, "tests.scale")
    database.disconnect()
    browser.set_cookie(COACH_COOKIE, token)
    return AtDesk(app, browser, row.id, COACH_NAME, COACH_EMAIL)


def request_for(scene: Scene, rule: Rule, asked: Asked, athlete: str) -> Request:
    """The request of a row for one athlete."""
    path = rule.rule
    for name, value in {
        "athlete_id": athlete,
        "block_id": scene.block_id,
        **asked.path,
    }.items():
        path = path.replace(f"<{name}>", value)
    assert "<" not in path, f"the row of {rule.endpoint} does not fill {path}"
    if asked.body is not None:
        return Request("POST", path, asked.body(scene, athlete))
    query = urlencode(asked.query)
    return Request("GET", f"{path}?{query}" if query else path, None)
