"""What closed sessions amounted to beside their sets, one row a session and kind."""

from typing import Any, NamedTuple

from undercroft.store.models import SessionFact


class Place(NamedTuple):
    """A session's place in the order of sessions, and what that place is known by.

    One that was planned anew had another place before: it holds the same `part` and `end`.
    """

    order: str
    part: str
    end: str


def all_of(athlete_id: str, kind: str) -> list[Any]:
    """The facts of one kind, in the order of sessions."""
    rows = SessionFact.select(SessionFact.body).where(
        SessionFact.athlete == athlete_id, SessionFact.kind == kind
    )
    return [row.body for row in rows.order_by(SessionFact.session_order)]


def keep(athlete_id: str, kind: str, place: Place, body: Any | None) -> None:
    """Keep what a session amounted to, in place of what was kept of it; None: nothing."""
    for order in _orders(athlete_id, kind, place):
        if order != place.order or body is None:
            SessionFact.delete().where(
                SessionFact.athlete == athlete_id,
                SessionFact.kind == kind,
                SessionFact.session_order == order,
            ).execute()
    if body is not None:
        SessionFact.insert(
            athlete=athlete_id, kind=kind, session_order=place.order, body=body
        ).on_conflict(
            conflict_target=[SessionFact.athlete, SessionFact.kind, SessionFact.session_order],
            update={SessionFact.body: body},
        ).execute()


def _orders(athlete_id: str, kind: str, place: Place) -> list[str]:
    rows = SessionFact.select(SessionFact.session_order).where(
        SessionFact.athlete == athlete_id,
        SessionFact.kind == kind,
        SessionFact.session_order.contains(place.part),
    )
    return [row.session_order for row in rows if row.session_order.endswith(place.end)]
