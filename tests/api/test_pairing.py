"""Pairing: an invitation by link, a code to be typed; nothing told to those who guess."""

import threading

import pytest
from flask import Flask
from flask.testing import FlaskClient
from tests.people import AtDesk, Clock, Phone
from werkzeug.test import TestResponse

from undercroft.services.clock import DAY_MS, MINUTE_MS
from undercroft.services.tokens import CODE_ALPHABET, fingerprint
from undercroft.store import database
from undercroft.store.models import Invitation, PairingCode

API = "/api/v1/pairing"


def look(client: FlaskClient, **way: str) -> TestResponse:
    return client.post(f"{API}/look", json=way)


def accept(client: FlaskClient, **way: str) -> TestResponse:
    return client.post(f"{API}/accept", json={"device_name": "a phone", **way})


def make_code(coach: AtDesk, athlete_id: str) -> str:
    return str(coach.post(f"/desk/athletes/{athlete_id}/codes").json["code"])


def wrong_of(code: str) -> str:
    """A code that differs in its last character only."""
    other = next(c for c in CODE_ALPHABET if c != code[-1])
    return code[:-1] + other


class TestInvitation:
    def test_its_secret_stands_in_the_fragment_which_no_server_sees(
        self, coach: AtDesk, athlete: str
    ) -> None:
        made = coach.post(f"/desk/athletes/{athlete}/invitations").json
        address, _, secret = made["url"].partition("#")
        assert address == "http://localhost/pair"
        assert len(secret) >= 22, "128 bits are 22 characters of base64"
        assert made["qr"].startswith("<?xml")
        assert made["expires_at"] == "2026-02-09T02:40:00.000Z"

    def test_looking_says_who_invites_whom_and_uses_nothing_up(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        secret = coach.invites(athlete)
        for _ in range(3):
            seen = look(client, secret=secret).json
            assert (seen["coach"], seen["athlete"]) == ("Ottilie Brandt", "Runa Falk")
        assert accept(client, secret=secret).status_code == 201

    def test_accepting_pairs_the_phone(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        paired = accept(client, secret=coach.invites(athlete)).json
        assert paired["athlete"] == {"id": athlete, "name": "Runa Falk"}
        assert (paired["coach"], paired["cursor"]) == ("Ottilie Brandt", 0)
        snapshot = client.get("/api/v1/snapshot").json
        assert (snapshot["device"], snapshot["epoch"]) == (paired["device"], paired["epoch"])

    def test_it_is_good_for_one_phone(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        secret = coach.invites(athlete)
        assert accept(client, secret=secret).status_code == 201
        assert accept(client, secret=secret).status_code == 404

    def test_of_two_phones_at_once_one_wins(self, app: Flask, coach: AtDesk, athlete: str) -> None:
        secret = coach.invites(athlete)
        answers: list[int] = []

        def try_it() -> None:
            answers.append(accept(app.test_client(), secret=secret).status_code)

        threads = [threading.Thread(target=try_it) for _ in range(6)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        assert sorted(answers) == [201] + [404] * 5

    def test_it_is_good_for_seven_days(
        self, coach: AtDesk, athlete: str, client: FlaskClient, clock: Clock
    ) -> None:
        secret = coach.invites(athlete)
        clock.passes(7 * DAY_MS - 1)
        assert look(client, secret=secret).status_code == 200
        clock.passes(1)
        assert look(client, secret=secret).status_code == 404

    def test_it_can_be_revoked(self, coach: AtDesk, athlete: str, client: FlaskClient) -> None:
        secret = coach.invites(athlete)
        (listed,) = coach.get(f"/desk/athletes/{athlete}/invitations").json["invitations"]
        revoke = f"/desk/athletes/{athlete}/invitations/{listed['id']}/revoke"
        assert coach.post(revoke).status_code == 204
        assert accept(client, secret=secret).status_code == 404
        (listed,) = coach.get(f"/desk/athletes/{athlete}/invitations").json["invitations"]
        assert listed["revoked_at"] is not None

    def test_the_secret_is_not_in_the_database(self, coach: AtDesk, athlete: str) -> None:
        secret = coach.invites(athlete)
        database.connect()
        row = Invitation.select().dicts().get()
        database.disconnect()
        assert secret not in repr(row)
        assert row["secret_hash"] == fingerprint(secret)


class TestCode:
    def test_it_has_eight_characters_without_look_alikes(self, coach: AtDesk, athlete: str) -> None:
        code = make_code(coach, athlete)
        assert len(code) == 8
        assert set(code).isdisjoint("01OILU")

    def test_it_may_be_typed_in_small_letters_and_with_gaps(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        code = make_code(coach, athlete).lower()
        assert accept(client, code=f" {code[:4]}-{code[4:]} ").status_code == 201

    def test_it_is_good_for_ten_minutes(
        self, coach: AtDesk, athlete: str, client: FlaskClient, clock: Clock
    ) -> None:
        code = make_code(coach, athlete)
        clock.passes(10 * MINUTE_MS - 1)
        assert look(client, code=code).status_code == 200
        clock.passes(1)
        assert look(client, code=code).status_code == 404

    def test_five_wrong_tries_use_it_up(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        code = make_code(coach, athlete)
        for _ in range(5):
            assert look(client, code=wrong_of(code)).status_code == 404
        assert accept(client, code=code).status_code == 404

    def test_four_wrong_tries_do_not_and_right_ones_cost_nothing(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        code = make_code(coach, athlete)
        for _ in range(4):
            look(client, code=wrong_of(code))
            assert look(client, code=code).status_code == 200
        assert accept(client, code=code).status_code == 201

    def test_a_guess_at_random_costs_nobody_elses_code_a_try(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        code = make_code(coach, athlete)
        for _ in range(8):
            look(client, code="".join(reversed(code)))
        database.connect()
        assert PairingCode.select().get().tries_left == 5
        database.disconnect()

    def test_a_new_one_makes_the_earlier_one_void(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        earlier, later = make_code(coach, athlete), make_code(coach, athlete)
        assert look(client, code=earlier).status_code == 404
        assert look(client, code=later).status_code == 200

    def test_one_from_an_invitation_uses_that_up_too(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        secret = coach.invites(athlete)
        made = client.post(f"{API}/code", json={"secret": secret})
        assert made.status_code == 201
        assert accept(client, code=made.json["code"]).status_code == 201
        assert accept(client, secret=secret).status_code == 404

    def test_one_from_an_invitation_dies_with_it(
        self, coach: AtDesk, athlete: str, client: FlaskClient
    ) -> None:
        secret = coach.invites(athlete)
        code = client.post(f"{API}/code", json={"secret": secret}).json["code"]
        accept(client, secret=secret)
        refused = accept(client, code=code)
        assert refused.status_code == 404
        assert "Set-Cookie" not in refused.headers


def test_unknown_wrong_used_revoked_and_expired_get_the_same_words(
    coach: AtDesk, athlete: str, client: FlaskClient, clock: Clock
) -> None:
    used, old, code = coach.invites(athlete), coach.invites(athlete), make_code(coach, athlete)
    accept(client, secret=used)
    answers = [
        look(client, secret="never made"),
        look(client, secret=used),
        look(client, code="ABCDEFGH"),
        look(client, code=wrong_of(code)),
    ]
    clock.passes(8 * DAY_MS)
    answers += [look(client, secret=old), look(client, code=code), accept(client, code=code)]
    assert {answer.status_code for answer in answers} == {404}
    assert len({answer.text for answer in answers}) == 1


@pytest.mark.parametrize("body", [{}, {"secret": "a", "code": "b"}, {"code": 12345678}])
def test_exactly_one_of_secret_and_code_is_asked_for(
    client: FlaskClient, body: dict[str, object]
) -> None:
    assert client.post(f"{API}/look", json=body).status_code == 422


def test_guessing_is_shut_off_after_twenty_tries_from_one_address(
    client: FlaskClient, clock: Clock
) -> None:
    clock.passes(10 * MINUTE_MS - clock.now % (10 * MINUTE_MS))
    answers = [look(client, code="ABCDEFGH").status_code for _ in range(21)]
    assert answers == [404] * 20 + [429]
    clock.passes(10 * MINUTE_MS)
    assert look(client, code="ABCDEFGH").status_code == 404


def test_guessing_from_many_addresses_is_shut_off_as_well(app: Flask, clock: Clock) -> None:
    clock.passes(10 * MINUTE_MS - clock.now % (10 * MINUTE_MS))
    client = app.test_client()
    statuses = [
        client.post(
            f"{API}/look",
            json={"code": "ABCDEFGH"},
            environ_base={"REMOTE_ADDR": f"198.51.100.{number % 250}"},
        ).status_code
        for number in range(301)
    ]
    assert statuses == [404] * 300 + [429]


def test_one_address_that_guesses_without_end_shuts_nobody_else_off(
    app: Flask, coach: AtDesk, athlete: str, clock: Clock
) -> None:
    clock.passes(10 * MINUTE_MS - clock.now % (10 * MINUTE_MS))
    client, body = app.test_client(), {"code": "ABCDEFGH"}
    guesser = {"REMOTE_ADDR": "203.0.113.7"}
    answers = [
        client.post(f"{API}/look", json=body, environ_base=guesser).status_code for _ in range(321)
    ]
    assert answers == [404] * 20 + [429] * 301
    assert look(app.test_client(), secret=coach.invites(athlete)).status_code == 200


def test_an_unpaired_phone_is_known_no_more_and_what_it_stored_stays(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    device.syncs(device.writes.done("squat.1"))
    assert device.post("/unpair", {}).status_code == 204
    assert device.get("/snapshot").status_code == 401
    assert len(second_device.reads_all()) == 1


def test_a_phone_whose_numbers_a_copy_used_takes_a_new_id_and_keeps_its_athlete(
    device: Phone,
) -> None:
    renewed = device.post("/device/renew", {}).json
    snapshot = device.get("/snapshot").json
    assert renewed["device"] != device.id
    assert snapshot["device"] == renewed["device"]
    assert snapshot["athlete"]["id"] == device.athlete_id


def test_a_pairing_ends_after_400_days_without_use(device: Phone, clock: Clock) -> None:
    clock.passes(399 * DAY_MS)
    answer = device.sends()
    assert answer.status_code == 200
    assert "Max-Age=34560000" in answer.headers["Set-Cookie"], "the cookie is renewed with use"
    clock.passes(400 * DAY_MS)
    assert device.sends().status_code == 401
