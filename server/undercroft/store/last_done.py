"""What was lifted, exercise by exercise and session by session: the last of it counts."""

from collections.abc import Mapping

from undercroft.store.models import LastDone
from undercroft.store.sql import rows

_LAST = (
    "SELECT exercise, kg FROM last_done WHERE athlete_id = ? AND (exercise, session_order) IN"
    " (SELECT exercise, MAX(session_order) FROM last_done WHERE athlete_id = ? GROUP BY exercise)"
)


def last_loads(athlete_id: str) -> dict[str, float]:
    """Kilograms of each exercise's first set when it was last done."""
    return dict(rows(_LAST, athlete_id, athlete_id))


def keep_loads(athlete_id: str, order: str, loads: Mapping[str, float | None]) -> None:
    """Keep the loads of a session.

    None takes back what the same session had left here before it was corrected.
    """
    for exercise, kg in loads.items():
        if kg is None:
            LastDone.delete().where(
                LastDone.athlete == athlete_id,
                LastDone.exercise == exercise,
                LastDone.session_order == order,
            ).execute()
            continue
        LastDone.insert(
            athlete=athlete_id, exercise=exercise, session_order=order, kg=kg
        ).on_conflict(
            conflict_target=[LastDone.athlete, LastDone.exercise, LastDone.session_order],
            update={LastDone.kg: kg},
        ).execute()


def forget_elsewhere(athlete_id: str, part: str, end: str, kept: str) -> None:
    """Forget what stands under orders with this part and end, but for the one that is kept.

    A session that was planned anew had another place before.
    """
    found = rows("SELECT DISTINCT session_order FROM last_done WHERE athlete_id = ?", athlete_id)
    others = [o for (o,) in found if part in o and o.endswith(end) and o != kept]
    if others:
        LastDone.delete().where(
            LastDone.athlete == athlete_id, LastDone.session_order.in_(others)
        ).execute()
