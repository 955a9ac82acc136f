"""What each session told of each lift, and the tracker's state after it."""

from typing import Any, NamedTuple

from undercroft.store.models import TrackerState
from undercroft.store.sql import parsed, rows


class Kept(NamedTuple):
    """What one session told of one lift; `session_order` is its place among all sessions."""

    lift: str
    session_order: str
    body: Any


_KEPT = "SELECT lift, session_order, body FROM tracker_state WHERE athlete_id = ?"


def _kept(where: str, *parameters: str) -> list[Kept]:
    found = rows(_KEPT + where, *parameters)
    bodies = parsed(body for _, _, body in found)
    return [Kept(lift, at, body) for (lift, at, _), body in zip(found, bodies, strict=True)]


def rows_from(athlete_id: str, lift: str, order: str) -> list[Kept]:
    """The lift's rows at and after a place in its order."""
    return _kept(
        " AND lift = ? AND session_order >= ? ORDER BY session_order", athlete_id, lift, order
    )


def row_before(athlete_id: str, lift: str, order: str) -> Kept | None:
    """The lift's last row before a place in its order."""
    where = " AND lift = ? AND session_order < ? ORDER BY session_order DESC LIMIT 1"
    return next(iter(_kept(where, athlete_id, lift, order)), None)


_LATEST = (
    " AND (lift, session_order) IN (SELECT lift, MAX(session_order) FROM tracker_state"
    " WHERE athlete_id = ? GROUP BY lift)"
)


def latest_rows(athlete_id: str) -> list[Kept]:
    """The last row of each lift of which anything was told."""
    return _kept(_LATEST, athlete_id, athlete_id)


def lifts_of(athlete_id: str) -> list[str]:
    """Lifts of which anything was told."""
    found = rows("SELECT DISTINCT lift FROM tracker_state WHERE athlete_id = ?", athlete_id)
    return [lift for (lift,) in found]


def keep_row(athlete_id: str, lift: str, order: str, body: Any) -> None:
    TrackerState.insert(athlete=athlete_id, lift=lift, session_order=order, body=body).on_conflict(
        conflict_target=[TrackerState.athlete, TrackerState.lift, TrackerState.session_order],
        update={TrackerState.body: body},
    ).execute()


def remove_row(athlete_id: str, lift: str, order: str) -> None:
    TrackerState.delete().where(
        TrackerState.athlete == athlete_id,
        TrackerState.lift == lift,
        TrackerState.session_order == order,
    ).execute()


def rows_at(athlete_id: str, order: str) -> list[Kept]:
    """What the session at one place told, of all lifts."""
    return _kept(" AND session_order = ?", athlete_id, order)


def all_rows(athlete_id: str, lift: str | None = None) -> list[Kept]:
    """Every row, or those of one lift, in the order of their sessions."""
    if lift is None:
        return _kept(" ORDER BY session_order", athlete_id)
    return _kept(" AND lift = ? ORDER BY session_order", athlete_id, lift)


def rows_since(athlete_id: str, order: str) -> list[Kept]:
    """Rows of all lifts from a place on, in the order of their sessions."""
    return _kept(" AND session_order >= ? ORDER BY session_order", athlete_id, order)


def orders_with(athlete_id: str, part: str) -> list[str]:
    """Places in the order of sessions that contain a text, each once."""
    rows = TrackerState.select(TrackerState.session_order).where(
        TrackerState.athlete == athlete_id, TrackerState.session_order.contains(part)
    )
    return sorted({row.session_order for row in rows})
