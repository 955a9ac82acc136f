"""Load sheets of a long block, plates against an integer program, and sizes on the wire."""

import gzip
import json
import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from random import Random
from typing import Any

from tests.bench.row import Row
from tests.domain.plates.kits import random_bar, random_kit
from tests.domain.plates.test_against_milp import Program
from tests.domain.sheet.conftest import order
from tests.fixtures import fixture
from tests.writing import Writer

from undercroft.domain.loads import nearest
from undercroft.domain.plates import loadable
from undercroft.domain.sheet import work_out
from undercroft.services.planning import on_wire

MONDAY = date(2026, 11, 30)
KITS = 60


def bench(_: Path) -> Iterator[Row]:
    yield from _sheets()
    yield _plates()
    yield from _wire()


def _sheets() -> Iterator[Row]:
    half, whole = _seconds(6), _seconds(12)
    what = "load sheets of twelve weeks, four sessions a week"
    yield Row(what, whole, "s", 1.5, "best of three on one core")
    context = f"{whole:.2f} s for 12 weeks, {half:.2f} s for 6"
    yield Row("twice the weeks, against the half", whole / half, "×", 2.2, context)


def _seconds(weeks: int) -> float:
    asked = replace(_order(weeks), starts_on=MONDAY)
    took = []
    for _ in range(3):
        start = time.perf_counter()
        work_out(asked)
        took.append(time.perf_counter() - start)
    return min(took)


def _order(weeks: int) -> Any:
    """The two invented weeks, over and over, with a fourth session that repeats the first."""
    block = fixture("blocks", "two-weeks")
    patterns = block["weeks"]
    block["weeks"] = [_week(patterns[n % len(patterns)], n) for n in range(weeks)]
    return order(block, fixture("athletes", "runa"), fixture("kits", "forge-cellar"))


def _week(pattern: Any, number: int) -> Any:
    sessions = [*pattern["sessions"], {**pattern["sessions"][0], "key": "extra", "day": 7}]
    text = json.dumps({**pattern, "sessions": sessions})
    week = json.loads(text)
    week["key"] = f"n{number}"
    for place, session in enumerate(week["sessions"]):
        session["key"] = f"n{number}-{place}"
        for exercise in session["exercises"]:
            exercise["key"] = f"n{number}-{place}-{exercise['key']}"[-60:]
            for one in exercise["sets"]:
                one["key"] = f"n{number}-{place}-{one['key']}"[-60:]
    return week


def _plates() -> Row:
    rng = Random(20)
    program_s = lookup_s = 0.0
    for _ in range(KITS):
        bar, kit = random_bar(rng), random_kit(rng)
        table = loadable(bar, kit)
        target = rng.uniform(bar.mass_kg, bar.mass_kg + 150)
        start = time.perf_counter()
        fit = nearest(table, target)
        lookup_s += time.perf_counter() - start
        start = time.perf_counter()
        _, load_kg, _ = Program(bar, kit, target, float("inf")).optimum(target)
        program_s += time.perf_counter() - start
        assert abs(fit.load.kg - load_kg) < 1e-6, (bar, kit, target)
    context = f"{lookup_s / KITS * 1e6:.0f} µs against {program_s / KITS * 1e3:.1f} ms, {KITS} kits"
    what = "plates for a set against scipy.optimize.milp"
    return Row(what, program_s / lookup_s, "×", 100, context, at_least=True)


def _wire() -> Iterator[Row]:
    sheets = work_out(_order(2)).sheets
    sizes = [len(gzip.compress(json.dumps(on_wire(sheet)).encode(), 6)) for sheet in sheets]
    context = f"{len(sizes)} sheets, {min(sizes) / 1000:.1f} kB the smallest"
    yield Row("a session's load sheet", max(sizes) / 1000, "kB gzip", 6, context)
    rng, writes = Random(4), Writer(random=Random(5))
    entries = [_outcome(writes, rng) for _ in range(50)]
    size = len(gzip.compress(json.dumps(entries).encode(), 6)) / 50
    yield Row("a set's outcome in a batch of 50", size, "B gzip", 60, "as the phone sends it")


def _outcome(writes: Writer, rng: Random) -> dict[str, Any]:
    """A set of a session as it comes: loads, repetitions, reserve and times all differ."""
    minute, second, ms = rng.randrange(60), rng.randrange(60), rng.randrange(1000)
    writes.at = f"2026-02-03T18:{minute:02}:{second:02}.{ms:03}+01:00"
    body = {"load_kg": rng.randrange(80, 240) / 2, "reps": rng.randrange(1, 13)}
    return writes.done(f"squat.{writes.n}", **body, rir=rng.randrange(8) / 2)
