"""What became of occlusion work in a session: wear limb by limb, and the load of the next time."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.domain.ledger import SessionRecord, SetRecord
from undercroft.domain.occlusion import (
    Issue,
    NextLoad,
    Wear,
    next_step,
    next_why,
    reps_issues,
    wears_of,
    worn_issues,
)
from undercroft.domain.occlusion.site import in_words


@dataclass(frozen=True, slots=True)
class NextSeen:
    """The load that the repetitions ask for, and why; the coach decides."""

    kg: float
    why: str


@dataclass(frozen=True, slots=True)
class OcclusionSeen:
    """What was asked of an exercise, and what its repetitions ask for.

    wear_s    predicted with the wrap on; limit_s when it has to be off
    expected  mean repetitions to failure, set by set
    """

    limb: str
    restriction: str
    both_at_once: bool
    tightness: int | None
    pressure_percent: float | None
    wear_s: int | None
    limit_s: int | None
    expected: list[float]
    next: NextSeen | None
    asks: list[Issue]


@dataclass(frozen=True, slots=True)
class WornSeen:
    """One limb: how long each time, in seconds; `closed` false where an end was never told."""

    limb: str
    seconds: list[float]
    closed: bool
    issues: list[Issue]


def occlusion_seen(exercise: dict[str, Any], record: SessionRecord) -> OcclusionSeen | None:
    """Of a sheet's exercise; None for work without a wrap or cuff."""
    if exercise["method"] != "occlusion":
        return None
    rule, known = exercise.get("details") or {}, exercise.get("occlusion") or {}
    reps = reps_done(exercise, record)
    return OcclusionSeen(
        limb=rule["limb"].replace("-", " "),
        restriction=rule["restriction"],
        both_at_once=rule.get("both_at_once", True),
        tightness=rule.get("tightness"),
        pressure_percent=rule.get("pressure_percent"),
        wear_s=known.get("wear_s"),
        limit_s=known.get("limit_s"),
        expected=known.get("expected", []),
        next=_next(known.get("next"), reps, record.stopped is not None),
        asks=list(reps_issues(reps)),
    )


def worn_seen(exercises: Sequence[dict[str, Any]], record: SessionRecord) -> list[WornSeen]:
    """Wear by limb as the phone told it, held against the limits that the sheets bear."""
    limits = [one["occlusion"]["limit_s"] for one in exercises if one.get("occlusion")]
    wears = wears_of(record.wraps)
    issues = list(worn_issues(wears, min(limits) / 60 if limits else None))
    return [
        WornSeen(
            limb=in_words([site]),
            seconds=[wear.seconds for wear in own],
            closed=all(wear.closed for wear in own),
            issues=[issue for where, issue in issues if where == site],
        )
        for site, own in _by_limb(wears)
    ]


def _by_limb(wears: Sequence[Wear]) -> list[tuple[Any, list[Wear]]]:
    sites = sorted({wear.site for wear in wears})
    return [(site, [wear for wear in wears if wear.site == site]) for site in sites]


def reps_done(exercise: dict[str, Any], record: SessionRecord) -> list[int]:
    """Repetitions of the planned sets that were done, in their order; of two sides the fewer."""
    done = answers_done(exercise, record)
    return [min(int(one.body.get("reps") or 0) for one in each) for each in done]


def answers_done(exercise: dict[str, Any], record: SessionRecord) -> list[list[SetRecord]]:
    """The planned sets that were done, each with what was told of it, side by side if so."""
    found = [record.sets[one["key"]] for one in exercise["sets"] if one["key"] in record.sets]
    done = [[one for one in each.answers() if one.kind == "done"] for each in found]
    return [each for each in done if each]


def _next(table: dict[str, Any] | None, reps: list[int], stopped: bool) -> NextSeen | None:
    if table is None or not reps:
        return None
    known = NextLoad(**table)
    _, kg = next_step(known, reps, stopped)
    return NextSeen(kg, next_why(known, reps, stopped))
