"""WebKitGTK as a phone, with storage that outlives it.

It is the engine family of iPhones, not iOS Safari itself: the finger, the home screen, the notch
and Apple's limits on storage are not here.
"""

import os
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from selenium.webdriver import Remote
from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.webkitgtk.options import Options
from tests.server_process import free_port

WINDOW = Path(__file__).with_name("webkit_window.py")
DEBIAN_PYTHON = "/usr/bin/python3"
"""The one for which Debian builds GTK; that of the tests may be another."""

ANSWER_S = 30
"""A driver that has not answered by then never will; without a limit a test would hang."""

COMPLAINTS = ("CONSOLE JS ERROR", "CONSOLE SECURITY ERROR")
UNKNOWN_HERE = "Unrecognized Content-Security-Policy directive 'manifest-src'"
"""WebKit has no such directive; it says so of every page and goes on."""


def executable(name: str, package: str) -> str:
    """Where a tool is; a machine without it fails the test and says how to get it."""
    found = shutil.which(name)
    assert found, f"{name} is missing; .ci/setup installs it (apt-get install {package})"
    return found


@cache
def check_window() -> None:
    """Debian's Python has what the window needs, or the test fails and says how to get it."""
    asked = "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')"
    answer = subprocess.run([DEBIAN_PYTHON, "-c", asked], capture_output=True, check=False)
    assert answer.returncode == 0, (
        "Debian's Python cannot open a WebKit window; .ci/setup installs what it needs"
        " (apt-get install python3-gi gir1.2-webkit2-4.1)"
    )


@contextmanager
def virtual_display() -> Iterator[str]:
    """A screen that nobody sees; gives its name, such as ":3"."""
    told, tells = os.pipe()
    command = [executable("Xvfb", "xvfb"), "-displayfd", str(tells), "-nolisten", "tcp"]
    screen = ["-screen", "0", "1400x1000x24"]
    running = subprocess.Popen([*command, *screen], pass_fds=[tells], stderr=subprocess.DEVNULL)
    os.close(tells)
    try:
        with os.fdopen(told) as number:
            yield f":{number.readline().strip()}"
    finally:
        running.terminate()
        running.wait(timeout=10)


@dataclass
class WebKitHandset:
    """A browser with its own folder on disk; `log` has what its pages said on the console."""

    display: str
    folder: Path
    log: Path
    viewport: dict[str, int]
    dark: bool = True
    process: subprocess.Popen[bytes] | None = None

    def switch_on(self) -> WebDriver:
        """Start the browser, with whatever its folder has kept."""
        check_window()
        port = free_port()
        self.process = self._start_driver(port)
        address = f"http://127.0.0.1:{port}"
        config = ClientConfig(remote_server_addr=address, timeout=ANSWER_S)
        until(lambda: listens(port), "WebKitWebDriver did not start")
        return Remote(address, options=self._options(), client_config=config)

    def switch_off(self) -> None:
        self._end(signal.SIGTERM)

    def kill(self) -> None:
        """End every process of this browser at once, as an empty battery does."""
        assert self._processes(), "there is no browser to kill"
        self._end(signal.SIGKILL)

    def complaints(self) -> list[str]:
        """What pages may never say: errors of their own, and breaches of the content policy."""
        said = self.log.read_text(encoding="utf-8", errors="replace") if self.log.exists() else ""
        lines = (line for line in said.splitlines() if UNKNOWN_HERE not in line)
        return [line for line in lines if line.startswith(COMPLAINTS)]

    def _start_driver(self, port: int) -> subprocess.Popen[bytes]:
        """In a process group of its own, which the window and WebKit's helpers join."""
        surroundings = {"DISPLAY": self.display, "GDK_BACKEND": "x11", "NO_AT_BRIDGE": "1"}
        with self.log.open("ab") as log:
            return subprocess.Popen(
                [executable("WebKitWebDriver", "webkit2gtk-driver"), f"--port={port}"],
                env={**os.environ, **surroundings, "TZ": "Europe/Oslo"},
                stdout=log,
                stderr=log,
                start_new_session=True,
            )

    def _options(self) -> Options:
        options = Options()
        options.set_capability("browserName", WINDOW.name)
        options.binary_location = DEBIAN_PYTHON
        light = "dark" if self.dark else "light"
        size = (self.viewport["width"], self.viewport["height"])
        for fact in (WINDOW, self.folder, *size, light):
            options.add_argument(str(fact))
        return options

    def _end(self, how: signal.Signals) -> None:
        if self.process is None:
            return
        if self._processes():
            os.killpg(self.process.pid, how)
        self.process.wait(timeout=10)
        until(lambda: not self._processes(), "the browser did not end")
        self.process = None

    def _processes(self) -> list[int]:
        assert self.process is not None
        asked = ["pgrep", "--pgroup", str(self.process.pid)]
        listed = subprocess.run(asked, capture_output=True, text=True, check=False)
        return [int(pid) for pid in listed.stdout.split()]


def listens(port: int) -> bool:
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


def until(holds: Callable[[], bool], otherwise: str, seconds: float = 20) -> None:
    """Wait until something holds; what is said `otherwise` fails the test."""
    end = time.monotonic() + seconds
    while not holds():
        assert time.monotonic() < end, otherwise
        time.sleep(0.02)


@contextmanager
def webkit_handset(display: str, folder: Path, **facts: Any) -> Iterator[WebKitHandset]:
    """A handset that is switched off at the end and has heard no complaint."""
    one = WebKitHandset(display, folder, folder.with_suffix(".log"), **facts)
    try:
        yield one
    finally:
        one.switch_off()
    assert one.complaints() == []
