"""undercroft openapi: the API's own description, as it is served."""

import json
import tempfile
from pathlib import Path

import click

from undercroft.api import create_app
from undercroft.api.openapi import document
from undercroft.config import Settings


@click.command()
def openapi() -> None:
    """Print the OpenAPI document of this program's API."""
    with tempfile.TemporaryDirectory() as folder:
        app = create_app(Settings(database=str(Path(folder) / "none.sqlite3")))
        with app.app_context():
            click.echo(json.dumps(document(app), indent=2))
