"""What was sent: revisions, and the load sheets made for them."""

from collections.abc import Collection, Sequence
from typing import Any

from undercroft.store import sql
from undercroft.store.models import Entry, Revision, Sheet
from undercroft.store.sql import marks


def latest_revision(athlete_id: str) -> Revision | None:
    """What the athlete trains by now."""
    return (
        Revision.select()
        .where(Revision.athlete == athlete_id)
        .order_by(Revision.number.desc())
        .first()
    )


def rename_block(athlete_id: str, block_id: str, now_called: str) -> None:
    """The block that these revisions were made from is another coach's copy from now on."""
    mine = (Revision.athlete == athlete_id) & (Revision.block == block_id)
    Revision.update(block=now_called).where(mine).execute()


def latest_of_block(athlete_id: str, block_id: str) -> Revision | None:
    """The newest revision of one block that the athlete was sent."""
    rows = Revision.select().where(Revision.athlete == athlete_id, Revision.block == block_id)
    return rows.order_by(Revision.number.desc()).first()


def revision(athlete_id: str, number: int) -> Revision | None:
    return Revision.get_or_none(Revision.athlete == athlete_id, Revision.number == number)


def add_revision(
    athlete_id: str,
    number: int,
    block_id: str,
    document: Any,
    starts_on: str,
    overrules: list[dict[str, Any]],
    now: int,
    coach_id: str,
    run: int,
    known: Any = None,
) -> None:
    Revision.insert(
        athlete=athlete_id,
        number=number,
        block=block_id,
        document=document,
        starts_on=starts_on,
        overrules=overrules,
        sent_at=now,
        sent_by=coach_id,
        run=run,
        known=known,
    ).execute()


def sheets_of(athlete_id: str, number: int) -> dict[str, Any]:
    """The sheets of a revision, by session."""
    rows = Sheet.select(Sheet.session, Sheet.document).where(
        Sheet.athlete == athlete_id, Sheet.revision == number
    )
    return {row.session: row.document for row in rows}


def sheet_of(athlete_id: str, number: int, session: str) -> Any:
    """The sheet of one session of a revision."""
    return Sheet.get(
        Sheet.athlete == athlete_id, Sheet.revision == number, Sheet.session == session
    ).document


def sheets_of_many(athlete_id: str, numbers: Sequence[int]) -> list[Sheet]:
    """The sheets of several revisions."""
    return list(
        Sheet.select().where(Sheet.athlete == athlete_id, Sheet.revision.in_(list(numbers)))
    )


def keep_sheet(
    athlete_id: str, number: int, session: str, position: int, document: Any, short: Any
) -> None:
    """Keep a sheet, whole and in short, in place of an earlier one of the session and revision."""
    kept = {
        "position": position,
        "on_day": document.get("on") or "",
        "document": document,
        "short": short,
    }
    Sheet.insert(athlete=athlete_id, revision=number, session=session, **kept).on_conflict(
        conflict_target=[Sheet.athlete, Sheet.revision, Sheet.session],
        update=kept,
    ).execute()


def sessions_begun(
    athlete_id: str, numbers: Sequence[int], sessions: Sequence[str], kinds: Collection[str]
) -> set[str]:
    """Of these sessions, those with an entry of these kinds from one of these revisions."""
    rows = (
        Entry.select(Entry.session)
        .where(
            Entry.athlete == athlete_id,
            Entry.session.in_(list(sessions)),
            Entry.revision.in_(list(numbers)),
            Entry.kind.in_(list(kinds)),
            Entry.status == "stored",
        )
        .distinct()
    )
    return {row.session for row in rows if row.session is not None}


def all_revisions(athlete_id: str) -> list[Revision]:
    """Everything the athlete was sent, oldest first."""
    rows = Revision.select().where(Revision.athlete == athlete_id)
    return list(rows.order_by(Revision.number))


def numbers_of_run(athlete_id: str, number: int) -> tuple[int, ...]:
    """All revisions of the run that a revision belongs to, oldest first; none if unknown."""
    found = sql.rows(
        "SELECT number FROM revision WHERE athlete_id = ? AND run ="
        " (SELECT run FROM revision WHERE athlete_id = ? AND number = ?) ORDER BY number",
        athlete_id,
        athlete_id,
        number,
    )
    return tuple(one for (one,) in found)


def revisions_of_run(athlete_id: str, run: int) -> list[Revision]:
    """The revisions of a run, newest first."""
    rows = Revision.select().where(Revision.athlete == athlete_id, Revision.run == run)
    return list(rows.order_by(Revision.number.desc()))


def day_of_sheet(athlete_id: str, number: int, session: str) -> str | None:
    """The day for which a session of a revision was planned."""
    found = sql.rows(
        "SELECT on_day FROM sheet WHERE athlete_id = ? AND revision = ? AND session = ?",
        athlete_id,
        number,
        session,
    )
    return found[0][0] if found else None


def days_of_sheets(athlete_id: str, numbers: Sequence[int]) -> dict[str, str]:
    """By session, the day of its newest sheet among these revisions."""
    if not numbers:
        return {}
    found = sql.rows(
        "SELECT session, on_day FROM sheet WHERE athlete_id = ?"
        f" AND revision IN ({marks(len(numbers))}) ORDER BY revision",
        athlete_id,
        *numbers,
    )
    return dict(found)
