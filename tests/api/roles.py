"""Who may do what: one row for each endpoint. A new endpoint needs a row here.

A row names who may ask and what comes of it when the right one asks; what everybody else gets
follows from that (`expected`). Parts of the path are filled from the `Scene`.

An endpoint about one athlete is `readable`, `writable` or `own_athletes`: two coaches share the
athlete of the scene, one to read and one to read and write. Where that does not do they get 403.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from flask.testing import FlaskClient
from tests.filming import photo
from tests.fixtures import block_data
from tests.handing import hand_over_text
from tests.one_time import begun_factor, turns_factor_on
from tests.people import PASSWORD, AtDesk, Phone

from undercroft.api.contract import ANY_DEVICE, ANYONE, COACH, DEVICE, Who
from undercroft.documents.canonical import to_json

OWNER, READER, WRITER, OTHER_COACH, PHONE, OTHER_PHONE, REVOKED, NOBODY = (
    "coach",
    "reading coach",
    "writing coach",
    "other coach",
    "athlete's device",
    "other athlete's device",
    "revoked device",
    "nobody",
)


@dataclass(frozen=True)
class Scene:
    """A coach whose athlete has a phone and a revoked one, coaches with rights and without."""

    coach: AtDesk
    reader: AtDesk
    writer: AtDesk
    other_coach: AtDesk
    athlete_id: str
    phone: Phone
    other_phone: Phone
    revoked_phone: Phone
    nobody: FlaskClient

    def desk_of(self, role: str) -> AtDesk:
        coaches = (self.coach, self.reader, self.writer, self.other_coach)
        return dict(zip(COACHES, coaches, strict=True))[role]

    def browser_of(self, role: str) -> FlaskClient:
        if role in COACHES:
            return self.desk_of(role).browser
        return {
            PHONE: self.phone.browser,
            OTHER_PHONE: self.other_phone.browser,
            REVOKED: self.revoked_phone.browser,
            NOBODY: self.nobody,
        }[role]

    def phone_of(self, role: str) -> Phone:
        return {OTHER_PHONE: self.other_phone, REVOKED: self.revoked_phone}.get(role, self.phone)


Filling = Callable[[Scene], Any]


COACHES = (OWNER, READER, WRITER, OTHER_COACH)
READ, WRITE, OWN = "read", "write", "own"
ALLOWED = {READ: (OWNER, READER, WRITER), WRITE: (OWNER, WRITER), OWN: (OWNER,)}
"""By the right to the athlete that is needed, the coaches who have it."""


@dataclass(frozen=True)
class Row:
    """`owned`: the path names something of `coach`, so another coach or athlete gets 404.

    needs: the right to the athlete in path or body; who has less gets 403, who has none 404.
    conflicts: who is refused because it makes no sense for them.

    path: how to fill each part of the path but `athlete_id`. body: what to post, if it is a
    function worked out anew for each role; bytes are a file. query: what stands behind the path.
    """

    who: Who
    ok: int
    owned: bool = False
    needs: str | None = None
    conflicts: tuple[str, ...] = ()
    path: Mapping[str, Filling] = field(default_factory=dict)
    body: Any = field(default_factory=dict)
    query: str = ""

    def body_for(self, scene: Scene, role: str) -> Any:
        return self.body(scene, role) if callable(self.body) else self.body

    def expected(self, role: str) -> int:
        """The status that a role must get."""
        if self.who is ANYONE:
            return self.ok
        if self.who is COACH:
            return self._of_a_coach(role) if role in COACHES else 401
        if role == OTHER_PHONE and self.owned:
            return 404
        if role in (PHONE, OTHER_PHONE) or (role == REVOKED and self.who is ANY_DEVICE):
            return self.ok
        return 401

    def _of_a_coach(self, role: str) -> int:
        if role in self.conflicts:
            return 409
        if role == OTHER_COACH and self.needs:
            return 404
        if self.needs and role not in ALLOWED[self.needs]:
            return 403
        return 404 if role != OWNER and self.owned else self.ok


def open_to_all(ok: int = 200, **more: Any) -> Row:
    return Row(ANYONE, ok, **more)


def any_coach(ok: int = 200, **more: Any) -> Row:
    """Each coach does it with what is their own."""
    return Row(COACH, ok, **more)


def own_coach(ok: int = 200, **more: Any) -> Row:
    """Only the coach to whom it belongs, whatever rights to an athlete others have."""
    return Row(COACH, ok, owned=True, **more)


def readable(ok: int = 200, **more: Any) -> Row:
    """Whoever may read of the athlete."""
    return Row(COACH, ok, needs=READ, **more)


def writable(ok: int = 200, **more: Any) -> Row:
    """Whoever may write for the athlete."""
    return Row(COACH, ok, needs=WRITE, **more)


def own_athletes(ok: int = 200, **more: Any) -> Row:
    """The athlete's own coach alone."""
    return Row(COACH, ok, needs=OWN, **more)


