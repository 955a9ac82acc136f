"""Second factors of coaches; each code is used up in one statement, whichever process asks."""

from collections.abc import Iterable
from typing import NamedTuple

from undercroft.store.sql import rows, run, run_many


class FactorRow(NamedTuple):
    """`on_since` is None until a code has shown that the coach's app has the secret."""

    secret: str
    on_since: int | None


def factor_of(coach_id: str) -> FactorRow | None:
    found = rows("SELECT secret, on_since FROM second_factor WHERE coach_id = ?", coach_id)
    return FactorRow(*found[0]) if found else None


def begin(coach_id: str, secret: str) -> bool:
    """Keep a secret that is not on yet, in place of an earlier one; not where one is on."""
    return bool(
        rows(
            "INSERT INTO second_factor (coach_id, secret, last_step) VALUES (?, ?, 0)"
            " ON CONFLICT (coach_id) DO UPDATE SET secret = excluded.secret"
            " WHERE second_factor.on_since IS NULL RETURNING coach_id",
            coach_id,
            secret,
        )
    )


def turn_on(coach_id: str, secret: str, step: int, now: int) -> bool:
    """Whether this secret was waiting for it; the code of that step is used up by it."""
    return bool(
        rows(
            "UPDATE second_factor SET on_since = ?, last_step = ?"
            " WHERE coach_id = ? AND secret = ? AND on_since IS NULL RETURNING coach_id",
            now,
            step,
            coach_id,
            secret,
        )
    )


def use_step(coach_id: str, secret: str, step: int) -> bool:
    """Whether no code of this time step or a later one was used yet; from now on one is."""
    return bool(
        rows(
            "UPDATE second_factor SET last_step = ? WHERE coach_id = ? AND secret = ?"
            " AND on_since IS NOT NULL AND last_step < ? RETURNING coach_id",
            step,
            coach_id,
            secret,
            step,
        )
    )


def turn_off(coach_id: str) -> bool:
    """Whether one was on. Its recovery codes go with it."""
    run("DELETE FROM recovery_code WHERE coach_id = ?", coach_id)
    gone = rows("DELETE FROM second_factor WHERE coach_id = ? RETURNING on_since", coach_id)
    return bool(gone) and gone[0][0] is not None


def add_recovery_codes(coach_id: str, hashes: Iterable[str]) -> None:
    run_many(
        "INSERT INTO recovery_code (coach_id, code_hash) VALUES (?, ?)",
        [(coach_id, one) for one in hashes],
    )


def use_recovery_code(coach_id: str, code_hash: str) -> bool:
    """Whether there was such a code; now there is none."""
    return bool(
        rows(
            "DELETE FROM recovery_code WHERE coach_id = ? AND code_hash = ? RETURNING coach_id",
            coach_id,
            code_hash,
        )
    )


def recovery_codes_left(coach_id: str) -> int:
    ((count,),) = rows("SELECT COUNT(*) FROM recovery_code WHERE coach_id = ?", coach_id)
    return int(count)
