"""JSON Schemas of documents that people write by hand or by program, by name."""

from collections.abc import Callable, Mapping
from typing import Any

from undercroft.documents import entries

PUBLISHED: Mapping[str, Callable[[], dict[str, Any]]] = {"entry": entries.json_schema}
