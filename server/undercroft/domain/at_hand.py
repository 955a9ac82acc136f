"""What an exercise needs beside its implement, and whether it stands in a kit."""

from undercroft.domain.exercise import Exercise
from undercroft.domain.kit import Kit

STANDING = ("support", "landmine", "anchor")
"""Needs that a kit has a list of; all others are among its things, by their common name."""

THINGS = (
    "bench", "box", "pull-up bar", "dip bars", "rings", "ankle strap", "foot strap",
    "sliders", "roller wheel", "throwing ball", "back-extension bench", "leg press", "leg curl",
    "hip machine", "chest press", "shoulder press", "row machine", "sled", "rowing machine",
    "stationary bicycle", "skipping rope", "stairs",
)  # fmt: skip
"""Names of things that the catalogue asks for."""


def lacking(kit: Kit, exercise: Exercise) -> tuple[str, ...]:
    """Needs of the exercise that do not stand in the kit; its implement is another question."""
    things = {thing.strip().casefold() for thing in kit.things}
    here = {"support": kit.supports, "landmine": kit.landmines, "anchor": kit.anchors}
    return tuple(
        need
        for need in exercise.needs
        if not (here[need] if need in here else need.casefold() in things)
    )
