"""Tying a phone to an athlete: an invitation by link or QR, or a code to be typed.

Unknown, wrong, used, revoked and expired are all refused in the same words: a guesser learns
nothing. Looking consumes nothing; accepting uses up in one statement.
"""

from dataclasses import dataclass
from hmac import compare_digest

from undercroft.services import devices, limits, tokens
from undercroft.services.clock import DAY_MS, MINUTE_MS
from undercroft.services.refusals import NotFound
from undercroft.store import pairing
from undercroft.store.database import writing
from undercroft.store.feed import hold
from undercroft.store.migrate import epoch
from undercroft.store.models import Invitation, PairingCode

INVITATION_MS = 7 * DAY_MS
CODE_MS = 10 * MINUTE_MS
CODE_TRIES = 5


@dataclass(frozen=True, slots=True)
class Invited:
    """Who invites whom, until when."""

    coach: str
    athlete_id: str
    athlete: str
    expires_at: int


@dataclass(frozen=True, slots=True)
class InvitationSeen:
    id: str
    created_at: int
    expires_at: int
    used_at: int | None
    revoked_at: int | None


@dataclass(frozen=True, slots=True)
class Paired:
    """`token` goes into the phone's cookie and nowhere else."""

    token: str
    device: str
    invited: Invited
    epoch: str


def invite(athlete_id: str, now: int) -> tuple[str, str, int]:
    """A new invitation: its id, its secret, until when."""
    invitation_id, secret = tokens.new_id(now), tokens.new_token()
    expires_at = now + INVITATION_MS
    with hold(athlete_id):
        pairing.add_invitation(
            invitation_id, athlete_id, tokens.fingerprint(secret), now, expires_at
        )
    return invitation_id, secret, expires_at


def invitations(athlete_id: str) -> list[InvitationSeen]:
    """Newest first, used and revoked ones among them."""
    return [
        InvitationSeen(row.id, row.created_at, row.expires_at, row.used_at, row.revoked_at)
        for row in pairing.invitations_of(athlete_id)
    ]


def revoke_invitation(athlete_id: str, invitation_id: str, now: int) -> None:
    """Raises NotFound."""
    if not pairing.revoke_invitation(athlete_id, invitation_id, now):
        raise NotFound("this athlete has no such invitation")


def make_code(athlete_id: str, now: int, invitation_id: str | None = None) -> tuple[str, int]:
    """A code for the athlete and until when; it makes earlier codes void."""
    code, expires_at = tokens.new_code(), now + CODE_MS
    with hold(athlete_id):
        pairing.remove_old_codes(athlete_id)
        pairing.add_code(
            tokens.fingerprint(code),
            code[: tokens.SELECTOR_LENGTH],
            athlete_id,
            invitation_id,
            expires_at,
            CODE_TRIES,
        )
    return code, expires_at


def code_for_secret(secret: str, address: str, now: int) -> tuple[str, int]:
    """A code made on the page of an opened invitation. Raises NotFound, TooOften."""
    limits.spend(limits.PAIRING, (address,), now)
    invitation = _invitation(secret, now)
    return make_code(invitation.athlete_id, now, invitation.id)


def look(secret: str | None, code: str | None, address: str, now: int) -> Invited:
    """Who invites whom; uses nothing up, save a try for a wrong code.

    Raises NotFound, TooOften.
    """
    limits.spend(limits.PAIRING, (address,), now)
    return _invited(_code(code, now) if code is not None else _invitation(secret or "", now))


def accept(
    secret: str | None, code: str | None, device_name: str, address: str, now: int
) -> Paired:
    """Use up the invitation or code and make a device. Raises NotFound, TooOften."""
    limits.spend(limits.PAIRING, (address,), now)
    way = _code(code, now) if code is not None else _invitation(secret or "", now)
    invited = _invited(way)
    with writing():
        if not _use(way, now):
            raise _unusable()
        device_id, token = devices.pair(invited.athlete_id, device_name, now)
    return Paired(token, device_id, invited, epoch())


def unpair(device: devices.DeviceSeen, now: int) -> None:
    """The phone gives up its pairing; what it stored stays."""
    devices.revoke(device.athlete_id, device.id, now)


def _use(way: Invitation | PairingCode, now: int) -> bool:
    """A code made from an invitation uses that up as well."""
    if isinstance(way, Invitation):
        return pairing.use_invitation(way.id, now)
    if not pairing.use_code(way.code_hash, now):
        return False
    return way.invitation_id is None or pairing.use_invitation(way.invitation_id, now)


def _invited(way: Invitation | PairingCode) -> Invited:
    athlete = way.athlete
    return Invited(athlete.coach.name, athlete.id, athlete.name, way.expires_at)


def _invitation(secret: str, now: int) -> Invitation:
    found = pairing.open_invitation(tokens.fingerprint(secret), now)
    if found is None:
        raise _unusable()
    return found


def _code(typed: str, now: int) -> PairingCode:
    """A wrong code costs a try of the codes whose first half was right."""
    tidy = tokens.tidy_code(typed)
    fingerprint = tokens.fingerprint(tidy)
    with writing():
        found = None
        for code in pairing.live_codes(tidy[: tokens.SELECTOR_LENGTH], now):
            if compare_digest(code.code_hash, fingerprint):
                found = code
            else:
                pairing.cost_a_try(code.code_hash)
    if found is None:
        raise _unusable()
    return found


def _unusable() -> NotFound:
    return NotFound("this invitation or code cannot be used: it is wrong, used up or too old")
