"""What a coach changes of the own account: each asks for the present password again.

A browser left open must be enough for none of it. Where a second factor is on, another password
and turning the factor off ask for a code as well: only after the password, so that a wrong one
learns nothing of it.
"""

from argon2 import PasswordHasher

from undercroft.documents.faults import Fault
from undercroft.services import accounts, limits, second_factor, tokens
from undercroft.services.accounts import CoachSeen
from undercroft.services.passwords import matches, require_good
from undercroft.services.refusals import Conflict, Invalid, NotFound
from undercroft.store import coaches
from undercroft.store.database import writing
from undercroft.store.models import Coach


def change_password(
    hasher: PasswordHasher, coach: CoachSeen, old: str, new: str, code: str | None, now: int
) -> None:
    """Take another password; every other log-in ends. Raises Invalid, TooOften."""
    _require_password(hasher, coach, old, "old", now)
    require_good(new, coach.email, coach.name)
    if second_factor.is_on(coach.id):
        _require_code(coach, code, now)
    made = hasher.hash(new)
    with writing():
        coaches.set_password_hash(coach.id, made)
        coaches.remove_other_logins(coach.id, coach.login_id)


def turn_factor_on(
    hasher: PasswordHasher, coach: CoachSeen, password: str, code: str, now: int
) -> list[str]:
    """From now on a log-in asks for a code; every other one ends. Returns the recovery codes.

    Raises Invalid, Conflict, TooOften.
    """
    _require_password(hasher, coach, password, "password", now)
    codes = second_factor.turn_on(coach.id, code, now)
    if codes is None:
        raise _no_code(second_factor.WRONG, second_factor.SHOWN)
    coaches.remove_other_logins(coach.id, coach.login_id)
    return codes


def turn_factor_off(
    hasher: PasswordHasher, coach: CoachSeen, password: str, code: str, now: int
) -> None:
    """The password alone is enough again; every other log-in ends.

    Raises Invalid, Conflict, TooOften.
    """
    _require_password(hasher, coach, password, "password", now)
    if not second_factor.is_on(coach.id):
        raise Conflict("no second factor is on", "there is nothing to turn off")
    _require_code(coach, code, now)
    second_factor.turn_off(coach.id)
    coaches.remove_other_logins(coach.id, coach.login_id)


def end_log_in(
    hasher: PasswordHasher, coach: CoachSeen, login_id: str, password: str, now: int
) -> None:
    """End one of the coach's log-ins. Raises NotFound, Invalid, TooOften."""
    if all(row.id != login_id for row in coaches.logins_of(coach.id)):
        raise NotFound("there is no such log-in")
    _require_password(hasher, coach, password, "password", now)
    accounts.log_out(coach, login_id)


def reset_password(hasher: PasswordHasher, email: str, new: str) -> str:
    """Another password for a coach who has forgotten it, by whoever runs the server.

    All log-ins end, a second factor stays; the coach's name is returned. Raises Invalid, NotFound.
    """
    row = _coach_of(email)
    require_good(new, row.email, row.name)
    with writing():
        coaches.set_password_hash(row.id, hasher.hash(new))
        coaches.remove_logins(row.id)
    return str(row.name)


def drop_lost_factor(email: str) -> str:
    """Turn off the second factor of a coach who has lost it, by whoever runs the server.

    All log-ins end; the coach's name is returned. Raises NotFound, Conflict.
    """
    row = _coach_of(email)
    if not second_factor.turn_off(row.id):
        raise Conflict(f"{row.name} has no second factor", "the password alone opens the desk")
    coaches.remove_logins(row.id)
    return str(row.name)


def _coach_of(email: str) -> Coach:
    """Raises NotFound."""
    found = coaches.coach_by_email(accounts.tidy_email(email))
    if found is None:
        raise NotFound(f"no coach has the address {email}")
    return found


def _require_password(
    hasher: PasswordHasher, coach: CoachSeen, given: str, at: str, now: int
) -> None:
    """Raises Invalid, TooOften: it is guessed no oftener here than at the log-in."""
    limits.spend(limits.LOG_IN, (tokens.fingerprint(coach.email),), now)
    row = coaches.coach_by_email(coach.email)
    if row is None or not matches(hasher, row.password_hash, given):
        what, right = "this is not your password", "check it; capitals count"
        raise Invalid(what, right, (Fault("the present password", at, what, right),))


def _require_code(coach: CoachSeen, code: str | None, now: int) -> None:
    if code is None:
        raise _no_code("a code is wanted as well", second_factor.WHICH)
    if not second_factor.accepts(coach.id, code, now):
        raise _no_code(second_factor.WRONG, second_factor.WHICH)


def _no_code(what: str, right: str) -> Invalid:
    return Invalid(what, right, (Fault("the code", "code", what, right),))
