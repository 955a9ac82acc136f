"""Send a block, do its sessions on a phone, and read at the desk what became of it."""

from typing import Any

from tests.people import AtDesk, Phone


def send(coach: AtDesk, block: str, *athletes: str, **more: Any) -> dict[str, Any]:
    answer = coach.post(f"/desk/blocks/{block}/send", {"athletes": list(athletes), **more})
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def by_kind(feed: list[dict[str, Any]], kind: str) -> dict[str, Any]:
    return {item["key"]: item["body"] for item in feed if item["kind"] == kind}


def sheets(feed: list[dict[str, Any]]) -> dict[str, Any]:
    return by_kind(feed, "sheet")


def entries_of(phone: Phone, sheet: dict[str, Any], extra_rir: int = 0) -> list[dict[str, Any]]:
    """The session done as planned, with so much more in reserve than planned."""
    where = {"session": sheet["session"], "revision": sheet["revision"]}
    lines = [phone.writes.entry("session.started", {}, **where)]
    for exercise in sheet["exercises"]:
        for one in exercise["sets"]:
            load = exercise["loads"][one["load"]]["kg"] if "load" in one else None
            reps, rir = one["target"].get("reps"), one["target"].get("rir", 2) + extra_rir
            body = {"load_kg": load, "reps": reps, "rir": rir}
            lines.append(phone.writes.entry("set.done", body, set=one["key"], **where))
    return lines


def finished(phone: Phone, sheet: dict[str, Any]) -> dict[str, Any]:
    where = {"session": sheet["session"], "revision": sheet["revision"]}
    return phone.writes.entry("session.finished", {"rpe": 7, "minutes": 50}, **where)


def done_sets(coach: AtDesk, athlete: str, session: str) -> list[Any]:
    found = coach.get(f"/desk/athletes/{athlete}/results").json["sessions"]
    (one,) = [s for s in found if s["session"] == session]
    return [s["done"] for exercise in one["exercises"] for s in exercise["sets"]]
