"""The commands: the only place that reads arguments, prints, writes files or exits.

One file a kind of command; it is loaded when its command is called, and heavy parts only
inside the command, so that a mistyped word answers at once.
"""

import sys
from importlib import import_module
from typing import Final

import click

from chartgen import __version__
from chartgen.errors import ChartgenError

_FAILED = 2

_FILES: Final = {
    "check": "lists",
    "class": "class_set",
    "compare": "compare",
    "example": "lists",
    "explain": "questions",
    "job": "job",
    "layouts": "lists",
    "learn": "learn",
    "make": "cards",
    "mark": "mark",
    "materials": "lists",
    "sources": "lists",
    "stale": "stale",
    "table": "cards",
    "try": "questions",
}


class _Commands(click.Group):
    """Commands found in the files of this folder, under the function's own name."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's signature
        return sorted(_FILES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in _FILES:
            return None
        file = import_module(f"{__name__}.{_FILES[cmd_name]}")
        found = [c for c in vars(file).values() if isinstance(c, click.Command)]
        return next(command for command in found if command.name == cmd_name)


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="chartgen")
def commands() -> None:
    """Print parting-off cards for one particular lathe.

    SHOP is a text file that describes the lathe, its blades and what to print. Without it
    a built-in invented shop is used; `chartgen example` prints that one to start from.
    """


def main() -> None:
    """Run the command line; every known error is a message and exit code 2."""
    try:
        commands(standalone_mode=False)
    except click.exceptions.Exit as leaving:
        sys.exit(leaving.exit_code)
    except click.Abort:
        click.echo("stopped", err=True)
        sys.exit(_FAILED)
    except click.ClickException as error:
        error.show()
        sys.exit(_FAILED)
    except ChartgenError as error:
        click.echo(str(error), err=True)
        sys.exit(_FAILED)
