"""A coach's own exercises for the athlete of another: copied, for what was sent lasts for ever.

A copy that its new owner never changed follows the lender's: the next loan brings it along. One
that they changed is theirs, and differs.
"""

import json
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

from undercroft.documents.faults import Fault
from undercroft.documents.own_exercise import OWN
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block
from undercroft.services import tokens
from undercroft.services.catalogues import with_own
from undercroft.services.looking_over import lifts_of
from undercroft.store import exercises
from undercroft.store.models import OwnExercise

Known = dict[str, OwnExercise]


@dataclass(frozen=True, slots=True)
class Loan:
    """What goes along to another coach as things stand; nothing is written by making one.

    `documents`: by key what they lack, or have as an older copy. `differing`: names of what they
    have otherwise under the same key; theirs counts there.
    """

    lender: str
    to: str
    documents: Mapping[str, dict[str, Any]]
    differing: Mapping[str, str]


def of_block(lender: str, to: str, block: Block) -> Loan:
    """Of what a block names."""
    mine = _own(lender)
    return _loan(lender, to, lifts_of(block) & mine.keys(), mine)


def of_athlete(athlete_id: str, giver: str, to: str) -> Loan:
    """Of what anything about an athlete names, for their next coach."""
    mine = _own(giver)
    return _loan(giver, to, exercises.named_of_athlete(athlete_id, mine.keys()), mine)


def faults(loan: Loan) -> list[Fault]:
    """What keeps a block from being sent."""
    return [_fault(key, name) for key, name in loan.differing.items()]


def catalogue_after(loan: Loan) -> Catalogue:
    """The other coach's catalogue as it is once the loan is made."""
    theirs = {row.key: row for row in exercises.own_of(loan.to)}
    for key, document in loan.documents.items():
        archived_at = theirs[key].archived_at if key in theirs else None
        theirs[key] = OwnExercise(key=key, document=document, archived_at=archived_at)
    return with_own(theirs.values())


def lend(loan: Loan, now: int) -> None:
    """Write it; call where nobody else can have written since it was made."""
    for key, document in loan.documents.items():
        exercises.keep(loan.to, key, document, now)
        exercises.note_lent(loan.to, key, loan.lender, _digest(document))


def _loan(lender: str, to: str, named: Collection[str], mine: Known) -> Loan:
    """Without alternatives that the other one does not have either."""
    theirs = _own(to)
    known = {*named, *theirs}
    documents, differing = {}, {}
    for key in sorted(named):
        document, has = _within(mine[key].document, known), theirs.get(key)
        if has is None or (_is_copy(has, lender) and has.document != document):
            documents[key] = document
        elif not _is_copy(has, lender) and has.document != mine[key].document:
            differing[key] = str(document["name"])
    return Loan(lender, to, documents, differing)


def _own(coach_id: str) -> Known:
    return {row.key: row for row in exercises.own_of(coach_id) if row.key.startswith(OWN)}


def _is_copy(row: OwnExercise, lender: str) -> bool:
    return bool(row.lent_by == lender and row.lent_digest == _digest(row.document))


def _digest(document: dict[str, Any]) -> str:
    return tokens.fingerprint(json.dumps(document, sort_keys=True))


def _within(document: dict[str, Any], known: Collection[str]) -> dict[str, Any]:
    kept = [a for a in document.get("alternatives", ()) if not a.startswith(OWN) or a in known]
    return {**document, "alternatives": kept} if "alternatives" in document else document


def _fault(key: str, name: str) -> Fault:
    what = f"the athlete's coach has another exercise under the key {key}"
    return Fault(name, key, what, "should be renamed by one of you: add yours under a new name")
