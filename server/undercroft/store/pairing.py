"""Invitations and pairing codes. Each is used up in one statement, so only one phone can win."""

from undercroft.store.models import Athlete, Coach, Invitation, PairingCode


def add_invitation(
    invitation_id: str, athlete_id: str, secret_hash: str, now: int, expires_at: int
) -> None:
    Invitation.insert(
        id=invitation_id,
        athlete=athlete_id,
        secret_hash=secret_hash,
        created_at=now,
        expires_at=expires_at,
    ).execute()


def invitations_of(athlete_id: str) -> list[Invitation]:
    return list(
        Invitation.select()
        .where(Invitation.athlete == athlete_id)
        .order_by(Invitation.created_at.desc(), Invitation.id)
    )


def revoke_invitation(athlete_id: str, invitation_id: str, now: int) -> bool:
    """Whether the athlete has such an invitation; codes made from it die with it."""
    mine = (Invitation.id == invitation_id) & (Invitation.athlete == athlete_id)
    Invitation.update(revoked_at=now).where(mine, Invitation.revoked_at.is_null()).execute()
    return bool(Invitation.select().where(mine).exists())


def revoke_all(athlete_id: str, now: int) -> None:
    """Neither a link nor a code that was made so far pairs a phone with the athlete."""
    mine = Invitation.update(revoked_at=now).where(Invitation.athlete == athlete_id)
    mine.where(Invitation.revoked_at.is_null(), Invitation.used_at.is_null()).execute()
    remove_old_codes(athlete_id)


def open_invitation(secret_hash: str, now: int) -> Invitation | None:
    """The invitation with its athlete and coach, if it can still be used."""
    return (
        Invitation.select(Invitation, Athlete, Coach)
        .join(Athlete)
        .join(Coach)
        .where(Invitation.secret_hash == secret_hash, *_open(now))
        .get_or_none()
    )


def use_invitation(invitation_id: str, now: int) -> bool:
    """Use it up; False when somebody else was faster or it has expired meanwhile."""
    used = Invitation.update(used_at=now).where(Invitation.id == invitation_id, *_open(now))
    return bool(used.execute())


def _open(now: int) -> tuple[object, ...]:
    return (
        Invitation.used_at.is_null(),
        Invitation.revoked_at.is_null(),
        Invitation.expires_at > now,
    )


def add_code(
    code_hash: str,
    selector: str,
    athlete_id: str,
    invitation_id: str | None,
    expires_at: int,
    tries: int,
) -> None:
    PairingCode.insert(
        code_hash=code_hash,
        selector=selector,
        athlete=athlete_id,
        invitation=invitation_id,
        expires_at=expires_at,
        tries_left=tries,
    ).execute()


def live_codes(selector: str, now: int) -> list[PairingCode]:
    """Codes that begin so and can still be used, with athlete and coach."""
    return list(
        PairingCode.select(PairingCode, Athlete, Coach)
        .join(Athlete)
        .join(Coach)
        .where(PairingCode.selector == selector, *_live(now))
    )


def cost_a_try(code_hash: str) -> None:
    PairingCode.update(tries_left=PairingCode.tries_left - 1).where(
        PairingCode.code_hash == code_hash
    ).execute()


def use_code(code_hash: str, now: int) -> bool:
    """Use it up; False when somebody else was faster or it has expired meanwhile."""
    used = PairingCode.update(used_at=now).where(PairingCode.code_hash == code_hash, *_live(now))
    return bool(used.execute())


def remove_old_codes(athlete_id: str) -> None:
    """One code at a time: a new one makes the athlete's earlier ones void."""
    PairingCode.delete().where(PairingCode.athlete == athlete_id).execute()


def _live(now: int) -> tuple[object, ...]:
    return (
        PairingCode.used_at.is_null(),
        PairingCode.tries_left > 0,
        PairingCode.expires_at > now,
    )
