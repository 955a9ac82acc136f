"""What README and DEVELOPERS.md tell people to type is typed, as small as it will go."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from tests.sync import processes

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")

INDENTED = re.findall(r"^    (\S.*)$", README, re.MULTILINE)
COMMANDS = [line for line in INDENTED if line.startswith(".venv/bin/undercroft ")]
MODULES = sorted(set(re.findall(r"`\.venv/bin/python -m (tests\.\w+)", DEVELOPERS)))

SMALL: dict[str, list[str]] = {
    "tests.bench": ["--help"],
    "tests.chaos": ["--sequences", "2"],
    "tests.fuzz": ["--cases", "12", "--endpoint", "coach.me"],
    "tests.kills": ["--help"],
    "tests.readme": ["--help"],
    "tests.scale": ["--help"],
}
"""What measures, needs the built screens or has a short run in the suite is asked what it takes."""

PASSWORD = "anvil under wet heather\n"


def type_in(
    folder: Path, *words: str, answers: str | None = None
) -> subprocess.CompletedProcess[str]:
    """With data of its own, and this Python in the place of the one that is installed."""
    mine = {"PYTHONPATH": str(ROOT / "server"), "UNDERCROFT_DATABASE": str(folder / "data.sqlite3")}
    return subprocess.run(
        words, cwd=ROOT, env={**os.environ, **mine}, input=answers, capture_output=True, text=True
    )


def undercroft(line: str) -> list[str]:
    start = "from undercroft.cli import main; main()"
    return [sys.executable, "-c", start, *shlex.split(line)[1:]]


@pytest.mark.parametrize("line", COMMANDS)
def test_a_command_of_the_readme_does_what_it_says(line: str, tmp_path: Path) -> None:
    """The server does not come back by itself: it is started, asked and stopped."""
    if line.endswith(" serve"):
        server = processes.start(str(tmp_path / "data.sqlite3"))
        assert "stopped" in server.stop()
        return
    done = type_in(tmp_path, *undercroft(line), answers=PASSWORD * 2)
    assert done.returncode == 0, done.stderr
    assert done.stdout


def test_every_other_line_of_the_readme_is_one_of_the_two_scripts() -> None:
    others = [line for line in INDENTED if line not in COMMANDS]
    assert others == ["bash .ci/demo", "bash .ci/test"]


@pytest.mark.parametrize("script", sorted(p.name for p in (ROOT / ".ci").iterdir()))
def test_a_script_can_be_read_by_bash(script: str) -> None:
    """.ci/run is what runs this test; .ci/demo ends in the command that the next test types."""
    read = subprocess.run(["bash", "-n", str(ROOT / ".ci" / script)], capture_output=True)
    assert read.returncode == 0, read.stderr


def test_what_the_demo_script_starts_can_be_started(tmp_path: Path) -> None:
    script = (ROOT / ".ci" / "demo").read_text(encoding="utf-8")
    assert script.rstrip().endswith('exec "$here/.venv/bin/undercroft" demo "$@"')
    for option in re.findall(r"bash \.ci/demo (--\w+)", README):
        assert option in type_in(tmp_path, *undercroft("undercroft demo --help")).stdout


@pytest.mark.parametrize("module", MODULES)
def test_a_module_that_developers_run_can_be_run(module: str, tmp_path: Path) -> None:
    done = type_in(tmp_path, sys.executable, "-m", module, *SMALL[module])
    assert done.returncode == 0, f"{done.stdout}\n{done.stderr}"
    assert done.stdout


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_picture_of_the_readme_is_there_and_small(scheme: str) -> None:
    named = re.findall(rf"\"(server/docs/pictures/[\w-]+-{scheme}\.webp)\"", README)
    assert len(named) == 4
    for name in named:
        assert 1_000 < (ROOT / name).stat().st_size < 200_000
