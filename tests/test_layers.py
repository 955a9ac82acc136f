"""Arrows between the layers: api → services → documents, store; services, documents → domain."""

import ast
import importlib
import inspect
import re
import sys
import typing
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from undercroft.store.models import ALL

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
    "pictures": layer("PIL av numpy", "pictures"),
    "services": layer("argon2 pyotp", "services documents domain store pictures"),
    "api": layer(
        "flask werkzeug marshmallow apispec segno argon2",
        "api services documents config __version__",
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


def services_of_the_api() -> list[str]:
    """Modules of services that the API imports, or imports something from."""
    found = {f.module for f in imports("api") if f.module.startswith("undercroft.services.")}
    parts = {".".join(name.split(".")[:3]) for name in found}
    return sorted(name for name in parts if inspect.ismodule(importlib.import_module(name)))


def test_no_service_hands_the_api_a_row_of_a_table() -> None:
    wrong = [
        f"{module}.{name} gives {row.__name__}"
        for module in services_of_the_api()
        for name, function in vars(importlib.import_module(module)).items()
        if inspect.isfunction(function)
        and function.__module__ == module
        and not name.startswith("_")
        for row in ALL
        if re.search(rf"\b{row.__module__}\.{row.__name__}\b", returned(function))
    ]
    assert not wrong, "\n".join(wrong)


def returned(function: Callable[..., object]) -> str:
    """What a function says that it returns, in full names."""
    hint = typing.get_type_hints(function).get("return")
    return f"{hint.__module__}.{hint.__qualname__}" if isinstance(hint, type) else str(hint)


def test_the_domain_asks_nobody_for_the_time() -> None:
    calls = [
        f"{file.relative_to(PACKAGE)}:{node.lineno}"
        for file in (PACKAGE / "domain").rglob("*.py")
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and node.attr in ("now", "today", "utcnow")
    ]
    assert not calls, "\n".join(calls)
