"""A coach who never touches the mouse: keys, and where they have led."""

import re
from dataclasses import dataclass

from playwright.sync_api import Page

NAME = """
() => {
  const at = document.activeElement;
  if (at === document.body) return "";
  const labels = [...(at.labels ?? [])].map((one) => one.textContent).join(" ");
  const name = at.getAttribute("aria-label") || labels || at.textContent || "";
  return name.replace(/\\s+/g, " ").trim();
}
"""
"""What a screen reader calls the element with the focus, near enough."""

FARTHEST = 400


@dataclass(frozen=True)
class Keyboard:
    page: Page

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def write(self, text: str) -> None:
        """Into the field with the focus, in place of what stands there."""
        self.press("Control+a")
        self.page.keyboard.type(text)

    def at(self) -> str:
        """The name of what has the focus."""
        name: str = self.page.evaluate(NAME)
        return name

    def arrive(self, name: str) -> None:
        """Wait until the focus has been put there."""
        self.page.wait_for_function(f"(name) => ({NAME})() === name", arg=name)

    def to(self, name: str, *, back: bool = False) -> None:
        """By the tab key to the next thing of that name; fails where the key never leads there."""
        wanted = re.compile(name)
        passed: list[str] = []
        for _ in range(FARTHEST):
            self.press("Shift+Tab" if back else "Tab")
            here = self.at()
            if wanted.search(here):
                return
            passed.append(here)
        raise AssertionError(f"the tab key never leads to {name!r}, but to {passed[:60]}")

    def fill(self, name: str, text: str, *, back: bool = False) -> None:
        self.to(name, back=back)
        self.write(text)

    def do(self, name: str, *, back: bool = False) -> None:
        """To a button or link, and press it."""
        self.to(name, back=back)
        self.press("Enter")
