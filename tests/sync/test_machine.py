"""Devices, server, network and coach in any order that chance comes upon; then all is healed.

Hypothesis picks the steps here, a seed picks them in `tests.chaos`; the valley is the same.
"""

from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from tests.chaos.story import tell
from tests.chaos.valley import DEVICES, Valley
from tests.sync.network import FAULTS

PAST_FAILURES = (204, 101_989)
"""Seeds of stories that once ended badly."""


class Machine(RuleBasedStateMachine):
    """Two phones of one athlete, a coach, a server on a SQLite file, and a bad network."""

    pattern: Path
    valley: Valley | None = None
    which = st.integers(0, DEVICES - 1)

    @initialize(seed=st.integers(0, 2**32))
    def begin(self, seed: int) -> None:
        self.valley = Valley(self.pattern, Random(seed))
        self.valley.begin()

    @property
    def here(self) -> Valley:
        assert self.valley is not None
        return self.valley

    @rule(which=which, reps=st.lists(st.integers(1, 9), min_size=1, max_size=5))
    def does_some_sets(self, which: int, reps: list[int]) -> None:
        self.here.does_sets(which, reps)

    @rule(which=which)
    def corrects_something_it_knows_of(self, which: int) -> None:
        self.here.corrects_something(which)

    @rule(which=which)
    def writes_what_this_server_cannot_read(self, which: int) -> None:
        self.here.writes_what_this_server_cannot_read(which)

    @rule(which=which)
    def has_its_clock_moved(self, which: int) -> None:
        self.here.moves_its_clock(which)

    @rule(which=which, fault=st.sampled_from(sorted(FAULTS)))
    def meets_a_fault(self, which: int, fault: str) -> None:
        self.here.meets(which, fault)

    @rule(which=which, most=st.integers(1, 5))
    def syncs(self, which: int, most: int) -> None:
        self.here.syncs(which, most)

    @rule(which=which, most=st.integers(1, 3))
    def sends_its_outbox_in_any_order(self, which: int, most: int) -> None:
        self.here.syncs_in_any_order(which, most)

    @rule(which=which)
    def is_wiped_and_paired_again(self, which: int) -> None:
        self.here.is_wiped_and_paired_again(which)

    @rule(which=which)
    def is_revoked_and_paired_again(self, which: int) -> None:
        self.here.is_revoked_and_paired_again(which)

    @rule()
    def coach_changes_a_sheet(self) -> None:
        self.here.coach_changes_a_sheet()

    @rule()
    def server_starts_anew(self) -> None:
        self.here.server_starts_anew()

    @rule()
    def operator_takes_a_backup(self) -> None:
        self.here.takes_a_backup()

    @rule()
    def operator_restores_it(self) -> None:
        self.here.restores_it()

    @invariant()
    def the_database_is_sound(self) -> None:
        if self.valley is not None:
            self.valley.is_sound()

    def teardown(self) -> None:
        if self.valley is None:
            return
        try:
            self.valley.heals()
            self.valley.all_is_well()
        finally:
            self.valley.end()


def test_whatever_happens_nothing_is_lost_or_doubled_and_all_agree(sqlite_pattern: Path) -> None:
    machine = type("MachineOnFile", (Machine,), {"pattern": sqlite_pattern})
    machine.TestCase.settings = settings(
        max_examples=40,
        stateful_step_count=25,
        deadline=None,
        # Making a failing story shorter would take minutes; 25 steps can be read as they are.
        phases=[Phase.explicit, Phase.reuse, Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    test = machine.TestCase()
    test.runTest()


@pytest.mark.parametrize("seed", [*range(1, 41), *PAST_FAILURES])
def test_a_story_from_a_seed_ends_well(seed: int, sqlite_pattern: Path) -> None:
    """More of them: python -m tests.chaos --sequences 10000."""
    told, counts = tell(seed, sqlite_pattern)
    assert len(told) == 30
    assert counts.stored + counts.held + counts.wiped >= counts.confirmed
