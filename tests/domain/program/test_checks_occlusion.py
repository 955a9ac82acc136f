"""Checks of occlusion work: the lock, and that every limit of the domain comes out as a finding."""

import ast
import inspect
from dataclasses import replace
from datetime import timedelta

import pytest
from tests.domain.occlusion.people import read, screened
from tests.domain.program.checking import context, finds, found
from tests.domain.program.plans import (
    CELLAR,
    MONDAY,
    SIV,
    block,
    exercise,
    kg,
    one_day,
    percent,
    session,
    sets,
    week,
)

from undercroft.domain.kit import Cuff, Wrap
from undercroft.domain.occlusion import (
    Measured,
    OcclusionDay,
    OcclusionRecord,
    ScreeningFile,
    Site,
    exposure,
    ladder,
    placing,
    protocol,
    restriction,
    tightness,
)
from undercroft.domain.program.block import Block, Rest, SetPlan
from undercroft.domain.program.checks import BY_NAME, findings
from undercroft.domain.program.checks.occlusion_limits import LIMIT_CHECKS
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Limb, Method, OcclusionRule, Restriction, Side

HELD_LIMITS = (exposure, ladder, placing, protocol, restriction, tightness)

KIT = replace(
    CELLAR, wraps=(Wrap("wrap", "Wrap", 75),), cuffs=(Cuff("cuff", "Cuff", 110, "nylon"),)
)
LEFT = Site(Limb.THIGH, Side.LEFT)
MEASURED = Measured(180, MONDAY - timedelta(days=7), "M. Tellin", LEFT, "seated", 110, "nylon")
THIRTY = (30, 15, 15, 15)


def rule(limb=Limb.THIGH, restriction_=Restriction.WRAP, **fields) -> OcclusionRule:
    return OcclusionRule(limb, restriction_, **{"tightness": 6, **fields})


def wrapped(name="leg-extension", reps=THIRTY, load=None, rest_s=30, key="", group=None, **details):
    """Thirty, fifteen, fifteen, fifteen at a third of the maximum, on half-minute rests."""
    plan_sets = tuple(
        SetPlan(f"s{n}", load or percent(33.4), count) for n, count in enumerate(reps, start=1)
    )
    return exercise(
        name,
        plan_sets,
        Method.OCCLUSION,
        key,
        rest=Rest(rest_s, rest_s),
        details=rule(**details),
        group=group,
    )


def used_to_it(days_ago=(4, 7, 11, 14, 18), limb=Limb.THIGH, **fields) -> OcclusionRecord:
    """Five exposures lie behind, and the screening is whole, read and signed."""
    days = tuple(OcclusionDay(MONDAY - timedelta(days=ago), frozenset({limb})) for ago in days_ago)
    return OcclusionRecord(open_file(), days, **fields)


def open_file() -> ScreeningFile:
    return read(screened(on=MONDAY - timedelta(days=30)))


def names(plan: Block, **fields) -> set[str]:
    """The occlusion checks that find something."""
    fields = {"kit": KIT, "occlusion": used_to_it(), **fields}
    told = findings(context(plan, **fields))
    return {one.check.removeprefix("occlusion-") for one in told if "occlusion" in one.check}


class TestLock:
    def test_without_a_screening_it_is_locked(self):
        (one,) = found("occlusion-locked", one_day(wrapped()), kit=KIT)
        assert one.severity is Severity.STOP
        assert one.what.startswith("occlusion work is locked: ")
        assert one.right.endswith("nothing else opens it")
        assert BY_NAME[one.check].final

    def test_a_screening_that_is_whole_and_read_opens_it(self):
        assert not finds("occlusion-locked", one_day(wrapped()), occlusion=used_to_it())

    def test_it_closes_again_when_the_screening_has_grown_old(self):
        plan = block(*(week(session(wrapped()), number=n) for n in range(1, 31)))
        late = found("occlusion-locked", plan, occlusion=used_to_it())
        assert {one.where.split(",")[0] for one in late} <= {f"week {n}" for n in range(20, 31)}
        assert late

    def test_a_hard_stop_in_the_answers_keeps_it_locked(self):
        file = read(screened(on=MONDAY - timedelta(days=30), clot="yes"))
        record = OcclusionRecord(file)
        assert finds("occlusion-locked", one_day(wrapped()), occlusion=record)

    def test_other_work_needs_no_screening(self):
        assert not finds("occlusion-locked", one_day(exercise("back-squat")))


