"""What README and DEVELOPERS.md say is compared with the program."""

import json
import re
import tomllib
from dataclasses import fields
from pathlib import Path

import pytest

from undercroft.cli import main
from undercroft.config import Settings
from undercroft.documents.kinds import KINDS

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PAGES = {
    path.name: path.read_text(encoding="utf-8") for path in (ROOT / "server/docs").glob("*.md")
}
DOCUMENTS = {"README.md": README, "DEVELOPERS.md": DEVELOPERS, **PAGES}
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
PWA = json.loads((ROOT / "pwa/package.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("kind", KINDS)
def test_every_entry_kind_is_listed(kind: str) -> None:
    assert f"`{kind}`" in DEVELOPERS


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_setting_that_is_named_exists(name: str) -> None:
    named = set(re.findall(r"UNDERCROFT_[A-Z_]+\b", DOCUMENTS[name]))
    known = {f"UNDERCROFT_{field.name.upper()}" for field in fields(Settings)}
    assert named <= known | {"UNDERCROFT_SKIP_PWA"}


@pytest.mark.parametrize("name", [f.name for f in fields(Settings) if f.name != "cheap_passwords"])
def test_every_setting_is_explained(name: str) -> None:
    assert f"`UNDERCROFT_{name.upper()}`" in DEVELOPERS


@pytest.mark.parametrize(
    "package", [re.split(r"[\[>=]", line)[0] for line in PROJECT["dependencies"]]
)
def test_every_dependency_says_why_it_is_there(package: str) -> None:
    assert package in DEVELOPERS.partition("## Dependencies")[2]


@pytest.mark.parametrize("package", PWA["dependencies"])
def test_every_dependency_of_the_pwa_says_why_it_is_there(package: str) -> None:
    assert package in DEVELOPERS.partition("## Dependencies")[2]


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "running.md"])
def test_every_command_that_is_named_exists(name: str) -> None:
    named = set(re.findall(r"\.venv/bin/undercroft (\w+)", DOCUMENTS[name]))
    named |= set(re.findall(r"`undercroft (\w+)", DOCUMENTS[name]))
    assert named
    assert named <= set(main.commands)  # type: ignore[attr-defined]


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "threats.md", "asvs.md"])
def test_every_file_that_is_named_exists(name: str) -> None:
    document = DOCUMENTS[name]
    named = set(re.findall(r"bash (\.ci/\w+)", document))
    named |= set(re.findall(r"(?<![\w/.])(fixtures/\S+\.json)", document))
    named |= set(re.findall(r"`((?:tests|server|pwa)/[\w./-]+)`", document))
    assert named
    assert [path for path in sorted(named) if not (ROOT / path).exists()] == []


@pytest.mark.parametrize(
    "folder",
    [
        p.name
        for p in sorted((ROOT / "server" / "undercroft").iterdir())
        if (p / "__init__.py").exists()
    ],
)
def test_every_package_is_on_the_map(folder: str) -> None:
    assert f"server/undercroft/{folder}`" in DEVELOPERS.partition("## How a set flows")[0]


def test_nothing_stands_at_the_top_level_that_the_map_does_not_name() -> None:
    top = {p.name for p in ROOT.iterdir() if not p.name.startswith(".")}
    allowed = {
        "pyproject.toml",
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "server",
        "pwa",
        "tests",
        "fixtures",
    }
    assert top <= allowed
