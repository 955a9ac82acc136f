"""The fold of a ledger as plain data, for vectors that every implementation must reproduce."""

from collections.abc import Iterable, Mapping
from typing import Any

from undercroft.domain.ledger import EVENTS, Entry, Ledger, SessionRecord, SetRecord


def plain_fold(ledger: Ledger) -> dict[str, Any]:
    """Sessions in the order of revision (none first) and key; events as lists of ids."""
    keys = sorted(ledger.sessions, key=lambda key: (key[0] or 0, key[1]))
    return {
        "sessions": [_session(key, ledger.sessions[key]) for key in keys],
        **{name: _ids(getattr(ledger, name)) for name in dict.fromkeys(EVENTS.values())},
    }


def _session(key: tuple[int | None, str], record: SessionRecord) -> dict[str, Any]:
    return {
        "revision": key[0],
        "session": key[1],
        "opened_at": record.opened_at,
        "started_at": record.started_at,
        "finished": record.finished and record.finished.id,
        "stopped": record.stopped and record.stopped.id,
        "sets": {name: _set(one) for name, one in record.sets.items()},
        "added": dict(record.added),
        "swaps": dict(record.swaps),
        "swapped": {name: [one.id for one in all_] for name, all_ in record.swapped.items()},
        "conflicts": list(record.conflicts),
        "wraps": _ids(record.wraps),
        "pains": _ids(record.pains),
    }


def _set(record: SetRecord) -> Mapping[str, Any]:
    return {
        "kind": record.kind,
        "id": record.id,
        "at": record.at,
        "body": dict(record.body),
        "conflict": record.conflict,
        "added_to": record.added_to,
        "sides": {side: one.id for side, one in record.sides.items()},
        "first": record.first,
    }


def _ids(entries: Iterable[Entry]) -> list[str]:
    return [entry.id for entry in entries]
