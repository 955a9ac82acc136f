"""What can happen to one exchange between a phone and the server, and around its commit."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any
from unittest.mock import patch

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from undercroft.services import feed
from undercroft.store import entries


class Lost(Exception):
    """The request or its answer got lost on the way."""


class Died(Exception):
    """The server's process ended here; the transaction, if it was not committed, is gone."""


def _request_lost(browser: FlaskClient, body: Any) -> TestResponse:
    raise Lost("the request")


def _answer_lost(browser: FlaskClient, body: Any) -> TestResponse:
    browser.post("/api/v1/sync", json=body)
    raise Lost("the answer")


def _twice(browser: FlaskClient, body: Any) -> TestResponse:
    browser.post("/api/v1/sync", json=body)
    return browser.post("/api/v1/sync", json=body)


def _portal(browser: FlaskClient, body: Any) -> TestResponse:
    """A captive portal answers 200 with a page of its own, which counts as no answer."""
    raise Lost("a page of somebody else's")


def _partly(browser: FlaskClient, body: Any) -> TestResponse:
    """A proxy cuts the body short: no JSON, so nothing is taken."""
    answer = browser.post("/api/v1/sync", data=b'{"device": "', content_type="application/json")
    assert answer.status_code == 400, answer.text
    raise Lost("half of the request")


def _dies(browser: FlaskClient, body: Any, where: Any) -> TestResponse:
    with where:
        answer = browser.post("/api/v1/sync", json=body)
    if answer.status_code == 200:
        return answer
    assert answer.status_code in (500, 503), answer.text
    raise Lost("the server")


def _before_commit(browser: FlaskClient, body: Any) -> TestResponse:
    return _dies(browser, body, _after(entries, "add_rows", Died()))


def _after_commit(browser: FlaskClient, body: Any) -> TestResponse:
    return _dies(browser, body, patch.object(feed, "page", side_effect=Died()))


def _disk_full(browser: FlaskClient, body: Any) -> TestResponse:
    full = sqlite3.OperationalError("database or disk is full")
    return _dies(browser, body, _after(entries, "add_rows", full))


@contextmanager
def _after(module: Any, name: str, fault: Exception) -> Iterator[None]:
    """The function does its work, and then the fault comes."""
    original = getattr(module, name)

    def broken(*given: Any, **named: Any) -> None:
        original(*given, **named)
        raise fault

    with patch.object(module, name, broken):
        yield


FAULTS: dict[str, Callable[[FlaskClient, Any], TestResponse]] = {
    "request": _request_lost,
    "answer": _answer_lost,
    "twice": _twice,
    "portal": _portal,
    "cut": _partly,
    "killed-before-commit": _before_commit,
    "killed-after-commit": _after_commit,
    "disk-full": _disk_full,
}


class Network:
    """One fault for the next exchange; none while `fault` is empty."""

    def __init__(self) -> None:
        self.fault = ""

    def send(self, browser: FlaskClient, body: dict[str, Any]) -> TestResponse:
        """The answer. Raises Lost where the phone gets none that counts."""
        fault, self.fault = self.fault, ""
        if fault:
            return FAULTS[fault](browser, body)
        return browser.post("/api/v1/sync", json=body)
