"""A bare Flask route that runs the statements of a sync of one set, and nothing else.

What a sync promises needs them: who asks; under the athlete's lock, whether the entry is here and
its number free, its position, the entry, whether its session is over, how far the phone is. What
they reach is the floor: no server that keeps these promises in this database can be faster.
`python -m tests.bench.statements DATABASE PORT TOKEN`
"""

import json
import sys

from flask import Flask, request
from waitress import serve

from undercroft.services import tokens
from undercroft.store import database, devices, entries
from undercroft.store.feed import hold, take_positions

AT = "2026-02-03T18:04:11.250+01:00"
SET = json.dumps({"load_kg": 92.5, "reps": 3, "rir": 4})


def main(location: str, port: int, token: str) -> None:
    app = Flask("statements")
    database.open_database(location)
    fingerprint = tokens.fingerprint(token)

    @app.post("/")
    def take() -> dict[str, str]:
        database.connect()
        _take(fingerprint, json.loads(request.get_data())["id"])
        database.disconnect()
        return {"status": "stored"}

    serve(app, host="127.0.0.1", port=port, threads=8, _quiet=True)


def _take(fingerprint: str, id_: str) -> None:
    asking = devices.device_by_token(fingerprint)
    assert asking is not None
    with hold(asking.athlete_id) as end:
        here = devices.device_by_id(asking.id)
        entries.known_ids(here.athlete_id, [id_])
        n = 1 + entries.newest_number(here.athlete_id, here.id)
        take_positions(here.athlete_id, 1)
        entries.add_rows([_row(here, id_, n, end + 1)])
        entries.last_begun(here.athlete_id)
        devices.note_stored(here._replace(cursor=end, stored_through=n), 0)


def _row(here: devices.DeviceRow, id_: str, n: int, position: int) -> entries.Row:
    return entries.Row(
        here.athlete_id, position, id_, 0, here.id, n, 1, "set.done", AT,
        0, 1, "w1.mon", f"squat.{n}", None, SET, id_, entries.STORED, None, None,
    )  # fmt: skip


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), sys.argv[3])
