"""The OpenAPI document fuzzed: whatever is asked, the answer is one that the document promises.

Many more: python -m tests.fuzz --cases 10000.
"""

from collections.abc import Iterator
from typing import Any

import pytest
from tests.api.roles import OWNER
from tests.fuzz.asking import ENDPOINTS, ROLES, Round, ask, may_ask, operations
from tests.fuzz.stage import Stage, set_up

from undercroft.store import database

CASES, REFUSED = 20, 2


@pytest.fixture(scope="module")
def stage(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Stage]:
    yield set_up(tmp_path_factory.mktemp("fuzzed"))
    database.close_all()


@pytest.fixture(scope="module")
def known(stage: Stage) -> dict[str, Any]:
    return operations(stage.app)


@pytest.mark.slow
@pytest.mark.parametrize("endpoint", ENDPOINTS)
def test_no_answer_is_a_surprise(endpoint: str, stage: Stage, known: dict[str, Any]) -> None:
    """As coaches, athlete's device and nobody; most often as one who is let in."""
    for role in ROLES:
        cases = CASES if may_ask(endpoint, role) else REFUSED
        heard = ask(stage, known[endpoint], Round(endpoint, role, 1, cases))
        assert heard.cases
        assert heard.surprises == [], "\n".join(map(str, heard.surprises))


def test_the_same_round_asks_the_same_again(stage: Stage, known: dict[str, Any]) -> None:
    """Or a surprise could not be repeated."""
    one = Round("desk.add_athlete", OWNER, 7, 12)
    first, second = (ask(stage, known[one.endpoint], one) for _ in range(2))
    assert first.statuses == second.statuses
    assert len(first.statuses) > 1
