"""The tension of one loop band at a flat length, from as many readings as there are.

| readings | law | doubt (one standard deviation) |
| four or more | monotone cubic through rest length and readings | the readings' own |
| two or three | the rubber shape, scale and rest length fitted | 5 % and the misfit |
| one | the rubber shape, scale alone | 8 % |
| none | the rubber shape from width and thickness, k = 1.3 | 20 % |

Tension over length is curved (McMaster et al. 2010: second-order polynomial, r ≥ 0.99, seen) and a
band repeats itself well (ICC 0.93-0.99 over 141 bands, Fuentes et al. 2019, seen); two bands sold
as equal do not equal each other. Readings are taken upwards, after five stretches.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import minimize_scalar

from undercroft.domain.errors import LoadError, positive
from undercroft.domain.kit import Band, BandReading, Kit
from undercroft.domain.mechanics.rubber import (
    Floats,
    section_mm2,
    stress_mpa,
    stress_slope_mpa,
)
from undercroft.domain.mechanics.settings import DEFAULT

READINGS_FOR_A_CURVE = 4


class Basis(StrEnum):
    """What a band's tension law rests on."""

    READINGS = "readings"
    FITTED = "fitted"
    SCALED = "scaled"
    ESTIMATED = "estimated"


@dataclass(frozen=True, slots=True, eq=False)
class BandLaw:
    """`tension` and `slope` give N and N/m at flat lengths within `rest_m` to `most_m`.

    `longest_m` is the longest reading (None without any), `knots_m` the lengths where the law
    bends, `doubt_share` the doubt as a share of the tension; scale and tape add theirs to laws
    that go through their readings.
    """

    key: str
    label: str
    basis: Basis
    rest_m: float
    most_m: float
    longest_m: float | None
    knots_m: tuple[float, ...]
    doubt_share: float
    tension: Callable[[Floats], Floats]
    slope: Callable[[Floats], Floats]


def laws_of(kit: Kit) -> dict[str, BandLaw]:
    """The law of every band of a kit by the band's key. Raises LoadError for a band that errs."""
    return {band.key: band_law(band) for band in kit.bands}


def band_law(band: Band) -> BandLaw:
    """The tension law of one band. LoadError where sizes or readings cannot be."""
    positive(f"{band.key}: width in mm", band.width_mm)
    positive(f"{band.key}: thickness in mm", band.thickness_mm)
    rest = positive(f"{band.key}: rest length in m", band.rest_length_m)
    readings = _checked(band)
    if len(readings) >= READINGS_FOR_A_CURVE:
        return _through(band, readings)
    if len(readings) > 1:
        fitted_rest, amplitude, misfit = _fitted(rest, readings)
        doubt = float(np.hypot(DEFAULT.few_readings_doubt, misfit))
        return _rubber(band, Basis.FITTED, fitted_rest, amplitude, doubt)
    if readings:
        amplitude = readings[0].force_n / float(stress_mpa(np.array(readings[0].length_m / rest)))
        return _rubber(band, Basis.SCALED, rest, amplitude, DEFAULT.one_reading_doubt)
    amplitude = DEFAULT.estimate_scale * section_mm2(band.width_mm, band.thickness_mm)
    return _rubber(band, Basis.ESTIMATED, rest, amplitude, DEFAULT.estimate_doubt)


def tension_n(law: BandLaw, length_m: Floats) -> Floats:
    """Tension in N at flat lengths; zero at and below the rest length.

    Raises LoadError beyond what was measured or what a band should bear.
    """
    within(law, length_m)
    return np.where(length_m <= law.rest_m, 0.0, law.tension(length_m))


def tension_doubt_n(law: BandLaw, length_m: Floats) -> Floats:
    """Doubt of the tension in N at flat lengths, one standard deviation; zero where slack."""
    tension = tension_n(law, length_m)
    doubt = law.doubt_share * tension
    if law.basis is Basis.READINGS:
        doubt = np.hypot(doubt, DEFAULT.tape_doubt_m * law.slope(length_m))
    return np.where(length_m <= law.rest_m, 0.0, doubt)


def at_length_n(law: BandLaw, length_m: float) -> tuple[float, float]:
    """Tension in N at one flat length, and its doubt. Raises LoadError beyond the law's reach."""
    length = np.array(length_m)
    return float(tension_n(law, length)), float(tension_doubt_n(law, length))


def within(law: BandLaw, length_m: Floats) -> None:
    """Raise LoadError where a length is no length or lies beyond the law's reach."""
    longest = float(np.max(length_m))
    field = f"{law.key}: stretched length in m"
    if not np.all(np.isfinite(length_m)) or np.min(length_m) < 0:
        raise LoadError(field, longest, "0 or a number above 0")
    if longest > law.most_m * (1 + 1e-12):
        raise LoadError(field, f"{longest:.3g}", f"{law.most_m:.3g} or less: {reach_words(law)}")


