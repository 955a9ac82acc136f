"""Keys of unfolded weeks and sessions: derived from the first week's, the same at every unfolding.

Exercises and sets keep theirs, which are unique within a session: what is done in week 3 answers
the line that week 3 got from week 1.
"""

from collections.abc import Collection
from hashlib import blake2s
from itertools import count

LONGEST = 64
DIGEST = 4
"""Bytes of the digest that stands in for the end of a key that would be too long."""


def derived(key: str, number: int, mark: str, taken: Collection[str] = ()) -> str:
    """`key` with `.{mark}{number}` behind it; with a digest where that is too long or taken."""
    ending = f".{mark}{number}"
    plain = key + ending
    if len(plain) <= LONGEST and plain not in taken:
        return plain
    room = LONGEST - len(ending) - 2 * DIGEST - 1
    digests = (blake2s(f"{key}/{n}".encode(), digest_size=DIGEST).hexdigest() for n in count())
    keys = (f"{key[:room]}.{digest}{ending}" for digest in digests)
    return next(one for one in keys if one not in taken)
