"""Which piece of a kit an exercise is done with, where there are several of a sort."""

from dataclasses import replace

from tests.domain.program.plans import CELLAR, SIV, exercise, kg, one_day, order, sets

from undercroft.domain.kit import Kit, Stack
from undercroft.domain.load_sheet import SheetExercise
from undercroft.domain.program.finding import Severity
from undercroft.domain.sheet import work_out

PRESS = Stack(
    "press",
    "Leg press",
    tuple(range(20, 220, 20)),
    sheaves=0,
    only_for=("leg-press", "leg-press-calf-raise"),
)
(TOWER,) = CELLAR.stacks
THINGS = (*CELLAR.things, "leg press")


def with_stacks(*stacks: Stack) -> Kit:
    return replace(CELLAR, stacks=stacks, things=THINGS)


def sheet_of(name: str, kit: Kit, load: float = 40) -> SheetExercise:
    done = work_out(order(one_day(exercise(name, sets(1, 8, kg(load)))), SIV, kit))
    return done.sheets[0].exercises[0]


def test_a_machine_makes_the_loads_of_its_own_exercises() -> None:
    kit = with_stacks(TOWER, PRESS)
    assert sheet_of("leg-press", kit, 100).implement.name == "Leg press"
    assert [load.kg for load in sheet_of("leg-press", kit, 100).loads if load.pin_kg == 100]
    assert sheet_of("leg-press-calf-raise", kit).implement.key == "press"


def test_every_other_exercise_is_done_on_the_stack_that_is_for_none_alone() -> None:
    for kit in (with_stacks(TOWER, PRESS), with_stacks(PRESS, TOWER)):
        assert sheet_of("pulldown", kit).implement.key == "tower"


def test_a_kit_with_a_leg_press_alone_has_no_pulldown() -> None:
    plan = one_day(exercise("pulldown", sets(1, 8, kg(40))))
    done = work_out(order(plan, SIV, with_stacks(PRESS)))
    assert done.sheets[0].exercises[0].notes == ("No stack stands here.",)
    assert Severity.STOP not in {one.severity for one in done.findings}


def test_without_a_machine_of_its_own_an_exercise_takes_the_tower() -> None:
    assert sheet_of("leg-press", with_stacks(TOWER)).implement.key == "tower"