def reach_words(law: BandLaw) -> str:
    """Why a law ends where it ends."""
    if law.longest_m is not None and law.most_m < DEFAULT.most_stretch * law.rest_m:
        return f"its longest reading is at {law.longest_m:.3g} m; read it further or choose another"
    return f"{DEFAULT.most_stretch:g} times its rest length is the most for a band; choose another"


def _checked(band: Band) -> tuple[BandReading, ...]:
    """Readings shortest first, each longer and harder than the one before."""
    readings = tuple(sorted(band.readings, key=lambda reading: reading.length_m))
    for number, reading in enumerate(readings, start=1):
        field = f"{band.key}: reading {number}"
        positive(f"{field}, force in N", reading.force_n)
        if not band.rest_length_m < reading.length_m < np.inf:
            wants = f"more than {band.rest_length_m:g}, the rest length: read it stretched"
            raise LoadError(f"{field}, length in m", reading.length_m, wants)
    for number, (short, long) in enumerate(pairwise(readings), start=2):
        field = f"{band.key}: reading {number}"
        if short.length_m == long.length_m:
            wants = "another length than the reading before"
            raise LoadError(f"{field}, length in m", long.length_m, wants)
        if short.force_n >= long.force_n:
            wants = f"more than {short.force_n:g}, the reading at {short.length_m:g} m"
            raise LoadError(f"{field}, force in N", long.force_n, wants)
    return readings


def _through(band: Band, readings: tuple[BandReading, ...]) -> BandLaw:
    """Through the readings; the little beyond the longest follows the rubber shape from there."""
    rest = band.rest_length_m
    lengths = np.array([rest, *(reading.length_m for reading in readings)])
    forces = np.array([0.0, *(reading.force_n for reading in readings)])
    curve = PchipInterpolator(lengths, forces)
    steepness = curve.derivative()
    last = float(lengths[-1])
    amplitude = float(forces[-1] / stress_mpa(np.array(last / rest)))

    def tension(length: Floats) -> Floats:
        inside = curve(np.clip(length, rest, last))
        return np.where(length <= last, inside, amplitude * stress_mpa(length / rest))

    def slope(length: Floats) -> Floats:
        inside = steepness(np.clip(length, rest, last))
        beyond = amplitude * stress_slope_mpa(length / rest) / rest
        return np.where(length <= last, inside, beyond)

    return BandLaw(
        key=band.key,
        label=band.label,
        basis=Basis.READINGS,
        rest_m=rest,
        most_m=_most(band, rest),
        longest_m=last,
        knots_m=tuple(lengths.tolist()),
        doubt_share=DEFAULT.scale_doubt,
        tension=tension,
        slope=slope,
    )


def _rubber(
    band: Band, basis: Basis, rest_m: float, amplitude: float, doubt_share: float
) -> BandLaw:
    return BandLaw(
        key=band.key,
        label=band.label,
        basis=basis,
        rest_m=rest_m,
        most_m=_most(band, rest_m),
        longest_m=max((reading.length_m for reading in band.readings), default=None),
        knots_m=(rest_m,),
        doubt_share=doubt_share,
        tension=lambda length: amplitude * stress_mpa(length / rest_m),
        slope=lambda length: amplitude * stress_slope_mpa(length / rest_m) / rest_m,
    )


def _most(band: Band, rest_m: float) -> float:
    longest = max((reading.length_m for reading in band.readings), default=np.inf)
    return float(min(DEFAULT.beyond_longest * longest, DEFAULT.most_stretch * rest_m))


def _fitted(rest_m: float, readings: tuple[BandReading, ...]) -> tuple[float, float, float]:
    """Rest length, amplitude in mm² and relative misfit, fitted to the readings' logarithms."""
    lengths = np.array([reading.length_m for reading in readings])
    logs = np.log([reading.force_n for reading in readings])

    def left_over(rest: float) -> Floats:
        return logs - np.log(stress_mpa(lengths / rest))

    low = (1 - DEFAULT.rest_bound) * rest_m
    high = min((1 + DEFAULT.rest_bound) * rest_m, 0.999 * float(lengths[0]))
    found = minimize_scalar(
        lambda rest: float(np.var(left_over(rest))), bounds=(low, high), method="bounded",
        options={"xatol": 1e-7},
    )  # fmt: skip
    rest = float(found.x)
    over = left_over(rest)
    return rest, float(np.exp(np.mean(over))), float(np.std(over))
