"""Small rules for single values, quick enough to be applied to every field of every entry.

A marshmallow schema takes ten times as long for an entry; there may be 500 in a request.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

BAD_TEXT = re.compile("[\x00\ud800-\udfff]")
"""NUL and lone surrogates: one database or the other cannot keep them."""

DEEPEST_FREE, MOST_FREE = 6, 400


@dataclass(frozen=True, slots=True)
class Rule:
    """`right` says in words what `ok` accepts; `schema` says it as JSON Schema."""

    ok: Callable[[Any], bool]
    right: str
    schema: Mapping[str, Any]


def number(least: float, most: float, unit: str = "") -> Rule:
    def ok(value: Any) -> bool:
        return (type(value) is float or type(value) is int) and least <= value <= most

    schema = {"type": "number", "minimum": least, "maximum": most}
    return Rule(ok, f"a number from {least:g} to {most:g} {unit}".strip(), schema)


def halves(least: float, most: float) -> Rule:
    def ok(value: Any) -> bool:
        kind = type(value)
        return (kind is float or kind is int) and least <= value <= most and value * 2 % 1 == 0

    schema = {"type": "number", "minimum": least, "maximum": most, "multipleOf": 0.5}
    return Rule(ok, f"a number from {least:g} to {most:g} in halves", schema)


def whole(least: int, most: int, unit: str = "") -> Rule:
    """Whole numbers; 5.0 is 5, as a phone may write either."""

    def ok(value: Any) -> bool:
        kind = type(value)
        return (kind is int or (kind is float and value % 1 == 0)) and least <= value <= most

    schema = {"type": "integer", "minimum": least, "maximum": most}
    return Rule(ok, f"a whole number from {least} to {most} {unit}".strip(), schema)


def text(longest: int) -> Rule:
    def ok(value: Any) -> bool:
        return type(value) is str and 0 < len(value) <= longest and not BAD_TEXT.search(value)

    schema = {"type": "string", "minLength": 1, "maxLength": longest}
    return Rule(ok, f"text of 1 to {longest} characters without NUL", schema)


def matching(pattern: str, right: str) -> Rule:
    found = re.compile(pattern)

    def ok(value: Any) -> bool:
        return type(value) is str and found.fullmatch(value) is not None

    return Rule(ok, right, {"type": "string", "pattern": f"^{pattern}$"})


def truth() -> Rule:
    return Rule(lambda value: type(value) is bool, "true or false", {"type": "boolean"})


def one_of(*values: str | int) -> Rule:
    def ok(value: Any) -> bool:
        return type(value) in (str, int) and value in values

    return Rule(ok, "one of " + ", ".join(map(str, values)), {"enum": list(values)})


def many(inner: Rule, most: int) -> Rule:
    def ok(value: Any) -> bool:
        return type(value) is list and len(value) <= most and all(map(inner.ok, value))

    schema = {"type": "array", "items": dict(inner.schema), "maxItems": most}
    return Rule(ok, f"a list of at most {most}, each {inner.right}", schema)


def nullable(inner: Rule) -> Rule:
    schema = {"anyOf": [dict(inner.schema), {"type": "null"}]}
    return Rule(lambda value: value is None or inner.ok(value), f"{inner.right}, or null", schema)


def free_object() -> Rule:
    """An object of any names, small and shallow, its texts keepable."""
    right = f"an object of at most {MOST_FREE} values, at most {DEEPEST_FREE} deep, without NUL"
    return Rule(lambda value: type(value) is dict and _small(value), right, {"type": "object"})


def _small(value: Any) -> bool:
    level, count = [value], 0
    for _ in range(DEEPEST_FREE):
        inner: list[Any] = []
        for item in level:
            if type(item) is dict:
                inner += [*item.keys(), *item.values()]
            elif type(item) is list:
                inner += item
            elif not _keepable(item):
                return False
        count += len(inner)
        if not inner or count > MOST_FREE:
            return not inner
        level = inner
    return False


def _keepable(item: Any) -> bool:
    if type(item) is str:
        return len(item) <= 2000 and not BAD_TEXT.search(item)
    return type(item) is not float or item - item == 0
