"""The exercises that ship with the program, as facts of the trade."""

import pytest

from undercroft.documents.catalogue import catalogue
from undercroft.documents.own_exercise import OWN
from undercroft.domain.at_hand import STANDING, THINGS, lacking
from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Exercise, Implement, Muscle
from undercroft.domain.kit import (
    Anchor,
    Band,
    Bar,
    BarKind,
    Dumbbell,
    Kit,
    Landmine,
    Plate,
    Stack,
    Support,
)
from undercroft.domain.mechanics.path import path_for
from undercroft.domain.occlusion.placing import DROPPABLE
from undercroft.domain.program.checks.sprints import SPRINTS
from undercroft.domain.sheet.pieces import pieces_of

KNOWN = catalogue()
EACH = pytest.mark.parametrize("exercise", KNOWN.values(), ids=lambda one: one.key)

FIRST = (
    "back-squat", "front-squat", "box-squat", "goblet-squat", "split-squat", "step-up",
    "deadlift", "hex-bar-deadlift", "romanian-deadlift", "dumbbell-romanian-deadlift",
    "good-morning", "hip-thrust", "power-clean", "bench-press", "close-grip-bench-press",
    "oscillating-bar-bench-press", "dumbbell-bench-press", "incline-dumbbell-press",
    "push-up", "dip", "overhead-press", "push-press", "dumbbell-overhead-press",
    "landmine-press", "landmine-row", "barbell-row", "bench-pull", "dumbbell-row", "pull-up",
    "chin-up", "pulldown", "cable-row", "face-pull", "triceps-pushdown", "band-pull-apart",
    "barbell-curl", "curl-bar-curl", "dumbbell-curl", "triceps-extension", "lateral-raise",
    "calf-raise", "leg-extension", "leg-curl", "farmers-carry", "suitcase-carry", "plank",
    "dead-bug", "sprint",
)  # fmt: skip
"""Keys that revisions out in the world may name."""

OF_ANOTHER_MUSCLE = {
    ("landmine-press", "push-up"): "presses as well, where nothing stands",
    ("incline-dumbbell-press", "dumbbell-bench-press"): "the same press from a flat bench",
}

NEVER_ABOVE = {
    "hip-thrust": "the bar lies on the hips from the start, and its plates on the floor",
    "bench-pull": "the bar hangs below the bench",
    "rack-pull": "goes back to the pins in front of the legs",
    "bar-hold": "a hand's breadth above the pins",
    "thigh-pull-hold": "does not move",
}
"""Bars in supports or at a bench that never come to rest on the lifter."""

CELLAR = Kit(
    key="all",
    name="A cellar with everything",
    bars=tuple(Bar(kind, kind, 20, kind) for kind in BarKind),
    plates=(Plate(20, 4, 0.03),),
    dumbbells=(Dumbbell(10, 2),),
    stacks=(Stack("column", "Cable column", (5, 10)),),
    bands=(Band("thin", "thin", 13, 4.5, 1.04),),
    anchors=(Anchor("ring", "Ring in the wall", 1.0),),
    supports=(Support("rack", "Rack", 1.1, safeties=True),),
    landmines=(Landmine("pivot", "Pivot"),),
    things=THINGS,
)


def test_there_is_enough_to_write_any_block_with() -> None:
    assert len(KNOWN) >= 120


def test_a_key_that_was_given_out_stays() -> None:
    assert [key for key in FIRST if key not in KNOWN] == []


def test_no_key_is_one_that_a_coach_may_take() -> None:
    assert [key for key in KNOWN if key.startswith(OWN)] == []


def test_no_two_exercises_have_one_name() -> None:
    assert len({one.name.casefold() for one in KNOWN.values()}) == len(KNOWN)


@EACH
def test_an_exercise_says_what_works_and_how_to_do_it(exercise: Exercise) -> None:
    assert exercise.prime
    assert exercise.cues
    assert {*exercise.prime, *exercise.helpers} <= set(Muscle)
    assert not {*exercise.prime} & {*exercise.helpers}


def test_every_muscle_is_the_prime_one_of_something() -> None:
    assert {muscle for one in KNOWN.values() for muscle in one.prime} == set(Muscle)


@EACH
def test_an_alternative_exists_and_trains_one_of_the_same_muscles(exercise: Exercise) -> None:
    assert exercise.alternatives
    for other in exercise.alternatives:
        assert other != exercise.key
        shared = {*exercise.prime} & {*KNOWN[other].prime}
        assert shared or (exercise.key, other) in OF_ANOTHER_MUSCLE


@EACH
def test_a_kit_can_have_all_that_an_exercise_needs(exercise: Exercise) -> None:
    assert {*exercise.needs} <= {*STANDING, *THINGS}
    assert lacking(CELLAR, exercise) == ()
    pieces = pieces_of(CELLAR, Athlete("a", "A", body_mass_kg=70))
    assert pieces.find(exercise.implement, exercise.key)
    assert lacking(Kit("none", "Nothing"), exercise) == exercise.needs


def test_nothing_stands_in_a_kit_that_no_exercise_asks_for() -> None:
    assert {*STANDING, *THINGS} == {need for one in KNOWN.values() for need in one.needs}


@EACH
def test_a_bar_that_could_come_down_on_the_lifter_needs_safeties(exercise: Exercise) -> None:
    on_the_sleeve = exercise.implement not in {*DROPPABLE, Implement.LANDMINE}
    above = on_the_sleeve and {"support", "bench"} & {*exercise.needs}
    assert exercise.needs_safeties == bool(above and exercise.key not in NEVER_ABOVE)


@EACH
def test_what_is_moved_by_hand_has_a_way_that_a_body_can_make(exercise: Exercise) -> None:
    carried = exercise.key.endswith(("-carry", "-walk"))
    if exercise.implement in {Implement.BODY, Implement.BAND, Implement.STACK} or carried:
        return
    way = path_for(Athlete("a", "A", stature_m=1.75), exercise)
    assert 0.02 < way.range_m / 1.75 <= 1.1 or exercise.key == "thigh-pull-hold"
    assert way.end_m <= 1.25 * 1.75, "as high as two arms reach"


@EACH
def test_either_both_figures_of_the_way_are_known_or_none(exercise: Exercise) -> None:
    assert (exercise.start_share is None) == (exercise.range_share is None)


def test_what_is_run_at_full_speed_is_in_the_catalogue() -> None:
    assert {one for one in KNOWN if "sprint" in one} == SPRINTS


@pytest.mark.parametrize(
    "implement", [Implement.STACK, Implement.BAND, Implement.DUMBBELL, Implement.DUMBBELLS]
)
def test_occlusion_work_finds_something_to_let_go_of(implement: Implement) -> None:
    """Arms and legs, each with more than one exercise that can be dropped at any time."""
    found = [one for one in KNOWN.values() if one.implement is implement]
    arms = [one for one in found if {"biceps", "triceps"} & {*one.prime}]
    legs = [one for one in found if {"quads", "hamstrings", "calves"} & {*one.prime}]
    assert len(arms) + len(legs) >= 4
    assert not [one.key for one in found if one.needs_safeties]
