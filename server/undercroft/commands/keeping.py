"""undercroft backup, restore, check: keep the data, put them back, verify them."""

from datetime import UTC, datetime
from pathlib import Path

import click

from undercroft.commands.opening import database_option, opened, settings_or_exit
from undercroft.services import auditing, lives
from undercroft.services.clock import now_ms
from undercroft.store import backup as copies
from undercroft.store import database

WITH_POSTGRESQL = (
    "this database is PostgreSQL: use pg_dump to copy it and pg_restore to put it back, and then "
    "run `undercroft restore --epoch-only`"
)


@click.command()
@click.argument("target", type=click.Path(path_type=Path))
@database_option
def backup(target: Path, location: str | None) -> None:
    """Copy the SQLite database to TARGET, consistent even while it is served."""
    source = _sqlite_file(settings_or_exit(location).database)
    if not source.exists():
        raise click.ClickException(f"there is no database at {source}")
    if target.is_dir():
        target /= f"undercroft-{datetime.now(UTC):%Y%m%dT%H%M%SZ}.sqlite3"
    click.echo(f"copying {source.stat().st_size / 1e6:.1f} MB", err=True)
    try:
        copies.copy_sqlite(source, target)
    except FileExistsError as fault:
        raise click.ClickException(str(fault)) from None
    click.echo(str(target))


@click.command()
@click.argument("copy", required=False, type=click.Path(exists=True, path_type=Path))
@click.option(
    "--epoch-only",
    is_flag=True,
    help="The data are back already, by other means: only tell the phones to send again.",
)
@database_option
def restore(copy: Path | None, epoch_only: bool, location: str | None) -> None:
    """Put a COPY made by `undercroft backup` in the place of the SQLite database.

    Stop the server first. What stands there now is kept beside it. Phones then send again
    whatever the copy lacks.
    """
    if epoch_only == (copy is not None):
        raise click.ClickException("name a copy, or say --epoch-only")
    if copy is not None:
        _put_back(copy, _sqlite_file(settings_or_exit(location).database))
    with opened(location):
        epoch = lives.begin(now_ms())
    click.echo(f"a new life of the database begins: {epoch}")


def _put_back(copy: Path, target: Path) -> None:
    aside = target.with_name(f"{target.name}.until-{datetime.now(UTC):%Y%m%dT%H%M%SZ}")
    try:
        copies.require_backup(copy)
    except copies.NoBackup as fault:
        raise click.ClickException(str(fault)) from None
    if copies.put_back(copy, target, aside):
        click.echo(f"what was there is now {aside}")


@click.command()
@database_option
def check(location: str | None) -> None:
    """Verify the database: positions, entries, numbers of devices."""
    with opened(location):
        findings = list(auditing.check())
    for finding in findings:
        click.echo(f"{finding.where}: {finding.what}")
    if findings:
        raise click.ClickException(
            f"{len(findings)} things are wrong; restore the last backup that `check` finds sound"
        )
    click.echo("everything is as it was promised")


def _sqlite_file(location: str) -> Path:
    if database.is_postgresql(location):
        raise click.ClickException(WITH_POSTGRESQL)
    return Path(location)
