"""What the server's code never does, so that no input can make it: looked for in the code."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient

PACKAGE = Path(__file__).parents[1] / "server" / "undercroft"
CODE = {path: ast.parse(path.read_text(encoding="utf-8")) for path in PACKAGE.rglob("*.py")}

ASKING_OTHERS = {"aiohttp", "ftplib", "http", "httpx", "requests", "smtplib", "urllib3"}
RUNNING_OR_REVIVING = {"ctypes", "dill", "marshal", "pickle", "shelve", "subprocess", "xml", "yaml"}
RUNS_TEXT = {"eval", "exec", "compile", "__import__"}
SQL = re.compile(r"\b(SELECT|INSERT INTO|UPDATE|DELETE FROM|WHERE|PRAGMA|AND|IN \(|= \?)")


def imported() -> Iterator[tuple[str, str]]:
    for path, tree in CODE.items():
        for node in ast.walk(tree):
            if isinstance(node, ast.Import):
                yield from ((path.name, alias.name) for alias in node.names)
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                yield path.name, node.module


def test_the_server_asks_nobody_and_runs_and_revives_nothing() -> None:
    """No client of any protocol, no other program, no format that makes objects of text."""
    found = [
        (file, module)
        for file, module in imported()
        if module.split(".")[0] in ASKING_OTHERS | RUNNING_OR_REVIVING
        or module.startswith(("urllib.request", "logging.handlers"))
    ]
    assert found == []


def test_no_text_is_run() -> None:
    found = [
        f"{path.name}:{node.lineno}"
        for path, tree in CODE.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and (
            (isinstance(node.func, ast.Name) and node.func.id in RUNS_TEXT)
            or (isinstance(node.func, ast.Attribute) and node.func.attr in ("system", "popen"))
        )
    ]
    assert found == []


def test_statements_are_put_together_of_our_own_constants_only() -> None:
    """Names in capitals, columns joined, question marks by `marks(count)`, and parts of a statement
    that were put together in the same way beside it or handed on as `where`.
    """
    found = [
        f"{path.name}:{text.lineno}: {ast.unparse(part.value)}"
        for path, tree in CODE.items()
        for parts in [{"where", *_texts(tree)}]
        for text in ast.walk(tree)
        if isinstance(text, ast.JoinedStr) and SQL.search(ast.unparse(text))
        for part in text.values
        if isinstance(part, ast.FormattedValue) and not _is_ours(part.value, parts)
    ]
    assert found == []


def _texts(tree: ast.Module) -> Iterator[str]:
    """Names that stand for a text written out in the code, which is itself looked at."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign) and _is_text(node.value):
            yield from (target.id for target in node.targets if isinstance(target, ast.Name))


def _is_text(value: ast.expr) -> bool:
    if isinstance(value, ast.IfExp):
        return _is_text(value.body) and _is_text(value.orelse)
    return isinstance(value, ast.JoinedStr) or (
        isinstance(value, ast.Constant) and isinstance(value.value, str)
    )


def _is_ours(value: ast.expr, parts: set[str]) -> bool:
    if isinstance(value, ast.Call):
        called = value.func
        joins = isinstance(called, ast.Attribute) and isinstance(called.value, ast.Constant)
        return joins or (isinstance(called, ast.Name) and called.id == "marks")
    return isinstance(value, ast.Name) and (value.id == value.id.upper() or value.id in parts)


@pytest.mark.parametrize("address", ["/", "/api/v1/health", "/api/v1/coach/me"])
@pytest.mark.parametrize("method", ["TRACE", "PUT", "DELETE", "PATCH"])
def test_no_other_method_is_answered(client: FlaskClient, address: str, method: str) -> None:
    assert client.open(address, method=method).status_code == 405
