"""An athlete who can be sent a block, and a block."""

import pytest
from tests.fixtures import athlete_data, block_data, kit_data
from tests.people import AtDesk


@pytest.fixture
def ready(coach: AtDesk, athlete: str) -> str:
    """The athlete, with maxima and a kit."""
    for name, document in (("document", athlete_data()), ("kit", kit_data())):
        answer = coach.post(f"/desk/athletes/{athlete}/{name}", {"document": document})
        assert answer.status_code == 200, answer.text
    return athlete


@pytest.fixture
def block(coach: AtDesk) -> str:
    answer = coach.post("/desk/blocks", {"document": block_data()})
    assert answer.json["faults"] == []
    return str(answer.json["id"])
