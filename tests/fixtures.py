"""The project's fixtures as plain data: an invented valley's kits, athletes and blocks."""

import json
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parents[1] / "fixtures"


def fixture(folder: str, name: str) -> Any:
    """A fresh copy of one fixture."""
    return json.loads((FOLDER / folder / f"{name}.json").read_text(encoding="utf-8"))


def block_data() -> Any:
    return fixture("blocks", "two-weeks")


def kit_data() -> Any:
    return fixture("kits", "forge-cellar")


def athlete_data() -> Any:
    return fixture("athletes", "runa")
