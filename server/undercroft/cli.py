"""The command line."""

import click

from undercroft import __version__
from undercroft.commands.coach import coach
from undercroft.commands.demo import demo
from undercroft.commands.figures import figures
from undercroft.commands.keeping import backup, check, restore
from undercroft.commands.openapi import openapi
from undercroft.commands.serve import serve
from undercroft.commands.sheet import sheet
from undercroft.commands.transfer import export, import_


@click.group(
    epilog="New here? Run `undercroft demo` and open the address that it prints. For your own "
    "squad: `undercroft coach add YOU@EXAMPLE.ORG --name YOU`, then `undercroft serve`."
)
@click.version_option(__version__)
def main() -> None:
    """A coach's program, worked out for one athlete's kit, done offline, brought back."""


for command in (
    demo,
    serve,
    coach,
    sheet,
    import_,
    export,
    backup,
    restore,
    check,
    figures,
    openapi,
):
    main.add_command(command)


if __name__ == "__main__":
    main()
