"""JSON Schemas of documents that people write by hand or by program, by name."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from undercroft.documents import entries, json_schema

PUBLISHED: Mapping[str, Callable[[], dict[str, Any]]] = {
    "entry": entries.json_schema,
    **{name: partial(json_schema.published_schema, name) for name in json_schema.PUBLISHED},
}