def phones(ok: int = 200, **more: Any) -> Row:
    return Row(DEVICE, ok, **more)


def _fresh_secret(scene: Scene, _role: str) -> Any:
    return {"secret": scene.coach.invites(scene.athlete_id)}


def _acceptance(scene: Scene, role: str) -> Any:
    return {**_fresh_secret(scene, role), "device_name": "new"}


def _exchange(scene: Scene, role: str) -> Any:
    return scene.phone_of(role).asks([scene.phone.writes.done("squat.9")])


def _invitation_id(scene: Scene) -> str:
    scene.coach.invites(scene.athlete_id)
    answer = scene.coach.get(f"/desk/athletes/{scene.athlete_id}/invitations")
    return str(answer.json["invitations"][0]["id"])


def _held_position(scene: Scene) -> int:
    scene.revoked_phone.sends(scene.revoked_phone.writes.done("squat.1"))
    return int(scene.coach.held(scene.athlete_id)[-1]["position"])


def _hand_over(scene: Scene, _role: str) -> Any:
    phone = scene.phone
    return {"text": hand_over_text(phone, "Runa Falk", [phone.writes.done("squat.1")])}


def _proposal_id(scene: Scene) -> str:
    kit = {"document": {"key": "shed", "name": "The shed", "things": ["bench"]}}
    scene.coach.post(f"/desk/athletes/{scene.athlete_id}/kit", kit)
    change = {"kind": "gone", "list": "things", "name": "bench"}
    proposal = scene.phone.writes.entry("kit.changed", {"item": "bench", "change": change})
    scene.phone.syncs(proposal)
    return str(proposal["id"])


def _log_in_id(scene: Scene) -> str:
    return str(scene.coach.get("/coach/log-ins").json["log_ins"][0]["id"])


def _turning_on(scene: Scene, role: str) -> Any:
    return begun_factor(scene.desk_of(role)) if role in COACHES else {}


def _turning_off(scene: Scene, role: str) -> Any:
    if role not in COACHES:
        return {}
    recovery = turns_factor_on(scene.desk_of(role))
    return {"password": PASSWORD, "code": recovery[0]}


BLOCK = block_data()


def _block_id(scene: Scene) -> str:
    return str(scene.coach.post("/desk/blocks", {"document": BLOCK}).json["id"])


def _sending(scene: Scene, _role: str) -> Any:
    return {"athletes": [scene.athlete_id]}


def _loads(scene: Scene, _role: str) -> Any:
    return {"athlete": scene.athlete_id, "document": BLOCK}


CLEARANCE = {
    "by": "Dr. Maro Tellin",
    "profession": "doctor",
    "licence": "reg. 4711",
    "on": "2026-01-20",
    "until": "2026-08-20",
    "covers": ["injury"],
}
PRESSURE = {
    "mmhg": 180,
    "on": "2026-01-20",
    "by": "Maro Tellin",
    "site": "left-thigh",
    "position": "seated",
    "width_mm": 110,
    "material": "nylon",
}


def _signing(scene: Scene, _role: str) -> Any:
    answered = scene.phone.writes.entry("screening.answered", {"answers": {"clot": "no"}})
    scene.phone.syncs(answered)
    return {"of": answered["id"]}


def _record_number(scene: Scene) -> int:
    path = f"/desk/athletes/{scene.athlete_id}/screening/pressures"
    return int(scene.coach.post(path, PRESSURE).json["records"][0]["number"])


OWN_EXERCISE = {"name": "Barrel lift", "implement": "body", "prime": ["glutes"]}


def _another_exercise(_scene: Scene, role: str) -> Any:
    return {"document": {**OWN_EXERCISE, "name": f"Log lift of the {role}"}}


def _own_exercise(scene: Scene) -> str:
    """Asked for in turn by each role, and made anew where it was removed."""
    kept = scene.coach.get("/desk/catalogue").json["exercises"]
    found = [str(one["key"]) for one in kept if one["name"] == OWN_EXERCISE["name"]]
    if found:
        return found[0]
    return str(scene.coach.post("/desk/exercises", {"document": OWN_EXERCISE}).json["key"])


