"""Documents from files, and their faults on the terminal: exit status 2 with place and mend."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, NoReturn, TypeVar

import click

from undercroft.documents.block_table import read_block_csv
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import parse_json, read_block
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block
from undercroft.domain.program.finding import Finding

REFUSED = 2
"""Exit status of a document that was refused."""

T = TypeVar("T")


def read_file(path: Path, read: Callable[[Any], T]) -> T:
    """The document in a JSON file. Faults end the program."""
    return _or_exit(path, lambda: read(parse_json(_text(path))))


def read_block_file(path: Path, known: Catalogue) -> Block:
    """The block in a .json or .csv file. Faults end the program."""
    if path.suffix.lower() == ".csv":
        return _or_exit(path, lambda: read_block_csv(_text(path), known))
    return read_file(path, lambda data: read_block(data, known))


def refuse(path: Path, faults: Iterable[Fault | Finding]) -> NoReturn:
    """Print every fault with its place and mend, and end."""
    listed = list(faults)
    word = "fault" if len(listed) == 1 else "faults"
    click.echo(f"{path}: refused, {len(listed)} {word}", err=True)
    for fault in listed:
        click.echo(f"  {fault.where}: {fault.what}; {fault.right}", err=True)
    raise SystemExit(REFUSED)


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        fault = Fault("the file", "", "is no UTF-8 text", "save it as UTF-8")
        raise FaultyDocument((fault,)) from None


def _or_exit(path: Path, read: Callable[[], T]) -> T:
    try:
        return read()
    except FaultyDocument as fault:
        refuse(path, fault.faults)
