"""Planned against done, session by session."""

from collections import defaultdict
from collections.abc import Sequence, Set
from dataclasses import replace
from statistics import fmean
from typing import Any

from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import SessionRecord, SetRecord, fold
from undercroft.services import ledger
from undercroft.services.catalogues import catalogue_for
from undercroft.services.occlusion_results import occlusion_seen, worn_seen
from undercroft.services.outside import Outside, outside
from undercroft.services.result_seen import (
    Done,
    ExerciseResult,
    MessageSeen,
    OutsideResult,
    OutsideSet,
    Planned,
    Results,
    SessionResult,
    SetResult,
)
from undercroft.services.sessions_shown import Shown, sessions_shown
from undercroft.store import trackers
from undercroft.store.sessions import KeptSheet

MOST_MESSAGES = 50

NOTHING = SessionRecord(None, None, None, None, {}, {}, {}, (), (), ())


def results(athlete_id: str) -> Results:
    """The newest sessions, latest first; what was begun is shown on the sheet it began with."""
    shown = sessions_shown(athlete_id)
    return Results(
        _planned(athlete_id, shown),
        [_outside(one) for one in outside(athlete_id, shown)],
        _messages(athlete_id),
    )


def _messages(athlete_id: str) -> list[MessageSeen]:
    told = fold(ledger.entries_of(athlete_id, kinds=("message",))).messages
    newest = sorted(told, key=lambda one: one.position, reverse=True)[:MOST_MESSAGES]
    return [MessageSeen(one.id, one.at, str(one.body["text"])) for one in newest]


def _planned(athlete_id: str, shown: Sequence[Shown]) -> list[SessionResult]:
    earliest = min((one.sheet.on_day for one in shown), default="")
    wild, known = _wild(athlete_id, earliest), catalogue_for(athlete_id)
    return [
        _result(
            one.sheet,
            one.record or NOTHING,
            wild.get((one.run, one.sheet.session), set()),
            known,
        )
        for one in shown
    ]


def _outside(one: Outside) -> OutsideResult:
    record = one.record or NOTHING
    done = [OutsideSet(k, s.added_to, _known(s, wild=False)) for k, s in one.sets.items()]
    said = [record.started_at, *(each.done.at for each in done), *_ends(record)]
    return OutsideResult(
        revision=one.revision,
        session=one.session,
        why=one.why,
        at=next(filter(None, said), None),
        **_closing_words(record),
        sets=done,
    )


def _ends(record: SessionRecord) -> list[str]:
    return [end.at for end in (record.finished, record.stopped) if end]


def _wild(athlete_id: str, earliest: str) -> dict[tuple[int, str], set[str]]:
    """Keys of sets that the tracker found beyond belief since a day, by run and session.

    A place in the order of sessions begins with the day and the run's first revision and ends
    with the session; a tested maximum has a word instead of the revision, and no set to mark.
    """
    wild: dict[tuple[int, str], set[str]] = defaultdict(set)
    for row in trackers.rows_since(athlete_id, earliest):
        _, run, *rest = row.session_order.split("/")
        if run.isdigit() and rest:
            wild[int(run), rest[-1]].update(row.body["wild"])
    return wild


def _result(
    sheet: KeptSheet, record: SessionRecord, wild: Set[str], known: Catalogue
) -> SessionResult:
    document = sheet.document
    return SessionResult(
        revision=sheet.revision,
        session=sheet.session,
        name=document["name"],
        week_name=document["week_name"],
        day=document["day"],
        on=document.get("on"),
        state=_state(record),
        started_at=record.started_at,
        finished_at=record.finished.at if record.finished else None,
        **_closing_words(record),
        exercises=[_exercise(e, record, wild, known) for e in document["exercises"]],
        worn=worn_seen(document["exercises"], record),
    )


def _closing_words(record: SessionRecord) -> dict[str, Any]:
    """What the athlete said of the session as a whole when it ended."""
    finished, stopped = record.finished, record.stopped
    body: Any = finished.body if finished else {}
    return {
        "rpe": body.get("rpe"),
        "minutes": body.get("minutes"),
        "comment": body.get("comment"),
        "why_stopped": str(stopped.body.get("why")) if stopped else None,
    }


