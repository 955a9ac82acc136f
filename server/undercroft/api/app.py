"""The application factory."""

import json
from typing import Any

from flask import Flask, request
from flask.json.provider import DefaultJSONProvider
from flask.sansio.app import App
from werkzeug.middleware.proxy_fix import ProxyFix

from undercroft.api import (
    about,
    calculators,
    coach,
    desk_athletes,
    desk_blocks,
    desk_exercises,
    desk_hand_over,
    desk_held,
    desk_kit,
    desk_leaving,
    desk_monitoring,
    desk_own,
    desk_proposals,
    desk_results,
    desk_screening,
    desk_sharing,
    desk_sheets,
    headers,
    logs,
    pairing,
    pictures,
    problems,
    sync,
    web,
)
from undercroft.api.context import Wiring, wire
from undercroft.config import Settings
from undercroft.services.accounts import make_hasher
from undercroft.services.clock import Clock, now_ms
from undercroft.services.connections import connect, disconnect, open_database

SECTIONS = (
    about.section,
    coach.section,
    pairing.section,
    sync.section,
    desk_athletes.section,
    desk_held.section,
    desk_hand_over.section,
    desk_kit.section,
    desk_blocks.section,
    desk_exercises.section,
    pictures.section,
    desk_results.section,
    desk_screening.section,
    desk_sharing.section,
    desk_leaving.section,
    desk_sheets.section,
    desk_monitoring.section,
    desk_own.section,
    desk_proposals.section,
    calculators.section,
)


class CompactJson(DefaultJSONProvider):
    """JSON as it is written, short, names in the given order.

    All ASCII: a lone surrogate in what was sent must not make an answer fail. Each answer takes the
    one encoder; the framework would make one for each.
    """

    def __init__(self, app: App) -> None:
        super().__init__(app)
        self._encode = json.JSONEncoder(separators=(",", ":"), default=self.default).encode

    def dumps(self, obj: Any, **options: Any) -> str:
        return super().dumps(obj, **options) if options else self._encode(obj)


def create_app(settings: Settings, clock: Clock = now_ms) -> Flask:
    """The application on `settings.database`, whose tables must be there (`store.migrate`)."""
    app = Flask("undercroft", static_folder=None)
    app.json = CompactJson(app)
    app.url_map.strict_slashes = False
    wire(app, Wiring(settings, clock, make_hasher(cheap=settings.cheap_passwords)))
    open_database(settings.database)
    problems.install(app)
    _connections(app)
    for section in SECTIONS:
        app.register_blueprint(section.blueprint)
    web.install(app)
    headers.install(app, secure=settings.secure)
    logs.install(app)
    hops = settings.proxy_hops
    if hops:
        app.wsgi_app = ProxyFix(app.wsgi_app, hops, hops, hops, 0, 0)  # type: ignore[method-assign]
    return app


def _connections(app: Flask) -> None:
    """A connection for each request to the API, given back when it ends, however it ends."""

    @app.before_request
    def _open() -> None:
        if request.path.startswith("/api/") and request.endpoint != "about.health":
            connect()

    @app.teardown_request
    def _close(_: BaseException | None) -> Any:
        disconnect()