SHOWN = {"words": "The bar over mid-foot."}


def _picture(scene: Scene) -> str:
    """The hash of one that is there."""
    path = f"/desk/exercises/back-squat/picture?words={SHOWN['words']}"
    sent = scene.coach.sends_file(path, photo(size=(8, 8)))
    return str(sent.json["hash"])


def _pictured(scene: Scene) -> str:
    _picture(scene)
    return "back-squat"


def _accepting(_scene: Scene, _role: str) -> Any:
    """Nothing was sent: to the right coach it is a conflict."""
    return {"revision": 1, "sets": [{"session": "w1-mon", "set": "w1m-c-1", "kg": 27.5}]}


OUTDATED = {"document": BLOCK, "as_of": "from before"}
BACK = {"places": [{"session": "w1-mon", "exercise": "w1m-a"}], "take": "block"}


def _rigs(scene: Scene, role: str) -> Any:
    rig = {"part": "bands", "share_percent": 25}
    return {**_loads(scene, role), "session": "w1-mon", "exercise": "w1m-a", "rig": rig}


def _unfolding(scene: Scene, _role: str) -> Any:
    return {**_loads(scene, _role), "week": "w1", "weeks": 4}


def _offering(scene: Scene, _role: str) -> Any:
    return {"athletes": [scene.athlete_id], "gives": "read"}


def _offered(scene: Scene, role: str) -> Any:
    """What another coach offers of theirs."""
    giver = scene.coach if role == OTHER_COACH else scene.other_coach
    whom = giver.adds_athlete("Tove Lind")
    return {"secret": giver.offers("write", whom)}


def _offer_id(scene: Scene) -> str:
    scene.coach.offers("read", scene.athlete_id)
    return str(scene.coach.get("/desk/offers").json["offers"][0]["id"])


def _a_sharer(scene: Scene) -> str:
    return scene.reader.id


