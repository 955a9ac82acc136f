"""The pressure of a cuff for a share of limb occlusion pressure."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from undercroft.documents.calculators import PressureBasis, PressureInputs, SexWord
from undercroft.domain.kit import Cuff
from undercroft.domain.occlusion.pressure import (
    Estimate,
    Measured,
    Padding,
    Sex,
    estimate_by_padding,
    estimate_thigh,
    target_mmhg,
)
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import Site
from undercroft.domain.program.methods import Side
from undercroft.services.calculators.calculator import (
    Calculator,
    Figure,
    Result,
    blaming,
    fault,
)

NAMES = {
    "cuff.width_mm": "width_mm",
    "cuff.material": "material",
    "limb": "limb",
    "age": "age",
    "thigh_cm": "thigh_cm",
    "systolic": "systolic",
    "padding.girth_cm": "girth_cm",
    "padding.factor": "factor",
    "padding.source": "table",
    "measured.mmhg": "measured_mmhg",
    "measured.on": "measured_on",
    "measured.by": "measured_by",
    "measured.position": "position",
    "measured.material": "material",
    "pressure_percent": "percent",
}
"""The input for each place that the domain names."""

SEXES = {SexWord.MALE: Sex.MALE, SexWord.FEMALE: Sex.FEMALE}

NO_CLEARANCE = (
    "a number is no clearance: screening decides who may, and whether it is right for a person is "
    "for a licensed clinician to say"
)

CAUTION = (
    "For people trained to measure limb occlusion pressure, with what they measured on this person "
    "and with this cuff. It is no advice and no clearance: screening decides who may, a licensed "
    "clinician whether it is right, and local rules come first."
)


def _pressure(given: Mapping[str, Any], today: date) -> Result:
    basis: PressureBasis = given["basis"]
    for field in PressureInputs.asked_for["basis"][basis]:
        if field not in given:
            raise fault(field, f"missing for the basis {basis.value!r}", "give it")
    cuff = Cuff("cuff", "Cuff", given["width_mm"], given["material"])
    with blaming("basis", NAMES):
        rests_on = _rests_on(basis, cuff, given)
        target = target_mmhg(cuff, given["percent"], rests_on, given["limb"], today)
    figures = [Figure("Pressure", target, "mmHg"),
               Figure("Limb occlusion pressure", rests_on.mmhg, "mmHg")]  # fmt: skip
    return Result(*_with_band(figures, rests_on), notes=(NO_CLEARANCE,))


def _rests_on(basis: PressureBasis, cuff: Cuff, given: Mapping[str, Any]) -> Measured | Estimate:
    limb, systolic = given["limb"], given.get("systolic", 0.0)
    if basis is PressureBasis.EQUATION:
        sex = SEXES[given["sex"]]
        return estimate_thigh(limb, cuff, given["thigh_cm"], systolic, given["age"], sex)
    if basis is PressureBasis.PADDING:
        padding = Padding(given["girth_cm"], given["factor"], given["table"])
        return estimate_by_padding(limb, cuff, systolic, padding)
    return Measured(
        given["measured_mmhg"],
        given["measured_on"],
        given["measured_by"],
        Site(limb, Side.LEFT),  # which side it was does not enter the pressure
        given["position"],
        cuff.width_mm,
        cuff.material,
    )


def _with_band(figures: list[Figure], of: Measured | Estimate) -> tuple[tuple[Figure, ...], str]:
    if isinstance(of, Measured):
        return tuple(figures), "as measured; it moves with position and day"
    if of.low is None or of.high is None:
        return tuple(figures), "how far the padding formula errs was not seen"
    band = (
        Figure("95 % of such people, from", of.low, "mmHg"),
        Figure("95 % of such people, to", of.high, "mmHg"),
    )
    off = LIMITS.equation_error_mmhg
    return (*figures, *band), f"standard error of estimate {off:g} mmHg, r² 0.397"


PRESSURE = Calculator(
    key="cuff-pressure",
    name="Pressure of a cuff",
    formula="share of limb occlusion pressure; that is measured, or (systolic + 10)/K, or 65.290 +"
    " 1.110 thigh + 0.178 systolic + 1.153 age - 7.984 sex (1 male, 2 female)",
    source="equation: Rev Bras Med Esporte 2019 (seen); padding: Tuncali et al. 2006 (formula"
    " seen, its table not)",
    range=f"{LIMITS.least_pressure_percent:g} to {LIMITS.most_pressure_percent:g} % of what was"
    f" measured within {LIMITS.measured_good_days} days, to {LIMITS.most_estimated_percent:g} % of"
    " an estimate; the equation knows an 18 cm cuff on a thigh and people of 18 to 35",
    doubt="the equation's standard error is 15.3 mmHg; a wrap has no gauge and no pressure",
    inputs=PressureInputs,
    work=_pressure,
    caution=CAUTION,
)
