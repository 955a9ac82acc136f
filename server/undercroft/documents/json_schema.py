"""JSON Schema (2020-12, as OpenAPI 3.1 uses it) of the document shapes."""

from functools import cache
from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from apispec.ext.marshmallow.openapi import OpenAPIConverter
from marshmallow import Schema

from undercroft.documents.athlete import AthleteShape
from undercroft.documents.block import BlockShape, MethodDetails
from undercroft.documents.fields import Day, OneOf, Tagged
from undercroft.documents.kit import KitShape
from undercroft.documents.sheet import LoadSheetShape
from undercroft.documents.wish import DETAILS

PUBLISHED: dict[str, type[Schema]] = {
    "block": BlockShape,
    "kit": KitShape,
    "athlete": AthleteShape,
    "load-sheet": LoadSheetShape,
}
"""Documents whose schema anybody may fetch by name."""


def component_name(shape: Any) -> str:
    """The name of a shape among the components of a document: KitShape is Kit."""
    kind = shape if isinstance(shape, type) else type(shape)
    return kind.__name__.removesuffix("Shape")


def teach(plugin: MarshmallowPlugin) -> MarshmallowPlugin:
    """Tell an apispec plugin what our own fields look like."""
    if plugin.converter is None:
        raise ValueError("the plugin belongs to no document yet; make the APISpec first")
    plugin.converter.add_attribute_function(_own_fields)
    return plugin


@cache
def published_schema(name: str) -> dict[str, Any]:
    """The self-contained schema of a published document. Raises KeyError."""
    plugin = MarshmallowPlugin(schema_name_resolver=component_name)
    spec = APISpec(name, "1", "3.1.0", plugins=[plugin])
    teach(plugin)
    spec.components.schema(name, schema=PUBLISHED[name])
    definitions = spec.to_dict()["components"]["schemas"]
    root = definitions.pop(name)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": name,
        **_local(root),
        "$defs": _local(definitions),
    }


def _own_fields(self: OpenAPIConverter, field: Any, **_: Any) -> dict[str, Any]:
    if isinstance(field, OneOf):
        return {"type": "string"}
    if isinstance(field, Day):
        return {"type": "string", "format": "date"}
    if isinstance(field, Tagged):
        return {"oneOf": [_tagged(self, field.tag, name, s) for name, s in field.shapes.items()]}
    if isinstance(field, MethodDetails):
        return {"anyOf": [self.resolve_nested_schema(shape) for shape in DETAILS.values()]}
    return {}


def _tagged(self: OpenAPIConverter, tag: str, name: str, shape: type[Schema]) -> dict[str, Any]:
    schema = dict(self.schema2jsonschema(shape()))
    schema["properties"] = {tag: {"type": "string", "const": name}, **schema.get("properties", {})}
    schema["required"] = [tag, *schema.get("required", [])]
    return schema


def _local(schema: Any) -> Any:
    """References to OpenAPI components as references to the schema's own definitions."""
    if isinstance(schema, dict):
        return {key: _local(value) for key, value in schema.items()}
    if isinstance(schema, list):
        return [_local(item) for item in schema]
    if isinstance(schema, str):
        return schema.replace("#/components/schemas/", "#/$defs/")
    return schema
