"""undercroft coach: the people who write programs."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click

from undercroft.commands.opening import database_option, opened
from undercroft.services import account_changes, accounts
from undercroft.services.clock import now_ms
from undercroft.services.refusals import Refusal

password_option = click.option(
    "--password",
    prompt=True,
    hide_input=True,
    confirmation_prompt=True,
    help="Asked for if not given; - reads one line from standard input.",
)


@click.group()
def coach() -> None:
    """Coaches: the people who write programs."""


@coach.command("add")
@click.argument("email")
@click.option("--name", required=True, help="The name that athletes see.")
@password_option
@database_option
def add_coach(email: str, name: str, password: str, location: str | None) -> None:
    """Add a coach who can log in with EMAIL."""
    with opened(location) as settings, _told():
        hasher = accounts.make_hasher(cheap=settings.cheap_passwords)
        accounts.add_coach(hasher, email, name, _given(password), now_ms())
    click.echo(f"{name} can log in as {accounts.tidy_email(email)}")


@coach.command("password")
@click.argument("email")
@password_option
@database_option
def reset_password(email: str, password: str, location: str | None) -> None:
    """Give the coach with EMAIL another password, and end all log-ins of that coach."""
    with opened(location) as settings, _told():
        hasher = accounts.make_hasher(cheap=settings.cheap_passwords)
        name = account_changes.reset_password(hasher, email, _given(password))
    click.echo(f"{name} has another password and is logged in nowhere")


@coach.command("lost-factor")
@click.argument("email")
@database_option
def drop_lost_factor(email: str, location: str | None) -> None:
    """Turn off the second factor of the coach with EMAIL, and end all log-ins of that coach."""
    with opened(location), _told():
        name = account_changes.drop_lost_factor(email)
    click.echo(f"{name} logs in with the password alone and is logged in nowhere")


def _given(password: str) -> str:
    return sys.stdin.readline().rstrip("\n") if password == "-" else password


@contextmanager
def _told() -> Iterator[None]:
    """A refusal in the words of the command line."""
    try:
        yield
    except Refusal as refused:
        raise click.ClickException(f"{refused.what}; {refused.right}") from None
