"""Servers by the dozen: one process has all imported and forks an `undercroft serve` at a time.

Starting Python anew would take most of the time of a kill. Each fork is a process of its own, with
its own connections, and dies alone.
"""

import json
import os
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.server_process import SERVER, free_port

START_S = 120.0
"""A bound for a machine that does much else, and no measure of anything."""

FORKS = """
import json, os, sys
import undercroft.api, undercroft.commands.serve
from undercroft.cli import main
for line in sys.stdin:
    before, sys.argv = json.loads(line)
    child = os.fork()
    if child == 0:
        exec(before)
        main()
    print(child, flush=True)
    print(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), flush=True)
"""


@dataclass
class Forks:
    """At most one server at a time, on one database, always at the same address."""

    maker: subprocess.Popen[str]
    database: str
    port: int
    child: int = 0

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def start(self, before: str = "") -> None:
        """`before`: lines of Python that are run in it first."""
        where = ["--database", self.database, "--host", "127.0.0.1", "--port", str(self.port)]
        assert self.maker.stdin is not None
        self.maker.stdin.write(json.dumps([before, ["undercroft", "serve", *where]]) + "\n")
        self.maker.stdin.flush()
        self.child = self._hears()
        self._wait_until_ready()

    def kill(self) -> None:
        os.kill(self.child, signal.SIGKILL)

    def stop(self) -> None:
        os.kill(self.child, signal.SIGTERM)
        assert self.status() == 0

    def status(self) -> int:
        """How it ended, once it has; minus the signal's number where one killed it."""
        return self._hears()

    def _hears(self) -> int:
        assert self.maker.stdout is not None
        return int(self.maker.stdout.readline())

    def _wait_until_ready(self) -> None:
        until = time.monotonic() + START_S
        while time.monotonic() < until:
            try:
                with urllib.request.urlopen(f"{self.url}/api/v1/ready", timeout=10):
                    return
            except (urllib.error.URLError, OSError):
                time.sleep(0.02)
        raise AssertionError("the server did not start")


@contextmanager
def forks(database: str, log: Path) -> Iterator[Forks]:
    settings = {"PYTHONPATH": str(SERVER), "UNDERCROFT_SYNC_PER_MINUTE": "100000"}
    with log.open("ab") as said:
        maker = subprocess.Popen(
            [sys.executable, "-c", FORKS],
            env={**os.environ, **settings},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=said,
            text=True,
        )
    try:
        yield Forks(maker, database, free_port())
    finally:
        maker.kill()
        maker.wait()
