"""A second factor for the log-in: codes of an app by the time of day (RFC 6238), recovery codes.

Six figures that change every thirty seconds, by SHA-1: what every such app can do. The server's
clock decides; one step to each side is let through, for a phone's clock that is a little off.
"""

import base64
import secrets
from dataclasses import dataclass
from hmac import compare_digest

from pyotp import TOTP

from undercroft.services import limits, tokens
from undercroft.services.clock import SECOND_MS
from undercroft.services.refusals import Conflict
from undercroft.store import second_factor as factors
from undercroft.store.database import writing

FIGURES = 6
STEP_S = 30
DRIFT = 1
"""Steps to each side; RFC 6238 5.2 lets through one at most."""

SECRET_BYTES = 20
"""As long as SHA-1's answer (RFC 4226 4, R6)."""

WRONG = "this code cannot be used: it is wrong, used up or too old"
SHOWN = "type the six figures that your app shows now"
WHICH = f"{SHOWN}, or a recovery code"

RECOVERY_CODES = 10
RECOVERY_LENGTH = 24
"""118 bits: ASVS 5.0 6.5.2 lets what has 112 or more be kept as a plain hash."""


@dataclass(frozen=True, slots=True)
class FactorSeen:
    """Whether a code is wanted at log-in, and how many recovery codes are left."""

    on_since: int | None
    recovery_codes_left: int


@dataclass(frozen=True, slots=True)
class FactorBegun:
    """`secret` in base32 goes into the app, by hand or with `address`; it is shown this once."""

    secret: str
    address: str


def seen(coach_id: str) -> FactorSeen:
    found = factors.factor_of(coach_id)
    since = None if found is None else found.on_since
    return FactorSeen(since, factors.recovery_codes_left(coach_id))


def is_on(coach_id: str) -> bool:
    found = factors.factor_of(coach_id)
    return found is not None and found.on_since is not None


def begin(coach_id: str, email: str) -> FactorBegun:
    """A new secret that opens and closes nothing until `turn_on`. Raises Conflict."""
    secret = base64.b32encode(secrets.token_bytes(SECRET_BYTES)).decode()
    with writing():
        if not factors.begin(coach_id, secret):
            raise _on_already()
    address = generator(secret).provisioning_uri(name=email, issuer_name="Undercroft")
    return FactorBegun(secret, address)


def turn_on(coach_id: str, typed: str, now: int) -> list[str] | None:
    """Recovery codes, told this once; None for a wrong code. Raises Conflict, TooOften."""
    limits.spend(limits.CODES, (coach_id,), now)
    found = factors.factor_of(coach_id)
    if found is None:
        raise Conflict("no second factor was begun", "begin with a new secret")
    step = _step_of(found.secret, tokens.tidy_code(typed), now)
    if step is None:
        return None
    codes = [tokens.new_code(length=RECOVERY_LENGTH) for _ in range(RECOVERY_CODES)]
    with writing():
        if not factors.turn_on(coach_id, found.secret, step, now):
            raise _on_already()
        factors.add_recovery_codes(coach_id, map(tokens.fingerprint, codes))
    return codes


def turn_off(coach_id: str) -> bool:
    """Whether one was on."""
    with writing():
        return factors.turn_off(coach_id)


def accepts(coach_id: str, typed: str, now: int) -> bool:
    """Whether this code is good, which uses it up. Raises TooOften.

    A recovery code is too long to be guessed: it opens the desk also where tries were used up.
    """
    tidy = tokens.tidy_code(typed)
    if len(tidy) == RECOVERY_LENGTH:
        with writing():
            return factors.use_recovery_code(coach_id, tokens.fingerprint(tidy))
    limits.spend(limits.CODES, (coach_id,), now)
    found = factors.factor_of(coach_id)
    step = None if found is None else _step_of(found.secret, tidy, now)
    if found is None or step is None:
        return False
    with writing():
        return factors.use_step(coach_id, found.secret, step)


def generator(secret: str, figures: int = FIGURES) -> TOTP:
    return TOTP(secret, digits=figures, interval=STEP_S)


def _step_of(secret: str, code: str, now: int) -> int | None:
    """The time step whose code this is, the latest of those let through; all are compared."""
    codes = generator(secret)
    present = now // (STEP_S * SECOND_MS)
    steps = range(present - DRIFT, present + DRIFT + 1)
    right = [
        step for step in steps if compare_digest(codes.generate_otp(step).encode(), code.encode())
    ]
    return max(right, default=None)


def _on_already() -> Conflict:
    return Conflict("a second factor is on already", "turn it off first")
