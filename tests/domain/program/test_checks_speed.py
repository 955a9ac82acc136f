"""Checks of speed work, bands and chains, sprints and sides."""

from dataclasses import replace
from datetime import date

import pytest
from tests.domain.program.checking import context, finds, found
from tests.domain.program.plans import (
    BANDS,
    CELLAR,
    SIV,
    exercise,
    kg,
    one_day,
    percent,
    sets,
)

from undercroft.domain.kit import Anchor, Band, BandReading, Chain
from undercroft.domain.program.block import Rest, SetPlan
from undercroft.domain.program.checks import Background, Thresholds
from undercroft.domain.program.checks.rigs import lockout_kg
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method, OneSidedRule, Side
from undercroft.domain.program.monitoring import DoneSet
from undercroft.domain.program.rig import Part, Rig, Route
from undercroft.domain.program.wish import Point, Unloaded

USUAL = Rest(75, 90)


def speed(count=6, reps=3, of=60, rest=USUAL, rig=None):
    """Fast pulls as they are common: sets of three at 60 %, rested 75-90 s."""
    plan_sets = sets(count, reps, percent(of))
    return one_day(exercise("hex-bar-deadlift", plan_sets, Method.SPEED, rest=rest, rig=rig))


class TestSpeed:
    def test_fast_pulls_as_they_are_common_pass(self):
        plan = speed()
        for name in ("speed-reps", "speed-rest", "speed-lockout", "speed-sets"):
            assert not finds(name, plan)

    @pytest.mark.parametrize(("reps", "is_found"), [(4, False), (5, True), (6, True)])
    def test_five_or_six_repetitions_are_too_many(self, reps, is_found):
        # Common practice: 5 or 6 repetitions draw a warning.
        assert finds("speed-reps", speed(count=1, reps=reps)) is is_found

    def test_every_long_set_is_named(self):
        assert len(found("speed-reps", speed(count=3, reps=5))) == 3

    @pytest.mark.parametrize(("rest_s", "is_found"), [(60, False), (59, True)])
    def test_a_rest_below_a_minute_is_too_short(self, rest_s, is_found):
        assert finds("speed-rest", speed(rest=Rest(rest_s, 90))) is is_found

    def test_no_rest_at_all_is_found_unless_there_is_but_one_set(self):
        assert found("speed-rest", speed(rest=None))[0].what.startswith("no rest is written")
        assert not finds("speed-rest", speed(count=1, rest=None))

    @pytest.mark.parametrize(("count", "is_found"), [(8, False), (9, True)])
    def test_more_than_eight_sets_are_too_many(self, count, is_found):
        # Common practice: power has gone by the eighth set.
        assert finds("speed-sets", speed(count=count)) is is_found

    def test_a_bar_above_eighty_five_percent_is_no_speed_work(self):
        (one,) = found("speed-lockout", speed(count=1, of=87))
        assert "% of the maximum at lockout" in one.what

    def test_bands_count_at_lockout(self):
        light = Rig(Part.BANDS, 10, route=Route.INVERTED_V)
        heavy = Rig(Part.BANDS, 40, route=Route.INVERTED_V, per_side=1)
        alone = context(speed(count=1, of=80))
        banded = context(speed(count=1, of=80, rig=light))
        kilograms = [lockout_kg(each, next(next(each.ahead).sets())) for each in (alone, banded)]
        assert kilograms[1] > kilograms[0]
        assert finds("speed-lockout", speed(count=1, of=80, rig=heavy))
        assert not finds("speed-lockout", speed(count=1, of=80))

    def test_other_methods_may_be_heavy_and_long(self):
        plan = one_day(exercise("deadlift", sets(10, 6, percent(86)), rest=Rest(30, 45)))
        for name in ("speed-reps", "speed-rest", "speed-lockout", "speed-sets"):
            assert not finds(name, plan)

    def test_the_coach_may_move_the_thresholds(self):
        moved = Thresholds(speed_reps=7, speed_rest_s=30, speed_sets=12)
        plan = speed(count=10, reps=6, rest=Rest(45, 60))
        for name in ("speed-reps", "speed-rest", "speed-sets"):
            assert not finds(name, plan, thresholds=moved)


def banded(share=10.0, things=(), route=Route.INVERTED_V, part=Part.BANDS, point=Point.LOCKOUT):
    rig = Rig(part, share, route=route, things=things, point=point)
    return one_day(exercise("deadlift", sets(2, 3, percent(60)), Method.SPEED, rig=rig))


