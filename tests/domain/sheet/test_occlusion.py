"""What a load sheet says of occlusion work. People, kits and figures are invented."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from tests.domain.occlusion.people import PRESCRIPTION, cleared, read, screened
from tests.domain.sheet.conftest import MONDAY, order
from tests.fixtures import fixture as load

from undercroft.domain.load_sheet import LoadSheet, SheetExercise
from undercroft.domain.occlusion import (
    ClinicianLimits,
    Measured,
    OcclusionDay,
    OcclusionRecord,
    ScreeningFile,
    Site,
)
from undercroft.domain.program.methods import Limb, Side
from undercroft.domain.sheet import work_out

SCREENED = MONDAY - timedelta(days=20)
OPEN = read(screened(on=SCREENED))
LEG_EXTENSION_MAX = {"lift": "leg-extension", "kg": 80, "kind": "tested", "on": "2026-11-01"}
STACK = {"key": "tower", "name": "tower", "pins_kg": [5, 10, 15, 20, 25, 30, 35, 40]}
AT_THE_HANDLE = 1 / 0.98**2
"""Two sheaves with a good bearing: W g/(R eⁿ), common practice for e."""
CUFF = {"key": "cuff", "label": "thigh cuff", "width_mm": 110, "material": "nylon"}

Work = Callable[..., tuple[LoadSheet, ...]]


def used_to_it(file: ScreeningFile = OPEN, **fields: Any) -> OcclusionRecord:
    """Five exposures of the legs lie behind."""
    days = (MONDAY - timedelta(days=ago) for ago in (4, 7, 11, 14, 18))
    legs = frozenset({Limb.THIGH})
    return OcclusionRecord(file, tuple(OcclusionDay(on, legs) for on in days), **fields)


@pytest.fixture
def sheets() -> Work:
    def work(record: OcclusionRecord, days: tuple[int, ...] = (1,), **details: Any) -> Any:
        rule = {"limb": "thigh", "restriction": "wrap", "tightness": 6, **details}
        sessions = [_session(day, rule) for day in days]
        block = {
            "key": "b",
            "name": "B",
            "weeks": [{"key": "w", "name": "W", "sessions": sessions}],
        }
        athlete = {**load("athletes", "runa"), "maxima": [LEG_EXTENSION_MAX]}
        kit = {**load("kits", "forge-cellar"), "stacks": [STACK], "cuffs": [CUFF]}
        return work_out(replace(order(block, athlete, kit), occlusion=record)).sheets

    return work


def _session(day: int, rule: dict[str, Any]) -> dict[str, Any]:
    reps = (30, 15, 15, 15)
    sets = [
        {"key": f"d{day}-{n}", "reps": count, "load": {"basis": "kg", "kg": 25}}
        for n, count in enumerate(reps, start=1)
    ]
    plan = {
        "key": f"d{day}-e",
        "exercise": "leg-extension",
        "method": "occlusion",
        "rest": {"from_s": 30, "to_s": 30},
        "details": rule,
        "sets": sets,
    }
    return {"key": f"d{day}", "name": f"Day {day}", "day": day, "exercises": [plan]}


def first(sheets: tuple[LoadSheet, ...]) -> SheetExercise:
    return sheets[0].exercises[0]


class TestLock:
    def test_without_a_screening_it_says_what_opens_it(self, sheets: Work) -> None:
        locked = first(sheets(OcclusionRecord())).locked
        assert locked.startswith("Occlusion work is locked: no screening has been answered")

    def test_a_screening_that_was_read_opens_it_until_it_grows_old(self, sheets: Work) -> None:
        told = first(sheets(used_to_it()))
        assert told.locked == ""
        assert told.occlusion is not None
        # Our own choice: six months, less a day, from 10 November 2026.
        assert told.occlusion.until == date(2027, 5, 9)

    def test_an_answer_for_a_clinician_locks_it(self, sheets: Work) -> None:
        told = first(sheets(used_to_it(read(screened(on=SCREENED, clot="yes")))))
        assert "a blood clot, past or suspected" in told.locked

    def test_work_that_comes_late_is_done_under_what_was_recorded_since(self, sheets: Work) -> None:
        later = read(screened(on=MONDAY + timedelta(days=3)))
        assert first(sheets(used_to_it(later))).locked == ""


class TestGrownTighter:
    """A plan that was within its limits when it was sent, and is so no more on its day."""

    def test_a_full_dose_at_a_first_exposure_is_locked(self, sheets: Work) -> None:
        locked = first(sheets(OcclusionRecord(OPEN))).locked
        assert "tightness 6 of 10. Right would be: at most 5 of 10" in locked
        assert "your coach sends what is within the limits" in locked

    def test_so_it_is_after_three_weeks_away(self, sheets: Work) -> None:
        days = (MONDAY - timedelta(days=ago) for ago in (60, 64, 67, 71, 74))
        legs = frozenset({Limb.THIGH})
        away = OcclusionRecord(OPEN, tuple(OcclusionDay(on, legs) for on in days))
        assert "This set list is locked" in first(sheets(away)).locked

    def test_a_clinicians_tighter_limit_locks_it(self, sheets: Work) -> None:
        limits = ClinicianLimits(load_percent=25)
        clearance = cleared("varicose", on=SCREENED, limits=limits)
        file = read(screened(on=SCREENED, varicose="yes"), clearances=(clearance,), note="seen")
        # Pin 25 is 26.03 kg at the handle, about 32 % of 80 kg.
        locked = first(sheets(used_to_it(file))).locked
        assert "% of the maximum. Right would be: at most 25 %" in locked

    def test_a_measured_pressure_that_grew_old_locks_more_than_an_estimate_may(
        self, sheets: Work
    ) -> None:
        rule = {"restriction": "cuff", "pressure_percent": 60, "tightness": 0}
        site = Site(Limb.THIGH, Side.LEFT)
        fresh = Measured(180, SCREENED, "M. Tellin", site, "seated", 110, "nylon")
        old = replace(fresh, on=MONDAY - timedelta(days=29))
        assert first(sheets(used_to_it(pressures=(fresh,)), **rule)).locked == ""
        assert "60 % of an estimated" in first(sheets(used_to_it(pressures=(old,)), **rule)).locked


class TestLimits:
    def test_wear_is_predicted_from_repetitions_rests_and_handling(self, sheets: Work) -> None:
        told = first(sheets(used_to_it())).occlusion
        assert told is not None
        # Derived: 75 repetitions at 4 s, three rests of 30 s, 30 s on and off.
        assert told.wear_s == 75 * 4 + 3 * 30 + 30
        assert (told.limit_s, told.break_s, told.gap_h) == (900, 180, 36)

    def test_the_first_exposures_are_looser_and_farther_apart(self, sheets: Work) -> None:
        days = sheets(OcclusionRecord(OPEN), days=(1, 4, 7))
        told = [sheet.exercises[0].occlusion for sheet in days]
        assert [one.exposure for one in told if one] == [1, 2, 3]
        assert [one.most_tightness for one in told if one] == [5, 6, 6]
        assert [one.gap_h for one in told if one] == [72, 72, 72]

    def test_an_early_exposure_names_the_sessions_that_come_before_it(self, sheets: Work) -> None:
        third = sheets(OcclusionRecord(OPEN), days=(1, 4, 7))[2].exercises[0].occlusion
        assert third is not None
        assert third.after == ("d1", "d4")

    def test_an_exposure_keeps_its_number_for_three_weeks_less_a_day(self, sheets: Work) -> None:
        # Our own choice: 21 days away take it back; the last work was on 26 November 2026.
        told = first(sheets(used_to_it())).occlusion
        assert told is not None
        assert told.holds_until == date(2026, 12, 16)

    def test_a_first_exposure_cannot_be_taken_back(self, sheets: Work) -> None:
        told = first(sheets(OcclusionRecord(OPEN))).occlusion
        assert told is not None
        assert told.holds_until is None

    def test_from_the_full_dose_on_no_session_depends_on_another(self, sheets: Work) -> None:
        told = sheets(used_to_it(), days=(1, 4))[1].exercises[0].occlusion
        assert told is not None
        assert (told.exposure, told.after) == (5, ())

    def test_no_load_beyond_forty_percent_can_be_chosen(self, sheets: Work) -> None:
        told = first(sheets(used_to_it()))
        assert told.maximum is not None
        caps = [told.loads[one.cap].kg for one in told.sets if one.cap is not None]
        # P from memory: 20-40 % of the maximum; of 80 kg that is 32, and pin 30 is the last within.
        assert caps == pytest.approx([30 * AT_THE_HANDLE] * 4, abs=1e-3)

    def test_the_next_load_moves_by_the_smallest_step_of_the_tower(self, sheets: Work) -> None:
        told = first(sheets(used_to_it())).occlusion
        assert told is not None
        assert told.next is not None
        steps = [told.next.down_kg, told.next.hold_kg, told.next.up_kg]
        assert steps == pytest.approx([kg * AT_THE_HANDLE for kg in (20, 25, 30)], abs=1e-3)
        assert (told.next.last_over, told.next.first_under, told.next.total_under) == (15, 20, 38)


class TestCuff:
    CUFFED = {"restriction": "cuff", "tightness": None, "pressure_percent": 60}  # noqa: RUF012

    @staticmethod
    def rule(**changes: Any) -> dict[str, Any]:
        made = {**TestCuff.CUFFED, **changes}
        return {key: value for key, value in made.items() if value is not None}

    def test_a_measured_pressure_gives_a_share_of_it(self, sheets: Work) -> None:
        by = "Maro Tellin"
        left = Measured(180, SCREENED, by, Site(Limb.THIGH, Side.LEFT), "seated", 110, "nylon")
        right = replace(left, mmhg=200, site=Site(Limb.THIGH, Side.RIGHT))
        record = used_to_it(pressures=(left, right))
        told = first(sheets(record, **self.rule(tightness=0))).occlusion
        assert told is not None
        # 60 % of the lower side: safe on both.
        assert told.pressure_mmhg == 108
        assert told.pressure_basis == (
            "180 mmHg measured on the left-thigh by Maro Tellin on 10 November 2026"
        )

    def test_one_made_after_the_planned_day_is_there_when_the_session_is_done_late(
        self, sheets: Work
    ) -> None:
        later = MONDAY + timedelta(days=2)
        made = Measured(180, later, "M", Site(Limb.THIGH, Side.LEFT), "seated", 110, "nylon")
        told = first(sheets(used_to_it(pressures=(made,)), **self.rule(tightness=0))).occlusion
        assert told is not None
        assert told.pressure_mmhg == 108

    def test_one_too_old_by_the_day_of_another_gives_none(self, sheets: Work) -> None:
        before, after = MONDAY - timedelta(days=20), MONDAY + timedelta(days=20)
        old = Measured(180, before, "M", Site(Limb.THIGH, Side.LEFT), "seated", 110, "nylon")
        other = Measured(200, after, "M", Site(Limb.THIGH, Side.RIGHT), "seated", 180, "nylon")
        told = first(sheets(used_to_it(pressures=(old, other)), **self.rule(tightness=0)))
        assert told.occlusion is not None
        assert told.occlusion.pressure_mmhg is None

    def test_one_of_another_cuff_does_not_hide_it(self, sheets: Work) -> None:
        narrow = Measured(180, SCREENED, "M", Site(Limb.THIGH, Side.LEFT), "seated", 110, "nylon")
        wide = replace(narrow, mmhg=150, width_mm=180, on=SCREENED + timedelta(days=1))
        told = first(sheets(used_to_it(pressures=(narrow, wide)), **self.rule(tightness=0)))
        assert told.occlusion is not None
        assert told.occlusion.pressure_mmhg == 108

    def test_one_that_has_grown_old_gives_none(self, sheets: Work) -> None:
        long_ago = MONDAY - timedelta(days=29)
        old = Measured(180, long_ago, "M", Site(Limb.THIGH, Side.LEFT), "seated", 110, "nylon")
        told = first(sheets(used_to_it(pressures=(old,)), **self.rule(tightness=0)))
        assert told.occlusion is not None
        assert told.occlusion.pressure_mmhg is None
        assert any("have the limb occlusion pressure measured" in note for note in told.notes)


def test_a_clinicians_prescription_is_shown_as_written_and_nothing_is_worked_out(
    sheets: Work,
) -> None:
    clearance = cleared("injury", on=SCREENED, prescription=PRESCRIPTION)
    file = read(screened(on=SCREENED, injury="yes"), clearances=(clearance,))
    told = first(sheets(used_to_it(file)))
    assert told.locked == ""
    assert told.loads == ()
    assert told.ramp == ()
    assert "3 x 15, seated" in told.notes
    assert told.occlusion is not None
    assert told.occlusion.next is None
