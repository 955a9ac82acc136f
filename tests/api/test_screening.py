"""Screening end to end: asked for, answered, read, signed; locked again; cleared. All invented."""

from datetime import date, timedelta
from typing import Any

import pytest
from tests.api.test_replanning import block, did, said, send, session
from tests.domain.occlusion.people import HEALTHY, WELL_TODAY
from tests.fixtures import athlete_data, kit_data
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS, day_of

TODAY = date(2026, 2, 2)
HEALTHY_NOW = HEALTHY | {"pressure-on": (TODAY - timedelta(days=10)).isoformat()}
CURLS = {"limb": "upper-arm", "restriction": "wrap", "both_at_once": False, "tightness": 5}
CLEARANCE = {
    "by": "Dr. Maro Tellin",
    "profession": "doctor",
    "licence": "reg. 4711",
    "on": TODAY.isoformat(),
    "until": "2026-08-01",
    "covers": ["clot"],
}


def curls(key: str, **rule: Any) -> dict[str, Any]:
    sets = [{"key": f"{key}.{n}", "reps": 15, "load": {"basis": "kg", "kg": 6}} for n in (1, 2)]
    return {
        "key": key,
        "exercise": "dumbbell-curl",
        "method": "occlusion",
        "rest": {"from_s": 30, "to_s": 30},
        "details": {**CURLS, **rule},
        "warm_up": [],
        "sets": sets,
    }


PLAN = block(session("mon", curls("a")), session("fri", curls("b"), day=5))


@pytest.fixture
def asked(coach: AtDesk, athlete: str) -> str:
    """An athlete with a kit, who was asked for the screening."""
    known = {"lift": "dumbbell-curl", "kg": 30, "kind": "tested", "on": "2026-01-20"}
    document = {**athlete_data(), "maxima": [known]}
    kit = {**kit_data(), "dumbbells": [{"mass_kg": 6, "count": 2}, {"mass_kg": 8, "count": 2}]}
    for name, data in (("document", document), ("kit", kit)):
        answer = coach.post(f"/desk/athletes/{athlete}/{name}", {"document": data})
        assert answer.status_code == 200, answer.text
    assert screening(coach, athlete, "ask")["asked_at"] is not None
    return athlete


def screening(coach: AtDesk, athlete: str, what: str = "", body: Any = None) -> dict[str, Any]:
    path = f"/desk/athletes/{athlete}/screening"
    answer = coach.post(f"{path}/{what}", body) if what else coach.get(path)
    assert answer.status_code in (200, 201), answer.text
    return dict(answer.json)


def answers(phone: Phone, **changes: str | float) -> str:
    """The phone sends a screening; its id."""
    given = HEALTHY_NOW | {name.replace("_", "-"): value for name, value in changes.items()}
    entry = phone.writes.entry("screening.answered", {"answers": given}, at=f"{TODAY}T08:00:00Z")
    phone.syncs(entry)
    return str(entry["id"])


def signs(coach: AtDesk, athlete: str, of: str, note: str = "") -> dict[str, Any]:
    return screening(coach, athlete, "sign", {"of": of, "note": note})


def newest(phone: Phone, kind: str, key: str = "") -> dict[str, Any]:
    """The newest body of that kind that a phone with nothing finds in the feed."""
    fresh = Phone(phone.browser, phone.id, phone.athlete_id, phone.epoch, writes=phone.writes)
    found = [item for item in fresh.reads_all() if (item["kind"], item["key"]) == (kind, key)]
    return dict(found[-1]["body"])


def test_a_phone_gets_the_questions_only_once_the_coach_has_asked(
    coach: AtDesk, athlete: str, device: Phone
) -> None:
    assert not [i for i in device.reads_all() if i["kind"].startswith("screening")]
    screening(coach, athlete, "ask")
    assert {q["key"] for q in newest(device, "screening.questions")["screening"]} == set(HEALTHY)
    standing = newest(device, "screening")
    assert (standing["open"], standing["answered_on"]) == (False, None)


