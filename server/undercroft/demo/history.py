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


SKIPPED = 0.05
"""Share of third and later sets that are left out."""

FASTEST, SLOWEST = 1.75, 0.25
"""Invented velocities in m/s: of no load at all, and of a maximum; in between a straight line."""

LIVELIER = (0.95, 0.97, 0.99, 1.0, 1.0, 0.98, 0.96, 0.93)
"""How the sets of speed work go: better up to the fourth or fifth, tired by the eighth."""


@dataclass(frozen=True, slots=True)
class Trained:
    """True maxima in kg, body mass in kg, and whether the velocity of the bar is measured."""

    maxima_kg: Mapping[str, float]
    mass_kg: float
    measures: bool = False


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
    who: Trained,
    begun: datetime,
    first_n: int,
    chance: random.Random,
) -> list[dict[str, Any]]:
    """Every set of a sheet done at its planned load, as somebody of that strength would report."""
    phone = Phone(sheet["revision"], sheet["session"], begun.astimezone(UTC), first_n)
    if sheet["day"] == 1:
        phone.note("body_mass", {"kg": round(who.mass_kg + chance.gauss(0, 0.4), 1)})
    phone.note("readiness", {"score": chance.choice((2, 3, 3, 4, 4, 5))})
    phone.note("session.started", {})
    for exercise in sheet["exercises"]:
        kg = who.maxima_kg.get(exercise["exercise"])
        today = None if kg is None else kg * (1 + chance.gauss(0, 0.015))
        for one in exercise["sets"]:
            phone.note(*_answer(exercise, one, who, today, chance), one["key"])
    minutes = sheet["minutes"] + chance.randint(-5, 10)
    phone.note("session.finished", {"rpe": chance.choice((6, 6.5, 7, 7.5, 8)), "minutes": minutes})
    return phone.entries


def _answer(
    exercise: Mapping[str, Any],
    one: Mapping[str, Any],
    who: Trained,
    true_kg: float | None,
    chance: random.Random,
) -> tuple[str, dict[str, Any]]:
    """Kind and body of what became of a set."""
    if one["number"] > 2 and chance.random() < SKIPPED:
        return "set.skipped", {"why": "out of time"}
    body = _done(exercise, one, true_kg, chance)
    if true_kg and who.measures and exercise["method"] == "speed":
        body["velocities_m_s"] = _velocities(one, body, true_kg, chance)
    return "set.done", body


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


def _velocities(
    one: Mapping[str, Any], body: Mapping[str, Any], true_kg: float, chance: random.Random
) -> list[float]:
    lifted = one["curve"]["mean_kg"] if "curve" in one else body["load_kg"]
    straight = FASTEST - (FASTEST - SLOWEST) * lifted / true_kg
    today = straight * LIVELIER[min(one["number"], len(LIVELIER)) - 1]
    return [round(max(0.1, today + chance.gauss(0, 0.015)), 2) for _ in range(body["reps"] or 1)]


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
