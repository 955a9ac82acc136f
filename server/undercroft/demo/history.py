"""What an invented athlete did: a session's entries, as a phone would have made them."""

import random
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any

from undercroft.domain.strength.reserve import HANDBOOK, MOST, repetitions_at
from undercroft.services.tokens import new_id

REPORT_SD = 0.7
"""Spread of reported reserve in repetitions, as in the tracker's own trials."""


@dataclass(slots=True)
class Phone:
    """A simulated phone: it numbers entries and reads a clock that it is told."""

    revision: int
    session: str
    clock: datetime
    n: int
    entries: list[dict[str, Any]] = field(default_factory=list)

    def note(self, kind: str, body: dict[str, Any], set_key: str | None = None) -> None:
        self.n += 1
        self.clock += timedelta(seconds=150)
        at = self.clock.isoformat(timespec="milliseconds")
        self.entries.append(
            {
                "id": new_id(int(self.clock.timestamp() * 1000)),
                "v": 1,
                "n": self.n,
                "kind": kind,
                "replaces": None,
                "at": at,
                "revision": self.revision,
                "session": self.session,
                "set": set_key,
                "body": body,
            }
        )


def session_entries(
    sheet: Mapping[str, Any],
    true_kg: Mapping[str, float],
    begun: datetime,
    first_n: int,
    chance: random.Random,
) -> list[dict[str, Any]]:
    """Every set of a sheet done at its planned load, as somebody of that strength would report."""
    phone = Phone(sheet["revision"], sheet["session"], begun.astimezone(UTC), first_n)
    phone.note("session.started", {})
    for exercise in sheet["exercises"]:
        today = 1 + chance.gauss(0, 0.015)
        for one in exercise["sets"]:
            kg = true_kg.get(exercise["exercise"])
            body = _done(exercise, one, None if kg is None else kg * today, chance)
            phone.note("set.done", body, one["key"])
    minutes = sheet["minutes"] + chance.randint(-5, 10)
    phone.note("session.finished", {"rpe": chance.choice((6, 6.5, 7, 7.5, 8)), "minutes": minutes})
    return phone.entries


def _done(
    exercise: Mapping[str, Any],
    one: Mapping[str, Any],
    true_kg: float | None,
    chance: random.Random,
) -> dict[str, Any]:
    target = one["target"]
    load = None if "load" not in one else exercise["loads"][one["load"]]["kg"]
    body: dict[str, Any] = {"load_kg": load}
    body |= {name: target[name] for name in ("seconds",) if name in target}
    if exercise["method"] == "speed":
        return {**body, "reps": target.get("reps"), "quality": chance.choice((3, 4, 4, 5))}
    if target.get("reps") is None:
        return body
    return {**body, **_reps(target, load, true_kg, chance)}


def _reps(
    target: Mapping[str, Any], load: float | None, true_kg: float | None, chance: random.Random
) -> dict[str, Any]:
    asked = target["reps"]
    if load is None or true_kg is None or not HANDBOOK.shares[-1] <= load / true_kg <= 1:
        return {"reps": asked, "rir": target.get("rir", 2)}
    possible = min(repetitions_at(load / true_kg), MOST)
    reps = min(asked, max(1, int(possible)))
    said = possible - reps + chance.gauss(0, REPORT_SD)
    return {"reps": reps, "rir": min(10.0, max(0.0, round(said * 2) / 2))}


def sessions_in_order(sheets: Mapping[str, Mapping[str, Any]]) -> Iterator[Mapping[str, Any]]:
    """By the days they are planned for."""
    yield from sorted(sheets.values(), key=lambda sheet: str(sheet["on"]))
