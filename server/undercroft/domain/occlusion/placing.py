"""Where and how a wrap or cuff goes on, and what may be lifted with it when alone."""

from collections.abc import Iterator

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.occlusion.issue import Issue, stop, warn
from undercroft.domain.program.methods import Limb

HOW = (
    "At the very top of the limb, above the bulk of the muscle; never on a joint, trunk or neck.",
    "Each layer over another one counts as tighter: the same number of turns every time.",
    "The free end lies where one hand can pull it off.",
    "Flat and without folds; look at the limb before and after.",
    "Numb within 20 seconds is too tight: off at once.",
    "No pump at all after the set is too loose.",
)
"""Common practice; nerve harm comes of high pressure and steep edges (Masri et al. 2020, seen)."""

DROPPABLE = frozenset(
    {Implement.STACK, Implement.BAND, Implement.DUMBBELL, Implement.DUMBBELLS, Implement.BODY}
)


def placing_issues(limb: Limb) -> Iterator[Issue]:
    """Below the knee a wrap presses on a nerve that lies on the bone: refused (from memory)."""
    if limb is Limb.CALF:
        yield stop(
            "placing",
            "a wrap or cuff on the calf sits below the knee",
            "the top of the thigh; the calf works below it just as well",
        )


def lifting_issues(exercise: Exercise, alone: bool) -> Iterator[Issue]:
    """Alone with wraps on: nothing that comes to rest on the lifter when a limb gives way.

    Weakness comes suddenly. Our own choice; that bars over face and throat kill lone lifters is
    on record (Lombardi & Troxel, seen).
    """
    if not alone or (exercise.implement in DROPPABLE and not exercise.needs_safeties):
        return
    right = "a machine, a cable, a band, or a dumbbell that can be dropped"
    if exercise.needs_safeties or exercise.needs not in ((), ("landmine",)):
        what = f"{exercise.name} with wraps on, alone: it can come down on face, throat or back"
        yield stop("alone-under-load", what, right)
    else:
        what = f"{exercise.name} with wraps on, alone"
        yield warn("alone-with-bar", what, f"let go of it at any time, or better: {right}")
