"""The real server in a process of its own, to be killed."""

import json
import re
import signal
import subprocess
import time
import urllib.error
import urllib.request
from dataclasses import dataclass
from http.client import HTTPException
from typing import Any

from tests.server_process import launch

KILL = """
import os, signal

def kills_itself(original, *, on_call, first):
    calls = 0
    def wrapper(*args, **kwargs):
        nonlocal calls
        calls += 1
        if calls != on_call:
            return original(*args, **kwargs)
        if first:
            original(*args, **kwargs)
        os.kill(os.getpid(), signal.SIGKILL)
    return wrapper
"""

BEFORE_COMMIT = KILL + (
    "from undercroft.store import entries\n"
    "entries.add_rows = kills_itself(entries.add_rows, on_call={on_call}, first=True)\n"
)
"""The rows of a batch are written and the process dies before they are committed."""

AFTER_COMMIT = KILL + (
    "from undercroft.services import feed\n"
    "feed.page = kills_itself(feed.page, on_call={on_call}, first=False)\n"
)
"""The batch is committed and the process dies before it answers."""


class NoAnswer(Exception):
    """The connection broke before there was a whole answer."""


@dataclass
class Server:
    """A running `undercroft serve`."""

    process: subprocess.Popen[str]
    address: str

    def kill(self) -> None:
        self.process.kill()
        self.process.wait()

    def stop(self) -> str:
        """Ask it to stop, as a service manager does; returns what it had said."""
        self.process.send_signal(signal.SIGTERM)
        _, said = self.process.communicate(timeout=20)
        return said

    def post(self, path: str, body: Any, cookie: str) -> dict[str, Any]:
        """Raises NoAnswer."""
        request = urllib.request.Request(
            f"{self.address}/api/v1{path}",
            data=json.dumps(body).encode(),
            headers={"Content-Type": "application/json", "Cookie": cookie},
        )
        try:
            with urllib.request.urlopen(request, timeout=20) as answer:
                return dict(json.load(answer))
        except (urllib.error.URLError, OSError, HTTPException, ValueError) as fault:
            if isinstance(fault, urllib.error.HTTPError):
                raise
            raise NoAnswer from fault


def start(database: str, before: str = "") -> Server:
    """Start `undercroft serve` on a free port, after some lines of Python of our own."""
    process = launch(database, before=before)
    assert process.stderr is not None
    said = ""
    until = time.monotonic() + 30
    while time.monotonic() < until:
        line = process.stderr.readline()
        said += line
        found = re.search(r"listens on (http://\S+)", line)
        if found:
            return Server(process, found[1])
        if not line and process.poll() is not None:
            break
    process.kill()
    raise AssertionError(f"the server did not start:\n{said}")
