"""The load sheet on the wire."""

import json
from typing import Any

import pytest
from tests.fixtures import fixture

from undercroft.documents.block import ExerciseShape
from undercroft.documents.sheet import SheetExerciseShape
from undercroft.domain.load_sheet import SheetExercise, SheetImplement
from undercroft.domain.program.methods import DETAILS_OF, Method, SpeedRule


def exercise(method: Method, details: Any) -> SheetExercise:
    implement = SheetImplement("straight-bar", "Bar")
    return SheetExercise("a", "back-squat", "Squat", method, implement, (), details=details)


def test_a_sheet_says_the_limits_that_the_coach_left_as_they_are() -> None:
    """The phone compares with them and knows none of its own."""
    sheet = SheetExerciseShape().dump(exercise(Method.SPEED, SpeedRule()))
    assert sheet["details"] == {"stop_at_loss_percent": 10.0, "stop_at_quality": 2}


@pytest.mark.parametrize("session", fixture("blocks", "every-method")["weeks"][0]["sessions"])
def test_what_a_sheet_says_of_a_method_reads_back_as_what_the_coach_wrote(session: Any) -> None:
    for written in session["exercises"]:
        details = ExerciseShape().load(written).details
        sheet = json.loads(SheetExerciseShape().dumps(exercise(Method(written["method"]), details)))
        assert SheetExerciseShape().load({**sheet, "sets": []}).details == details
        assert (details is not None) == (Method(written["method"]) in DETAILS_OF)
