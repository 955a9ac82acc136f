"""What speaks for other loads than those an athlete was sent, read at once."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import Any

from undercroft.documents.known import read_known
from undercroft.documents.told import ToldSession, read_told
from undercroft.domain.ledger import SessionRecord
from undercroft.domain.occlusion import NextLoad
from undercroft.domain.program.methods import Limb
from undercroft.domain.proposals import Evidence, OcclusionDone, Place, SentLoads
from undercroft.domain.sheet import DoneSession
from undercroft.domain.sheet.occlusion import has_occlusion
from undercroft.services.occlusion_results import answers_done, reps_done
from undercroft.services.planning import Current
from undercroft.services.sessions_shown import Shown, sessions_between
from undercroft.store import entries, revisions, sessions, trackers
from undercroft.store.models import Revision

LOOKED_BACK = timedelta(days=28)
"""How far back the last time of an occlusion exercise is looked for: after four weeks away the
ladder of exposures goes back (`domain/occlusion/ladder.py`)."""

LOOKED_AHEAD = timedelta(days=7)
"""A session may be done before its day."""


def evidence_of(athlete_id: str, current: Current, today: date) -> Evidence:
    """For the run that the athlete trains by; as many statements however long it is."""
    history = [_sent(one) for one in revisions.revisions_of_run(athlete_id, current.run)]
    work = has_occlusion(current.block)
    return Evidence(
        history=history,
        told=_told_since(athlete_id, history),
        occlusion=dict(_occlusion(athlete_id, today)) if work else {},
    )


def _told_since(
    athlete_id: str, history: Sequence[SentLoads]
) -> Mapping[str, Sequence[DoneSession]]:
    """By lift the sessions since the earliest day that a maximum is known from, oldest first."""
    known = [sent.known for sent in history if sent.known is not None]
    days = [maximum.at for one in known for maximum in one.maxima.values()]
    told: dict[str, list[DoneSession]] = defaultdict(list)
    if days:
        for row in trackers.rows_since(athlete_id, min(days).isoformat()):
            told[row.lift].append(_done(read_told(row.body)))
    return told


def _done(told: ToldSession) -> DoneSession:
    return DoneSession(told.on, tuple(piece.evidence for piece in told.told))


def _sent(row: Revision) -> SentLoads:
    document: Any = row.document
    return SentLoads(dict(_loads(document)), read_known(row.known))


def _loads(document: Mapping[str, Any]) -> Iterator[tuple[Place, Any]]:
    """Each set's load as it is written: to read every revision whole would take seconds."""
    for week in document["weeks"]:
        for session in week["sessions"]:
            for exercise in session["exercises"]:
                for one in exercise["sets"]:
                    yield (session["key"], one["key"]), one["load"]


def _occlusion(athlete_id: str, today: date) -> Iterator[tuple[tuple[str, Limb], OcclusionDone]]:
    """By exercise and limb, later sessions after earlier ones; one under way tells nothing yet."""
    last, runs = entries.last_begun(athlete_id), sessions.runs_of(athlete_id)
    under_way = None if last is None else (runs.get(last.revision), last.session)
    for one in sessions_between(athlete_id, today - LOOKED_BACK, today + LOOKED_AHEAD):
        goes_on = (one.run, one.sheet.session) == under_way
        if one.record is not None and (_over(one.record) or not goes_on):
            yield from _of_session(one, one.record)


def _over(record: SessionRecord) -> bool:
    return record.finished is not None or record.stopped is not None


def _of_session(
    shown: Shown, record: SessionRecord
) -> Iterator[tuple[tuple[str, Limb], OcclusionDone]]:
    for exercise in shown.sheet.document["exercises"]:
        reps = reps_done(exercise, record) if exercise["method"] == "occlusion" else []
        if reps:
            limb = Limb(exercise["details"]["limb"])
            yield (exercise["exercise"], limb), _as_done(exercise, record, reps)


def _as_done(exercise: dict[str, Any], record: SessionRecord, reps: list[int]) -> OcclusionDone:
    table = (exercise.get("occlusion") or {}).get("next")
    loads = [one.body.get("load_kg") for each in answers_done(exercise, record) for one in each]
    return OcclusionDone(
        table=None if table is None else NextLoad(**table),
        reps=tuple(reps),
        loads_kg=tuple(float(kg) for kg in loads if kg),
        stopped=record.stopped is not None,
    )
