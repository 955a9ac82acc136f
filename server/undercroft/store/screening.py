"""What the coach recorded of screening, and when it was asked for."""

from typing import Any

from peewee import fn

from undercroft.store.models import Athlete, ScreeningRecord


def ask(athlete_id: str, now: int) -> None:
    """Remember when the screening was first asked for."""
    Athlete.update(screening_asked_at=now).where(
        Athlete.id == athlete_id, Athlete.screening_asked_at.is_null()
    ).execute()


def records(athlete_id: str) -> list[ScreeningRecord]:
    """Everything that was recorded, withdrawn or not, oldest first."""
    rows = ScreeningRecord.select().where(ScreeningRecord.athlete == athlete_id)
    return list(rows.order_by(ScreeningRecord.number))


def add(athlete_id: str, kind: str, body: Any, now: int, by: str) -> None:
    """Record something; call with the athlete's lock held."""
    last = (
        ScreeningRecord.select(fn.MAX(ScreeningRecord.number))
        .where(ScreeningRecord.athlete == athlete_id)
        .scalar()
    )
    ScreeningRecord.insert(
        athlete=athlete_id,
        number=(last or 0) + 1,
        kind=kind,
        body=body,
        recorded_at=now,
        recorded_by=by,
    ).execute()


def withdraw(athlete_id: str, number: int, now: int) -> bool:
    """Let a record count no more; was there one that counted?"""
    changed = (
        ScreeningRecord.update(withdrawn_at=now)
        .where(
            ScreeningRecord.athlete == athlete_id,
            ScreeningRecord.number == number,
            ScreeningRecord.withdrawn_at.is_null(),
        )
        .execute()
    )
    return bool(changed)
