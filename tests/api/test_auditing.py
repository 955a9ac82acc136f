"""What was worked out from the ledger is held against the ledger."""

from typing import Any

import pytest
from tests.api.test_replanning import block, did, lift, ready, said, send, session  # noqa: F401
from tests.people import AtDesk, Phone

from undercroft.services import auditing
from undercroft.store import database
from undercroft.store.models import SessionFact, TrackerState


@pytest.fixture
def trained(coach: AtDesk, ready: str, device: Phone) -> str:  # noqa: F811
    """Two sessions done, one of them with a wrap on, and corrected since."""
    two = (session("s1", lift("e", "back-squat")), session("s2", lift("f", "back-squat"), day=3))
    send(coach, ready, block(*two))
    first = did(device, "s1", "e.1", 90)
    wraps = [
        device.writes.entry("wrap.on", {"limb": "left-thigh"}, session="s1", revision=1),
        device.writes.entry(
            "wrap.off", {"limb": "left-thigh", "seconds": 200}, session="s1", revision=1
        ),
    ]
    device.syncs(said(device, "session.started", "s1"), first, *wraps)
    device.syncs(said(device, "session.finished", "s1"))
    device.syncs(said(device, "session.started", "s2"), did(device, "s2", "f.1", 95))
    device.syncs(said(device, "session.finished", "s2"), device.writes.corrected(first, reps=4))
    return ready


def findings(athlete_id: str) -> list[str]:
    database.connect()
    try:
        return list(auditing.check_athlete(athlete_id))
    finally:
        database.disconnect()


def change(table: Any, **values: Any) -> None:
    database.connect()
    table.update(**values).execute()
    database.disconnect()


def test_what_was_worked_out_is_what_the_ledger_says(trained: str) -> None:
    assert findings(trained) == []


def test_evidence_that_was_never_taken_in_is_found(trained: str) -> None:
    database.connect()
    TrackerState.delete().where(TrackerState.session_order.contains("/s1")).execute()
    database.disconnect()
    assert "session s1 tells something else of back-squat than is kept" in findings(trained)


def test_a_state_that_does_not_follow_from_its_sessions_is_found(trained: str) -> None:
    database.connect()
    row = TrackerState.select().order_by(TrackerState.session_order.desc()).first()
    moved = {**row.body, "mean": [row.body["mean"][0] + 0.01, *row.body["mean"][1:]]}
    database.disconnect()
    change(TrackerState, body=moved)
    assert "the maximum of back-squat is not what its sessions tell" in findings(trained)


def test_wear_that_is_kept_wrong_is_found(trained: str) -> None:
    change(SessionFact, body={"on": "2026-02-02", "doses": []})
    assert any("had a wrap or cuff on" in one for one in findings(trained))
