"""What may be a password, and whether one is right."""

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerifyMismatchError

from undercroft.documents.faults import Fault
from undercroft.services.refusals import Invalid

SHORTEST, LONGEST = 12, 200
"""ASVS 5.0 6.2.1 and 6.2.9: at least 8, better 15; 64 must be possible."""

LEAST_LEFT = 5
"""Different characters besides common words, the coach's own, rows, repetitions. Our own choice."""

WORDS = (
    "undercroft", "password", "passwort", "qwertyuiop", "qwertzuiop", "azertyuiop", "asdfghjkl",
    "zxcvbnm", "qwerty", "iloveyou", "letmein", "welcome", "sunshine", "princess", "football",
    "baseball", "superman", "administrator", "admin", "master", "dragon", "monkey", "login",
    "strength", "training", "coach", "athlete", "squat", "deadlift", "bench", "barbell", "secret",
)  # fmt: skip
"""Of those found at the head of every list of stolen passwords (from memory), and of the trade."""


def require_good(password: str, email: str, name: str) -> None:
    """Raises Invalid for one that is too short, too long or easily guessed."""
    if not SHORTEST <= len(password) <= LONGEST:
        raise _refused(
            f"the password has {len(password)} characters", f"take {SHORTEST} to {LONGEST}"
        )
    if len(_left(password, email, name)) < LEAST_LEFT:
        raise _refused(
            "the password is easily guessed: common words, your own name, rows or repetitions",
            "take three or four words that have nothing to do with each other",
        )


def matches(hasher: PasswordHasher, stored: str, password: str) -> bool:
    try:
        return hasher.verify(stored, password)
    except (VerifyMismatchError, InvalidHashError):
        return False


def _refused(what: str, right: str) -> Invalid:
    return Invalid(what, right, (Fault("the new password", "new", what, right),))


def _left(password: str, email: str, name: str) -> str:
    """What is not a common word, not the coach's own, and goes on no row or repetition."""
    left = password.casefold()
    own = [*email.casefold().replace("@", ".").split("."), *name.casefold().split()]
    for word in (*WORDS, *(word for word in own if len(word) > 3)):
        left = left.replace(word, "")
    kept = "".join(b for a, b in zip(" " + left, left, strict=False) if abs(ord(b) - ord(a)) > 1)
    return "".join(sorted(set(kept)))
