"""The command line. A command's module is loaded when it is called, so that a list of jobs never waits for a model."""

from __future__ import annotations

import importlib
import io
import sys
from typing import Any, Final

import click

from benchnotes import __version__
from benchnotes.commands.telling import tell_failure

COMMANDS: Final = {
    "read": "Take in what was said: sound, video or captions.",
    "jobs": "The jobs of the workshop.",
    "show": "The record of one job.",
    "left": "What is still to do before a machine goes back.",
    "find": "Where something was said, over all jobs.",
    "owner": "Whose machine it is, for the bill and the job sheet.",
    "issue": "The bill gets its number and its date, once and for good.",
    "export": "The files of a job: record, parts, bill, job sheet, captions.",
    "check": "What works here, what does not, and what to do.",
    "weights": "The models that hear and read: what is here, and how to get more.",
    "backup": "A copy of everything kept, also while another window listens.",
}
"""In the order in which a day at the bench needs them; each lives in the module of its name."""


class ByName(click.Group):
    """A group whose commands are loaded by name. The only place that imports by name."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        command = importlib.import_module(f"benchnotes.commands.{cmd_name}").command
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        name = args[0]
        if not name.startswith("-") and name not in COMMANDS:
            ctx.fail(f'There is no command "{name}". The commands are: {", ".join(COMMANDS)}.')
        return super().resolve_command(ctx, args)


@click.command(
    cls=ByName,
    invoke_without_command=True,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)
@click.version_option(__version__, message="Bench Notes %(version)s")
@click.pass_context
def benchnotes(context: click.Context) -> int | None:
    """The notebook of a repairer whose hands are full: bench talk becomes a job record.

    Without a command, on a terminal, it opens the app.
    """
    if context.invoked_subcommand is not None:
        return None
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise click.exceptions.NoArgsIsHelpError(context)
    return int(importlib.import_module("benchnotes.commands.desk").open_app())


def main(arguments: list[str] | None = None) -> None:
    """Runs a command and leaves with its exit code; whatever goes wrong comes out as a sentence."""
    for stream in (sys.stdout, sys.stderr):
        # a terminal that cannot show a dash or an accent shows a question mark, and the command goes on
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    try:
        code: Any = benchnotes.main(args=arguments, prog_name="benchnotes", standalone_mode=False)
        sys.stdout.flush()
    # ours is the last word on every failure: a repairer is never shown a traceback
    except BaseException as failure:
        code = tell_failure(failure)
    sys.exit(code if isinstance(code, int) else 0)
