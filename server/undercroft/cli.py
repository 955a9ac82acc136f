"""The command line: `undercroft serve`, `undercroft coach add`, and what others add to it."""

import sys
from dataclasses import replace

import click

from undercroft import __version__, serving
from undercroft.api import create_app
from undercroft.api.logs import to_stderr
from undercroft.config import BadSetting, Settings, from_environment
from undercroft.services import accounts
from undercroft.services.clock import now_ms
from undercroft.services.refusals import Refusal
from undercroft.store import database, migrate, upgrade


@click.group()
@click.version_option(__version__)
def main() -> None:
    """A coach's program, worked out for one athlete's kit, done offline, brought back."""


def settings_or_exit(location: str | None = None) -> Settings:
    """Settings from the environment, with the database given on the command line if any."""
    try:
        settings = from_environment()
    except BadSetting as fault:
        raise click.ClickException(str(fault)) from None
    return replace(settings, database=location) if location else settings


def open_or_exit(location: str | None) -> Settings:
    """Open the database and bring it up to date, for commands that work on the data."""
    settings = settings_or_exit(location)
    database.open_database(settings.database)
    database.connect()
    try:
        done = upgrade.bring_up_to_date(settings.database)
    except migrate.NewerDatabase as fault:
        raise click.ClickException(str(fault)) from None
    click.echo(f"data: {settings.database}", err=True)
    if done.backup:
        click.echo(f"copied before the upgrade to {done.backup}", err=True)
    if done.scripts:
        click.echo(f"brought up to date: {', '.join(done.scripts)}", err=True)
    return settings


database_option = click.option(
    "--database", "location", help="SQLite file or postgresql:// address; else UNDERCROFT_DATABASE."
)


@main.command()
@click.option("--host", help="Address to listen on; 127.0.0.1 if not given.")
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 8000 if not given.")
@database_option
def serve(host: str | None, port: int | None, location: str | None) -> None:
    """Serve the API and the screens."""
    settings = open_or_exit(location)
    settings = replace(
        settings,
        host=host if host is not None else settings.host,
        port=port if port is not None else settings.port,
    )
    database.close_all()
    to_stderr()
    try:
        serving.serve(create_app(settings), settings, lambda line: click.echo(line, err=True))
    finally:
        database.close_all()


@main.group()
def coach() -> None:
    """Coaches: the people who write programs."""


@coach.command("add")
@click.argument("email")
@click.option("--name", required=True, help="The name that athletes see.")
@click.option(
    "--password",
    prompt=True,
    hide_input=True,
    confirmation_prompt=True,
    help="Asked for if not given; - reads one line from standard input.",
)
@database_option
def add_coach(email: str, name: str, password: str, location: str | None) -> None:
    """Add a coach who can log in with EMAIL."""
    settings = open_or_exit(location)
    if password == "-":
        password = sys.stdin.readline().rstrip("\n")
    hasher = accounts.make_hasher(cheap=settings.cheap_passwords)
    try:
        accounts.add_coach(hasher, email, name, password, now_ms())
    except Refusal as refused:
        raise click.ClickException(f"{refused.what}; {refused.right}") from None
    finally:
        database.close_all()
    click.echo(f"{name} can log in as {accounts.tidy_email(email)}")


if __name__ == "__main__":
    main()
