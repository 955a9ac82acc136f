"""Chromium as a phone and as a laptop, with a profile that outlives the browser."""

import os
import shutil
import signal
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, ConsoleMessage, Page, Playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")

FLAGS = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
"""Nothing but the page under test asks for anything."""

PHONE = {"width": 390, "height": 844}
LAPTOP = {"width": 1280, "height": 800}


def executable() -> str:
    """Where Chromium is; a machine without one fails the test and says how to get it."""
    found = next((path for name in NAMES if (path := shutil.which(name))), None)
    assert found, "Chromium is missing; .ci/setup installs it (apt-get install chromium)"
    return found


@dataclass
class Handset:
    """A browser with its own profile on disk; `complaints` are what pages may never say."""

    playwright: Playwright
    profile: Path
    viewport: dict[str, int]
    dark: bool = True
    context: BrowserContext | None = None
    complaints: list[str] = field(default_factory=list)

    def switch_on(self) -> Page:
        """Start the browser, with whatever its profile has kept."""
        for lock in self.profile.glob("Singleton*"):
            lock.unlink()
        phone = self.viewport["width"] < 600
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.profile),
            executable_path=executable(),
            args=FLAGS,
            chromium_sandbox=os.geteuid() != 0,
            viewport=self.viewport,  # type: ignore[arg-type]
            has_touch=phone,
            is_mobile=phone,
            color_scheme="dark" if self.dark else "light",
            reduced_motion="reduce",
            locale="en-GB",
            timezone_id="Europe/Oslo",
            permissions=["clipboard-read", "clipboard-write"] if not phone else [],
        )
        self.context.on("console", self._hear)
        self.context.on("weberror", lambda fault: self.complaints.append(str(fault.error)))
        return self.context.pages[0]

    def switch_off(self) -> None:
        if self.context is not None:
            self.context.close()
        self.context = None

    def kill(self) -> None:
        """End every process of this browser at once, as an empty battery does."""
        groups = {os.getpgid(pid) for pid in self._processes()}
        assert groups, "there is no browser to kill"
        for group in groups:
            os.killpg(group, signal.SIGKILL)
        until = time.monotonic() + 10
        while self._processes() and time.monotonic() < until:
            time.sleep(0.02)
        self.context = None

    def _processes(self) -> list[int]:
        listed = subprocess.run(
            ["pgrep", "-f", "--", f"--user-data-dir={self.profile}( |$)"],
            capture_output=True,
            text=True,
            check=False,
        )
        return [int(pid) for pid in listed.stdout.split()]

    def _hear(self, message: ConsoleMessage) -> None:
        text = message.text
        if "Content Security Policy" in text or "Trusted" in text or "TrustedHTML" in text:
            self.complaints.append(text)


@contextmanager
def handset(playwright: Playwright, profile: Path, **facts: Any) -> Iterator[Handset]:
    """A handset that is switched off at the end and has heard no complaint."""
    one = Handset(playwright, profile, **facts)
    try:
        yield one
    finally:
        one.switch_off()
    assert one.complaints == []
