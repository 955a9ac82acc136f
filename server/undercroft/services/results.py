"""Planned against done, session by session."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from undercroft.domain.ledger import SessionRecord, SetRecord, fold
from undercroft.services import ledger
from undercroft.store import revisions, trackers
from undercroft.store.models import Sheet

MOST_SESSIONS = 60

NOTHING = SessionRecord(None, None, None, {}, {}, {}, (), (), ())


@dataclass(frozen=True, slots=True)
class Planned:
    """What was asked for in a set."""

    reps: int | None
    rir: float | None
    load_kg: float | None
    seconds: float | None


@dataclass(frozen=True, slots=True)
class Done:
    """What became of a set; `two_answers` where two phones differ, `wild` beyond the gate."""

    kind: str
    load_kg: float | None
    reps: int | None
    rir: float | None
    seconds: float | None
    quality: int | None
    why: str | None
    at: str
    two_answers: bool
    wild: bool


@dataclass(frozen=True, slots=True)
class SetResult:
    key: str
    number: int
    planned: Planned
    done: Done | None


@dataclass(frozen=True, slots=True)
class ExerciseResult:
    key: str
    name: str
    sets: list[SetResult]


@dataclass(frozen=True, slots=True)
class SessionResult:
    """`state` is planned, started, finished or stopped: silence is not told as absence."""

    revision: int
    session: str
    name: str
    week_name: str
    day: int
    on: str | None
    state: str
    started_at: str | None
    finished_at: str | None
    rpe: float | None
    minutes: int | None
    comment: str | None
    why_stopped: str | None
    exercises: list[ExerciseResult]


def results(athlete_id: str) -> list[SessionResult]:
    """The newest sessions, latest first; what was begun is shown on the sheet it began with."""
    sheets = revisions.newest_sheets(athlete_id, MOST_SESSIONS)
    records = _records(athlete_id, {sheet.session for sheet in sheets})
    wild = _wild(athlete_id)
    return [
        _result(sheet, records.get((sheet.revision, sheet.session), NOTHING), wild)
        for sheet in _one_each(sheets, records)
    ]


Records = dict[tuple[int | None, str], SessionRecord]


def _records(athlete_id: str, sessions: set[str]) -> Records:
    return {
        key: record
        for session in sessions
        for key, record in fold(ledger.entries_of(athlete_id, session)).sessions.items()
    }


def _one_each(sheets: list[Sheet], records: Records) -> Iterator[Sheet]:
    """Of a session's sheets the one that it was begun with, else the newest."""
    by_session: dict[tuple[str, str], list[Sheet]] = {}
    for sheet in sheets:
        by_session.setdefault((sheet.document.get("on", ""), sheet.session), []).append(sheet)
    for found in by_session.values():
        begun = [sheet for sheet in found if (sheet.revision, sheet.session) in records]
        yield max(begun or found, key=lambda sheet: sheet.revision)


def _wild(athlete_id: str) -> frozenset[str]:
    """Keys of sets that the tracker found beyond belief, as "session order/set"."""
    return frozenset(
        f"{row.session_order.rsplit('/', 1)[-1]}/{key}"
        for row in trackers.all_rows(athlete_id)
        for key in row.body["wild"]
    )


def _result(sheet: Sheet, record: SessionRecord, wild: frozenset[str]) -> SessionResult:
    document = sheet.document
    finished = record.finished
    body: Any = finished.body if finished else {}
    stopped = record.stopped
    return SessionResult(
        revision=sheet.revision,
        session=sheet.session,
        name=document["name"],
        week_name=document["week_name"],
        day=document["day"],
        on=document.get("on"),
        state=_state(record),
        started_at=record.started_at,
        finished_at=finished.at if finished else None,
        rpe=body.get("rpe"),
        minutes=body.get("minutes"),
        comment=body.get("comment"),
        why_stopped=str(stopped.body.get("why")) if stopped else None,
        exercises=[_exercise(e, record, sheet.session, wild) for e in document["exercises"]],
    )


def _state(record: SessionRecord) -> str:
    if record.stopped is not None:
        return "stopped"
    if record.finished is not None:
        return "finished"
    return "started" if record.started_at or record.sets else "planned"


def _exercise(
    exercise: dict[str, Any], record: SessionRecord, session: str, wild: frozenset[str]
) -> ExerciseResult:
    loads = exercise.get("loads", [])
    planned = [_set(one, loads, record, session, wild) for one in exercise["sets"]]
    added = [key for key, to in record.added.items() if to == exercise["key"]]
    extra = [
        SetResult(
            key,
            len(planned) + place,
            Planned(None, None, None, None),
            _done(record.sets.get(key), f"{session}/{key}" in wild),
        )
        for place, key in enumerate(added, start=1)
    ]
    return ExerciseResult(exercise["key"], exercise["name"], planned + extra)


def _set(
    one: dict[str, Any],
    loads: list[dict[str, Any]],
    record: SessionRecord,
    session: str,
    wild: frozenset[str],
) -> SetResult:
    target, load = one["target"], one.get("load")
    planned = Planned(
        reps=target.get("reps"),
        rir=target.get("rir"),
        load_kg=None if load is None else loads[load]["kg"],
        seconds=target.get("seconds"),
    )
    key = one["key"]
    done = _done(record.sets.get(key), f"{session}/{key}" in wild)
    return SetResult(key, one["number"], planned, done)


def _done(record: SetRecord | None, wild: bool) -> Done | None:
    if record is None:
        return None
    body = record.body
    return Done(
        kind=record.kind,
        load_kg=body.get("load_kg"),
        reps=body.get("reps"),
        rir=body.get("rir"),
        seconds=body.get("seconds"),
        quality=body.get("quality"),
        why=body.get("why"),
        at=record.at,
        two_answers=record.conflict,
        wild=wild,
    )
