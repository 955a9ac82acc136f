"""Log-in of coaches, and their own accounts."""

from typing import Any

from flask import request

from undercroft.api import account_shapes as shapes
from undercroft.api import qr, sessions
from undercroft.api.context import address, wiring
from undercroft.api.contract import ANYONE, COACH, Section, by, gives, refuses, takes
from undercroft.services import account_changes, accounts, second_factor
from undercroft.services.accounts import CoachSeen, Given
from undercroft.services.refusals import CodeNeeded, Conflict, LogInNeeded, TooOften

section = Section("coach", "/api/v1/coach")


@section.post("/log-in")
@by(ANYONE)
@takes(shapes.LogIn)
@gives(shapes.CoachAnswer)
@refuses(LogInNeeded, CodeNeeded, TooOften)
def log_in(body: dict[str, str], now: int) -> CoachSeen:
    """Log in with e-mail address and password, and a code where one is wanted; sets a cookie."""
    agent = (request.user_agent.string or "unknown")[:200]
    token = accounts.log_in(wiring().hasher, Given(**body), address(), agent, now)
    sessions.end_coach_here()
    sessions.remember_coach(token)
    return accounts.coach_by_token(token, now)


@section.post("/log-out")
@by(COACH)
@gives(None)
def log_out(coach: CoachSeen) -> None:
    """End this log-in."""
    accounts.log_out(coach, coach.login_id)
    sessions.forget_coach()


@section.post("/password")
@by(COACH)
@takes(shapes.PasswordChange)
@gives(None)
@refuses(TooOften)
def change_password(coach: CoachSeen, body: dict[str, str], now: int) -> None:
    """Take another password; every other log-in ends."""
    account_changes.change_password(
        wiring().hasher, coach, body["old"], body["new"], body.get("code"), now
    )


@section.get("/me")
@by(COACH)
@gives(shapes.CoachAnswer)
def me(coach: CoachSeen) -> CoachSeen:
    """Who is logged in."""
    return coach


@section.get("/log-ins")
@by(COACH)
@gives(shapes.LogInsAnswer)
def log_ins(coach: CoachSeen) -> dict[str, Any]:
    """Where the coach is logged in, last used first."""
    return {"log_ins": accounts.log_ins(coach)}


@section.post("/log-ins/<log_in_id>/revoke")
@by(COACH)
@takes(shapes.PasswordAsked)
@gives(None)
@refuses(TooOften)
def revoke_log_in(coach: CoachSeen, log_in_id: str, body: dict[str, str], now: int) -> None:
    """End one of the coach's log-ins; asks for the password again."""
    account_changes.end_log_in(wiring().hasher, coach, log_in_id, body["password"], now)


@section.get("/second-factor")
@by(COACH)
@gives(shapes.FactorAnswer)
def show_factor(coach: CoachSeen) -> second_factor.FactorSeen:
    """Whether a log-in asks for a code, and how many recovery codes are left."""
    return second_factor.seen(coach.id)


@section.post("/second-factor/begin")
@by(COACH)
@gives(shapes.FactorBegun, 201)
@refuses(Conflict)
def begin_factor(coach: CoachSeen) -> dict[str, str]:
    """Make a secret for an app that makes codes; nothing asks for one yet."""
    begun = second_factor.begin(coach.id, coach.email)
    return {"secret": begun.secret, "qr": qr.svg_of(begun.address)}


@section.post("/second-factor/on")
@by(COACH)
@takes(shapes.FactorProof)
@gives(shapes.RecoveryCodes)
@refuses(Conflict, TooOften)
def turn_factor_on(coach: CoachSeen, body: dict[str, str], now: int) -> dict[str, list[str]]:
    """Ask for a code at log-in from now on; every other log-in ends."""
    proof = (body["password"], body["code"])
    return {"codes": account_changes.turn_factor_on(wiring().hasher, coach, *proof, now)}


@section.post("/second-factor/off")
@by(COACH)
@takes(shapes.FactorProof)
@gives(None)
@refuses(Conflict, TooOften)
def turn_factor_off(coach: CoachSeen, body: dict[str, str], now: int) -> None:
    """Let the password be enough again; every other log-in ends."""
    proof = (body["password"], body["code"])
    account_changes.turn_factor_off(wiring().hasher, coach, *proof, now)
