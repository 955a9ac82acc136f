"""A new life of the database, after a backup was put back: its name, and its revisions' numbers."""

from undercroft.store.migrate import new_epoch
from undercroft.store.models import Meta
from undercroft.store.sql import rows

COUNT_FROM = "revisions_from"


def begin(count_from: int) -> str:
    """The new epoch. Revisions are numbered from `count_from` on, if that is not taken yet."""
    Meta.insert(name=COUNT_FROM, value=str(count_from)).on_conflict(
        conflict_target=[Meta.name], update={Meta.value: str(count_from)}
    ).execute()
    return new_epoch()


def next_number(athlete_id: str) -> int:
    """The number of the athlete's next revision."""
    ((last,),) = rows("SELECT MAX(number) FROM revision WHERE athlete_id = ?", athlete_id)
    first = Meta.get_or_none(Meta.name == COUNT_FROM)
    return max(1 + (last or 0), 1 if first is None else int(first.value))