def _state(record: SessionRecord) -> str:
    """By the later end: what was stopped by mistake may have gone on to its end."""
    ends = [end for end in (record.finished, record.stopped) if end]
    if ends:
        return max(ends, key=lambda end: end.id).kind.removeprefix("session.")
    return "started" if record.started_at or record.sets else "planned"


def _exercise(
    exercise: dict[str, Any], record: SessionRecord, wild: Set[str], known: Catalogue
) -> ExerciseResult:
    loads = exercise.get("loads", [])
    planned = [_set(one, loads, record, wild) for one in exercise["sets"]]
    added = [key for key, to in record.added.items() if to == exercise["key"]]
    extra = [
        SetResult(
            key,
            len(planned) + place,
            Planned(None, None, None, None),
            *_answers(record.sets.get(key), key in wild),
        )
        for place, key in enumerate(added, start=1)
    ]
    return ExerciseResult(
        key=exercise["key"],
        name=exercise["name"],
        method=exercise["method"],
        done_instead=_instead(exercise, record, known),
        why_instead=_why_instead(exercise, record),
        sets=[_with_swap(one, exercise, record, known) for one in planned + extra],
        occlusion=occlusion_seen(exercise, record),
    )


def _instead(exercise: dict[str, Any], record: SessionRecord, known: Catalogue) -> str | None:
    """A swap names the exercise's line in the session, or else the exercise itself."""
    key, planned = exercise["key"], exercise.get("exercise")
    instead = record.swaps.get(key, record.swaps.get(planned) if planned else None)
    if instead is None or instead == planned:
        return None
    return _name(instead, exercise, known)


def _why_instead(exercise: dict[str, Any], record: SessionRecord) -> str | None:
    swaps = record.swapped.get(exercise["key"], ())
    return next((swap.why for swap in reversed(swaps) if swap.why), None)


def _with_swap(
    one: SetResult, exercise: dict[str, Any], record: SessionRecord, known: Catalogue
) -> SetResult:
    answer, planned = record.sets.get(one.key), exercise.get("exercise")
    if answer is None or not planned:
        return one
    done_as = record.done_as(exercise["key"], planned, answer)
    return one if done_as == planned else replace(one, instead=_name(done_as, exercise, known))


def _name(to: str, exercise: dict[str, Any], known: Catalogue) -> str:
    """As the phone offered it; what it did not offer, by the catalogue."""
    offered = {other.get("key") or other["exercise"]: other for other in _offered(exercise)}
    if to in offered:
        return str(offered[to]["name"])
    return known[to].name if to in known else to


def _offered(exercise: dict[str, Any]) -> list[dict[str, Any]]:
    return exercise.get("alternatives") or []


def _set(
    one: dict[str, Any],
    loads: list[dict[str, Any]],
    record: SessionRecord,
    wild: Set[str],
) -> SetResult:
    target, load = one["target"], one.get("load")
    planned = Planned(
        reps=target.get("reps"),
        rir=target.get("rir"),
        load_kg=None if load is None else loads[load]["kg"],
        seconds=target.get("seconds"),
        to_failure=target.get("to_failure", False),
        distance_m=target.get("distance_m"),
        blocks=target.get("blocks", []),
    )
    key = one["key"]
    return SetResult(key, one["number"], planned, *_answers(record.sets.get(key), key in wild))


def _answers(record: SetRecord | None, wild: bool) -> tuple[Done | None, list[Done]]:
    if record is None:
        return None, []
    return _known(record, wild), [_known(one, wild) for one in record.sides.values()]


def _known(record: SetRecord, wild: bool) -> Done:
    body = record.body
    velocities = body.get("velocities_m_s") or []
    return Done(
        kind=record.kind,
        load_kg=body.get("load_kg"),
        reps=body.get("reps"),
        rir=body.get("rir"),
        to_failure=bool(body.get("to_failure")),
        seconds=body.get("seconds"),
        distance_m=body.get("distance_m"),
        blocks=body.get("blocks") or [],
        velocities_m_s=velocities,
        mean_m_s=round(fmean(velocities), 3) if velocities else None,
        quality=body.get("quality"),
        side=body.get("side"),
        tightness=body.get("tightness"),
        why=body.get("why"),
        at=record.at,
        two_answers=record.conflict,
        wild=wild,
    )