def test_an_answered_screening_waits_for_the_coach_to_read_it(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    answers(device)
    page = screening(coach, asked)
    assert (page["signed"], page["lock"]["outcome"]) == (False, "needs-reading")
    assert page["latest"]["on"] == TODAY.isoformat()
    replies = {reply["key"]: reply["answer"] for reply in page["latest"]["answers"]}
    assert replies["clot"] == "no"
    assert replies["systolic"] == "124 mmHg"


def test_a_signed_screening_opens_the_work_on_the_phone(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    page = signs(coach, asked, answers(device))
    assert (page["lock"]["open"], page["lock"]["until"]) == (True, "2026-08-01")
    send(coach, asked, PLAN)
    (exercise,) = newest(device, "sheet", "mon")["exercises"]
    assert "locked" not in exercise
    assert exercise["occlusion"]["exposure"] == 1
    assert newest(device, "screening")["open"] is True


def test_locked_work_is_not_sent_and_cannot_be_overruled(coach: AtDesk, asked: str) -> None:
    saved = coach.post("/desk/blocks", {"document": PLAN}).json
    path = f"/desk/blocks/{saved['id']}/send"
    (refused,) = coach.post(path, {"athletes": [asked]}).json["refused"]
    locked = [stop for stop in refused["stops"] if stop["check"] == "occlusion-locked"]
    assert [stop["may_overrule"] for stop in locked] == [False, False]
    written = [{k: s[k] for k in ("check", "path", "what")} | {"why": "I insist"} for s in locked]
    answer = coach.post(path, {"athletes": [asked], "overrules": written}).json
    assert answer["sent"] == []


def test_only_the_latest_screening_can_be_signed(coach: AtDesk, asked: str, device: Phone) -> None:
    before = answers(device)
    answers(device)
    answer = coach.post(f"/desk/athletes/{asked}/screening/sign", {"of": before})
    assert answer.status_code == 422
    assert "not the latest screening" in answer.json["detail"]


def test_a_hard_stop_outweighs_the_signature_until_a_clinician_has_cleared_it(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    page = signs(coach, asked, answers(device, clot="yes"), note="long ago")
    assert page["lock"]["outcome"] == "locked"
    (reason,) = [one for one in page["reasons"] if one["key"] == "clot"]
    assert (reason["coverable"], reason["covered"]) == (True, False)
    cleared = screening(coach, asked, "clearances", {**CLEARANCE, "alone": True})
    # A clot in the past: cleared for company, and this athlete trains alone.
    assert cleared["lock"]["open"] is False
    assert "training with somebody there" in cleared["lock"]["what_opens_it"][0]


def test_the_coachs_own_word_is_no_clearance(coach: AtDesk, asked: str) -> None:
    body = {**CLEARANCE, "by": coach.name}
    answer = coach.post(f"/desk/athletes/{asked}/screening/clearances", body)
    assert answer.status_code == 422
    assert [error["path"] for error in answer.json["errors"]] == ["by"]
    assert "licensed clinician" in answer.json["detail"]


def test_a_clearance_of_an_unknown_reason_is_refused_at_its_field(
    coach: AtDesk, asked: str
) -> None:
    body = {**CLEARANCE, "covers": ["laziness"]}
    answer = coach.post(f"/desk/athletes/{asked}/screening/clearances", body)
    assert answer.status_code == 422
    assert [error["path"] for error in answer.json["errors"]] == ["covers"]


@pytest.mark.parametrize(
    ("field", "wrong"),
    [
        ("on", "2026-02-03"),  # tomorrow
        ("until", "2026-01-01"),
        ("licence", " "),
        ("profession", "coach"),
    ],
)
def test_a_clearance_is_refused_at_the_field_that_is_wrong(
    coach: AtDesk, asked: str, field: str, wrong: str
) -> None:
    body = {**CLEARANCE, field: wrong}
    answer = coach.post(f"/desk/athletes/{asked}/screening/clearances", body)
    assert answer.status_code == 422
    assert [error["path"] for error in answer.json["errors"]] == [field]


def test_each_answer_is_marked_with_where_it_leads(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    answers(device, clot="not-sure", smoking="yes", systolic=150, alone="yes")
    leads = {one["key"]: one for one in screening(coach, asked)["latest"]["answers"]}
    assert {key: one["outcome"] for key, one in leads.items() if one["outcome"]} == {
        "clot": "locked",
        "smoking": "needs-reading",
        "systolic": "doctor-first",
        "diastolic": "doctor-first",
    }
    assert leads["clot"]["answer"] == "not sure"
    assert leads["born"]["answer"] == "1 May 1996"


def test_the_date_of_birth_of_somebody_under_18_is_marked(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    answers(device, born="2009-05-01")
    leads = {one["key"]: one["outcome"] for one in screening(coach, asked)["latest"]["answers"]}
    assert leads["born"] == "locked"


def test_every_reason_says_what_opens_it_and_whether_it_still_closes(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    latest = answers(device, diabetes="yes", smoking="yes")

    def reasons(page: dict[str, Any]) -> list[tuple[str, str, bool]]:
        assert all(one["opens"] for one in page["reasons"])
        return [(one["key"], one["outcome"], one["covered"]) for one in page["reasons"]]

    assert reasons(screening(coach, asked)) == [
        ("diabetes", "doctor-first", False),
        ("unread", "needs-reading", False),
        ("smoking", "needs-reading", False),
    ]
    signs(coach, asked, latest, note="two a week, talked about")
    cleared = {**CLEARANCE, "covers": ["diabetes"], "alone": True}
    page = screening(coach, asked, "clearances", cleared)
    assert reasons(page) == [("diabetes", "doctor-first", True), ("smoking", "needs-reading", True)]
    assert page["lock"]["open"] is True


def test_before_any_answer_the_page_says_what_is_missing(coach: AtDesk, asked: str) -> None:
    (reason,) = screening(coach, asked)["reasons"]
    assert reason["words"] == "no screening has been answered"


def test_the_desk_is_told_the_patterns_and_the_limits(coach: AtDesk) -> None:
    guide = coach.get("/desk/occlusion").json
    first = guide["patterns"][0]
    assert (first["key"], [one["reps"] for one in first["sets"]]) == ("first", [15, 15])
    assert guide["limits"]["load_percent"] == 40


def test_what_was_withdrawn_counts_no_more(coach: AtDesk, asked: str, device: Phone) -> None:
    page = signs(coach, asked, answers(device))
    number = page["records"][0]["number"]
    after = screening(coach, asked, f"records/{number}/withdraw")
    assert after["lock"]["open"] is False
    assert after["records"][0]["withdrawn_at"] is not None
    again = coach.post(f"/desk/athletes/{asked}/screening/records/{number}/withdraw")
    assert again.status_code == 404


class TestLockedAgain:
    @pytest.fixture
    def opened(self, coach: AtDesk, asked: str, device: Phone) -> Phone:
        signs(coach, asked, answers(device))
        send(coach, asked, PLAN)
        assert "locked" not in newest(device, "sheet", "fri")["exercises"][0]
        return device

    def locked(self, phone: Phone) -> str:
        return str(newest(phone, "sheet", "fri")["exercises"][0].get("locked", ""))

    def test_by_a_sign_after_the_work(self, opened: Phone) -> None:
        body = {"hours": 24, "signs": ["dark-urine"]}
        opened.syncs(opened.writes.entry("after.check", body, at=f"{TODAY}T09:00:00Z"))
        assert "dark urine" in self.locked(opened)
        standing = newest(opened, "screening")
        assert any("medical care today" in line for line in standing["do_now"])

    def test_by_a_sign_that_stopped_a_session(self, opened: Phone) -> None:
        body = {"why": "Chest pain", "signs": ["chest-pain"]}
        opened.syncs(opened.writes.entry("session.stopped", body, session="mon"))
        assert "pain or pressure in the chest" in self.locked(opened)

    def test_by_a_new_screening_until_it_is_read(self, opened: Phone) -> None:
        answers(opened)
        assert "the coach has not read the screening" in self.locked(opened)

    def test_not_by_an_answer_that_closes_a_single_day(self, opened: Phone) -> None:
        given = WELL_TODAY | {"alcohol": "yes"}
        opened.syncs(
            opened.writes.entry("screening.answered", {"answers": given}, at=f"{TODAY}T09:00:00Z")
        )
        assert self.locked(opened) == ""


def wrapped(phone: Phone, key: str, at: str) -> list[Any]:
    """A session with one wrap on for five minutes and two sets."""
    return [
        said(phone, "session.started", key),
        phone.writes.entry("wrap.on", {"limb": "left-upper-arm"}, session=key, at=at),
        did(phone, key, f"{'a' if key == 'mon' else 'b'}.1", 6, reps=15, side="left"),
        phone.writes.entry("wrap.off", {"limb": "left-upper-arm", "seconds": 300}, session=key,
                           at=at),
        said(phone, "session.finished", key),
    ]  # fmt: skip


def test_a_session_with_a_wrap_on_is_an_exposure(
    coach: AtDesk, asked: str, device: Phone, clock: Clock
) -> None:
    signs(coach, asked, answers(device))
    send(coach, asked, PLAN)
    before = newest(device, "sheet", "fri")["exercises"][0]["occlusion"]
    assert (before["exposure"], before["after"]) == (2, ["mon"])
    device.syncs(*wrapped(device, "mon", f"{TODAY}T17:00:00Z"))
    after = newest(device, "sheet", "fri")["exercises"][0]["occlusion"]
    assert (after["exposure"], after.get("after", [])) == (2, [])
    clock.passes(4 * DAY_MS)
    numbers = {one["limb"]: one["number"] for one in screening(coach, asked)["exposures"]}
    assert numbers == {"thigh": 1, "upper-arm": 2}


def test_no_phones_clock_puts_an_exposure_into_the_future(
    coach: AtDesk, asked: str, device: Phone, clock: Clock
) -> None:
    signs(coach, asked, answers(device))
    send(coach, asked, PLAN)
    entries = wrapped(device, "mon", "2027-02-02T17:00:00Z")
    for entry in entries:
        entry["at"] = "2027-02-02T17:00:00Z"
    device.syncs(*entries)
    clock.passes(4 * DAY_MS)
    assert day_of(clock()) < date(2027, 2, 2)
    numbers = {one["limb"]: one["number"] for one in screening(coach, asked)["exposures"]}
    assert numbers["upper-arm"] == 2


def test_a_measured_pressure_is_kept_with_who_and_when(coach: AtDesk, asked: str) -> None:
    measured = {
        "mmhg": 180,
        "on": TODAY.isoformat(),
        "by": "Maro Tellin",
        "site": "left-thigh",
        "position": "seated",
        "width_mm": 110,
        "material": "nylon",
    }
    page = screening(coach, asked, "pressures", measured)
    assert page["records"][0]["body"] == measured


def test_the_athletes_page_says_how_screening_stands(
    coach: AtDesk, athlete: str, device: Phone
) -> None:
    def state() -> str:
        return str(coach.get(f"/desk/athletes/{athlete}").json["screening"]["state"])

    assert state() == "not-asked"
    screening(coach, athlete, "ask")
    assert state() == "incomplete"
    signs(coach, athlete, answers(device))
    assert state() == "open"