class TestLimits:
    def test_the_published_protocol_passes(self):
        assert names(one_day(wrapped())) == set()

    @pytest.mark.parametrize(("load_kg", "is_found"), [(20, False), (25, True)])
    def test_more_than_forty_percent_of_the_maximum_is_found(self, load_kg, is_found):
        # Of 60 kg: 33.3 and 41.7 %. P from memory: 20-40 % of the maximum.
        assert ("load" in names(one_day(wrapped(load=kg(load_kg))))) is is_found

    def test_it_is_the_load_on_this_kit_that_counts_and_not_the_wish(self):
        # 38 % of 60 kg are 22.8, and the tower makes 25: 41.7 %.
        assert "load" in names(one_day(wrapped(load=percent(38))))

    def test_a_load_of_unknown_share_and_one_too_light_are_found(self):
        unknown = replace(SIV, maxima=())
        assert "load-unknown" in names(one_day(wrapped(load=kg(20))), athlete=unknown)
        assert "load-light" in names(one_day(wrapped(load=kg(10))))

    def test_wear_beyond_ten_and_beyond_fifteen_minutes_is_found(self):
        # Derived: 75 repetitions at 4 s, three rests of 30 s, 30 s on and off: 420 s.
        assert not {"wear", "wear-long"} & names(one_day(wrapped()))
        assert "wear-long" in names(one_day(wrapped(rest_s=100)))
        assert "wear" in names(one_day(wrapped(rest_s=240)))

    def test_wraps_kept_on_across_exercises_are_found(self):
        curl = exercise("pulldown", sets(3, 8, percent(60)), group="A")
        assert "break" in names(one_day(wrapped(group="A"), curl))
        assert "break" not in names(one_day(wrapped(group="A"), replace(curl, group="B")))

    def test_more_sets_rests_and_repetitions_than_protocols_have_are_found(self):
        assert "sets" in names(one_day(wrapped(reps=(30, 15, 15, 15, 15))))
        assert "rest" in names(one_day(wrapped(rest_s=20)))
        assert "reps" in names(one_day(wrapped(reps=(40, 20, 20))))

    def test_tightness_and_pressure_beyond_their_limits_are_found(self):
        assert "tightness" in names(one_day(wrapped(tightness=8)))
        assert "tightness" in names(one_day(wrapped(tightness=None)))
        assert "wrap-pressure" in names(one_day(wrapped(pressure_percent=50)))
        cuffed = {"restriction_": Restriction.CUFF, "tightness": None}
        assert "pressure" in names(one_day(wrapped(pressure_percent=80, **cuffed)))
        assert "pressure" not in names(one_day(wrapped(pressure_percent=50, **cuffed)))
        measured = used_to_it(pressures=(MEASURED,))
        plan = one_day(wrapped(pressure_percent=80, **cuffed))
        assert "pressure" not in names(plan, occlusion=measured)

    def test_a_wrap_below_the_knee_is_found(self):
        assert "placing" in names(one_day(wrapped(limb=Limb.CALF)))

    def test_wraps_under_a_bar_alone_are_found(self):
        squat = wrapped("back-squat", load=percent(33))
        assert "alone-under-load" in names(one_day(squat))
        assert "alone-under-load" not in names(
            one_day(squat), athlete=replace(SIV, trains_alone=False)
        )
        row = wrapped("barbell-row", load=percent(33), limb=Limb.UPPER_ARM)
        arms = used_to_it(limb=Limb.UPPER_ARM)
        assert "alone-with-bar" in names(one_day(row), occlusion=arms)


