"""The base of all document schemas: strict on the way in, no empty fields on the way out."""

from collections.abc import Mapping
from dataclasses import MISSING
from dataclasses import fields as dataclass_fields
from functools import cache
from typing import Any, ClassVar

from marshmallow import RAISE, Schema, ValidationError, post_dump, post_load

from undercroft.domain.errors import DomainError

UNKNOWN = "not known here; remove it or correct its spelling"
MISSING_FIELD = "missing; it is needed"
NULL = "empty; leave the field out or give a value"


class Shape(Schema):
    """A schema that builds one domain dataclass (`builds`)."""

    builds: ClassVar[type[Any]]
    error_messages = {  # noqa: RUF012 - marshmallow merges the tables of all bases
        "unknown": UNKNOWN,
        "type": "no object; write an object in braces",
    }

    class Meta:
        unknown = RAISE

    def on_bind_field(self, field_name: str, field_obj: Any) -> None:
        """Give every field the same words for the two commonest faults."""
        field_obj.error_messages["required"] = MISSING_FIELD
        field_obj.error_messages["null"] = NULL

    @post_load
    def _build(self, data: dict[str, Any], **_: Any) -> Any:
        try:
            return self.builds(**data)
        except DomainError as refused:
            field = refused.where.rpartition(".")[2]
            known = field if field in self.fields else "_schema"
            raise ValidationError({known: [f"{refused.what}; {refused.right}"]}) from None

    @post_dump
    def _without_defaults(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        kept = defaults_of(self.builds)
        return {k: v for k, v in data.items() if v is not None and not _is_default(v, k, kept)}


def defaults_of(kind: type[Any]) -> Mapping[str, Any]:
    """Default value of each dataclass field that has one."""
    return _defaults_of(kind)  # type: ignore[arg-type]  # a class can be hashed


@cache
def _defaults_of(kind: Any) -> Mapping[str, Any]:
    return {f.name: f.default for f in dataclass_fields(kind) if f.default is not MISSING}


def _is_default(value: Any, name: str, defaults: Mapping[str, Any]) -> bool:
    if name not in defaults:
        return False
    default = defaults[name]
    plain = list(default) if isinstance(default, tuple) else getattr(default, "value", default)
    return bool(plain == value) and isinstance(value, bool) == isinstance(plain, bool)
