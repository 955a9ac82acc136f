"""undercroft coach: the people who write programs."""

import sys

import click

from undercroft.commands.opening import database_option, opened
from undercroft.services import accounts
from undercroft.services.clock import now_ms
from undercroft.services.refusals import Refusal


@click.group()
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
    if password == "-":
        password = sys.stdin.readline().rstrip("\n")
    with opened(location) as settings:
        hasher = accounts.make_hasher(cheap=settings.cheap_passwords)
        try:
            accounts.add_coach(hasher, email, name, password, now_ms())
        except Refusal as refused:
            raise click.ClickException(f"{refused.what}; {refused.right}") from None
    click.echo(f"{name} can log in as {accounts.tidy_email(email)}")
