"""A sync of one set against a bare Flask route that does one insert; a sync with nothing to say."""

import gzip
import os
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.bench.row import Row
from tests.bench.stage import Paired, stage
from tests.bench.wire import Wire
from tests.server_process import free_port

REQUESTS = 1_500
ROUNDS = 3
WARM_UP = 50

BARE = """
import json, sqlite3, sys, threading
from flask import Flask, request
from waitress import serve
app, here = Flask("bare"), threading.local()
path = sys.argv[1]

def connection():
    if not hasattr(here, "one"):
        here.one = sqlite3.connect(path, isolation_level=None)
        here.one.executescript("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL")
        here.one.execute("CREATE TABLE IF NOT EXISTS line (id TEXT PRIMARY KEY, body TEXT)")
    return here.one

@app.post("/")
def take():
    entry = json.loads(request.get_data())
    connection().execute("INSERT INTO line VALUES (?, ?)", (entry["id"], json.dumps(entry)))
    return {"status": "stored"}

serve(app, host="127.0.0.1", port=int(sys.argv[2]), threads=8, _quiet=True)
"""


def bench(folder: Path) -> Iterator[Row]:
    ours, bare = [], []
    for number in range(ROUNDS):
        with stage(folder / f"round-{number}") as phone:
            ours.append(REQUESTS / _spent(phone))
            nothing = phone.sends([])
            asked = [_seconds(lambda: phone.sends([])) for _ in range(200)]
        bare.append(_bare(folder / f"bare-{number}.sqlite3"))
    context = f"{max(ours):.0f} a second against {max(bare):.0f}"
    what = "requests a second for one set, against a bare route"
    yield Row(what, max(ours) / max(bare), "×", 0.6, context, at_least=True)
    size = len(gzip.compress(nothing))
    yield Row("a sync with nothing to say", size, "B gzip", 400, f"{len(nothing)} B plain")
    middle = sorted(asked)[len(asked) // 2] * 1000
    yield Row("the same, there and back", middle, "ms", 5, "median of 200 over loopback")


def _bare(path: Path) -> float:
    port = free_port()
    code = [sys.executable, "-c", BARE, str(path), str(port)]
    process = subprocess.Popen(code, env=dict(os.environ))
    try:
        wire = Wire(port)
        counted = iter(range(10**9))

        def one() -> None:
            body = b'{"id": "%d", "set": "squat.1", "reps": 3, "kg": 92.5}' % next(counted)
            assert b"stored" in wire.posts("/", body, {"Content-Type": "application/json"})

        return _rate(one)
    finally:
        process.terminate()
        process.wait()


def _spent(phone: Paired) -> float:
    """Seconds for REQUESTS exchanges over one kept connection, from body to answer.

    Sets of a session that was begun; each goes on from where the one before ended, as in the app.
    """
    phone.reads(phone.sends([phone.writes.entry("session.started", session="w1.mon")]))
    spent = 0.0
    for number in range(-WARM_UP, REQUESTS):
        body = phone.writes_down([phone.writes.done("squat.1")])
        start = time.perf_counter()
        answer = phone.asks(body)
        spent += time.perf_counter() - start if number >= 0 else 0
        phone.reads(answer)
    return spent


def _rate(ask: Callable[[], object]) -> float:
    """Requests a second over one kept connection."""
    for _ in range(WARM_UP):
        ask()
    return REQUESTS / sum(_seconds(ask) for _ in range(REQUESTS))


def _seconds(ask: Callable[[], object]) -> float:
    start = time.perf_counter()
    ask()
    return time.perf_counter() - start
