"""A week of a draft unfolded by its rules, and the loads that its weeks become for an athlete."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.made import made
from undercroft.documents.reading import read_block
from undercroft.documents.sheet import LoadSheetShape
from undercroft.domain.errors import DomainError
from undercroft.domain.exercise import Catalogue
from undercroft.domain.load_sheet import LoadSheet
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan, Week
from undercroft.domain.program.calendar import DAYS
from undercroft.domain.program.finding import Finding
from undercroft.domain.program.progression import Progression
from undercroft.domain.program.unfolding import (
    MOST_WEEKS,
    Misfit,
    Placed,
    TableRow,
    Unfolding,
    load_table,
    misfits,
    unfold_within,
    week_of,
)
from undercroft.services import looking_over, own_changes, preview
from undercroft.services.catalogues import catalogue_of
from undercroft.services.looking_over import Found
from undercroft.services.refusals import Invalid

__all__ = ["MOST_WEEKS", "Rule", "Unfolded", "Wanted", "Whose", "unfold_week", "wanted"]


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule for one exercise, named by its session's key and its own."""

    session: str
    exercise: str
    progression: Progression


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be unfolded and how far, and the rules of its exercises."""

    unfolding: Unfolding
    rules: tuple[Rule, ...] = ()


def wanted(asked: Mapping[str, Any]) -> Wanted:
    """From the fields of a request, rules and the light week already read."""
    far = Unfolding(
        asked["week"], asked["weeks"], asked.get("light_week"), asked.get("anew", False)
    )
    return Wanted(far, tuple(Rule(**rule) for rule in asked.get("rules", ())))


@dataclass(frozen=True, slots=True)
class Whose:
    """Whose loads are told; with a block's id the athlete's own changes to it count in them."""

    athlete: str | None
    block: str | None = None


@dataclass(frozen=True, slots=True)
class Unfolded:
    """Faults of the draft or of rules that do not fit it; where there are none, all the rest.

    `weeks` are the places, from 0, of the week and of those unfolded from it; findings are of these
    and of the block as a whole, and the table has a column for each.
    """

    faults: tuple[Fault, ...]
    document: dict[str, Any] | None = None
    weeks: tuple[int, ...] = ()
    findings: tuple[Found, ...] = ()
    table: tuple[TableRow, ...] = ()


def unfold_week(coach_id: str, document: Any, wanted: Wanted, whose: Whose, now: int) -> Unfolded:
    """Nothing is kept. Without an athlete the table has no loads.

    An exercise without a rule here goes by the one in the draft, or is repeated. Raises Invalid
    where the week or an exercise is not in the draft, or the weeks are too many.
    """
    known = catalogue_of(coach_id)
    try:
        block = read_block(document, known)
    except FaultyDocument as fault:
        return Unfolded(fault.faults)
    ruled = _with_rules(block, wanted)
    faults = _faults(ruled, wanted.unfolding)
    if faults:
        return Unfolded(faults)
    placed = _placed(ruled, wanted.unfolding)
    try:
        sheets, findings = _loads(coach_id, placed, whose, known, now)
    except FaultyDocument as fault:
        return Unfolded(fault.faults)
    table = load_table(placed.block, sheets, known, placed.places)
    return Unfolded((), plain(made(BlockShape).dump(placed.block)), placed.places, findings, table)


def _with_rules(block: Block, wanted: Wanted) -> Block:
    week = _week(block, wanted.unfolding.week)
    _require_known(week, wanted.rules)
    by_place = {(rule.session, rule.exercise): rule.progression for rule in wanted.rules}

    def ruled(session: SessionPlan, plan: ExercisePlan) -> ExercisePlan:
        rule = by_place.get((session.key, plan.key))
        return plan if rule is None else replace(plan, progression=rule)

    sessions = tuple(
        replace(session, exercises=tuple(ruled(session, plan) for plan in session.exercises))
        for session in week.sessions
    )
    changed = replace(week, sessions=sessions)
    return replace(block, weeks=tuple(changed if w is week else w for w in block.weeks))


def _week(block: Block, key: str) -> Week:
    try:
        return week_of(block, key)
    except KeyError:
        known = ", ".join(week.key for week in block.weeks)
        raise _invalid(
            "week", "week", f"{key!r} is no week of this block", f"use {known}"
        ) from None


def _require_known(week: Week, rules: Sequence[Rule]) -> None:
    known = {(session.key, plan.key) for session in week.sessions for plan in session.exercises}
    for n, rule in enumerate(rules):
        if (rule.session, rule.exercise) not in known:
            what = f"that week has no exercise {rule.exercise!r} in a session {rule.session!r}"
            right = "name session and exercise by their keys in the draft"
            raise _invalid(f"rule {n + 1}", f"rules.{n}", what, right)


def _faults(block: Block, wanted: Unfolding) -> tuple[Fault, ...]:
    """Rules that do not fit their exercise, at its place in the draft."""
    week = week_of(block, wanted.week)
    place = block.weeks.index(week)
    found = misfits(week, wanted.weeks, wanted.light_week)
    return tuple(_fault(week, place, misfit) for misfit in found)


def _fault(week: Week, place: int, misfit: Misfit) -> Fault:
    session = week.sessions[misfit.session]
    exercise = session.exercises[misfit.exercise].exercise
    day = DAYS[session.day - 1]
    where = f"week {place + 1}, {day}, exercise {misfit.exercise + 1} ({exercise}), progression"
    path = f"weeks.{place}.sessions.{misfit.session}.exercises.{misfit.exercise}.progression"
    later = f" in week {misfit.week} of the unfolding" if misfit.week > 1 else ""
    return Fault(where, path, f"{misfit.what}{later}", misfit.right)


def _placed(block: Block, wanted: Unfolding) -> Placed:
    try:
        return unfold_within(block, wanted)
    except DomainError as fault:
        what = f"{fault.where}: {fault.what}"
        raise _invalid("weeks", "weeks", what, fault.right) from None


def _loads(
    coach_id: str, placed: Placed, whose: Whose, known: Catalogue, now: int
) -> tuple[list[LoadSheet], tuple[Found, ...]]:
    if whose.athlete is None:
        return [], ()
    own = own_changes.block_for(whose.athlete, whose.block, placed.block, known)
    found = preview.beside(coach_id, whose.athlete, own, now)
    shown = {one.key for place in placed.places for one in placed.block.weeks[place].sessions}
    begun = [made(LoadSheetShape).load(one) for key, one in found.begun.items() if key in shown]
    ours = [one for one in found.found if _is_of(one, placed.places)]
    told = preview.in_the_text(looking_over.shown(ours), own, placed.block)
    return [*found.looked.done.sheets, *begun], tuple(told)


def _is_of(finding: Finding, places: Sequence[int]) -> bool:
    """Whether it speaks of one of these weeks, or of no week in particular."""
    steps = finding.path.split(".")
    return steps[0] != "weeks" or int(steps[1]) in places


def _invalid(where: str, path: str, what: str, right: str) -> Invalid:
    return Invalid(what, right, (Fault(where, path, what, right),))
