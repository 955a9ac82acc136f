"""Proposed loads as the athlete's kit makes them, all sets of an exercise worked out together."""

from collections.abc import Sequence
from dataclasses import replace

from undercroft.domain.load_sheet import SheetExercise, SheetSet
from undercroft.domain.program.wish import Fixed
from undercroft.domain.proposals.proposal import (
    SAME,
    ExerciseProposals,
    Kind,
    SessionProposals,
    SetProposal,
)
from undercroft.domain.sheet import WorkedOut

HALF_KG = 0.5
"""What a load in the hand or beside bands is written to: neither is a sum of plates."""

NOTHING_MADE = "the kit makes no load of it"


def on_kit(proposals: Sequence[SessionProposals], done: WorkedOut) -> tuple[SessionProposals, ...]:
    """`done`: the sessions worked out with what is proposed, within each exercise's tolerance."""
    sheets = {(s.session, e.key): e for s in done.sheets for e in s.exercises}
    return tuple(
        replace(
            session,
            exercises=tuple(
                _exercise(one, sheets[session.session, one.key])
                if (session.session, one.key) in sheets
                else one
                for one in session.exercises
            ),
        )
        for session in proposals
    )


def _exercise(proposals: ExerciseProposals, sheet: SheetExercise) -> ExerciseProposals:
    sets = {one.key: one for one in sheet.sets}
    return replace(
        proposals,
        sets=tuple(
            _set(one, sheet, sets[one.set]) if one.kind is Kind.PROPOSED else one
            for one in proposals.sets
        ),
    )


def _set(proposal: SetProposal, sheet: SheetExercise, one: SheetSet) -> SetProposal:
    wish = proposal.write
    if not isinstance(wish, Fixed) or one.load is None or one.wish_kg is None:
        return replace(proposal, kind=Kind.UNKNOWN, to_kg=None, why=NOTHING_MADE, write=None)
    chosen = sheet.loads[one.load].kg
    if chosen == proposal.from_kg:
        why = f"{proposal.why}; {SAME}"
        return replace(proposal, kind=Kind.STAYS, to_kg=None, why=why, write=None)
    return replace(proposal, to_kg=chosen, write=replace(wish, kg=_written(wish, one, chosen)))


def _written(wish: Fixed, one: SheetSet, chosen: float) -> float:
    """The kit's load where the wish is for all that hangs there.

    Beside bands the plates are only a part of it: then the wish itself is written.
    """
    whole = one.wish_kg is not None and abs(one.wish_kg - wish.kg) < 0.001
    kg = chosen if whole else wish.kg
    return kg if whole and not wish.in_hand else round(kg / HALF_KG) * HALF_KG
