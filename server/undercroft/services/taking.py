"""Take entries into the ledger: nothing lost, nothing doubled, nothing overwritten.

Sent twice is the same as once. What cannot be placed is held, and blocks nothing behind it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from undercroft.documents.entries import ID, Code, Trouble, as_whole, content_of, read_entry
from undercroft.domain.ledger import Entry
from undercroft.services.replanning import replan_safely
from undercroft.services.shelf import Shelf
from undercroft.store import entries
from undercroft.store.database import compact
from undercroft.store.entries import HELD, STORED, Known, Row
from undercroft.store.feed import last_position, take_positions

DUPLICATE = "duplicate"
LARGEST_N = 2**53 - 1

REVOKED = Trouble(
    Code.REVOKED, "device", "this device was unpaired", "the coach decides whether it counts"
)
UNKNOWN_DEVICE = Trouble(
    Code.UNKNOWN_DEVICE,
    "device",
    "the phone that wrote it was never paired with this server",
    "the coach decides whether it counts",
)
ID_TAKEN = Trouble(
    Code.ID_TAKEN, "id", "other content is here under this id", "take a new device id"
)
N_TAKEN = Trouble(
    Code.N_TAKEN, "n", "this device has sent another entry with this number", "take a new device id"
)


class Line(NamedTuple):
    """One entry as it came. `id` is made from the content where it has none that can be used."""

    raw: Any
    id: str
    n: int | None
    text: str
    digest: str


@dataclass(frozen=True, slots=True)
class Taken:
    """Verdicts in the order of the entries, as they go out; numbers and positions of new ones.

    `newest` is the device's highest number that was here before them; `end` the feed's last
    position once they are stored, what follows from them included.
    """

    verdicts: list[dict[str, Any]]
    numbers: list[int]
    newest: int
    positions: range
    end: int


def take_in(
    athlete_id: str,
    device_id: str,
    raws: Sequence[Any],
    now: int,
    *,
    after: int,
    hold: Trouble | None = None,
) -> Taken:
    """Store what is new and give a verdict for each: all of them are on disk after the commit.

    Call with the athlete's lock held. `after`: the last position given so far, as the lock told it;
    `hold`: why whatever is new has to be held.
    """
    lines = [_line(raw) for raw in raws]
    shelf = _shelf(athlete_id, device_id, lines)
    position = after
    verdicts: list[dict[str, Any]] = []
    rows: list[Row] = []
    stored: list[Entry] = []
    for line in lines:
        here = _here(shelf, line)
        if here is None:
            position += 1
            entry = _read(line, shelf, device_id, position, hold)
            row = _row(athlete_id, device_id, line, entry, position, shelf.twins(line.id), now)
            here = shelf.put(_known(row, entry))
            if line.n is not None:
                shelf.note_number(line.n, line.id)
            rows.append(row)
            if isinstance(entry, Entry):
                stored.append(entry)
            verdicts.append(_verdict(line, here, here.status))
        else:
            verdicts.append(_verdict(line, here, DUPLICATE if here.counts else HELD))
    positions = take_positions(athlete_id, len(rows))
    entries.add_rows(rows)
    if stored and replan_safely(athlete_id, stored, now):
        position = last_position(athlete_id)
    numbers = [row.n for row in rows if row.n is not None]
    return Taken(verdicts, numbers, shelf.newest, positions, position)


def already_here(athlete_id: str, raws: Sequence[Any]) -> int:
    """How many of these entries the server has, held ones among them."""
    lines = [_line(raw) for raw in raws]
    shelf = Shelf(entries.known_ids(athlete_id, [line.id for line in lines]))
    return sum(_here(shelf, line) is not None for line in lines)


def _here(shelf: Shelf, line: Line) -> Known | None:
    """The entry where the server has it; a phone paired anew gives what waits other numbers."""
    same = shelf.same(line.id, line.digest)
    if same is not None or line.n is None:
        return same
    return next((one for one in shelf.under(line.id) if _renumbered(line, one)), None)


def _renumbered(line: Line, known: Known) -> bool:
    if known.n is None or known.n == line.n:
        return False
    return content_of({**line.raw, "n": known.n}).digest == known.digest


def _line(raw: Any) -> Line:
    content = content_of(raw)
    fields = raw if type(raw) is dict else {}
    id_, n = fields.get("id"), as_whole(fields.get("n"))
    return Line(
        raw,
        str(id_) if ID.ok(id_) else f"nameless-{content.digest}",
        n if type(n) is int and 0 < n <= LARGEST_N else None,
        *content,
    )


def _shelf(athlete_id: str, device_id: str, lines: Sequence[Line]) -> Shelf:
    """What the server has under the ids of a batch, and under the numbers of what is new in it."""
    shelf = Shelf(entries.known_ids(athlete_id, [line.id for line in lines]))
    numbers = [
        line.n for line in lines if line.n is not None and not shelf.same(line.id, line.digest)
    ]
    if numbers:
        shelf.newest = entries.newest_number(athlete_id, device_id)
        # A phone counts upwards: as a rule none of them is here.
        taken = [n for n in numbers if n <= shelf.newest]
        for n, id_ in entries.known_numbers(athlete_id, device_id, taken):
            shelf.note_number(n, id_)
    return shelf


def _read(
    line: Line, shelf: Shelf, device_id: str, position: int, hold: Trouble | None
) -> Entry | Trouble:
    if hold is not None:
        return hold
    if shelf.twins(line.id):
        return ID_TAKEN
    if shelf.number_taken(line.n, line.id):
        return N_TAKEN
    return read_entry(line.raw, device_id, position)


def _row(
    athlete_id: str,
    device_id: str,
    line: Line,
    entry: Entry | Trouble,
    position: int,
    twin: int,
    now: int,
) -> Row:
    if isinstance(entry, Trouble):
        return Row(
            athlete_id, position, line.id, twin, device_id, line.n, None, "", None, now,
            None, None, None, None, None, line.digest, HELD,
            compact(entry.plain()), compact(line.raw),
        )  # fmt: skip
    return Row(
        athlete_id, position, line.id, twin, device_id, line.n, entry.v, entry.kind, entry.at, now,
        entry.revision, entry.session, entry.set, entry.replaces, line.text,
        line.digest, STORED, None, None,
    )  # fmt: skip


def _known(row: Row, entry: Entry | Trouble) -> Known:
    problem = entry.plain() if isinstance(entry, Trouble) else None
    return Known(row.id, row.digest, row.status, row.position, problem, None, row.n)


def _verdict(line: Line, here: Known, status: str) -> dict[str, Any]:
    """The id is said as it came, so that the phone knows it again."""
    id_ = line.raw.get("id") if type(line.raw) is dict else None
    verdict: dict[str, Any] = {
        "id": id_ if type(id_) is str else None,
        "status": status,
        "position": here.position,
    }
    if status == HELD and here.problem is not None:
        verdict["problem"] = here.problem
    return verdict
