"""The build hook: when the screens are built, when they are left as they are, what it asks for."""

import importlib.util
import json
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

PWA = Path(__file__).parents[1] / "pwa"


def load(name: str) -> ModuleType:
    """A module of `pwa/`, which is on no import path."""
    spec = importlib.util.spec_from_file_location(f"pwa_{name}", PWA / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


stamp = load("stamp")
hatch_build = load("hatch_build")


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A project as small as the hook can see one, not built yet."""
    source = tmp_path / "pwa" / "src" / "main.tsx"
    source.parent.mkdir(parents=True)
    source.write_text("start()")
    (tmp_path / "pwa" / "stamp.py").write_bytes((PWA / "stamp.py").read_bytes())
    (tmp_path / "server" / "undercroft" / "web").mkdir(parents=True)
    return tmp_path


def stamp_build(project: Path) -> None:
    stamp.write(stamp.of_sources(project / "pwa"), project / "server" / "undercroft" / "web")


def is_current(project: Path) -> bool:
    return bool(stamp.is_current(project / "pwa", project / "server" / "undercroft" / "web"))


def asked_for(project: Path) -> list[str]:
    hook: Any = hatch_build.PwaBuildHook(str(project), {}, None, None, "", "wheel")
    return list(hook.dependencies())


def lock(*packages: tuple[str, str, dict[str, bool]]) -> str:
    return json.dumps({"packages": {name: {"version": v, **marks} for name, v, marks in packages}})


def test_what_was_never_built_is_not_current(project: Path) -> None:
    assert not is_current(project)


def test_a_build_is_current_until_a_source_changes(project: Path) -> None:
    stamp_build(project)
    assert is_current(project)
    (project / "pwa" / "src" / "main.tsx").write_text("start(root)")
    assert not is_current(project)


def test_a_source_under_another_name_is_another_source(project: Path) -> None:
    stamp_build(project)
    source = project / "pwa" / "src" / "main.tsx"
    source.rename(source.with_name("other.tsx"))
    assert not is_current(project)


@pytest.mark.parametrize(
    "name",
    ["src/main.test.tsx", "tests/setup.ts", "node_modules/preact/index.js", "stamp.py", ".npmrc"],
)
def test_a_file_that_the_build_does_not_read_leaves_it_current(project: Path, name: str) -> None:
    stamp_build(project)
    path = project / "pwa" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("changed")
    assert is_current(project)


def test_node_is_asked_for_only_when_there_is_something_to_build(project: Path) -> None:
    assert asked_for(project) == [hatch_build.NODE]
    stamp_build(project)
    assert asked_for(project) == []


def test_a_server_without_screens_asks_for_no_node(
    project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("UNDERCROFT_SKIP_PWA", "1")
    assert asked_for(project) == []


def test_packages_are_fetched_again_when_the_lock_names_another_version(project: Path) -> None:
    pwa = project / "pwa"
    (pwa / "package-lock.json").write_text(lock(("node_modules/preact", "11.2.0", {})))
    assert not hatch_build.has_packages(pwa)
    installed = pwa / "node_modules" / ".package-lock.json"
    installed.parent.mkdir()
    installed.write_text(lock(("node_modules/preact", "11.1.0", {})))
    assert not hatch_build.has_packages(pwa)
    installed.write_text(lock(("node_modules/preact", "11.2.0", {})))
    assert hatch_build.has_packages(pwa)


def test_a_build_needs_neither_developers_tools_nor_another_machines_packages(
    project: Path,
) -> None:
    wanted = project / "package-lock.json"
    wanted.write_text(
        lock(
            ("node_modules/vite", "8.3.8", {}),
            ("node_modules/vitest", "4.1.12", {"dev": True}),
            ("node_modules/binding-for-another-machine", "1.2.3", {"optional": True}),
        )
    )
    assert hatch_build.needed(wanted) == {("node_modules/vite", "8.3.8")}


def test_the_lock_file_names_no_host_that_a_package_came_from() -> None:
    assert '"resolved"' not in (PWA / "package-lock.json").read_text()
