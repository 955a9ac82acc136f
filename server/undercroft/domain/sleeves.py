"""What takes plates, and which of the kit's plates can go on it."""

from dataclasses import dataclass, replace

from undercroft.domain.errors import LoadError, not_negative, positive, whole
from undercroft.domain.kit import Bar, DumbbellHandle, Plate

MOST_SORTS = 24
MOST_OF_A_SORT = 200
THINNEST_M = 0.001


@dataclass(frozen=True, slots=True)
class Sleeves:
    """`number` sleeves that all carry the same stack, on `pieces` bars or handles alike.

    `own_kg` is one piece without plates; `collar_kg` goes on each sleeve that carries plates, and
    on no bare one; `length_m` is its room for plates, `limit_kg` bounds plates and collar of
    one sleeve (None: no bound). `where` and `bare` are words for the label of a load.
    """

    key: str
    own_kg: float
    number: int
    length_m: float
    pieces: int = 1
    limit_kg: float | None = None
    collar_kg: float = 0.0
    where: str = "on each side"
    bare: str = "on the bar"

    @property
    def per_piece(self) -> int:
        return self.number // self.pieces


def bar_sleeves(bar: Bar) -> Sleeves:
    """Both sleeves of a bar. Its rated load is for plates and collars, half of it a sleeve."""
    return Sleeves(
        key=bar.key,
        own_kg=positive(f"{bar.key}: mass of the bar in kg", bar.mass_kg),
        number=2,
        length_m=positive(f"{bar.key}: sleeve length in m", bar.sleeve_length_m),
        limit_kg=_half_rated(bar),
        collar_kg=not_negative(f"{bar.key}: collar mass in kg", bar.collar_mass_kg),
    )


def landmine_sleeve(bar: Bar) -> Sleeves:
    """The one sleeve of a bar whose other end stands in a landmine; its own mass is not counted.

    A load here is the mass on the sleeve, which is what the lever's arithmetic asks for.
    """
    both = bar_sleeves(bar)
    return replace(both, own_kg=0.0, number=1, where="on the sleeve", bare="on the sleeve")


def handle_sleeves(handle: DumbbellHandle, pair: bool) -> Sleeves:
    """Both ends of one loadable handle, or of two that are loaded alike."""
    pieces = 2 if pair else 1
    if whole(f"{handle.key}: number of handles", handle.count) < pieces:
        raise LoadError(f"{handle.key}: number of handles", handle.count, f"{pieces} or more")
    return Sleeves(
        key=handle.key,
        own_kg=positive(f"{handle.key}: mass of the handle in kg", handle.mass_kg),
        number=2 * pieces,
        pieces=pieces,
        length_m=positive(f"{handle.key}: sleeve length in m", handle.sleeve_length_m),
        limit_kg=_half_rated(handle),
        collar_kg=not_negative(f"{handle.key}: collar mass in kg", handle.collar_mass_kg),
        where="on each end of both" if pair else "on each end",
        bare="on the handles" if pair else "on the handle",
    )


def usable_sorts(sleeves: Sleeves, plates: tuple[Plate, ...]) -> tuple[Plate, ...]:
    """The sorts of plates that can go on, heaviest first; `count` is now per sleeve.

    Plates of one mass, thickness and label are one sort. Raises LoadError for a plate that cannot
    be and for more than 24 sorts.
    """
    pooled: dict[tuple[float, float, str], int] = {}
    for plate in plates:
        positive("plate mass in kg", plate.mass_kg)
        _thickness(plate)
        _count(plate)
        sort = (plate.mass_kg, plate.thickness_m, plate.label)
        pooled[sort] = pooled.get(sort, 0) + plate.count
    sorts = [Plate(m, n // sleeves.number, t, name) for (m, t, name), n in pooled.items()]
    usable = [sort for sort in sorts if sort.count]
    if len(usable) > MOST_SORTS:
        raise LoadError("sorts of plates in the kit", len(usable), f"{MOST_SORTS} at most")
    return tuple(sorted(usable, key=lambda sort: (-sort.mass_kg, sort.thickness_m, sort.label)))


def _thickness(plate: Plate) -> None:
    if not plate.thickness_m >= THINNEST_M:
        field = f"thickness in m of the plate of {plate.mass_kg:g} kg"
        raise LoadError(field, plate.thickness_m, f"{THINNEST_M} or more")


def _count(plate: Plate) -> None:
    field = f"number of plates of {plate.mass_kg:g} kg"
    if whole(field, plate.count) > MOST_OF_A_SORT:
        raise LoadError(field, plate.count, f"{MOST_OF_A_SORT} or fewer")


def _half_rated(thing: Bar | DumbbellHandle) -> float | None:
    if thing.rated_load_kg is None:
        return None
    return positive(f"{thing.key}: rated load in kg", thing.rated_load_kg) / 2
