"""The real server in a process of its own, to be stopped and killed."""

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from dataclasses import dataclass, field
from pathlib import Path
from typing import IO

START_S = 60.0
SERVER = Path(__file__).parents[1] / "server"
START = "from undercroft.cli import main; main()"


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def launch(
    database: str, *, port: int = 0, before: str = "", said_to: IO[bytes] | int = subprocess.PIPE
) -> subprocess.Popen[str]:
    """Run `undercroft serve`, after some lines of Python of a test's own."""
    command = [sys.executable, "-c", before + START, "serve", "--database", database]
    return subprocess.Popen(
        [*command, "--host", "127.0.0.1", "--port", str(port)],
        env={**os.environ, "PYTHONPATH": str(SERVER), "UNDERCROFT_SYNC_PER_MINUTE": "100000"},
        stderr=said_to,
        text=True,
    )


@dataclass
class ServerProcess:
    """`undercroft serve` on one database, always at the same port, so that phones find it again."""

    database: str
    log: Path
    port: int = field(default_factory=free_port)
    process: subprocess.Popen[str] | None = None

    @property
    def url(self) -> str:
        return f"http://localhost:{self.port}"

    def start(self) -> None:
        with self.log.open("ab") as log:
            self.process = launch(self.database, port=self.port, said_to=log)
        self._wait_until_ready()

    def stop(self) -> None:
        """Ask it to end, as the machine does when it shuts down."""
        self._end(signal.SIGTERM)

    def kill(self) -> None:
        """End it between two instructions, as a power cut does."""
        self._end(signal.SIGKILL)

    def _end(self, how: signal.Signals) -> None:
        if self.process is not None and self.process.poll() is None:
            self.process.send_signal(how)
            self.process.wait(timeout=30)
        self.process = None

    def _wait_until_ready(self) -> None:
        until = time.monotonic() + START_S
        while time.monotonic() < until:
            if self.process is not None and self.process.poll() is not None:
                break
            try:
                with urllib.request.urlopen(f"{self.url}/api/v1/ready", timeout=2):
                    return
            except (urllib.error.URLError, OSError):
                time.sleep(0.05)
        raise AssertionError(f"the server did not start:\n{self.log.read_text()}")
