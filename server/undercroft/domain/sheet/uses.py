"""What has to be there for an exercise, so that the phone knows what a loss of it forbids."""

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.load_sheet import Use, UseKind
from undercroft.domain.mechanics.chain import HungChain
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.pieces import Piece
from undercroft.domain.sheet.rigging import Rigged

CEILING = Use("ceiling", UseKind.CEILING, "Height above your head", lasting=True)

BANDS = "bands"
"""Of an exercise that is done with any one of them."""


def uses_of(day: Day, exercise: Exercise, piece: Piece | None) -> tuple[Use, ...]:
    """The implement, what the exercise needs beside it, and room above."""
    implement = () if piece is None else _implement(piece)
    needs = tuple(
        Use(need, UseKind.THING, _named(day, need).capitalize()) for need in exercise.needs
    )
    return (*implement, *needs, *((CEILING,) if exercise.overhead else ()))


def rig_uses(rig: Rigged) -> tuple[Use, ...]:
    """Each band or chain that hangs, under its key in the kit."""
    if rig.choice is None:
        return ()
    hung = rig.choice.hung
    if isinstance(hung, HungChain):
        return (Use(hung.chain.key, UseKind.CHAINS, hung.chain.label, lasting=True),)
    laws = {one.law.key: one.law.label for one in hung}
    return tuple(Use(key, UseKind.BANDS, label, lasting=True) for key, label in laws.items())


def _implement(piece: Piece) -> tuple[Use, ...]:
    told = piece.implement
    match told.kind:
        case Implement.BODY:
            return ()
        case Implement.BAND:
            return (Use(BANDS, UseKind.BANDS, "Band"),)
        case Implement.DUMBBELL | Implement.DUMBBELLS:
            return (Use("dumbbells", UseKind.IMPLEMENT, "Dumbbells"),)
        case Implement.LANDMINE:
            return (Use(told.key or told.kind, UseKind.IMPLEMENT, "Bar"),)
        case _:
            return (Use(told.key or told.kind, UseKind.IMPLEMENT, told.name),)


def _named(day: Day, need: str) -> str:
    return day.kit.supports[0].name if need == "support" and day.kit.supports else need
