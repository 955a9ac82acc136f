"""What an athlete sees and taps in WebKit, by the names that screen readers hear."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

from selenium.common.exceptions import (
    ElementClickInterceptedException,
    StaleElementReferenceException,
)
from selenium.webdriver.common.by import By
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.wait import WebDriverWait

Name = str | re.Pattern[str]
Found = TypeVar("Found")

WAIT_S = 10
EVERY_S = 0.05
PASSING = (StaleElementReferenceException, ElementClickInterceptedException)
"""A screen that is being drawn again; a moment later it stands."""


@dataclass(frozen=True)
class WebKitPage:
    """The page in the driver's window; everything waits up to ten seconds and then fails."""

    driver: WebDriver

    def open(self, url: str) -> None:
        self.driver.get(url)

    def reload(self) -> None:
        self.driver.refresh()

    def button(self, name: Name) -> WebElement | None:
        """The first visible button of that name."""
        return next((one for one in self._buttons() if matches(one.accessible_name, name)), None)

    def sees(self, *names: Name) -> str:
        """Wait for a button with one of these names; the name it has, in full."""

        def seen(_: WebDriver) -> str | None:
            told = [one.accessible_name for one in self._buttons()]
            return next((one for name in names for one in told if matches(one, name)), None)

        return self._wait(seen, f"no button of {names}")

    def wait_for(self, name: Name) -> WebElement:
        return self._wait(lambda _: self.button(name), f"no button {name}")

    def tap(self, name: Name) -> None:
        def tapped(_: WebDriver) -> bool:
            found = self.button(name)
            if found is None or not found.is_enabled():
                return False
            found.click()
            return True

        self._wait(tapped, f"no button {name}")

    def fill(self, label: str, text: str) -> None:
        """Type into the field of that name."""

        def filled(driver: WebDriver) -> bool:
            fields = driver.find_elements(By.CSS_SELECTOR, "input, textarea")
            found = next((one for one in fields if one.accessible_name == label), None)
            if found is not None:
                found.send_keys(text)
            return found is not None

        self._wait(filled, f"no field {label}")

    def until(self, script: str, otherwise: str) -> None:
        """Wait until an expression in JavaScript is true."""
        self._wait(lambda driver: bool(driver.execute_script(f"return {script}")), otherwise)

    def ask(self, script: str) -> Any:
        """The value of an expression in JavaScript, which may be a promise."""
        asked = f"const told = arguments[0]; Promise.resolve({script}).then(told);"
        return self.driver.execute_async_script(asked)

    def _buttons(self) -> list[WebElement]:
        found = self.driver.find_elements(By.CSS_SELECTOR, "button, a[href]")
        return [one for one in found if one.is_displayed()]

    def _wait(self, holds: Callable[[WebDriver], Found | None], otherwise: str) -> Found:
        waiting = WebDriverWait(self.driver, WAIT_S, EVERY_S, ignored_exceptions=PASSING)
        return waiting.until(holds, otherwise)


def matches(told: str, name: Name) -> bool:
    return told == name if isinstance(name, str) else bool(name.search(told))
