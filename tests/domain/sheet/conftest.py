"""An invented block on two invented kits, worked out once for all tests here."""

from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from tests.fixtures import fixture as load

from undercroft.documents.catalogue import catalogue
from undercroft.documents.reading import read_athlete, read_block, read_kit
from undercroft.domain.sheet import Order, WorkedOut, standing_of, work_out

MONDAY = date(2026, 11, 30)

WorkOut = Callable[..., WorkedOut]


def order(block: Any, athlete: Any, kit: Any) -> Order:
    person = read_athlete(athlete, catalogue())
    return Order(
        block=read_block(block, catalogue()),
        athlete=person,
        kit=read_kit(kit),
        catalogue=catalogue(),
        standing=standing_of(person),
        starts_on=MONDAY,
    )


@pytest.fixture
def worked_out() -> WorkOut:
    """The two-week block for Runa in the old forge cellar, or with other parts."""

    def work(
        block: Any = None, athlete: Any = None, kit: Any = None, leave_out: tuple[str, ...] = ()
    ) -> WorkedOut:
        given = order(
            block or load("blocks", "two-weeks"),
            athlete or load("athletes", "runa"),
            kit or load("kits", "forge-cellar"),
        )
        return work_out(given, leave_out)

    return work


@pytest.fixture
def one_exercise(worked_out: WorkOut) -> Callable[..., Any]:
    """One exercise with these sets, worked out; other fields of the exercise by name."""

    def work(
        exercise: str,
        sets: list[dict[str, Any]],
        method: str = "straight",
        athlete: Any = None,
        kit: Any = None,
        **fields: Any,
    ) -> Any:
        keyed = [{"key": f"s-{n}", **one} for n, one in enumerate(sets, start=1)]
        plan = {"key": "e", "exercise": exercise, "method": method, "sets": keyed, **fields}
        session = {"key": "s", "name": "One", "day": 1, "exercises": [plan]}
        block = {
            "key": "b",
            "name": "B",
            "weeks": [{"key": "w", "name": "W", "sessions": [session]}],
        }
        done = worked_out(block=block, athlete=athlete, kit=kit)
        assert done.findings == ()
        return done.sheets[0].exercises[0]

    return work
