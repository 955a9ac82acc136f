"""undercroft serve: the API and the screens."""

from dataclasses import replace

import click

from undercroft import serving
from undercroft.api import create_app
from undercroft.api.logs import to_stderr
from undercroft.commands.opening import database_option, opened
from undercroft.config import Settings
from undercroft.store import database


@click.command()
@click.option("--host", help="Address to listen on; 127.0.0.1 if not given.")
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 8000 if not given.")
@database_option
def serve(host: str | None, port: int | None, location: str | None) -> None:
    """Serve the API and the screens."""
    with opened(location) as settings:
        pass
    serve_until_stopped(
        replace(
            settings,
            host=host if host is not None else settings.host,
            port=port if port is not None else settings.port,
        )
    )


def serve_until_stopped(settings: Settings) -> None:
    """Serve on a database that is up to date."""
    to_stderr()
    try:
        serving.serve(create_app(settings), settings, lambda line: click.echo(line, err=True))
    finally:
        database.close_all()
