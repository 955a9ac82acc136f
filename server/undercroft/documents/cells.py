"""One cell of a table that holds a small object: `percent 80 of=front-squat`.

A tagged object begins with its tag; the field of the same name follows as a bare value, the others
are `name=value`. Values are numbers, true, false, plain
words, or lists with commas. The text of an object is unique, so that it survives any round trip.
"""

from typing import Any

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "'")
"""Beginnings that a spreadsheet takes for a formula, and the mark that guards against it."""


def guarded(text: str) -> str:
    """Text that no spreadsheet runs as a formula."""
    return "'" + text if text.startswith(FORMULA_STARTS) else text


def unguarded(text: str) -> str:
    """The text as it was before `guarded`."""
    return text[1:] if text.startswith("'") and text[1:].startswith(FORMULA_STARTS) else text


def write_object(data: dict[str, Any], tag: str | None = None) -> str:
    """An object of plain values as one line of words."""
    kind = str(data[tag]) if tag else None
    words = [
        write_value(value) if name in (tag, kind) else f"{name}={write_value(value)}"
        for name, value in data.items()
    ]
    return " ".join(words)


def read_object(
    text: str,
    tag: str | None = None,
    lists: frozenset[str] = frozenset(),
    names: frozenset[str] = frozenset(),
) -> dict[str, Any]:
    """The object that `write_object` wrote; fields in `names` stay words even if like numbers.

    Raises ValueError with what would be right.
    """
    words = text.split()
    data: dict[str, Any] = {}
    if tag and words:
        data[tag] = words.pop(0)
    if tag and words and "=" not in words[0]:
        words[0] = f"{data[tag]}={words[0]}"
    for word in words:
        name, equals, value = word.partition("=")
        if not equals:
            raise ValueError(f"{word!r} stands alone; write name=value")
        values = [v if name in names else read_value(v) for v in value.split(",")]
        data[name] = values if name in lists else values[0]
    return data


def write_value(value: Any) -> str:
    """A plain value as a word."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | tuple):
        return ",".join(write_value(item) for item in value)
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value)


def read_value(word: str) -> Any:
    """A word as true, false, a number where it is one, else the word itself."""
    if word in ("true", "false"):
        return word == "true"
    try:
        return int(word)
    except ValueError:
        pass
    try:
        return float(word)
    except ValueError:
        return word