def short_readings(band: Band) -> Band:
    return replace(band, readings=(BandReading(1.25, 50), BandReading(1.4, 70)))


class TestRigs:
    def test_measured_bands_that_reach_pass(self):
        share = round(100 * self.lockout_share(), 0)
        for name in ("rig-impossible", "band-beyond-readings", "band-unmeasured", "band-share"):
            assert not finds(name, banded(share))

    @staticmethod
    def lockout_share() -> float:
        """What the pair in the cellar gives of the load at lockout."""
        (rigged,) = context(banded(10)).rigs.values()
        return rigged.choice.kg / rigged.load_kg

    def test_bands_that_the_kit_does_not_have_are_found(self):
        (one,) = found("rig-impossible", banded(), kit=replace(CELLAR, bands=()))
        assert one.severity is Severity.STOP
        assert "bands of A cellar" in one.what

    def test_a_band_that_would_be_stretched_too_far_is_found(self):
        # A loop of 0.4 m rest doubled over more than a metre passes 2.5 times its length.
        short = tuple(replace(band, rest_length_m=0.4, readings=()) for band in BANDS)
        (one,) = found("rig-impossible", banded(), kit=replace(CELLAR, bands=short))
        assert "would be stretched to" in one.what

    def test_bands_stretched_beyond_their_readings_are_found(self):
        # An anchor that takes the loop to just above its longest reading, within 5 % of it.
        kit = replace(CELLAR, bands=tuple(map(short_readings, BANDS)))
        reached = self.flat_at_end(kit)
        longest = reached / 1.03
        readings = (BandReading(1.2, 45), BandReading(longest, 90))
        nearly = tuple(replace(band, readings=readings) for band in BANDS)
        (one,) = found("band-beyond-readings", banded(), kit=replace(CELLAR, bands=nearly))
        assert "read only to" in one.what

    @staticmethod
    def flat_at_end(kit) -> float:
        """Flat length of a loop at lockout in an inverted V from pegs 0.55 m aside."""
        height = (0.13 + 0.28) * SIV.stature_m - kit.anchors[0].height_m
        return 2 * (height**2 + kit.anchors[0].offset_m ** 2) ** 0.5

    def test_bands_that_nobody_measured_are_found(self):
        bare = tuple(replace(band, readings=()) for band in BANDS)
        found_ = found("band-unmeasured", banded(), kit=replace(CELLAR, bands=bare))
        assert "measure this band" in found_[0].what

    def test_a_loop_that_is_slack_at_the_start_is_found(self):
        # From 0.18 m over the pegs to 0.67 m: doubled 0.36 to 1.34 m, and 1.04 m is its rest.
        kit = replace(CELLAR, anchors=(Anchor("pegs", "Pegs", 0.05, 0.0),))
        (one,) = found("band-slack", banded(5, route=Route.DOUBLED), kit=kit)
        assert one.what.startswith("slack at the start")

    def test_a_single_loop_is_slack_for_a_whole_pull_and_cannot_be_meant(self):
        kit = replace(CELLAR, anchors=(Anchor("pegs", "Pegs", 0.05, 0.0),))
        (one,) = found("rig-impossible", banded(5, route=Route.SINGLE), kit=kit)
        assert "slack all the way" in one.what

    def test_bands_taut_from_the_start_pass(self):
        assert not finds("band-slack", banded())

    def test_a_share_that_the_bands_cannot_give_is_found(self):
        share = 100 * self.lockout_share()
        (one,) = found("band-share", banded(share + 5.5))
        assert one.what == f"{share:.0f} % of the load from bands, {share + 5.5:.0f} % were planned"

    def test_five_points_off_the_share_pass(self):
        share = 100 * self.lockout_share()
        assert not finds("band-share", banded(share + 4.5))
        moved = Thresholds(band_share_points=2)
        assert finds("band-share", banded(share + 4.5), thresholds=moved)

    def test_a_pair_that_differs_is_found(self):
        left, right = BANDS
        half = tuple(BandReading(r.length_m, r.force_n / 2) for r in right.readings)
        kit = replace(CELLAR, bands=(left, replace(right, readings=half)))
        light = one_day(
            exercise(
                "deadlift",
                sets(1, 3, kg(60)),
                Method.SPEED,
                rig=Rig(Part.BANDS, 20, route=Route.INVERTED_V),
            )
        )
        (one,) = found("bands-uneven", light, kit=kit)
        assert one.what.startswith("left ")
        assert not finds("bands-uneven", light)

    def test_a_chain_that_never_touches_the_floor_is_found(self):
        kit = replace(CELLAR, chains=(Chain("short", "Short chain", 0.1, 2.0),))
        plan = banded(1, part=Part.CHAINS, route=Route.SINGLE)
        assert finds("chain-idle", plan, kit=kit)
        long = replace(CELLAR, chains=(Chain("long", "Long chain", 1.6, 2.0),))
        assert not finds("chain-idle", plan, kit=long)

    def test_the_same_rig_is_worked_out_once_for_all_weeks(self):
        plan = banded()
        twice = replace(plan, weeks=(plan.weeks[0], replace(plan.weeks[0], sessions=tuple(
            replace(one, key="again") for one in plan.weeks[0].sessions))))  # fmt: skip
        rigs = list(context(twice).rigs.values())
        assert len(rigs) == 2
        assert rigs[0].choice is not None


