"""Several server processes behind one address, each request going to the next of them.

What stands for the proxy is an app of its own, so that the phones and coaches of the tests, who
speak to an app, speak to the processes without knowing it.
"""

import http.client
import itertools
import os
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path

from flask import Flask, Response, request
from tests.server_process import ServerProcess

NOT_HANDED_ON = {"connection", "transfer-encoding", "server", "date"}


@contextmanager
def processes(database: str, count: int, folder: Path) -> Iterator[list[ServerProcess]]:
    """So many `undercroft serve` on one database, which believe one proxy."""
    os.environ["UNDERCROFT_PROXY_HOPS"] = "1"
    running = [ServerProcess(database, folder / f"server-{n}.log") for n in range(count)]
    try:
        with ThreadPoolExecutor() as at_once:
            list(at_once.map(ServerProcess.start, running))
        yield running
    finally:
        del os.environ["UNDERCROFT_PROXY_HOPS"]
        for one in running:
            one.stop()


def in_front_of(running: list[ServerProcess]) -> Flask:
    """An app that hands each request on to the next process, and notes which one answered."""
    app = Flask("in-front")
    turns = itertools.cycle(running)
    app.config["ANSWERED"] = []

    @app.route("/<path:path>", methods=["GET", "POST"])
    def hand_on(path: str) -> Response:
        one = next(turns)
        app.config["ANSWERED"].append(one.port)
        answer = _asked(one)
        kept = [(k, v) for k, v in answer.getheaders() if k.lower() not in NOT_HANDED_ON]
        return Response(answer.read(), answer.status, kept)

    return app


def _asked(one: ServerProcess) -> http.client.HTTPResponse:
    connection = http.client.HTTPConnection("127.0.0.1", one.port, timeout=60)
    headers = dict(request.headers) | {"X-Forwarded-For": request.remote_addr or ""}
    target = request.full_path.removesuffix("?")
    connection.request(request.method, target, request.get_data(), headers)
    return connection.getresponse()
