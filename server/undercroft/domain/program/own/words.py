"""Own changes in words, for the coach who decides on them before the block is sent again."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block, ExercisePlan
from undercroft.domain.program.calendar import DAYS
from undercroft.domain.program.changes import exercise_name, exercise_words
from undercroft.domain.program.own.change import Layer, OwnChange, Part, SessionHead
from undercroft.domain.program.own.stand import Stand, Standing, sessions_by_key, standing_of
from undercroft.domain.program.set_words import sets_words


@dataclass(frozen=True, slots=True)
class Told:
    """`what` the athlete does otherwise; `beneath`: what became of the block's line since."""

    session: str
    exercise: str
    stand: Stand
    where: str
    what: str
    beneath: str
    since: date
    accepted: bool


def told(layer: Layer, block: Block, catalogue: Catalogue) -> tuple[Told, ...]:
    """Every change that makes a difference or has lost its place, in the order of the block."""
    sessions = sessions_by_key(block)
    places = _places(block)
    lines = [
        _line(one, standing, places, catalogue)
        for one in layer.changes
        for standing in [standing_of(one, sessions)]
        if standing.stand is not Stand.SAME
    ]
    order = list(sessions)
    return tuple(
        sorted(lines, key=lambda one: order.index(one.session) if one.session in order else -1)
    )


def _places(block: Block) -> Mapping[str, str]:
    return {
        session.key: f"{week.name}, {DAYS[session.day - 1]}"
        for week in block.weeks
        for session in week.sessions
    }


def _line(
    change: OwnChange, standing: Standing, places: Mapping[str, str], catalogue: Catalogue
) -> Told:
    gone = standing.stand is Stand.GONE
    beneath = change.beneath if gone else standing.written
    return Told(
        change.session,
        change.exercise,
        standing.stand,
        places.get(change.session, "a session that is gone"),
        _difference(beneath, standing.part, catalogue),
        _moved_on(change, standing, catalogue),
        change.since,
        change.accepted,
    )


def _moved_on(change: OwnChange, standing: Standing, catalogue: Catalogue) -> str:
    if standing.stand is Stand.GONE:
        return "the block has it no more"
    if standing.stand is Stand.CLASH:
        said = _difference(change.beneath, standing.written, catalogue)
        return f"the block’s line changed since: {said}"
    return ""


def _difference(before: Part | None, after: Part | None, catalogue: Catalogue) -> str:
    if isinstance(before, SessionHead) or isinstance(after, SessionHead):
        return ", ".join(_head(before, after))
    if isinstance(before, ExercisePlan) and isinstance(after, ExercisePlan):
        return exercise_words(before, after, catalogue)
    if isinstance(after, ExercisePlan):
        return f"{exercise_name(after, catalogue)} is added: {sets_words(after.sets)}"
    if isinstance(before, ExercisePlan):
        return f"{exercise_name(before, catalogue)} is left out"
    return ""


def _head(before: Part | None, after: Part | None) -> Iterator[str]:
    if not isinstance(before, SessionHead) or not isinstance(after, SessionHead):
        yield "the session is left out"
        return
    if before.day != after.day:
        yield f"on {DAYS[after.day - 1]} instead of {DAYS[before.day - 1]}"
    if before.name != after.name:
        yield f"called {after.name} instead of {before.name}"
    if before.note != after.note:
        yield "with another note" if after.note else "without the note"
