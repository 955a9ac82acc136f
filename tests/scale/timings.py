"""What each request of the desk costs the server: time, and statements asked of the database.

The time that a budget is held against is what the request's thread had of the processor, in which
SQLite does its work too: what else the machine does meanwhile is not in it. Beside it stands what a
clock on the wall showed.
"""

import gc
import json
import time
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Any

from flask import Flask
from tests.scale.screens import ASIDE, ROWS, Asked, Request, Scene, desk_reads, request_for
from tests.store.counting import counted
from werkzeug.routing import Rule

WORK = [{"set": f"squat.{n}", "kg": n / 4, "reps": [n, 3, 5]} for n in range(400)]
"""What the machine's pace is told by: about a millisecond of what requests do most of."""


@dataclass(frozen=True, slots=True)
class Cost:
    """Of one request; milliseconds.

    `pace_ms` is what a fixed piece of work cost just before and after: how fast the machine was.
    """

    cpu_ms: float
    wall_ms: float
    pace_ms: float


@dataclass(frozen=True, slots=True)
class Line:
    """A row of the table: the costs of several requests, and the most statements that one asked."""

    what: str
    costs: tuple[Cost, ...]
    statements: int
    budget_ms: float

    @property
    def median_ms(self) -> float:
        return at_share([one.cpu_ms for one in self.costs], 0.5)

    @property
    def slow_ms(self) -> float:
        return at_share([one.cpu_ms for one in self.costs], 0.95)

    @property
    def wall_ms(self) -> float:
        return at_share([one.wall_ms for one in self.costs], 0.5)

    @property
    def met(self) -> bool:
        return self.slow_ms <= self.budget_ms


def at_share(values: Sequence[float], share: float) -> float:
    """The value that so much of all values does not go beyond."""
    return sorted(values)[max(0, ceil(share * len(values)) - 1)]


class Timed:
    """The application with a watch around it: the last request's cost, from first to last byte."""

    def __init__(self, app: Flask) -> None:
        # A second watch takes the place of the first, whose own work is no request's.
        self.inside = app.wsgi_app.inside if isinstance(app.wsgi_app, Timed) else app.wsgi_app
        self.last = Cost(0, 0, 1)
        app.wsgi_app = self  # type: ignore[method-assign]

    def __call__(self, environ: Any, start_response: Any) -> Iterable[bytes]:
        before = _pace_ms()
        cpu, wall = time.thread_time(), time.perf_counter()
        body = list(self.inside(environ, start_response))
        cpu_ms, wall_ms = (time.thread_time() - cpu) * 1e3, (time.perf_counter() - wall) * 1e3
        self.last = Cost(cpu_ms, wall_ms, (before + _pace_ms()) / 2)
        return body


def _pace_ms() -> float:
    start = time.thread_time()
    json.loads(json.dumps(WORK))
    return (time.thread_time() - start) * 1e3


def measure(scene: Scene, rounds: int, only: str = "") -> Iterator[Line]:
    """What each row of the table costs, asked so many times; `only` is in the name of each."""
    watch = Timed(scene.coach.app)
    gc.collect()
    gc.freeze()  # as the server does before it serves
    for rule, asked, requests in requests_of(scene, rounds):
        if only not in rule.endpoint:
            continue
        statements, costs = 0, []
        ask(scene, requests[0])  # what is read once and kept costs the first one only
        for request in requests:
            with counted() as told:
                ask(scene, request)
            statements = max(statements, len(told))
            costs.append(watch.last)
        what = f"{rule.endpoint} {asked.words}".strip()
        yield Line(what, tuple(costs), statements, asked.budget_ms)


def requests_of(scene: Scene, rounds: int) -> Iterator[tuple[Rule, Asked, list[Request]]]:
    """Each row of the table with its rule and its requests, for the athletes in turn."""
    rules = {rule.endpoint: rule for rule in scene.coach.app.url_map.iter_rules()}
    for endpoint, row in ROWS.items():
        for asked in row:
            turns = (scene.athletes[n % len(scene.athletes)] for n in range(rounds))
            requests = [request_for(scene, rules[endpoint], asked, one) for one in turns]
            yield rules[endpoint], asked, requests


def ask(scene: Scene, request: Request) -> bytes:
    """The answer, which must be a good one."""
    browser = scene.coach.browser
    if request.method == "POST":
        answer = browser.post(request.path, json=request.body)
    else:
        answer = browser.get(request.path)
    assert answer.status_code == 200, f"{request.path}: {answer.text}"
    return answer.data


def without_row(app: Flask) -> set[str]:
    """What the desk reads, and no row measures or leaves aside."""
    return set(desk_reads(app)) - set(ROWS) - set(ASIDE)


def table(lines: Sequence[Line]) -> Iterator[str]:
    """For a terminal and for a note."""
    yield "| request | median | 95th | budget | met | on the wall | statements |"
    yield "| --- | ---: | ---: | ---: | --- | ---: | ---: |"
    for one in lines:
        met = "yes" if one.met else "NO"
        yield (
            f"| {one.what} | {one.median_ms:.1f} ms | {one.slow_ms:.1f} ms | {one.budget_ms:g} ms"
            f" | {met} | {one.wall_ms:.1f} ms | {one.statements} |"
        )
