"""Ids, tokens and codes, and their fingerprints; only fingerprints are kept."""

import hashlib
import secrets
import uuid
from collections.abc import Callable

CODE_ALPHABET = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Digits and capitals without 0 O, 1 I L and U, which are misread or make words."""

CODE_LENGTH = 8
SELECTOR_LENGTH = 4

Choose = Callable[[str], str]


def new_id(now: int) -> str:
    """A UUID of version 7 (RFC 9562): 48 bits of time in milliseconds, 74 bits of chance."""
    chance = secrets.randbits(74)
    number = (now & ((1 << 48) - 1)) << 80 | 0x7 << 76 | (chance >> 62) << 64
    return str(uuid.UUID(int=number | 0b10 << 62 | (chance & ((1 << 62) - 1))))


def new_token() -> str:
    """256 bits of chance as text that an address can hold."""
    return secrets.token_urlsafe(32)


def fingerprint(token: str) -> str:
    """What is kept of a token. Tokens are long and random: a plain hash cannot be guessed back."""
    return hashlib.sha256(token.encode("utf-8", "surrogatepass")).hexdigest()


def new_code(choose: Choose = secrets.choice, length: int = CODE_LENGTH) -> str:
    """Characters to be typed. Eight are about 39 bits, guarded by ten minutes and five tries."""
    return "".join(choose(CODE_ALPHABET) for _ in range(length))


def tidy_code(typed: str) -> str:
    """The code as it was made, from what a person typed: spaces, dashes, small letters."""
    return "".join(c for c in typed.upper() if c.isalnum())
