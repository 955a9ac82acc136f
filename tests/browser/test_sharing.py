"""An invitation shared with the installed app never shows its secret to the server's log."""

from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import Squad
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser


def test_a_shared_link_is_opened_by_the_app_itself(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    server.stop()
    link = f"{server.url}/pair#not-a-secret-of-anybody"
    page.goto(f"{server.url}/pair?{urlencode({'text': f'Come and train: {link}'})}")
    expect(page.get_by_text("The server did not answer.")).to_be_visible()
    assert page.url == f"{server.url}/pair"
    server.start()
    page.goto(f"{server.url}/pair?{urlencode({'url': link})}")
    expect(page.get_by_text("This invitation or code cannot be used")).to_be_visible()
    assert "not-a-secret-of-anybody" not in server.log.read_text()