def runs(metres: float, rest: Rest | None, count: int = 4):
    one = SetPlan("s", Unloaded(), distance_m=metres)
    plan_sets = tuple(replace(one, key=f"s{n}") for n in range(count))
    return one_day(exercise("sprint", plan_sets, Method.TIMED, rest=rest))


class TestSprints:
    @pytest.mark.parametrize(
        ("metres", "rest_s", "is_found"),
        [
            (40, 420, False),  # common practice: 7-10 min after 40-60 m
            (40, 419, True),
            (60, 240, True),
            (20, 120, False),  # handbook rule, secondary pages seen: 1 min for each 10 m
            (20, 119, True),
            (30, 180, False),
            (200, 60, False),  # no longer a run at top speed
        ],
    )
    def test_full_recovery_is_asked_for(self, metres, rest_s, is_found):
        assert finds("sprint-rest", runs(metres, Rest(rest_s, 900))) is is_found

    def test_no_rest_written_is_found_and_a_single_run_needs_none(self):
        assert found("sprint-rest", runs(40, None))[0].what.startswith("no rest is written")
        assert not finds("sprint-rest", runs(40, None, count=1))

    def test_a_carry_is_no_sprint(self):
        one = SetPlan("s1", kg(30), distance_m=40)
        plan = one_day(exercise("farmers-carry", (one, replace(one, key="s2")), Method.TIMED))
        assert not finds("sprint-rest", plan)


class TestSides:
    def test_a_one_sided_exercise_as_straight_sets_is_found(self):
        (one,) = found("sides-not-said", one_day(exercise("dumbbell-row", sets(3, 8, kg(25)))))
        assert one.severity is Severity.NOTE

    def test_the_one_sided_method_says_its_sides(self):
        details = OneSidedRule(Side.LEFT)
        work = exercise("dumbbell-row", sets(3, 8, kg(25)), Method.ONE_SIDED, details=details)
        assert not finds("sides-not-said", one_day(work, exercise("back-squat")))

    @staticmethod
    def last(left: int, right: int) -> Background:
        def side(which: Side, reps: int, key: str) -> DoneSet:
            on = date(2026, 10, 30)
            return DoneSet(on, "w", key, "dumbbell-row", load_kg=25, reps=reps, side=which)

        return Background(done=(side(Side.LEFT, left, "a"), side(Side.RIGHT, right, "b")))

    @pytest.mark.parametrize(("left", "right", "is_found"), [(10, 11, False), (10, 12, True)])
    def test_sides_that_last_did_unequal_work_are_found(self, left, right, is_found):
        plan = one_day(exercise("dumbbell-row", sets(3, 8, kg(25))))
        assert finds("sides-differ", plan, background=self.last(left, right)) is is_found

    def test_the_stronger_side_is_named(self):
        plan = one_day(exercise("dumbbell-row", sets(3, 8, kg(25))))
        (one,) = found("sides-differ", plan, background=self.last(12, 8))
        assert one.what == "last time the left did 50 % more than the right"
        assert one.right.startswith("begin with the right")

    def test_without_both_sides_nothing_is_said(self):
        plan = one_day(exercise("dumbbell-row", sets(3, 8, kg(25))))
        assert not finds("sides-differ", plan, background=self.last(12, 0))
        assert not finds("sides-differ", plan)
