"""Entries as phones send them."""

from typing import Any


def json_schema() -> dict[str, Any]:
    return {}
