"""Arrows between the layers: api → services → documents, store; services, documents → domain."""

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "server" / "undercroft"
EFFECTS = {
    "asyncio", "http", "io", "logging", "multiprocessing", "os", "pathlib",
    "random", "secrets", "shutil", "socket", "sqlite3", "subprocess", "tempfile", "threading",
    "time", "urllib",
}  # fmt: skip
"""Of the standard library, what reads or changes the world, or asks it for time or chance."""


@dataclass(frozen=True)
class Layer:
    """What a layer may import: packages from outside, and folders of this package."""

    outside: frozenset[str]
    inside: frozenset[str]
    pure: bool = False


def layer(outside: str = "", inside: str = "", *, pure: bool = False) -> Layer:
    return Layer(frozenset(outside.split()), frozenset(inside.split()), pure)


LAYERS = {
    "domain": layer("numpy scipy", "domain", pure=True),
    "figures": layer("numpy", "figures domain", pure=True),
    "documents": layer("marshmallow apispec", "documents domain"),
    "store": layer("peewee playhouse", "store"),
    "services": layer("argon2", "services documents domain store"),
    "api": layer(
        "flask werkzeug marshmallow apispec segno argon2 peewee",
        "api services documents domain store config __version__",
    ),
}


@dataclass(frozen=True)
class Import:
    file: Path
    line: int
    module: str

    def __str__(self) -> str:
        return f"{self.file.relative_to(PACKAGE)}:{self.line} imports {self.module}"


def imports(folder: str) -> Iterator[Import]:
    """Every import in a folder, as the full name of what is imported."""
    for file in sorted((PACKAGE / folder).rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                yield from (Import(file, node.lineno, alias.name) for alias in node.names)
            elif isinstance(node, ast.ImportFrom):
                assert node.level == 0, f"{file}:{node.lineno} imports relatively"
                names = (f"{node.module}.{alias.name}" for alias in node.names)
                yield from (Import(file, node.lineno, name) for name in names)


def allowed(found: Import, layer: Layer) -> bool:
    first, *rest = found.module.split(".")
    if first == "undercroft":
        return bool(rest) and rest[0] in layer.inside
    if first in layer.outside:
        return True
    effect = layer.pure and (first in EFFECTS or found.module in EFFECTS)
    return first in sys.stdlib_module_names and not effect


@pytest.mark.parametrize("folder", LAYERS)
def test_a_layer_imports_only_what_its_arrows_allow(folder: str) -> None:
    wrong = [str(found) for found in imports(folder) if not allowed(found, LAYERS[folder])]
    assert not wrong, "\n".join(wrong)


def test_the_api_touches_no_model() -> None:
    wrong = [str(f) for f in imports("api") if f.module.startswith("undercroft.store.models")]
    assert not wrong, "\n".join(wrong)


def test_peewee_is_seen_in_the_api_only_where_its_faults_become_problems() -> None:
    seen = {found.file.name for found in imports("api") if found.module.startswith("peewee")}
    assert seen == {"problems.py"}


def test_the_domain_asks_nobody_for_the_time() -> None:
    calls = [
        f"{file.relative_to(PACKAGE)}:{node.lineno}"
        for file in (PACKAGE / "domain").rglob("*.py")
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and node.attr in ("now", "today", "utcnow")
    ]
    assert not calls, "\n".join(calls)
