"""The loads of one exercise, each once, lightest first, to be named by index."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from undercroft.domain.load_sheet import SheetLoad
from undercroft.domain.loads import Load, grains
from undercroft.domain.sheet.plates import plate_kg
from undercroft.domain.strength import position

Face = tuple[int, tuple[float, ...], float | None, tuple[float, ...], float | None]


@dataclass(frozen=True, slots=True, eq=False)
class Shelf:
    """`at` finds a load's index by what hangs where."""

    loads: tuple[SheetLoad, ...]
    at: dict[Face, int]

    def index(self, load: Load) -> int:
        """The index of a load that was put on the shelf."""
        return self.at[_face(load)]

    def heaviest_within(self, kg: float) -> int | None:
        """The index of the heaviest load that is not above `kg`."""
        within = [i for i, load in enumerate(self.loads) if grains(load.kg) <= grains(kg)]
        return within[-1] if within else None

    def nearest(self, kg: float) -> int:
        """The index of the load nearest to `kg`, the lighter of two as near."""
        return min(range(len(self.loads)), key=lambda i: (abs(self.loads[i].kg - kg), i))


def shelve(loads: Iterable[Load]) -> Shelf:
    """Put loads on the shelf; the same load twice stands there once."""
    faces = {_face(load): load for load in loads}
    ordered: Sequence[Face] = sorted(faces, key=lambda face: (face[0], str(face[1:])))
    return Shelf(
        tuple(_on_sheet(faces[face]) for face in ordered),
        {face: place for place, face in enumerate(ordered)},
    )


def _face(load: Load) -> Face:
    return grains(load.kg), load.side, load.pin_kg, load.add_ons_kg, load.dumbbell_kg


def _on_sheet(load: Load) -> SheetLoad:
    return SheetLoad(
        kg=round(load.kg, 3),
        position=position(load.kg),
        side=tuple(plate_kg(mass) for mass in load.side),
        pin_kg=load.pin_kg,
        add_ons_kg=load.add_ons_kg,
        piece_kg=load.dumbbell_kg,
    )
