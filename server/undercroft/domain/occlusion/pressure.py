"""The pressure of a cuff with a gauge, as a share of limb occlusion pressure.

Pressures in mmHg, lengths as their names say. No width and material, no number: in the same arms
nylon took 139 and elastic 246 mmHg (Buckner et al. 2017, seen), and a thigh took 235 mmHg with a
narrow cuff and 144 with a wide one (Loenneke et al. 2012, seen).
"""

from dataclasses import dataclass
from datetime import date
from enum import IntEnum
from math import isfinite

from undercroft.domain.errors import DomainError, LoadError
from undercroft.domain.kit import Cuff, Wrap
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import Site
from undercroft.domain.program.methods import Limb

BAND_Z = 1.96


class Sex(IntEnum):
    """As the equation codes it."""

    MALE = 1
    FEMALE = 2


@dataclass(frozen=True, slots=True)
class Measured:
    """A limb occlusion pressure that somebody trained has measured, in the exercise's position."""

    mmhg: float
    on: date
    by: str
    site: Site
    position: str
    width_mm: float
    material: str

    def __post_init__(self) -> None:
        _within("measured.mmhg", self.mmhg, LIMITS.measured_mmhg, "mmHg")
        for field in ("by", "position", "material"):
            if not getattr(self, field).strip():
                raise LoadError(f"measured.{field}", "empty", "who, which position, which material")


@dataclass(frozen=True, slots=True)
class Estimate:
    """A group's mean for such a limb; `low` and `high` hold 95 % of people, where that is known."""

    mmhg: float
    low: float | None
    high: float | None
    limb: Limb
    width_mm: float
    source: str


@dataclass(frozen=True, slots=True)
class Padding:
    """One entry of a measured table of tissue padding factors, for a limb of that girth."""

    girth_cm: float
    factor: float
    source: str

    def __post_init__(self) -> None:
        _within("padding.girth_cm", self.girth_cm, LIMITS.padding_girth_cm, "cm")
        _within("padding.factor", self.factor, (0.3, 1.0), "as measured")
        if not self.source.strip():
            raise LoadError("padding.source", "empty", "the table that was measured")


def estimate_thigh(
    limb: Limb, cuff: Cuff, thigh_cm: float, systolic: float, age: int, sex: Sex
) -> Estimate:
    """AOP = 65.290 + 1.110·thigh + 0.178·SBP + 1.153·age − 7.984·sex (1 male, 2 female).

    Rev Bras Med Esporte 2019 (whole equation seen): 51 adults aged 23.2 ± 5.2, thigh, cuff 18 cm
    wide, r² 0.397, SEE 15.289 mmHg. Outside 18-35 years, for another limb or another width it
    refuses with LoadError.
    """
    _known(cuff)
    if limb is not Limb.THIGH:
        raise LoadError("limb", limb, "the thigh: the equation knows no other limb; measure it")
    if cuff.width_mm != LIMITS.equation_cuff_mm:
        raise LoadError("cuff.width_mm", cuff.width_mm, "180: the equation knows no other; measure")
    _within("age", age, LIMITS.equation_years, "years: the equation's people were young; measure")
    _within("thigh_cm", thigh_cm, LIMITS.equation_thigh_cm, "cm")
    _within("systolic", systolic, LIMITS.equation_systolic_mmhg, "mmHg")
    mmhg = 65.290 + 1.110 * thigh_cm + 0.178 * systolic + 1.153 * age - 7.984 * sex
    off = BAND_Z * LIMITS.equation_error_mmhg
    return Estimate(mmhg, mmhg - off, mmhg + off, limb, cuff.width_mm, "Rev Bras Med Esporte 2019")


def estimate_by_padding(
    limb: Limb, cuff: Cuff, systolic: float, padding: Padding | None
) -> Estimate:
    """(SBP + 10) / K with K from a measured table; none is built in.

    Tuncali et al. 2006 (formula seen, its table not): surgical cuffs, 30 anaesthetised adults,
    girths of 20-75 cm; how far it errs was not seen.
    """
    _known(cuff)
    if padding is None:
        raise LoadError("padding", "missing", "an entry of a measured table; there is no default")
    _within("systolic", systolic, LIMITS.equation_systolic_mmhg, "mmHg")
    mmhg = (systolic + 10) / padding.factor
    return Estimate(mmhg, None, None, limb, cuff.width_mm, padding.source)


def target_mmhg(
    cuff: Cuff | Wrap, percent: float, basis: Measured | Estimate | None, limb: Limb, on: date
) -> float:
    """The pressure for a percentage of limb occlusion pressure: 40-80 measured, to 50 estimated.

    Raises LoadError for a wrap, which has no gauge, and where the basis is missing, old, or of
    another limb or cuff.
    """
    if isinstance(cuff, Wrap):
        raise LoadError("wrap", cuff.label, "told by tightness 0-10: it cannot become a pressure")
    _known(cuff)
    if basis is None:
        raise LoadError("limb occlusion pressure", "unknown", "measured by somebody trained")
    most = LIMITS.most_pressure_percent
    if isinstance(basis, Measured):
        _fits(basis, cuff, limb, on)
    else:
        _estimate_fits(basis, cuff, limb)
        most = LIMITS.most_estimated_percent
    _within("pressure_percent", percent, (LIMITS.least_pressure_percent, most), "%")
    return basis.mmhg * percent / 100


def _fits(basis: Measured, cuff: Cuff, limb: Limb, on: date) -> None:
    if basis.site.limb is not limb:
        raise LoadError("measured.site", str(basis.site), f"measured on the {limb}")
    if (basis.width_mm, basis.material.casefold()) != (cuff.width_mm, cuff.material.casefold()):
        said = f"of a cuff of {basis.width_mm:g} mm {basis.material}"
        raise LoadError("measured.width_mm", said, f"of {cuff.width_mm:g} mm {cuff.material}")
    if not 0 <= (on - basis.on).days <= LIMITS.measured_good_days:
        raise LoadError("measured.on", basis.on, f"within {LIMITS.measured_good_days} days of {on}")


def _estimate_fits(basis: Estimate, cuff: Cuff, limb: Limb) -> None:
    if basis.limb is not limb:
        raise LoadError("estimate.limb", basis.limb, f"for the {limb}")
    if basis.width_mm != cuff.width_mm:
        raise LoadError("estimate.width_mm", basis.width_mm, f"for a cuff of {cuff.width_mm:g} mm")


def _known(cuff: Cuff) -> None:
    if not isfinite(cuff.width_mm) or cuff.width_mm <= 0:
        raise LoadError("cuff.width_mm", cuff.width_mm, "the cuff's width; without it no pressure")
    if not cuff.material.strip():
        raise LoadError("cuff.material", "empty", "the cuff's material; without it no pressure")


def _within(field: str, value: float, bounds: tuple[float, float], unit: str) -> None:
    least, most = bounds
    if not least <= value <= most:
        raise DomainError(field, f"is {value:g}", f"should be from {least:g} to {most:g} {unit}")