def on_days(*days: int) -> Block:
    return block(week(*(session(wrapped(), day=day) for day in days)))


class TestHowOften:
    @pytest.mark.parametrize(
        ("days", "expected"),
        [
            ((1, 3, 5), set()),
            ((1, 2), {"gap", "days-in-a-row"}),  # 24 h, and 36 h are the least (seen)
            ((1, 3, 5, 7), {"days-a-week"}),
        ],
    )
    def test_days_too_near_or_too_many_are_found(self, days, expected):
        assert names(on_days(*days)) == expected

    def test_two_sessions_on_one_day_are_found(self):
        evening = replace(session(wrapped(), day=1), key="evening")
        plan = block(week(session(wrapped(), day=1), evening))
        assert "twice-a-day" in names(plan)

    def test_what_was_done_before_the_block_counts(self):
        yesterday = used_to_it(days_ago=(1, 4, 8, 11, 15))
        assert {"gap", "days-in-a-row"} <= names(on_days(1), occlusion=yesterday)


class TestFirstExposures:
    NEVER = OcclusionRecord(open_file())

    def test_a_first_exposure_at_full_dose_is_found(self):
        told = names(one_day(wrapped()), occlusion=self.NEVER)
        assert {"exposure-dose", "exposure-load", "exposure-limbs", "tightness"} <= told

    def test_a_first_exposure_to_failure_is_found(self):
        last = SetPlan("s1", percent(20), 15, to_failure=True)
        plan = one_day(
            exercise("leg-extension", (last,), Method.OCCLUSION, details=rule(both_at_once=False))
        )
        assert "exposure-failure" in names(plan, occlusion=self.NEVER)

    def test_two_exercises_at_the_first_exposure_are_found_at_the_session(self):
        small = wrapped(reps=(15, 15), tightness=5, both_at_once=False, key="a")
        other = wrapped("leg-curl", reps=(15, 15), tightness=5, both_at_once=False, key="b")
        (one,) = found("occlusion-exposure-exercises", one_day(small, other), occlusion=self.NEVER)
        assert one.where == "week 1, Monday"

    def test_a_small_first_exposure_passes(self):
        small = wrapped(reps=(15, 15), load=percent(20), tightness=5, both_at_once=False)
        tower = replace(KIT, stacks=(replace(KIT.stacks[0], pins_kg=(6.0, 12.0, 18.0)),))
        # 12 of 60 kg: the most of a first exposure is the least of the range, so at most a note.
        assert names(one_day(small), occlusion=self.NEVER, kit=tower) <= {"load-light"}

    def test_earlier_sessions_of_the_block_count_as_done(self):
        weeks = [week(session(wrapped()), number=n) for n in range(1, 7)]
        late = [
            one.where
            for one in found("occlusion-exposure-dose", block(*weeks), occlusion=self.NEVER)
        ]
        assert [where.split(",")[0] for where in late] == [f"week {n}" for n in (1, 2, 3, 4)]

    def test_time_away_takes_steps_back(self):
        away = used_to_it(days_ago=(60, 64, 67, 71, 74))
        assert "exposure-dose" in names(one_day(wrapped()), occlusion=away)


def issues_in_the_domain() -> set[tuple[str, str]]:
    """Key and severity of every issue that planned occlusion work can raise, from the source."""
    calls = (
        node
        for module in HELD_LIMITS
        for node in ast.walk(ast.parse(inspect.getsource(module)))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    )
    return {
        (node.args[0].value, node.func.id)
        for node in calls
        if node.func.id in ("stop", "warn", "note") and isinstance(node.args[0], ast.Constant)
    }


def test_every_limit_of_the_domain_is_a_check():
    assert {(one.key, one.severity.value) for one in LIMIT_CHECKS} == issues_in_the_domain()
