"""A sync of one set against a bare Flask route that does one insert; a sync with nothing to say."""

import gzip
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path

from tests.bench.places import Fresh, sqlite_in
from tests.bench.row import Row
from tests.bench.stage import Paired, stage
from tests.bench.wire import Wire
from tests.server_process import free_port

TURNS = 40
IN_A_TURN = 100
WARM_UP = 50


def bench(folder: Path) -> Iterator[Row]:
    return measured(folder, sqlite_in(folder))


def measured(folder: Path, fresh: Fresh) -> Iterator[Row]:
    here, there = fresh("ours"), fresh("statements")
    with stage(folder, here) as phone, stage(folder, there) as other:
        bare, statements = ("bare", fresh("bare")), ("statements", there)
        with _route(*bare) as one, _route(*statements, other.token) as its_statements:
            ours, least, most = _rates(_set(phone), its_statements, one)
        nothing = phone.sends([])
        asked = [_seconds(lambda: phone.sends([])) for _ in range(200)]
    context = f"{ours:.0f} a second against {most:.0f}; its statements alone, bare: {least:.0f}"
    what = "requests a second for one set, against a bare route"
    yield Row(what, ours / most, "×", 0.6, context, at_least=True)
    size = len(gzip.compress(nothing))
    yield Row("a sync with nothing to say", size, "B gzip", 400, f"{len(nothing)} B plain")
    middle = sorted(asked)[len(asked) // 2] * 1000
    yield Row("the same, there and back", middle, "ms", 5, "median of 200 over loopback")


Ask = Callable[[], float]
"""One request; the seconds from body to answer."""


def _rates(*asks: Ask) -> list[float]:
    """Requests a second of each, in turns, so that what else the machine does meets all alike."""
    for ask in asks:
        for _ in range(WARM_UP):
            ask()
    spent = [0.0 for _ in asks]
    for _ in range(TURNS):
        for which, ask in enumerate(asks):
            spent[which] += sum(ask() for _ in range(IN_A_TURN))
    return [TURNS * IN_A_TURN / seconds for seconds in spent]


def _set(phone: Paired) -> Ask:
    """A set of a session that was begun; each goes on from where the one before ended."""
    phone.reads(phone.sends([phone.writes.entry("session.started", session="w1.mon")]))

    def ask() -> float:
        body = phone.writes_down([phone.writes.done("squat.1")])
        start = time.perf_counter()
        answer = phone.asks(body)
        spent = time.perf_counter() - start
        phone.reads(answer)
        return spent

    return ask


@contextmanager
def _route(name: str, location: str, *more: str) -> Iterator[Ask]:
    """A route of `tests/bench` in a process of its own."""
    port = free_port()
    program = ["-m", f"tests.bench.{name}", location, str(port), *more]
    process = subprocess.Popen([sys.executable, *program])
    try:
        wire, ids = Wire(port), count()

        def ask() -> float:
            body = b'{"id": "%d", "set": "squat.1", "reps": 3, "kg": 92.5}' % next(ids)
            start = time.perf_counter()
            answer = wire.posts("/", body, {"Content-Type": "application/json"})
            spent = time.perf_counter() - start
            assert b"stored" in answer
            return spent

        yield ask
    finally:
        process.terminate()
        process.wait()


def _seconds(ask: Callable[[], object]) -> float:
    start = time.perf_counter()
    ask()
    return time.perf_counter() - start
