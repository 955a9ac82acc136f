"""Occlusion work in the demo: an invented screening, signed, and the first two exposures."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import Any

from undercroft.domain.occlusion import QUESTIONS, Aim, Asked, Kind
from undercroft.services import screening
from undercroft.services.clock import day_of
from undercroft.services.tokens import new_id

MAXIMUM = {"lift": "triceps-pushdown", "kg": 32, "kind": "guessed", "doubt_percent": 8}
"""Known well enough for a share of it to be planned."""

FIRST_EXPOSURES = ((15, 15), (20, 15, 15))

BETWEEN_FIRST = timedelta(days=3)
"""At least 72 h after a first exposure."""


def answered(athlete: Mapping[str, Any], n: int, now: int) -> dict[str, Any]:
    """The entry of a screening in good health, with the figures of the athlete's document."""
    on = day_of(now)
    figures = {
        "born": athlete["born"],
        "sex": "not-said",
        "height_m": athlete["stature_m"],
        "mass_kg": athlete["body_mass_kg"],
        "systolic": 118,
        "diastolic": 74,
        "pressure-on": (on - timedelta(days=6)).isoformat(),
        "alone": "yes",
    }
    asked = [one for one in QUESTIONS if one.asked is Asked.SCREENING]
    no = {one.key: "no" for one in asked if one.kind is Kind.YES_NO}
    return {
        "id": new_id(now),
        "v": 1,
        "n": n,
        "kind": "screening.answered",
        "replaces": None,
        "at": f"{on}T19:40:00.000Z",
        "revision": None,
        "session": None,
        "set": None,
        "body": {"answers": no | figures},
    }


def sign(athlete_id: str, entry: Mapping[str, Any], coach: screening.Coach, now: int) -> None:
    """The coach has read it."""
    signed = screening.Signed(entry["id"], "Read and talked over.", Aim.TRAINING)
    screening.sign(athlete_id, signed, coach, now)


def with_wraps(block: Mapping[str, Any], begins: date, after: date) -> dict[str, Any]:
    """The block with a pushdown under wraps at the end of two of its sessions from that day on."""
    days = {
        session["key"]: begins + timedelta(weeks=number, days=session["day"] - 1)
        for number, week in enumerate(block["weeks"])
        for session in week["sessions"]
    }
    wrapped = dict(zip(_first_two(days, after), FIRST_EXPOSURES, strict=False))
    weeks = [
        {**week, "sessions": [_session(one, wrapped.get(one["key"])) for one in week["sessions"]]}
        for week in block["weeks"]
    ]
    return {**block, "key": f"{block['key']}-wraps", "name": "Two weeks with wraps", "weeks": weeks}


def _first_two(days: Mapping[str, date], after: date) -> Iterator[str]:
    last = date.min
    for key, on in sorted(days.items(), key=lambda one: one[1]):
        if on >= after and on - last >= BETWEEN_FIRST:
            last = on
            yield key


def _session(session: Mapping[str, Any], reps: Sequence[int] | None) -> Mapping[str, Any]:
    if reps is None:
        return session
    return {**session, "exercises": [*session["exercises"], _pushdown(session["key"], reps)]}


def _pushdown(session: str, reps: Sequence[int]) -> dict[str, Any]:
    key = f"{session}-wraps"
    load = {"basis": "percent", "percent": 20}
    return {
        "key": key,
        "exercise": "triceps-pushdown",
        "method": "occlusion",
        "rest": {"from_s": 30, "to_s": 45},
        "details": {
            "limb": "upper-arm",
            "restriction": "wrap",
            "both_at_once": False,
            "tightness": 5,
        },
        "warm_up": [],
        "sets": [
            {"key": f"{key}-{number}", "load": load, "reps": one}
            for number, one in enumerate(reps, start=1)
        ],
    }