ROWS: Mapping[str, Row] = {
    "about.health": open_to_all(),
    "about.ready": open_to_all(),
    "about.openapi_document": open_to_all(),
    "about.schema": open_to_all(path={"name": lambda _: "entry"}),
    "coach.log_in": open_to_all(401, body={"email": "nobody@example.org", "password": "wrong"}),
    "coach.log_out": any_coach(204),
    "coach.me": any_coach(),
    "coach.log_ins": any_coach(),
    "coach.change_password": any_coach(204, body={"old": PASSWORD, "new": PASSWORD}),
    "coach.revoke_log_in": own_coach(
        204, path={"log_in_id": _log_in_id}, body={"password": PASSWORD}
    ),
    "coach.show_factor": any_coach(),
    "coach.begin_factor": any_coach(201),
    "coach.turn_factor_on": any_coach(body=_turning_on),
    "coach.turn_factor_off": any_coach(204, body=_turning_off),
    "pairing.look": open_to_all(body=_fresh_secret),
    "pairing.code_from_invitation": open_to_all(201, body=_fresh_secret),
    "pairing.accept": open_to_all(201, body=_acceptance),
    "pairing.unpair": phones(204),
    "pairing.renew": phones(201),
    "sync.sync": Row(ANY_DEVICE, 200, body=_exchange),
    "sync.take_snapshot": phones(),
    "desk.list_athletes": any_coach(),
    "desk.add_athlete": any_coach(201, body={"name": "Tove Lind"}),
    "desk.invite": own_athletes(201),
    "desk.list_invitations": own_athletes(),
    "desk.revoke_invitation": own_athletes(204, path={"invitation_id": _invitation_id}),
    "desk.make_code": own_athletes(201),
    "desk.list_devices": readable(),
    "desk.revoke_device": own_athletes(204, path={"device_id": lambda scene: scene.phone.id}),
    "exercises.show_catalogue": any_coach(),
    "exercises.show_exercise": any_coach(path={"key": lambda _: "back-squat"}),
    "exercises.show_for_athlete": readable(),
    "exercises.add_exercise": any_coach(201, body=_another_exercise),
    "exercises.change_exercise": own_coach(
        204, path={"key": _own_exercise}, body={"document": OWN_EXERCISE}
    ),
    "exercises.set_cues": any_coach(
        204, path={"key": lambda _: "back-squat"}, body={"cues": ["Chest to the sky"]}
    ),
    "exercises.archive_exercise": own_coach(204, path={"key": _own_exercise}),
    "exercises.restore_exercise": own_coach(204, path={"key": _own_exercise}),
    "exercises.remove_exercise": own_coach(204, path={"key": _own_exercise}),
    "pictures.add_picture": any_coach(
        201,
        path={"key": lambda _: "front-squat"},
        query="?words=Elbows+high",
        body=photo(size=(8, 8)),
    ),
    "pictures.set_picture_words": own_coach(204, path={"key": _pictured}, body=SHOWN),
    "pictures.remove_picture": own_coach(204, path={"key": _pictured}),
    "pictures.show_picture": own_coach(path={"digest": _picture}),
    "pictures.show_picture_to_phone": phones(path={"digest": _picture}, owned=True),
    "results.show_squad": any_coach(),
    "results.show_athlete": readable(),
    "results.save_athlete": writable(body={"document": {"key": "runa", "name": "Runa Falk"}}),
    "results.save_kit": writable(body={"document": {"key": "shed", "name": "The shed"}}),
    "results.show_results": readable(),
    "results.show_trend": readable(path={"lift": lambda _: "back-squat"}),
    "monitoring.show_load": readable(),
    "monitoring.show_work": readable(),
    "monitoring.show_speed": readable(),
    "monitoring.show_condition": readable(),
    "monitoring.show_table": readable(path={"table": lambda _: "weeks"}),
    "blocks.list_blocks": any_coach(),
    "blocks.add_block": any_coach(201, body={"document": {}}),
    "blocks.read_block": any_coach(body={"text": to_json(BLOCK), "format": "json"}),
    "blocks.show_block": own_coach(path={"block_id": _block_id}),
    "blocks.save_block": own_coach(path={"block_id": _block_id}, body={"document": {}}),
    "blocks.export_block": own_coach(path={"block_id": _block_id}),
    "blocks.send_block": own_coach(path={"block_id": _block_id}, body=_sending),
    "blocks.show_loads": readable(body=_loads),
    "blocks.find_rigs": readable(body=_rigs),
    "blocks.unfold_week": readable(body=_unfolding),
    "own.show_own": readable(path={"block_id": _block_id}, owned=True),
    "own.save_own": writable(409, path={"block_id": _block_id}, body=OUTDATED, owned=True),
    "own.decide_own": writable(path={"block_id": _block_id}, body=BACK, owned=True),
    "sheets.show_sheets": readable(),
    "proposals.show_proposals": readable(),
    "proposals.accept_proposals": writable(409, body=_accepting),
    "calculators.list_calculators": any_coach(),
    "calculators.calculate": any_coach(
        path={"key": lambda _: "pulley"}, body={"inputs": {"stack_kg": 50}}
    ),
    "screening.show_occlusion": any_coach(),
    "screening.show_screening": readable(),
    "screening.ask_for_screening": writable(),
    "screening.sign_screening": own_athletes(body=_signing),
    "screening.record_clearance": own_athletes(201, body=CLEARANCE),
    "screening.record_pressure": own_athletes(201, body=PRESSURE),
    "screening.withdraw_record": own_athletes(path={"number": _record_number}),
    "sharing.show_sharing": readable(),
    "sharing.change_right": own_athletes(204, path={"coach_id": _a_sharer}, body={"right": "read"}),
    "sharing.end_sharing": own_athletes(204, path={"coach_id": _a_sharer}),
    "sharing.leave_athlete": Row(COACH, 204, needs=READ, conflicts=(OWNER,)),
    "sharing.list_offers": any_coach(),
    "sharing.make_offer": own_athletes(201, body=_offering),
    "sharing.revoke_offer": own_coach(204, path={"offer_id": _offer_id}),
    "sharing.look_at_offer": any_coach(body=_offered),
    "sharing.accept_offer": any_coach(body=_offered),
    "leaving.save_archive": own_athletes(),
    "leaving.save_own_archive": phones(),
    "leaving.erase_athlete": own_athletes(204, body={"name": "Runa Falk"}),
    "hand_over.look_at_hand_over": writable(body=_hand_over),
    "hand_over.take_hand_over": writable(body=_hand_over),
    "kit.list_proposals": readable(),
    "kit.accept_proposal": writable(path={"entry_id": _proposal_id}),
    "kit.decline_proposal": writable(204, path={"entry_id": _proposal_id}),
    "held.list_held": readable(),
    "held.accept_held": writable(path={"position": _held_position}),
}
