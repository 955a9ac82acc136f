"""Strict fields: a phone's or a spreadsheet's slip must not be read as a number.

Every message says what was wrong and what would be right, as "wrong; right".
"""

import math
import re
from collections.abc import Mapping
from datetime import date
from enum import StrEnum
from types import MappingProxyType
from typing import Any

from marshmallow import Schema, ValidationError, fields

from undercroft.documents.made import made

Facts = Mapping[str, Any]
"""What JSON Schema says of a field."""

NO_FACTS: Facts = MappingProxyType({})

KEY_PATTERN = r"^[a-z0-9][a-z0-9._-]{0,63}$"

_CANNOT_BE_KEPT = re.compile("[\x00\ud800-\udfff]")


def say(value: object) -> str:
    """The value as a person would recognise it in a message."""
    text = repr(value) if isinstance(value, str) else str(value)
    return text if len(text) <= 40 else text[:37] + "..."


class Text(fields.String):
    """Text without NUL and lone surrogates, at most `longest` characters."""

    def __init__(
        self, longest: int = 200, shortest: int = 0, facts: Facts = NO_FACTS, **kwargs: Any
    ) -> None:
        super().__init__(metadata={"maxLength": longest, "minLength": shortest, **facts}, **kwargs)
        self.longest, self.shortest = longest, shortest

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> str:
        if not isinstance(value, str):
            raise ValidationError(f"{say(value)} is no text; write text in quotes")
        if _CANNOT_BE_KEPT.search(value):
            raise ValidationError("holds a character that cannot be kept; remove it")
        if not self.shortest <= len(value) <= self.longest:
            raise ValidationError(
                f"{len(value)} characters; write {self.shortest} to {self.longest} characters"
            )
        return value


class Key(Text):
    """A stable name for programs: lower-case letters, digits, dots, dashes."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(longest=64, shortest=1, facts={"pattern": KEY_PATTERN}, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        if not re.fullmatch(KEY_PATTERN, text):
            raise ValidationError(
                f"{say(text)} is no key; use lower-case letters, digits, dots and dashes"
            )
        return text


def _float(value: float) -> float:
    """A whole number of hundreds of digits is infinite here."""
    try:
        return float(value)
    except OverflowError:
        return math.inf if value > 0 else -math.inf


class Number(fields.Float):
    """A finite number from `least` to `most`, both allowed unless `above` excludes the least."""

    def __init__(
        self,
        least: float | None = None,
        most: float | None = None,
        above: float | None = None,
        unit: str = "",
        **kwargs: Any,
    ) -> None:
        limits = {"minimum": least, "maximum": most, "exclusiveMinimum": above}
        super().__init__(
            metadata={name: limit for name, limit in limits.items() if limit is not None}, **kwargs
        )
        self.least, self.most, self.above, self.unit = least, most, above, unit

    def wants(self) -> str:
        """The range in words, for messages."""
        low = (
            f"more than {self.above:g}"
            if self.above is not None
            else (f"at least {self.least:g}" if self.least is not None else "")
        )
        high = f"at most {self.most:g}" if self.most is not None else ""
        span = " and ".join(part for part in (low, high) if part) or "a number"
        return f"give {span} {self.unit}".strip()

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise ValidationError(f"{say(value)} is no number; {self.wants()}")
        number = _float(value)
        if not math.isfinite(number) or not self._within(number):
            raise ValidationError(f"{number:g} is out of range; {self.wants()}")
        return number

    def _within(self, number: float) -> bool:
        return (
            (self.least is None or number >= self.least)
            and (self.most is None or number <= self.most)
            and (self.above is None or number > self.above)
        )


class Whole(Number):
    """A whole number; 5.0 is taken as 5."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> int:
        number = super()._deserialize(value, attr, data, **kwargs)
        if number != int(number):
            raise ValidationError(f"{number:g} is no whole number; {self.wants()}")
        return int(number)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> int | None:
        return None if value is None else int(value)


class Truth(fields.Boolean):
    """true or false, nothing that merely looks like it."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> bool:
        if not isinstance(value, bool):
            raise ValidationError(f"{say(value)} is neither; write true or false")
        return value


class Day(fields.Field[date]):
    """A calendar day as ISO 8601, 2026-03-31."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> date:
        try:
            if not isinstance(value, str) or len(value) != 10:
                raise ValueError
            return date.fromisoformat(value)
        except ValueError:
            raise ValidationError(
                f"{say(value)} is no date; write year-month-day, like 2026-03-31"
            ) from None

    def _serialize(self, value: date | None, attr: Any, obj: Any, **kwargs: Any) -> str | None:
        return None if value is None else value.isoformat()


class OneOf(fields.Field[StrEnum]):
    """One of the values of an enumeration."""

    def __init__(self, kind: type[StrEnum], **kwargs: Any) -> None:
        super().__init__(metadata={"enum": [member.value for member in kind]}, **kwargs)
        self.kind = kind

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> StrEnum:
        try:
            return self.kind(value)
        except ValueError:
            known = ", ".join(member.value for member in self.kind)
            raise ValidationError(f"{say(value)} is not known here; use one of {known}") from None

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> str | None:
        return None if value is None else str(value.value)


class Many(fields.List[Any]):
    """A list that becomes a tuple, `fewest` to `most` items."""

    def __init__(self, inner: Any, fewest: int = 0, most: int = 200, **kwargs: Any) -> None:
        super().__init__(inner, metadata={"minItems": fewest, "maxItems": most}, **kwargs)
        self.fewest, self.most = fewest, most

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Any:
        if not isinstance(value, list):
            raise ValidationError(f"{say(value)} is no list; write a list in brackets")
        if not self.fewest <= len(value) <= self.most:
            raise ValidationError(f"{len(value)} items; give {self.fewest} to {self.most}")
        return tuple(super()._deserialize(value, attr, data, **kwargs))


class Tagged(fields.Field[Any]):
    """One of several shapes, told apart by the text under `tag`."""

    def __init__(self, tag: str, shapes: Mapping[str, type[Schema]], **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.tag, self.shapes = tag, dict(shapes)

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Any:
        if not isinstance(value, dict):
            raise ValidationError(f"{say(value)} is no object; write {{{self.tag!r}: ...}}")
        name = value.get(self.tag)
        if not isinstance(name, str) or name not in self.shapes:
            raise ValidationError(
                {self.tag: [f"{say(name)} is not known here; use one of {', '.join(self.shapes)}"]}
            )
        rest = {key: item for key, item in value.items() if key != self.tag}
        return made(self.shapes[name]).load(rest)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Any:
        if value is None:
            return None
        for name, shape in self.shapes.items():
            if shape.builds is type(value):  # type: ignore[attr-defined]
                return {self.tag: name, **made(shape).dump(value)}
        raise TypeError(f"no shape for {type(value).__name__}")
