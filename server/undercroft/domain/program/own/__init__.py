"""What one athlete does otherwise than the block says: kept apart from it, and laid over it."""

from undercroft.domain.program.own.between import between
from undercroft.domain.program.own.change import Layer, OwnChange, Part, Place, SessionHead
from undercroft.domain.program.own.decide import dropped, kept_as_own
from undercroft.domain.program.own.lay import laid_over
from undercroft.domain.program.own.misfit import Misfit
from undercroft.domain.program.own.paths import path_beneath
from undercroft.domain.program.own.stand import Stand, stand_of
from undercroft.domain.program.own.words import Told, told

__all__ = [
    "Layer",
    "Misfit",
    "OwnChange",
    "Part",
    "Place",
    "SessionHead",
    "Stand",
    "Told",
    "between",
    "dropped",
    "kept_as_own",
    "laid_over",
    "path_beneath",
    "stand_of",
    "told",
]
