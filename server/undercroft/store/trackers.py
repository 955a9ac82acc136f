"""What each session told of each lift, and the tracker's state after it."""

from typing import Any

from undercroft.store.models import TrackerState


def rows_from(athlete_id: str, lift: str, order: str) -> list[TrackerState]:
    """The lift's rows at and after a place in its order."""
    return list(
        TrackerState.select()
        .where(
            TrackerState.athlete == athlete_id,
            TrackerState.lift == lift,
            TrackerState.session_order >= order,
        )
        .order_by(TrackerState.session_order)
    )


def row_before(athlete_id: str, lift: str, order: str) -> TrackerState | None:
    """The lift's last row before a place in its order."""
    return (
        TrackerState.select()
        .where(
            TrackerState.athlete == athlete_id,
            TrackerState.lift == lift,
            TrackerState.session_order < order,
        )
        .order_by(TrackerState.session_order.desc())
        .first()
    )


def lifts_of(athlete_id: str) -> list[str]:
    """Lifts of which anything was told."""
    rows = TrackerState.select(TrackerState.lift).where(TrackerState.athlete == athlete_id)
    return [row.lift for row in rows.distinct()]


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


def rows_at(athlete_id: str, order: str) -> list[TrackerState]:
    """What the session at one place told, of all lifts."""
    return list(
        TrackerState.select().where(
            TrackerState.athlete == athlete_id, TrackerState.session_order == order
        )
    )


def all_rows(athlete_id: str, lift: str | None = None) -> list[TrackerState]:
    """Every row, or those of one lift, in the order of their sessions."""
    rows = TrackerState.select().where(TrackerState.athlete == athlete_id)
    if lift is not None:
        rows = rows.where(TrackerState.lift == lift)
    return list(rows.order_by(TrackerState.session_order))


def orders_with(athlete_id: str, part: str) -> list[str]:
    """Places in the order of sessions that contain a text, each once."""
    rows = TrackerState.select(TrackerState.session_order).where(
        TrackerState.athlete == athlete_id, TrackerState.session_order.contains(part)
    )
    return sorted({row.session_order for row in rows})
