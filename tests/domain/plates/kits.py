"""Invented bars and plates for the tests, by hand and at random."""

from itertools import product
from random import Random

from hypothesis import strategies as st

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import KG_PER_LB

KILOGRAM_SORTS = (25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.25, 1.0, 0.5, 0.25)
POUND_SORTS = (45.0, 35.0, 25.0, 10.0, 5.0, 2.5, 1.25)

CELLAR_BAR = Bar("cellar-bar", "Cellar bar", 20.0)
CELLAR = (
    Plate(20.0, 4, 0.045),
    Plate(15.0, 2, 0.040),
    Plate(10.0, 4, 0.030),
    Plate(5.0, 4, 0.025),
    Plate(2.5, 2, 0.020),
    Plate(1.25, 2, 0.015),
    Plate(0.5, 2, 0.010),
)
"""Twenty plates in a station cellar, invented; seven sorts, ten of them for each side."""


def plates(pairs: dict[float, int], thickness_m: float = 0.02) -> tuple[Plate, ...]:
    """So many plates of each mass for each of two sides."""
    return tuple(Plate(mass, 2 * count, thickness_m) for mass, count in pairs.items())


def pounds(*sorts: tuple[float, int]) -> tuple[Plate, ...]:
    """Plates that are sold in pounds: pounds and number, both sides together."""
    return tuple(Plate(lb * KG_PER_LB, count, 0.02, f"{lb:g} lb") for lb, count in sorts)


def random_kit(rng: Random, most_sorts: int = 8, most_of_a_sort: int = 9) -> tuple[Plate, ...]:
    """Sorts at random, every fifth kit with pound plates among them, odd plates too."""
    masses = list(KILOGRAM_SORTS)
    if rng.random() < 0.2:
        masses += [lb * KG_PER_LB for lb in POUND_SORTS]
    chosen = rng.sample(masses, rng.randint(1, most_sorts))
    return tuple(
        Plate(mass, rng.randint(1, most_of_a_sort), rng.choice((0.01, 0.02, 0.035, 0.06)))
        for mass in chosen
    )


def random_bar(rng: Random) -> Bar:
    return Bar(
        "bar",
        "Bar",
        rng.choice((8.0, 15.0, 20.0, 24.5)),
        sleeve_length_m=rng.choice((0.415, 0.320, 0.200)),
        rated_load_kg=rng.choice((None, None, 100.0, 250.0)),
        collar_mass_kg=rng.choice((0.0, 0.0, 0.25, 2.5)),
    )


def stacks_by_hand(bar: Bar, kit: tuple[Plate, ...]) -> dict[float, int]:
    """All loads of a bar with their fewest plates a side, by trying every number of every sort."""
    found: dict[float, int] = {}
    for counts in product(*(range(plate.count // 2 + 1) for plate in kit)):
        side = sum(n * plate.mass_kg for n, plate in zip(counts, kit, strict=True))
        depth = sum(n * plate.thickness_m for n, plate in zip(counts, kit, strict=True))
        hung = side + bar.collar_mass_kg if side else 0.0
        too_heavy = bar.rated_load_kg is not None and 2 * hung > bar.rated_load_kg + 1e-9
        if depth > bar.sleeve_length_m + 1e-9 or too_heavy:
            continue
        load = round(bar.mass_kg + 2 * hung, 6)
        found[load] = min(found.get(load, 10**6), sum(counts))
    return found


masses = st.sampled_from(KILOGRAM_SORTS)
kits = st.lists(
    st.builds(Plate, masses, st.integers(1, 6), st.sampled_from((0.01, 0.025, 0.06))),
    min_size=1,
    max_size=5,
    unique_by=lambda plate: plate.mass_kg,
).map(tuple)
bars = st.builds(
    Bar,
    st.just("bar"),
    st.just("Bar"),
    st.sampled_from((8.0, 15.0, 20.0)),
    sleeve_length_m=st.sampled_from((0.415, 0.320, 0.10)),
    rated_load_kg=st.sampled_from((None, 60.0, 150.0)),
    collar_mass_kg=st.sampled_from((0.0, 0.25, 2.5)),
)
targets = st.integers(0, 40_000).map(lambda grams_by_10: grams_by_10 / 100)
