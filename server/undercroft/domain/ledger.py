"""The ledger: what the athlete did."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the ledger. `at` is data, what the phone said; order never comes from it."""

    id: str
    kind: str
    at: str
    revision: int | None = None
    session: str | None = None
    set: str | None = None
    replaces: str | None = None
    body: Mapping[str, Any] = field(default_factory=dict)
    n: int = 0
    v: int = 1
    device: str = ""
    position: int = 0
