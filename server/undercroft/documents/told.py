"""What a session told of a lift and the tracker's state after it, as kept between replannings."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from undercroft.domain.strength import (
    Evidence,
    PlannedSet,
    SetDone,
    TestedMax,
    TrackerState,
    VelocityMaximum,
)
from undercroft.domain.told import Told


@dataclass(frozen=True, slots=True)
class ToldSession:
    """`wild` are the keys of sets beyond the tracker's gate; `state` is after all evidence."""

    on: date
    told: tuple[Told, ...]
    wild: tuple[str, ...]
    state: TrackerState
    source: str


def write_told(session: ToldSession) -> dict[str, Any]:
    """Plain data that `read_told` reads."""
    return {
        "on": session.on.isoformat(),
        "told": [{"set": t.set, **_evidence(t.evidence)} for t in session.told],
        "wild": list(session.wild),
        "mean": list(session.state.mean),
        "covariance": [list(row) for row in session.state.covariance],
        "at_days": session.state.at_days,
        "basis": session.state.basis,
        "source": session.source,
    }


def read_told(data: dict[str, Any]) -> ToldSession:
    """What `write_told` wrote."""
    level, form, tilt = data["mean"]
    first, second, third = ((a, b, c) for a, b, c in data["covariance"])
    return ToldSession(
        on=date.fromisoformat(data["on"]),
        told=tuple(Told(one["set"], _read_evidence(one)) for one in data["told"]),
        wild=tuple(data["wild"]),
        state=TrackerState(
            (level, form, tilt), (first, second, third), data["at_days"], data["basis"]
        ),
        source=data["source"],
    )


def _evidence(evidence: Evidence) -> dict[str, Any]:
    if isinstance(evidence, TestedMax):
        return {"load_kg": evidence.load_kg}
    if isinstance(evidence, VelocityMaximum):
        return {"kg": evidence.kg, "sd": evidence.sd, "basis": evidence.basis}
    return {
        "load_kg": evidence.load_kg,
        "reps": evidence.reps,
        "rir": evidence.rir,
        "planned": [evidence.planned.reps, evidence.planned.rir],
    }


def _read_evidence(data: dict[str, Any]) -> Evidence:
    if "sd" in data:
        return VelocityMaximum(data["kg"], data["sd"], data["basis"])
    if "reps" not in data:
        return TestedMax(data["load_kg"])
    return SetDone(data["load_kg"], data["reps"], data["rir"], PlannedSet(*data["planned"]))
