"""The same on PostgreSQL with three server processes behind one address.

The tests of an exchange, of the faults, of what is held and of the feed, each request of which
another process answers; then what only several processes could get wrong.
"""

import threading
import time
from collections.abc import Iterator

import pytest
from flask import Flask
from flask.testing import FlaskClient
from tests.conftest import _emptied
from tests.one_time import STEP_MS, code_at
from tests.people import PASSWORD, AtDesk, Clock, Phone, statuses
from tests.server_process import ServerProcess
from tests.sync.asking import ids, positions, stored
from tests.sync.many import in_front_of, processes
from tests.sync.test_exchange import (  # noqa: F401
    test_an_outbox_is_never_taken_from_another_device,
    test_another_athletes_device_gets_nothing,
    test_the_athletes_other_device_gets_them_as_they_were_written,
)
from tests.sync.test_faults import (  # noqa: F401
    test_1_an_answer_lost_after_the_commit_doubles_nothing,
    test_2_a_request_lost_before_it_is_simply_sent_again,
    test_3_the_same_request_twice_at_once_stores_it_once,
    test_4_entries_out_of_order_and_a_batch_partly_taken,
    test_5_two_devices_on_one_session_both_end_with_everything,
    test_11_a_phone_that_kept_only_its_cookie_gets_its_own_entries_back,
    test_11_a_wiped_phone_pairs_again_and_is_told_what_the_server_has,
    test_14_a_cursor_beyond_the_end_tells_the_phone_to_begin_again,
    test_14_after_a_restore_phones_begin_from_a_snapshot_and_nothing_they_hold_is_lost,
    test_15_a_revoked_device_learns_nothing_more,
    test_15_a_revoked_devices_entries_are_held_for_the_coach,
)
from tests.sync.test_feed import (  # noqa: F401
    test_a_newer_change_of_the_same_kind_and_key_supersedes_the_older,
    test_a_reader_among_writers_never_skips_a_position,
    test_what_was_read_is_not_sent_again,
    test_writers_at_once_get_positions_without_gaps,
)
from tests.sync.test_held import (  # noqa: F401
    test_a_conflict_within_one_batch_is_seen_as_well,
    test_an_accepted_entry_counts_and_reaches_every_device,
    test_one_is_accepted_once,
    test_the_same_id_with_other_content_is_held_and_overwrites_nothing,
    test_the_same_number_under_another_id_is_held,
)

from undercroft.services.clock import now_ms
from undercroft.services.limits import LOG_IN, PAIRING, Limit
from undercroft.store import database as database_of

pytestmark = pytest.mark.postgres
PROCESSES = 3


@pytest.fixture(scope="module")
def running(
    postgresql_tables: str, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[list[ServerProcess]]:
    folder = tmp_path_factory.mktemp("processes")
    with processes(postgresql_tables, PROCESSES, folder) as started:
        yield started


@pytest.fixture
def database(postgresql_tables: str) -> Iterator[str]:
    database_of.open_database(_emptied(postgresql_tables))
    yield postgresql_tables
    database_of.close_all()


@pytest.fixture
def clock() -> Clock:
    """The processes go by the time of day."""
    return Clock(now_ms())


@pytest.fixture
def app(database: str, running: list[ServerProcess]) -> Flask:
    return in_front_of(running)


def all_at_once(acts: list[threading.Thread]) -> None:
    for act in acts:
        act.start()
    for act in acts:
        act.join()


def has_time(limit: Limit, seconds: int = 30) -> None:
    """Tries are counted by windows of the time of day: not across the end of one."""
    left_s = (limit.window_ms - now_ms() % limit.window_ms) / 1000
    if left_s < seconds:
        time.sleep(left_s)


def test_every_process_answers_in_turn(app: Flask, client: FlaskClient) -> None:
    for _ in range(2 * PROCESSES):
        assert client.get("/api/v1/ready").status_code == 200
    assert len(set(app.config["ANSWERED"])) == PROCESSES


def test_a_log_in_made_by_one_process_opens_the_desk_of_all_and_ends_in_all(
    coach: AtDesk,
) -> None:
    assert {coach.get("/coach/me").status_code for _ in range(PROCESSES)} == {200}
    cookie = coach.browser.get_cookie("undercroft-coach")
    assert coach.post("/coach/log-out").status_code == 204
    coach.browser.set_cookie("undercroft-coach", cookie.value)
    assert {coach.get("/coach/me").status_code for _ in range(PROCESSES)} == {401}


def test_the_limit_on_log_ins_is_one_for_all_processes(client: FlaskClient) -> None:
    has_time(LOG_IN)
    wrong = {"email": "nobody@example.org", "password": "wrong horse, wrong stable"}
    answers = [client.post("/api/v1/coach/log-in", json=wrong) for _ in range(LOG_IN.most + 2)]
    codes = [answer.status_code for answer in answers]
    assert codes == [401] * LOG_IN.most + [429] * 2
    assert int(answers[-1].headers["Retry-After"]) > 0


def test_the_limit_on_pairing_is_one_for_all_processes(client: FlaskClient) -> None:
    has_time(PAIRING)
    wrong = {"code": "ABCD2345"}
    codes = [
        client.post("/api/v1/pairing/look", json=wrong).status_code
        for _ in range(PAIRING.most + PROCESSES)
    ]
    assert codes == [404] * PAIRING.most + [429] * PROCESSES


def test_of_three_log_ins_at_once_with_one_code_one_is_let_in(
    app: Flask, coach: AtDesk, clock: Clock
) -> None:
    """As whoever watches over a shoulder would try; and so with a recovery code."""
    has_time(LOG_IN)
    begun = coach.post("/coach/second-factor/begin").json["secret"]
    proof = {"password": PASSWORD, "code": code_at(begun, now_ms())}
    recovery = coach.post("/coach/second-factor/on", proof).json["codes"]
    ahead = code_at(begun, now_ms() + STEP_MS)
    for number, code in enumerate((ahead, recovery[0])):
        codes: list[int] = []

        def log_in(code: str = code, codes: list[int] = codes, number: int = number) -> None:
            body = {"email": coach.email, "password": PASSWORD, "code": code}
            there = {"REMOTE_ADDR": f"192.0.2.{number}"}
            answer = app.test_client().post("/api/v1/coach/log-in", json=body, environ_base=there)
            codes.append(answer.status_code)

        all_at_once([threading.Thread(target=log_in) for _ in range(3)])
        assert sorted(codes) == [200, 401, 401]


def test_of_six_phones_at_once_with_one_invitation_one_is_paired(
    app: Flask, coach: AtDesk, athlete: str
) -> None:
    body = {"secret": coach.invites(athlete), "device_name": "a phone"}
    codes: list[int] = []

    def accept() -> None:
        answer = app.test_client().post("/api/v1/pairing/accept", json=body)
        codes.append(answer.status_code)

    all_at_once([threading.Thread(target=accept) for _ in range(6)])
    assert sorted(codes) == [201] + [404] * 5


def test_two_phones_sending_through_all_processes_at_once_get_one_row_of_positions(
    device: Phone, second_device: Phone
) -> None:
    written = {phone.id: phone.writes.many(40) for phone in (device, second_device)}

    def send(phone: Phone) -> None:
        for entry in written[phone.id]:
            assert statuses(phone.sends(entry).json) == ["stored"]

    all_at_once([threading.Thread(target=send, args=(phone,)) for phone in (device, second_device)])
    assert sorted(stored(device)) == sorted(ids([*written[device.id], *written[second_device.id]]))
    positions(device.athlete_id)
