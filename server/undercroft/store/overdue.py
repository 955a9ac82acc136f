"""From which position on an athlete's ledger is still to be worked out, where a fault came between.

Kept among the facts of sessions, under an order that no session has.
"""

from typing import NamedTuple

from undercroft.store.models import SessionFact

KIND, ORDER = "overdue", ""


class Overdue(NamedTuple):
    """`tried_at`: when it last failed, in ms."""

    since: int
    tried_at: int


def of(athlete_id: str) -> Overdue | None:
    found = SessionFact.get_or_none(*_mine(athlete_id))
    return None if found is None else Overdue(**found.body)


def mark(athlete_id: str, since: int, now: int) -> None:
    """Call with the athlete's lock held; an earlier position stays."""
    before = of(athlete_id)
    first = since if before is None else min(since, before.since)
    body = Overdue(first, now)._asdict()
    SessionFact.insert(athlete=athlete_id, kind=KIND, session_order=ORDER, body=body).on_conflict(
        conflict_target=[SessionFact.athlete, SessionFact.kind, SessionFact.session_order],
        update={SessionFact.body: body},
    ).execute()


def clear(athlete_id: str) -> None:
    SessionFact.delete().where(*_mine(athlete_id)).execute()


def _mine(athlete_id: str) -> tuple[object, ...]:
    return (
        SessionFact.athlete == athlete_id,
        SessionFact.kind == KIND,
        SessionFact.session_order == ORDER,
    )
