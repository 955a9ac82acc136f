"""Open the database for a command that works on the data, and close it after."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import click

from undercroft.config import BadSetting, Settings, from_environment
from undercroft.store import database, migrate, upgrade

database_option = click.option(
    "--database", "location", help="SQLite file or postgresql:// address; else UNDERCROFT_DATABASE."
)


def settings_or_exit(location: str | None = None) -> Settings:
    """Settings from the environment, with the database given on the command line if any."""
    try:
        settings = from_environment()
    except BadSetting as fault:
        raise click.ClickException(str(fault)) from None
    return replace(settings, database=location) if location else settings


@contextmanager
def opened(location: str | None) -> Iterator[Settings]:
    """The database open and brought up to date, after a copy where that changes it."""
    settings = settings_or_exit(location)
    database.open_database(settings.database)
    database.connect()
    try:
        done = upgrade.bring_up_to_date(settings.database)
        click.echo(f"data: {settings.database}", err=True)
        if done.backup:
            click.echo(f"copied before the upgrade to {done.backup}", err=True)
        if done.scripts:
            click.echo(f"brought up to date: {', '.join(done.scripts)}", err=True)
        yield settings
    except migrate.NewerDatabase as fault:
        raise click.ClickException(str(fault)) from None
    finally:
        database.close_all()
