"""Log-in of coaches."""

from typing import Any

from flask import request

from undercroft.api import sessions, shapes
from undercroft.api.context import address, wiring
from undercroft.api.contract import ANYONE, COACH, Section, by, gives, refuses, takes
from undercroft.services import accounts
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import LogInNeeded, TooOften

section = Section("coach", "/api/v1/coach")


@section.post("/log-in")
@by(ANYONE)
@takes(shapes.LogIn)
@gives(shapes.CoachAnswer)
@refuses(LogInNeeded, TooOften)
def log_in(body: dict[str, str], now: int) -> CoachSeen:
    """Log in with e-mail address and password; the answer sets a cookie."""
    agent = (request.user_agent.string or "unknown")[:200]
    token = accounts.log_in(wiring().hasher, body["email"], body["password"], address(), agent, now)
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
    accounts.change_password(wiring().hasher, coach, body["old"], body["new"], now)


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
@gives(None)
def revoke_log_in(coach: CoachSeen, log_in_id: str) -> None:
    """End one of the coach's log-ins."""
    accounts.log_out(coach, log_in_id)
