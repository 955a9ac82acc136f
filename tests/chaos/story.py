"""A story told by a seed: so many steps that chance picks, then all is healed and compared."""

import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from tests.chaos.valley import DEVICES, Counts, Valley
from tests.sync.network import FAULTS

STEPS = 30

Step = Callable[[Valley, Random], str]


def _does_sets(valley: Valley, chance: Random) -> str:
    which = chance.randrange(DEVICES)
    valley.does_sets(which, [chance.randint(1, 9) for _ in range(chance.randint(1, 5))])
    return "does sets"


def _meets(valley: Valley, chance: Random) -> str:
    fault = chance.choice(sorted(FAULTS))
    valley.meets(chance.randrange(DEVICES), fault)
    return fault


def _syncs(valley: Valley, chance: Random) -> str:
    valley.syncs(chance.randrange(DEVICES), chance.randint(1, 5))
    return "syncs"


def _shuffles(valley: Valley, chance: Random) -> str:
    valley.syncs_in_any_order(chance.randrange(DEVICES), chance.randint(1, 3))
    return "out of order"


def _on_one_phone(act: Callable[[Valley, int], None]) -> Step:
    def step(valley: Valley, chance: Random) -> str:
        act(valley, chance.randrange(DEVICES))
        return act.__name__.replace("_", " ")

    return step


def _by_itself(act: Callable[[Valley], None]) -> Step:
    def step(valley: Valley, _: Random) -> str:
        act(valley)
        return act.__name__.replace("_", " ")

    return step


WEIGHTS: tuple[tuple[Step, int], ...] = (
    (_does_sets, 8),
    (_meets, 8),
    (_syncs, 4),
    (_shuffles, 2),
    (_on_one_phone(Valley.corrects_something), 4),
    (_on_one_phone(Valley.closes_a_session), 1),
    (_on_one_phone(Valley.writes_what_this_server_cannot_read), 1),
    (_on_one_phone(Valley.moves_its_clock), 2),
    (_on_one_phone(Valley.is_wiped_and_paired_again), 1),
    (_on_one_phone(Valley.is_revoked_and_paired_again), 1),
    (_by_itself(Valley.coach_changes_a_sheet), 1),
    (_by_itself(Valley.server_starts_anew), 1),
    (_by_itself(Valley.takes_a_backup), 1),
    (_by_itself(Valley.restores_it), 1),
)


class Failed(AssertionError):
    """A story that ended badly: its seed, and what had happened until then."""


@dataclass
class Tally:
    """What many stories came to."""

    stories: int = 0
    steps: Counter[str] = field(default_factory=Counter)
    counts: Counts = field(default_factory=Counts)
    seconds: float = 0.0

    def add(self, steps: list[str], counts: Counts) -> None:
        self.stories += 1
        self.steps.update(steps)
        self.counts.confirmed += counts.confirmed
        self.counts.stored += counts.stored
        self.counts.held += counts.held
        self.counts.wiped += counts.wiped


def tell(seed: int, pattern: Path, steps: int = STEPS) -> tuple[list[str], Counts]:
    """One story. Raises Failed."""
    chance = Random(seed)
    valley = Valley(pattern, Random(chance.getrandbits(64)))
    told: list[str] = []
    kinds, weights = zip(*WEIGHTS, strict=True)
    valley.begin()
    try:
        told.extend(step(valley, chance) for step in chance.choices(kinds, weights, k=steps))
        valley.is_sound()
        valley.heals()
        valley.is_sound()
        return told, valley.all_is_well()
    except Exception as fault:
        raise Failed(f"seed {seed}: {fault!r}\n  " + "\n  ".join(told)) from fault
    finally:
        valley.end()


def tell_many(seeds: range, pattern: Path, said: Callable[[int], None]) -> Tally:
    """Story after story; `said` hears how many are through. Raises Failed at the first bad one."""
    tally, start = Tally(), time.monotonic()
    for seed in seeds:
        tally.add(*tell(seed, pattern))
        said(tally.stories)
    tally.seconds = time.monotonic() - start
    return tally
