"""Entries as a phone writes them: numbered without gaps, each with an id of its own."""

import uuid
from dataclasses import dataclass, field
from random import Random
from typing import Any


@dataclass
class Writer:
    """Counts 1, 2, 3… and makes ids of version 7 that rise with time."""

    n: int = 0
    at: str = "2026-02-03T18:04:11.250+01:00"
    clock_ms: int = 1_770_000_000_000
    random: Random = field(default_factory=Random)

    def entry(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
        """The next entry of this phone."""
        self.n += 1
        self.clock_ms += 1
        return {
            "id": uuid7(self.clock_ms, self.random),
            "v": 1,
            "n": self.n,
            "kind": kind,
            "replaces": None,
            "at": self.at,
            "revision": 1,
            "session": None,
            "set": None,
            "body": body or {},
            **fields,
        }

    def done(self, set_: str, *, session: str = "w1.mon", **body: Any) -> dict[str, Any]:
        """A set that was done."""
        outcome = {"load_kg": 92.5, "reps": 3, "rir": 4, **body}
        return self.entry("set.done", outcome, session=session, set=set_)

    def corrected(self, earlier: dict[str, Any], **body: Any) -> dict[str, Any]:
        """The same set again, with another outcome."""
        return self.entry(
            earlier["kind"],
            {**earlier["body"], **body},
            session=earlier["session"],
            set=earlier["set"],
            replaces=earlier["id"],
        )

    def many(self, count: int) -> list[dict[str, Any]]:
        """So many sets that were done."""
        return [self.done(f"squat.{self.n + 1}") for _ in range(count)]


def uuid7(ms: int, random: Random) -> str:
    """RFC 9562, version 7: the time in milliseconds, then chance."""
    number = (ms & ((1 << 48) - 1)) << 80 | 0x7 << 76 | random.getrandbits(12) << 64
    return str(uuid.UUID(int=number | 0b10 << 62 | random.getrandbits(62)))
