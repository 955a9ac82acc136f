"""What may be a password, and how a coach gets another one."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from flask import Flask
from flask.testing import FlaskClient
from tests.api.test_log_in import log_in
from tests.people import PASSWORD, AtDesk, Clock, enlist

from undercroft.cli import main
from undercroft.services.passwords import require_good
from undercroft.services.refusals import Invalid
from undercroft.store import database

NEW = "anvil under wet heather"


@pytest.mark.parametrize(
    "password",
    [
        "short",
        "a" * 40,
        "123456789012",
        "passwordpassword",
        "Undercroft2026",
        "qwertyuiop12",
        "ottilie.brandt",
        "abcdefghijkl",
        "xyxyxyxyxyxyxy",
        "letmeinletmein1",
        "x" * 201,
    ],
)
def test_what_is_easily_guessed_is_refused(password: str) -> None:
    with pytest.raises(Invalid):
        require_good(password, "ottilie@example.org", "Ottilie Brandt")


@pytest.mark.parametrize(
    "password", [NEW, PASSWORD, "rostige Ösen im Keller", "ab12-cd34-9f0e-77aa", "heather " * 8]
)
def test_any_other_composition_will_do(password: str) -> None:
    require_good(password, "ottilie@example.org", "Ottilie Brandt")


def test_not_to_one_that_is_easily_guessed(coach: AtDesk, client: FlaskClient) -> None:
    answer = coach.post("/coach/password", {"old": PASSWORD, "new": "ottilie brandt"})
    assert answer.status_code == 422
    assert "guessed" in answer.json["detail"]
    assert log_in(client, coach.email).status_code == 200


def test_tries_of_the_present_one_are_limited_like_log_ins(coach: AtDesk) -> None:
    """The coach's own log-in has been counted."""
    codes = [
        coach.post("/coach/password", {"old": f"guess {n}", "new": NEW}).status_code
        for n in range(11)
    ]
    assert codes == [422] * 9 + [429] * 2


def run(*words: str) -> Result:
    return CliRunner().invoke(main, [*words])


def test_whoever_runs_the_server_gives_another_one_where_it_was_forgotten(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    words = ("coach", "password", coach.email, "--database", str(sqlite), "--password")
    assert run(*words, "ottilie brandt").exit_code == 1
    answer = run(*words, NEW)
    assert answer.stdout == "Ottilie Brandt has another password and is logged in nowhere\n"
    database.open_database(str(sqlite))
    assert coach.get("/coach/me").status_code == 401
    assert log_in(sqlite_app.test_client(), coach.email, NEW).status_code == 200


def test_a_password_for_nobody_is_refused_in_words(sqlite: Path) -> None:
    answer = run(
        "coach", "password", "no@example.org", "--database", str(sqlite), "--password", NEW
    )
    assert answer.exit_code == 1
    assert "no coach has the address no@example.org" in answer.output
