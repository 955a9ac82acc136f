"""Coaches and the browsers in which they are logged in."""

from undercroft.store.models import Coach, CoachLogin


def add_coach(coach_id: str, email: str, name: str, password_hash: str, now: int) -> None:
    Coach.insert(
        id=coach_id, email=email, name=name, password_hash=password_hash, created_at=now
    ).execute()


def coach_by_email(email: str) -> Coach | None:
    return Coach.get_or_none(Coach.email == email)


def set_password_hash(coach_id: str, password_hash: str) -> None:
    Coach.update(password_hash=password_hash).where(Coach.id == coach_id).execute()


def add_login(
    login_id: str, coach_id: str, token_hash: str, now: int, expires_at: int, agent: str
) -> None:
    CoachLogin.insert(
        id=login_id,
        coach=coach_id,
        token_hash=token_hash,
        created_at=now,
        last_used_at=now,
        expires_at=expires_at,
        agent=agent,
    ).execute()


def login_by_token(token_hash: str) -> CoachLogin | None:
    """The log-in with its coach, expired or not."""
    return (
        CoachLogin.select(CoachLogin, Coach)
        .join(Coach)
        .where(CoachLogin.token_hash == token_hash)
        .get_or_none()
    )


def touch_login(login_id: str, now: int) -> None:
    CoachLogin.update(last_used_at=now).where(CoachLogin.id == login_id).execute()


def logins_of(coach_id: str) -> list[CoachLogin]:
    return list(
        CoachLogin.select()
        .where(CoachLogin.coach == coach_id)
        .order_by(CoachLogin.last_used_at.desc(), CoachLogin.id)
    )


def remove_login(coach_id: str, login_id: str) -> bool:
    """Whether there was such a log-in of this coach."""
    gone = CoachLogin.delete().where(CoachLogin.id == login_id, CoachLogin.coach == coach_id)
    return bool(gone.execute())


def remove_other_logins(coach_id: str, login_id: str) -> None:
    """All of the coach's but this one."""
    CoachLogin.delete().where(CoachLogin.coach == coach_id, CoachLogin.id != login_id).execute()


def remove_logins(coach_id: str) -> None:
    """All of the coach's."""
    CoachLogin.delete().where(CoachLogin.coach == coach_id).execute()


def remove_login_by_token(token_hash: str) -> None:
    CoachLogin.delete().where(CoachLogin.token_hash == token_hash).execute()


def remove_expired_logins(now: int) -> None:
    CoachLogin.delete().where(CoachLogin.expires_at <= now).execute()
