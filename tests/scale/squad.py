"""A squad with years behind it: a few athletes train through the services, the rest are copies."""

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from tests.people import PASSWORD
from tests.scale.copies import copy
from tests.scale.names import names
from tests.scale.years import SORTS, Sort, at, enrol, train

from undercroft.demo.scenario import load
from undercroft.domain.program.calendar import monday_of
from undercroft.services import accounts, blocks
from undercroft.store.database import database, on_sqlite, writing

COACH_EMAIL = "ottilie@example.org"
COACH_NAME = "Ottilie Brandt"

Step = Callable[[float], None]
"""Told each time how much more is done, as a share of the whole."""


def _nothing(_: float) -> None:
    """Told to nobody."""


OF_COPY = 0.04
"""How much longer a year of training takes than copying one, seen here: about 25 times."""


@dataclass(frozen=True, slots=True)
class Size:
    """How many athletes with how many weeks behind them, the last of them up to `until`."""

    athletes: int
    weeks: int
    until: date

    @property
    def began(self) -> date:
        return monday_of(self.until) - timedelta(weeks=self.weeks)


def seed(
    size: Size, number: int = 1, step: Step = _nothing, sorts: Sequence[Sort] = SORTS
) -> list[str]:
    """Fill an empty, opened database; the ids of the athletes, those who trained first.

    The same number makes the same training; ids and tokens are chance.
    """
    hasten()
    hasher = accounts.make_hasher(cheap=True)
    coach_id = accounts.add_coach(hasher, COACH_EMAIL, COACH_NAME, PASSWORD, at(size.began))
    sorts = sorts[: size.athletes]
    block_ids = {
        name: blocks.add(coach_id, load("blocks", name), at(size.began)).id
        for name in sorted({sort.block for sort in sorts})
    }
    work = len(sorts) + OF_COPY * (size.athletes - len(sorts))
    ids = []
    for sort in sorts:
        who = enrol(coach_id, sort, size.began, random.Random(f"{number} {sort.document}"))
        before = size.began
        for day in train(who, coach_id, block_ids[sort.block], size.began, size.until):
            step((day - before).days / (7 * size.weeks) / work)
            before = day
        ids.append(who.id)
    for name, n in zip(names(), range(len(sorts), size.athletes), strict=False):
        with writing():
            ids.append(copy(ids[n % len(sorts)], name, at(size.began)).id)
        step(OF_COPY / work)
    return ids


def hasten() -> None:
    """What is not finished is thrown away: nothing has to outlive a power cut."""
    if on_sqlite():
        database.execute_sql("PRAGMA synchronous = OFF")
