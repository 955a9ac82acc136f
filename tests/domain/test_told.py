"""What a session, as it was done, says of the loads that come next."""

from tests.domain.ledgers import done, swapped

from undercroft.domain.ledger import fold
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.methods import Method
from undercroft.domain.program.wish import Fixed
from undercroft.domain.told import first_loads

SQUAT = ExercisePlan(
    "a", "back-squat", Method.STRAIGHT, sets=(SetPlan("squat.1", Fixed(92.5), reps=3),)
)
PLAN = SessionPlan("w1.mon", "Monday", 1, exercises=(SQUAT,))


def test_as_last_time_goes_by_the_first_set_done() -> None:
    record = fold([done(1)]).sessions[1, "w1.mon"]
    assert first_loads(PLAN, record) == {"back-squat": 92.5}


def test_a_set_done_without_its_bands_leaves_last_time_open() -> None:
    record = fold([swapped(1, "a", "back-squat.unrigged"), done(2)]).sessions[1, "w1.mon"]
    assert first_loads(PLAN, record) == {"back-squat": None}
