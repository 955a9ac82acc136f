"""Documents to be spoiled, a fresh copy for each test."""

from typing import Any

import pytest
from tests import fixtures


@pytest.fixture
def block_data() -> Any:
    return fixtures.block_data()


@pytest.fixture
def kit_data() -> Any:
    return fixtures.kit_data()


@pytest.fixture
def athlete_data() -> Any:
    return fixtures.athlete_data()
