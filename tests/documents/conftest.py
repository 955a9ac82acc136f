"""The fixtures of the project as plain data: an invented valley's kits, athletes and blocks."""

import json
from pathlib import Path
from typing import Any

import pytest

FIXTURES = Path(__file__).parents[2] / "fixtures"


@pytest.fixture
def block_data() -> Any:
    return json.loads((FIXTURES / "blocks" / "two-weeks.json").read_text())


@pytest.fixture
def kit_data() -> Any:
    return json.loads((FIXTURES / "kits" / "forge-cellar.json").read_text())


@pytest.fixture
def athlete_data() -> Any:
    return json.loads((FIXTURES / "athletes" / "runa.json").read_text())
