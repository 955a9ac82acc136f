"""What was lifted last, exercise by exercise."""

from collections.abc import Mapping

from undercroft.store.models import LastDone


def last_loads(athlete_id: str) -> dict[str, float]:
    """Kilograms of each exercise's first set when it was last done."""
    rows = LastDone.select().where(LastDone.athlete == athlete_id)
    return {row.exercise: row.kg for row in rows}


def keep_loads(athlete_id: str, order: str, loads: Mapping[str, float | None]) -> None:
    """Keep the loads of a session, save where a later session has done the exercise since.

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
            conflict_target=[LastDone.athlete, LastDone.exercise],
            update={LastDone.session_order: order, LastDone.kg: kg},
            where=LastDone.session_order <= order,
        ).execute()
