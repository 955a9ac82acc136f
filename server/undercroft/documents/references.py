"""Names in a document that must exist elsewhere: exercises and lifts of the catalogue."""

from collections.abc import Iterator
from difflib import get_close_matches

from undercroft.documents.faults import DAYS, Fault
from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block, ExercisePlan
from undercroft.domain.program.wish import OfMaximum


def block_faults(block: Block, catalogue: Catalogue) -> tuple[Fault, ...]:
    """Exercises and lifts that the catalogue does not have."""
    return tuple(_block_faults(block, catalogue))


def athlete_faults(athlete: Athlete, catalogue: Catalogue) -> tuple[Fault, ...]:
    """Lifts and exercises in an athlete's document that the catalogue does not have."""
    named = (
        [(f"maximum {i + 1}", f"maxima.{i}.lift", m.lift) for i, m in enumerate(athlete.maxima)]
        + [
            (f"range {i + 1}", f"ranges.{i}.exercise", r.exercise)
            for i, r in enumerate(athlete.ranges)
        ]
        + [(f"lean {i + 1}", f"leans.{i}.lift", x.lift) for i, x in enumerate(athlete.leans)]
        + [(f"lean {i + 1}", f"leans.{i}.on_lift", x.on_lift) for i, x in enumerate(athlete.leans)]
    )
    return tuple(
        unknown(where, path, name, catalogue)
        for where, path, name in named
        if name not in catalogue
    )


def unknown(where: str, path: str, name: str, catalogue: Catalogue) -> Fault:
    """The fault of an unknown exercise, with the nearest names that exist."""
    near = get_close_matches(name, catalogue, n=3, cutoff=0.7)
    right = f"did you mean {' or '.join(near)}?" if near else "use a key of the catalogue"
    return Fault(where, path, f"no exercise {name!r} in the catalogue", right)


def _block_faults(block: Block, catalogue: Catalogue) -> Iterator[Fault]:
    for w, week in enumerate(block.weeks):
        for s, session in enumerate(week.sessions):
            for e, plan in enumerate(session.exercises):
                where = f"week {w + 1}, {DAYS[session.day - 1]}, exercise {e + 1} ({plan.exercise})"
                path = f"weeks.{w}.sessions.{s}.exercises.{e}"
                yield from _exercise_faults(plan, where, path, catalogue)


def _exercise_faults(
    plan: ExercisePlan, where: str, path: str, catalogue: Catalogue
) -> Iterator[Fault]:
    if plan.exercise not in catalogue:
        yield unknown(where, f"{path}.exercise", plan.exercise, catalogue)
    for n, one in enumerate(plan.sets):
        lift = one.load.of if isinstance(one.load, OfMaximum) else None
        if lift is not None and lift not in catalogue:
            yield unknown(f"{where}, set {n + 1}", f"{path}.sets.{n}.load.of", lift, catalogue)
