"""An athlete's ledger as the domain knows it."""

from collections.abc import Sequence

from undercroft.domain import ledger
from undercroft.store import entries
from undercroft.store.entries import Line
from undercroft.store.models import Entry


def entries_of(
    athlete_id: str,
    session: str | None = None,
    kinds: Sequence[str] = (),
    revisions: Sequence[int] = (),
    since: int = 0,
) -> list[ledger.Entry]:
    """Entries that count, in the order of positions; where that is asked of one session, of certain
    kinds, from certain revisions, come in since a time in ms.
    """
    return [from_row(row) for row in entries.stored(athlete_id, session, kinds, revisions, since)]


def entries_from(athlete_id: str, position: int) -> list[ledger.Entry]:
    """Those that count, from this position on."""
    return [from_row(row) for row in entries.stored_from(athlete_id, position)]


def from_row(row: Entry | Line, run: int | None = None) -> ledger.Entry:
    """A stored row as an entry; with a run as one of that, whichever revision it came from."""
    return ledger.Entry(
        id=row.id,
        kind=row.kind,
        at=row.at or "",
        revision=row.revision if run is None else run,
        session=row.session,
        set=row.set,
        replaces=row.replaces,
        body=row.body,
        n=row.n or 0,
        v=row.v or 1,
        device=row.device,
        position=row.position,
    )
