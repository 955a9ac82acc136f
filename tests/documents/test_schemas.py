"""The published schemas are JSON Schema, and what the program writes is valid under them."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from undercroft.documents.catalogue import catalogue
from undercroft.documents.json_schema import PUBLISHED, published_schema

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


def test_alternatives_in_the_catalogue_exist() -> None:
    known = catalogue()
    dangling = [(e.key, a) for e in known.values() for a in e.alternatives if a not in known]
    assert dangling == []
