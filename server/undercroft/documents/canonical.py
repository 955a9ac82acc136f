"""The one text form of a document: the same content gives the same bytes."""

import json
from typing import Any


def to_json(data: Any, *, indent: int | None = 2) -> str:
    """JSON in the order of the schema's fields; whole floats are written without a fraction."""
    separators = (",", ":") if indent is None else (",", ": ")
    text = json.dumps(plain(data), ensure_ascii=False, indent=indent, separators=separators)
    return text if indent is None else text + "\n"


def plain(data: Any) -> Any:
    """Plain data with 5.0 as 5, so that a number has one spelling."""
    if isinstance(data, dict):
        return {key: plain(value) for key, value in data.items()}
    if isinstance(data, list | tuple):
        return [plain(item) for item in data]
    if isinstance(data, float) and data.is_integer():
        return int(data)
    return data
