"""A block goes out as a file and comes in again as the same block."""

import copy
from typing import Any

import pytest
from tests import fixtures
from tests.people import AtDesk


def long_block(weeks: int) -> Any:
    """A block of every method, repeated with keys of its own for each week."""
    block = fixtures.fixture("blocks", "every-method")
    pattern = block["weeks"]
    block["weeks"] = [copy.deepcopy(pattern[n % len(pattern)]) for n in range(weeks)]
    for n, week in enumerate(block["weeks"]):
        week["key"] = f"week-{n}"
        for session in week["sessions"]:
            session["key"] = f"{session['key']}-{n}"
    return block


@pytest.mark.parametrize("form", ["json", "csv"])
@pytest.mark.parametrize("weeks", [24, 52])
def test_the_longest_blocks_go_out_and_come_in_again(coach: AtDesk, weeks: int, form: str) -> None:
    block = long_block(weeks)
    saved = coach.post("/desk/blocks", {"document": block}).json
    assert saved["faults"] == []
    text = coach.get(f"/desk/blocks/{saved['id']}/export?format={form}").text
    read = coach.post("/desk/blocks/read", {"text": text, "format": form})
    assert read.status_code == 200, read.text[:500]
    assert len(read.json["document"]["weeks"]) == weeks
    again = coach.post("/desk/blocks", {"document": read.json["document"]}).json
    assert coach.get(f"/desk/blocks/{again['id']}/export?format={form}").text == text
