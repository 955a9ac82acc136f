"""Run the application in waitress, and stop it without breaking off what it has begun."""

import gc
import logging
import signal
import threading
import time
from collections.abc import Callable
from typing import Any

import waitress
from flask import Flask
from waitress import wasyncore
from waitress.channel import HTTPChannel

from undercroft.config import Settings

LARGEST_BODY = 16 * 1024 * 1024
LONGEST_STOP_S = 15.0

log = logging.getLogger("undercroft.serving")

Sockets = dict[int, Any]


def serve(app: Flask, settings: Settings, say: Callable[[str], None]) -> None:
    """Serve until SIGTERM or SIGINT; then finish the requests under way and return."""
    sockets: Sockets = {}
    server = waitress.create_server(
        app,
        map=sockets,
        host=settings.host,
        port=settings.port,
        threads=settings.threads,
        max_request_body_size=LARGEST_BODY,
        ident=None,
        clear_untrusted_proxy_headers=settings.proxy_hops == 0,
    )
    stop = _stop_on_signal()
    for address in _addresses(server):
        say(f"Undercroft listens on {address}")
    # What the program itself is made of need not be searched for garbage again and again.
    gc.collect()
    gc.freeze()
    while not stop.is_set():
        wasyncore.loop(timeout=0.5, map=sockets, use_poll=True, count=1)
    _stop_listening(sockets)
    _drain(sockets)
    server.task_dispatcher.shutdown(cancel_pending=True, timeout=LONGEST_STOP_S)
    log.info("stopped")


def _addresses(server: Any) -> list[str]:
    listening = getattr(server, "effective_listen", None)
    pairs = listening or [(server.effective_host, server.effective_port)]
    return [f"http://{f'[{host}]' if ':' in host else host}:{port}" for host, port in pairs]


def _stop_on_signal() -> threading.Event:
    stop = threading.Event()
    for number in (signal.SIGTERM, signal.SIGINT):
        signal.signal(number, lambda *_: stop.set())
    return stop


def _stop_listening(sockets: Sockets) -> None:
    for listener in [item for item in sockets.values() if getattr(item, "accepting", False)]:
        listener.del_channel(sockets)
        listener.socket.close()


def _drain(sockets: Sockets) -> None:
    """Let requests that have arrived be answered, and the answers be sent."""
    until = time.monotonic() + LONGEST_STOP_S
    while time.monotonic() < until and any(map(_busy, list(sockets.values()))):
        wasyncore.loop(timeout=0.1, map=sockets, use_poll=True, count=1)


def _busy(item: Any) -> bool:
    return isinstance(item, HTTPChannel) and bool(item.requests or item.total_outbufs_len)
