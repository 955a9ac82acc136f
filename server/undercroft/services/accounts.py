"""Coaches: made at the command line, logged in by e-mail and password."""

from dataclasses import dataclass

from argon2 import PasswordHasher

from undercroft.services import limits, second_factor, tokens
from undercroft.services.clock import DAY_MS, MINUTE_MS
from undercroft.services.passwords import matches, require_good
from undercroft.services.refusals import CodeNeeded, Conflict, Invalid, LogInNeeded, NotFound
from undercroft.store import coaches
from undercroft.store.database import writing
from undercroft.store.models import Coach

LOGIN_MS = 30 * DAY_MS
"""A log-in ends after thirty days, used or not (own choice; ASVS 5.0 7.3.2)."""

IDLE_MS = 7 * DAY_MS
"""And after a week without use (own choice; ASVS 5.0 7.3.1)."""

TOUCH_MS = 5 * MINUTE_MS
"""How coarse "last used" may be: not every request writes."""

WRONG = "e-mail address and password do not belong together"


@dataclass(frozen=True, slots=True)
class CoachSeen:
    """The coach who is asking, and by which log-in."""

    id: str
    name: str
    email: str
    login_id: str


@dataclass(frozen=True, slots=True)
class Given:
    """What somebody who wants in has typed."""

    email: str
    password: str
    code: str | None = None


@dataclass(frozen=True, slots=True)
class LoginSeen:
    id: str
    agent: str
    created_at: int
    last_used_at: int
    expires_at: int
    this_one: bool


def make_hasher(*, cheap: bool = False) -> PasswordHasher:
    """Argon2id with the library's default cost (RFC 9106, low memory), or the least for tests."""
    return PasswordHasher(time_cost=1, memory_cost=8, parallelism=1) if cheap else PasswordHasher()


def add_coach(hasher: PasswordHasher, email: str, name: str, password: str, now: int) -> str:
    """Make a coach and return the id. Raises Invalid, Conflict."""
    email = tidy_email(email)
    if "@" not in email or len(email) > 254:
        raise Invalid(f"{email!r} is no e-mail address", "write one like coach@example.org")
    require_good(password, email, name)
    coach_id = tokens.new_id(now)
    with writing():
        if coaches.coach_by_email(email):
            raise Conflict(f"there is a coach with {email} already", "take another address")
        coaches.add_coach(coach_id, email, name, hasher.hash(password), now)
    return coach_id


def log_in(hasher: PasswordHasher, given: Given, address: str, agent: str, now: int) -> str:
    """A new log-in's token. Raises LogInNeeded, CodeNeeded, TooOften."""
    email = tidy_email(given.email)
    limits.spend(limits.LOG_IN, (address, tokens.fingerprint(email)), now)
    coach = _with_password(hasher, email, given.password)
    if second_factor.is_on(coach.id):
        _require_code(coach, given.code, now)
    token = tokens.new_token()
    with writing():
        coaches.remove_expired_logins(now)
        if hasher.check_needs_rehash(coach.password_hash):
            coaches.set_password_hash(coach.id, hasher.hash(given.password))
        coaches.add_login(
            tokens.new_id(now), coach.id, tokens.fingerprint(token), now, now + LOGIN_MS, agent
        )
    return token


def coach_by_token(token: str, now: int) -> CoachSeen:
    """Who is logged in with this token. Raises LogInNeeded."""
    login = coaches.login_by_token(tokens.fingerprint(token)) if token else None
    if login is None or login.expires_at <= now or login.last_used_at + IDLE_MS <= now:
        raise LogInNeeded("nobody is logged in here", "log in with e-mail address and password")
    if login.last_used_at + TOUCH_MS <= now:
        coaches.touch_login(login.id, now)
    coach = login.coach
    return CoachSeen(coach.id, coach.name, coach.email, login.id)


def log_ins(coach: CoachSeen) -> list[LoginSeen]:
    """Where the coach is logged in, last used first."""
    return [
        LoginSeen(
            row.id, row.agent, row.created_at, row.last_used_at, row.expires_at,
            row.id == coach.login_id,
        )
        for row in coaches.logins_of(coach.id)
    ]  # fmt: skip


def end(token: str) -> None:
    """End the log-in with this token, if there is one: another takes its place."""
    if token:
        coaches.remove_login_by_token(tokens.fingerprint(token))


def log_out(coach: CoachSeen, login_id: str) -> None:
    """End one of the coach's log-ins. Raises NotFound."""
    if not coaches.remove_login(coach.id, login_id):
        raise NotFound("there is no such log-in")


def tidy_email(email: str) -> str:
    return email.strip().casefold()


def _with_password(hasher: PasswordHasher, email: str, password: str) -> Coach:
    """Raises LogInNeeded.

    An unknown address costs as much time as a wrong password: one hash is worked out for either.
    """
    coach = coaches.coach_by_email(email)
    if coach is None:
        hasher.hash(password)
    if coach is None or not matches(hasher, coach.password_hash, password):
        raise LogInNeeded(WRONG, "check both; capitals count in the password")
    return coach


def _require_code(coach: Coach, code: str | None, now: int) -> None:
    if code is None:
        raise CodeNeeded("a code is wanted as well", second_factor.WHICH)
    if not second_factor.accepts(coach.id, code, now):
        raise LogInNeeded(second_factor.WRONG, second_factor.WHICH)
