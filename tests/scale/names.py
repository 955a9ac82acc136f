"""Invented names, one after the other."""

from collections.abc import Iterator

FIRST = [
    "Tove",
    "Anouk",
    "Birk",
    "Casper",
    "Dagny",
    "Eskil",
    "Frida",
    "Gerrit",
    "Halla",
    "Ivo",
    "Jorun",
    "Kasimir",
    "Liv",
    "Mattis",
    "Nele",
    "Olin",
    "Petra",
    "Quirin",
    "Runa",
    "Sunniva",
]
LAST = [
    "Tealdi",
    "Varnholt",
    "Ostrim",
    "Kelvane",
    "Brunsel",
    "Haldorn",
    "Misterly",
    "Qvarn",
    "Sellrad",
    "Wintermo",
    "Ysgarde",
]
"""The counts share no divisor, so that 220 pairs come before the first is repeated."""


def names() -> Iterator[str]:
    """Without end; a number tells those apart that come round again."""
    for n in range(10**9):
        lap = n // (len(FIRST) * len(LAST))
        yield f"{FIRST[n % len(FIRST)]} {LAST[n % len(LAST)]}" + (f" {lap + 1}" if lap else "")
