"""What one app was made with: settings, clock, password hasher."""

from dataclasses import dataclass

from argon2 import PasswordHasher
from flask import Flask, current_app, request

from undercroft.config import Settings
from undercroft.services.clock import Clock

NAME = "undercroft"


@dataclass(frozen=True, slots=True)
class Wiring:
    settings: Settings
    clock: Clock
    hasher: PasswordHasher


def wire(app: Flask, wiring: Wiring) -> None:
    app.extensions[NAME] = wiring


def wiring() -> Wiring:
    found: Wiring = current_app.extensions[NAME]
    return found


def settings() -> Settings:
    return wiring().settings


def now() -> int:
    """Milliseconds since 1970, by this app's clock."""
    return wiring().clock()


def origin() -> str:
    """Scheme and host under which people reach this server."""
    return settings().origin or request.host_url.rstrip("/")


def address() -> str:
    """Where the request came from, for limits; behind proxies see `proxy_hops`."""
    return request.remote_addr or "unknown"
