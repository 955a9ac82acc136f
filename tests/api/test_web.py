"""The PWA's files: what is asked for anew, what is kept for ever, what is missing."""

from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient

from undercroft.api import headers, web
from undercroft.api.context import Wiring, wire
from undercroft.config import Settings
from undercroft.services.accounts import make_hasher
from undercroft.services.clock import now_ms


def browser_of(folder: Path) -> FlaskClient:
    app = Flask("screens", static_folder=None)
    wire(app, Wiring(Settings(database=""), now_ms, make_hasher(cheap=True)))
    headers.install(app, secure=False)
    web.install(app, folder)
    return app.test_client()


@pytest.fixture
def browser(tmp_path: Path) -> FlaskClient:
    folder = tmp_path / "web"
    (folder / "assets").mkdir(parents=True)
    (folder / "index.html").write_text("<!doctype html><title>Undercroft</title>")
    (folder / "worker.js").write_text("self.skipWaiting")
    (folder / "manifest.webmanifest").write_text("{}")
    (folder / "assets" / "main-4f2a.js").write_text("export const long = 1;" * 100)
    (tmp_path / "secret.txt").write_text("outside")
    return browser_of(folder)


@pytest.mark.parametrize("path", ["/", "/index.html", "/worker.js", "/manifest.webmanifest"])
def test_what_decides_about_updates_is_always_asked_for_anew(
    browser: FlaskClient, path: str
) -> None:
    answer = browser.get(path)
    assert answer.status_code == 200
    assert answer.headers["Cache-Control"] == "no-cache"


def test_hashed_assets_are_kept_for_ever(browser: FlaskClient) -> None:
    answer = browser.get("/assets/main-4f2a.js")
    assert answer.status_code == 200
    assert "immutable" in answer.headers["Cache-Control"]
    assert answer.mimetype == "text/javascript"


@pytest.mark.parametrize("path", ["/assets/main-0000.js", "/assets/gone", "/icons/gone.png"])
def test_a_missing_file_is_missing_and_never_the_index(browser: FlaskClient, path: str) -> None:
    answer = browser.get(path)
    assert answer.status_code == 404
    assert b"<!doctype" not in answer.data.lower() or b"Undercroft" not in answer.data


@pytest.mark.parametrize("path", ["/pair", "/desk", "/desk/athletes/some-id", "/session/w1.mon"])
def test_an_address_that_only_the_screens_know_gets_the_index(
    browser: FlaskClient, path: str
) -> None:
    answer = browser.get(path)
    assert answer.status_code == 200
    assert b"<title>Undercroft</title>" in answer.data
    assert answer.headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize("path", ["/api", "/api/", "/api/v1/nothing", "/api/v2/sync"])
def test_an_unknown_address_of_the_api_is_no_page(browser: FlaskClient, path: str) -> None:
    answer = browser.get(path)
    assert b"<title>Undercroft</title>" not in answer.data
    assert answer.status_code == 404


@pytest.mark.parametrize(
    "path", ["/../secret.txt", "/assets/../../secret.txt", "/%2e%2e/secret.txt"]
)
def test_nothing_outside_the_folder_is_served(browser: FlaskClient, path: str) -> None:
    assert b"outside" not in browser.get(path).data


def test_a_file_that_is_unchanged_is_not_sent_again(browser: FlaskClient) -> None:
    first = browser.get("/worker.js")
    again = browser.get("/worker.js", headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 304
    assert not again.data


def test_a_zipped_file_that_is_unchanged_is_not_sent_again(browser: FlaskClient) -> None:
    zipping = {"Accept-Encoding": "gzip"}
    first = browser.get("/assets/main-4f2a.js", headers=zipping)
    assert first.headers["Content-Encoding"] == "gzip"
    again = browser.get(
        "/assets/main-4f2a.js", headers={**zipping, "If-None-Match": first.headers["ETag"]}
    )
    assert again.status_code == 304


def test_without_screens_the_page_says_what_is_missing_and_how_to_build_it(
    tmp_path: Path,
) -> None:
    answer = browser_of(tmp_path / "nothing").get("/")
    assert answer.status_code == 503
    assert str(tmp_path / "nothing") in answer.text
    assert "npm run build" in answer.text
