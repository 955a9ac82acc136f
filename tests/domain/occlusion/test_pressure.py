"""Pressure of a cuff: what may be worked out, and what is refused."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from undercroft.domain.errors import DomainError
from undercroft.domain.kit import Cuff, Wrap
from undercroft.domain.occlusion import (
    Measured,
    Padding,
    Sex,
    Site,
    estimate_by_padding,
    estimate_thigh,
    target_mmhg,
)
from undercroft.domain.program.methods import Limb, Side

DAY = date(2026, 3, 2)
WIDE = Cuff("wide", "thigh cuff", 180, "nylon")
NARROW = Cuff("narrow", "narrow cuff", 50, "nylon")
MEASURED = Measured(
    166.235, DAY, "Maro Tellin", Site(Limb.THIGH, Side.LEFT), "seated", 180, "nylon"
)


@pytest.mark.parametrize(
    ("thigh_cm", "systolic", "age", "sex", "mmhg"),
    [
        (55, 120, 23, Sex.MALE, 166.235),
        (55, 120, 23, Sex.FEMALE, 158.251),
        (60, 130, 30, Sex.MALE, 181.636),
    ],
)
def test_the_equation_of_the_wide_thigh_cuff(thigh_cm, systolic, age, sex, mmhg):
    """Rev Bras Med Esporte 2019 (SciELO S1517-86922019000600494): the whole equation seen."""
    found = estimate_thigh(Limb.THIGH, WIDE, thigh_cm, systolic, age, sex)
    assert found.mmhg == pytest.approx(mmhg, abs=0.01)


def test_its_band_holds_95_in_100():
    """SEE 15.289 (seen) × 1.96, derived."""
    found = estimate_thigh(Limb.THIGH, WIDE, 55, 120, 23, Sex.MALE)
    assert found.low == pytest.approx(136.3, abs=0.1)
    assert found.high == pytest.approx(196.2, abs=0.1)


@pytest.mark.parametrize(
    ("field", "limb", "cuff", "thigh_cm", "systolic", "age"),
    [
        ("age", Limb.THIGH, WIDE, 55, 120, 60),
        ("age", Limb.THIGH, WIDE, 55, 120, 36),
        ("age", Limb.THIGH, WIDE, 55, 120, 17),
        ("cuff.width_mm", Limb.THIGH, NARROW, 55, 120, 23),
        ("cuff.width_mm", Limb.THIGH, replace(WIDE, width_mm=135), 55, 120, 23),
        ("limb", Limb.UPPER_ARM, WIDE, 35, 120, 23),
        ("limb", Limb.CALF, WIDE, 40, 120, 23),
        ("thigh_cm", Limb.THIGH, WIDE, 5.5, 120, 23),
        ("systolic", Limb.THIGH, WIDE, 55, 140, 23),
        ("thigh_cm", Limb.THIGH, WIDE, float("nan"), 120, 23),
    ],
)
def test_it_refuses_all_that_it_was_not_made_for(field, limb, cuff, thigh_cm, systolic, age):
    with pytest.raises(DomainError) as fault:
        estimate_thigh(limb, cuff, thigh_cm, systolic, age, Sex.MALE)
    assert fault.value.where == field


def test_padding_factors_come_from_a_measured_table():
    """(120 + 10) / 0.80 = 162.5: Tuncali et al. 2006, formula seen, its table not."""
    padding = Padding(55, 0.80, "measured on this squad, invented")
    found = estimate_by_padding(Limb.THIGH, WIDE, 120, padding)
    assert found.mmhg == pytest.approx(162.5, abs=0.05)
    with pytest.raises(DomainError, match="no default"):
        estimate_by_padding(Limb.THIGH, WIDE, 120, None)
    with pytest.raises(DomainError, match=r"padding\.source"):
        Padding(55, 0.80, " ")


def test_half_of_an_estimate_is_the_most():
    estimate = estimate_thigh(Limb.THIGH, WIDE, 55, 120, 23, Sex.MALE)
    assert target_mmhg(WIDE, 50, estimate, Limb.THIGH, DAY) == pytest.approx(83.1, abs=0.1)
    with pytest.raises(DomainError, match="from 40 to 50 %"):
        target_mmhg(WIDE, 51, estimate, Limb.THIGH, DAY)


def test_why_80_in_100_of_an_estimate_is_refused():
    """Derived: it reaches 98 % of the true pressure of somebody at the low end of the band."""
    estimate = estimate_thigh(Limb.THIGH, WIDE, 55, 120, 23, Sex.MALE)
    assert 0.80 * estimate.mmhg / estimate.low == pytest.approx(0.98, abs=0.005)
    assert 0.50 * estimate.mmhg / estimate.low == pytest.approx(0.61, abs=0.005)


def test_a_measured_pressure_allows_80_in_100():
    """40-80 % of limb occlusion pressure: P, from memory."""
    assert target_mmhg(WIDE, 80, MEASURED, Limb.THIGH, DAY) == pytest.approx(133.0, abs=0.1)
    assert target_mmhg(WIDE, 40, MEASURED, Limb.THIGH, DAY) == pytest.approx(66.494)
    for percent in (39, 81, float("nan")):
        with pytest.raises(DomainError, match="pressure_percent"):
            target_mmhg(WIDE, percent, MEASURED, Limb.THIGH, DAY)


@pytest.mark.parametrize("cuff", [replace(WIDE, width_mm=0), replace(WIDE, material=" ")])
def test_no_width_or_material_no_number(cuff):
    """Loenneke et al. 2012, Buckner et al. 2017 (seen): the same limb takes twice as much."""
    with pytest.raises(DomainError, match="without it no pressure"):
        target_mmhg(cuff, 60, MEASURED, Limb.THIGH, DAY)


def test_nothing_measured_is_unknown():
    with pytest.raises(DomainError, match="limb occlusion pressure: is unknown"):
        target_mmhg(WIDE, 60, None, Limb.THIGH, DAY)


def test_a_wrap_never_becomes_a_pressure():
    """Bell et al. 2020 (seen): the tightness scale gives no reliable estimate."""
    with pytest.raises(DomainError, match="cannot become a pressure"):
        target_mmhg(Wrap("w", "knee wrap", 75), 60, MEASURED, Limb.THIGH, DAY)


@pytest.mark.parametrize(
    ("field", "cuff", "limb", "later"),
    [
        ("measured.width_mm", NARROW, Limb.THIGH, 0),
        ("measured.width_mm", replace(WIDE, material="elastic"), Limb.THIGH, 0),
        ("measured.site", WIDE, Limb.UPPER_ARM, 0),
        ("measured.on", WIDE, Limb.THIGH, 29),
        ("measured.on", WIDE, Limb.THIGH, -1),
    ],
)
def test_a_measurement_holds_for_its_cuff_its_limb_and_four_weeks(field, cuff, limb, later):
    with pytest.raises(DomainError) as fault:
        target_mmhg(cuff, 60, MEASURED, limb, DAY + timedelta(days=later))
    assert fault.value.where == field


def test_an_estimate_holds_for_its_width_and_limb():
    estimate = estimate_thigh(Limb.THIGH, WIDE, 55, 120, 23, Sex.MALE)
    with pytest.raises(DomainError, match=r"estimate\.width_mm"):
        target_mmhg(NARROW, 45, estimate, Limb.THIGH, DAY)
    with pytest.raises(DomainError, match=r"estimate\.limb"):
        target_mmhg(WIDE, 45, estimate, Limb.UPPER_ARM, DAY)


@pytest.mark.parametrize("change", [{"mmhg": 20}, {"by": ""}, {"position": ""}, {"material": ""}])
def test_a_measurement_says_who_how_and_with_what(change):
    with pytest.raises(DomainError) as fault:
        replace(MEASURED, **change)
    assert fault.value.where == f"measured.{next(iter(change))}"
