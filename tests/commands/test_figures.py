"""`undercroft figures`: every check value from outside is met, and one that is not is told."""

from dataclasses import replace

import pytest
from click.testing import CliRunner

from undercroft.cli import main
from undercroft.commands.figures import table
from undercroft.figures import REFUSED, ROWS, Mark, Row, checked

SUBJECTS = {
    "strength", "tracker", "bands", "chains", "rig and plates", "landmine", "pulley", "tipping",
    "plates", "occlusion", "session load", "weighted load", "tonnage", "change of a test",
}  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.subject}: {row.what}, {row.given}")
def test_a_value_from_outside_is_met(row: Row) -> None:
    done = checked(row)
    assert done.ok, f"expected {row.expected} within {row.within} ({row.source}), got {done.ours}"


def test_every_subject_has_its_rows() -> None:
    assert {row.subject for row in ROWS} == SUBJECTS


def test_every_row_names_its_source_and_how_well_it_is_known() -> None:
    assert all(row.what and row.source for row in ROWS)
    assert {row.mark for row in ROWS} == set(Mark)


def test_the_command_prints_one_line_a_row_and_ends_well() -> None:
    answer = CliRunner().invoke(main, ["figures"])
    assert answer.exit_code == 0
    lines = answer.stdout.splitlines()
    assert len(lines) == len(ROWS) + 2
    assert lines[-1] == f"{len(ROWS)} values from outside, 0 off"
    assert sum(line.endswith("  ok") for line in lines) == len(ROWS) + 1


def test_a_value_that_is_off_is_told_and_ends_with_1(monkeypatch: pytest.MonkeyPatch) -> None:
    off = replace(ROWS[0], expected=120.0)
    monkeypatch.setattr("undercroft.commands.figures.ROWS", (off,))
    answer = CliRunner().invoke(main, ["figures"])
    assert answer.exit_code == 1
    assert answer.stdout.splitlines()[1].endswith("OFF")
    assert "1 off" in answer.stdout


def test_a_number_where_none_may_come_out_is_off() -> None:
    row = replace(ROWS[0], expected=REFUSED)
    assert not checked(row).ok
    head, line = table([checked(row)])
    assert head.endswith("ok")
    assert line.endswith("OFF")
