"""undercroft figures: every check value from outside, beside what this program makes of it."""

from collections.abc import Iterable, Iterator

import click

from undercroft.figures import ROWS, Checked, checked
from undercroft.figures.row import Value

OFF = 1
"""Exit status where a value is off."""

HEAD = ("what", "inputs", "expected", "ours", "within", "source", "mark", "ok")


@click.command()
def figures() -> None:
    """Hold this program against check values from outside.

    The exit status is 1 if any is off.
    """
    done = [checked(row) for row in ROWS]
    for line in table(done):
        click.echo(line)
    off = sum(not one.ok for one in done)
    click.echo(f"{len(done)} values from outside, {off} off")
    if off:
        raise SystemExit(OFF)


def table(done: Iterable[Checked]) -> Iterator[str]:
    """Lines with columns of one width, the head first."""
    lines = [HEAD, *map(_cells, done)]
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    for line in lines:
        cells = (cell.ljust(width) for cell, width in zip(line, widths, strict=True))
        yield "  ".join(cells).rstrip()


def _cells(one: Checked) -> tuple[str, ...]:
    row = one.row
    return (
        f"{row.subject}: {row.what}",
        row.given,
        _value(row.expected),
        _value(one.ours),
        f"{row.within:.3g}",
        row.source,
        row.mark.value,
        "ok" if one.ok else "OFF",
    )


def _value(value: Value) -> str:
    return value if isinstance(value, str) else f"{value:.7g}"
