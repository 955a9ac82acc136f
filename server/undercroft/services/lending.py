"""A coach's own exercises for the athlete of another: copied, for what was sent lasts for ever."""

from collections.abc import Collection, Iterable, Set
from typing import Any

from undercroft.documents.faults import Fault
from undercroft.documents.own_exercise import OWN
from undercroft.domain.program.block import Block
from undercroft.services.looking_over import lifts_of
from undercroft.store import exercises
from undercroft.store.models import OwnExercise

Known = dict[str, OwnExercise]


def faults(lender: str, to: str, block: Block) -> list[Fault]:
    """Own exercises of a block that the other coach has otherwise, under the same key."""
    if lender == to:
        return []
    mine, theirs = _own(lender), _own(to)
    return [_fault(mine[key]) for key in _differing(lifts_of(block) & mine.keys(), mine, theirs)]


def lend(lender: str, to: str, block: Block, now: int) -> None:
    """Give the other coach the own exercises of a block that they do not have."""
    if lender != to:
        mine = _own(lender)
        _copy(lifts_of(block) & mine.keys(), mine, _own(to), to, now)


def leave_behind(athlete_id: str, giver: str, to: str, now: int) -> list[str]:
    """Give what anything about the athlete names to the athlete's next coach.

    Names of those that both have and that differ; there the next coach's own counts from now on.
    """
    mine, theirs = _own(giver), _own(to)
    named = exercises.named_of_athlete(athlete_id, mine.keys())
    _copy(named, mine, theirs, to, now)
    return [str(mine[key].document["name"]) for key in _differing(named, mine, theirs)]


def _own(coach_id: str) -> Known:
    return {row.key: row for row in exercises.own_of(coach_id) if row.key.startswith(OWN)}


def _differing(named: Iterable[str], mine: Known, theirs: Known) -> list[str]:
    both = sorted(key for key in named if key in theirs)
    return [key for key in both if theirs[key].document != mine[key].document]


def _copy(named: Set[str], mine: Known, theirs: Known, to: str, now: int) -> None:
    """Without alternatives that the other one does not have either."""
    known = {*named, *theirs}
    for key in sorted(named - theirs.keys()):
        exercises.keep(to, key, _within(mine[key].document, known), now)


def _within(document: dict[str, Any], known: Collection[str]) -> dict[str, Any]:
    kept = [a for a in document.get("alternatives", ()) if not a.startswith(OWN) or a in known]
    return {**document, "alternatives": kept} if "alternatives" in document else document


def _fault(row: OwnExercise) -> Fault:
    name = row.document["name"]
    what = f"the athlete's coach has another exercise under the key {row.key}"
    return Fault(name, row.key, what, "should be renamed by one of you: add yours under a new name")
