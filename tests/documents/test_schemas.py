"""The published schemas are JSON Schema, and what the program writes is valid under them."""

import dataclasses
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from undercroft.documents.json_schema import PUBLISHED, published_schema
from undercroft.documents.shape import Shape

FIXTURES = Path(__file__).parents[2] / "fixtures"


@pytest.mark.parametrize("name", PUBLISHED)
def test_a_published_schema_is_a_schema(name: str) -> None:
    Draft202012Validator.check_schema(published_schema(name))


@pytest.mark.parametrize(
    ("name", "folder"), [("block", "blocks"), ("kit", "kits"), ("athlete", "athletes")]
)
def test_every_fixture_is_valid_under_its_published_schema(name: str, folder: str) -> None:
    files = sorted((FIXTURES / folder).glob("*.json"))
    assert files
    for file in files:
        Draft202012Validator(published_schema(name)).validate(json.loads(file.read_text()))


def test_the_published_schema_refuses_what_the_program_refuses() -> None:
    wrong = {"key": "k", "name": "K", "plates": [{"mass_kg": -1, "count": 2, "thickness_m": 0.03}]}
    assert not Draft202012Validator(published_schema("kit")).is_valid(wrong)


def shapes(kind: type[Shape] = Shape) -> Iterator[type[Shape]]:
    """Those that build a dataclass; inputs of calculators are loaded as a plain dictionary."""
    for one in kind.__subclasses__():
        if one.builds is not dict:
            yield one
            yield from shapes(one)


@pytest.mark.parametrize("shape", list(shapes()), ids=lambda shape: shape.__name__)
def test_a_shape_reads_and_writes_every_field_of_what_it_builds(shape: type[Shape]) -> None:
    assert set(shape().fields) == {field.name for field in dataclasses.fields(shape.builds)}
