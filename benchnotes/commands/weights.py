"""`benchnotes weights`: the models that are here; `benchnotes weights fetch NAME`: brings one."""

from __future__ import annotations

import click

from benchnotes.commands.sheet import wrapped
from benchnotes.session.models import fetch_model, models

USE = {"speech": "hears", "encoder": "reads"}
STATE = {"complete": "here", "missing": "not here", "damaged": "damaged"}


@click.group("weights", invoke_without_command=True)
@click.pass_context
def command(context: click.Context) -> None:
    """The models that hear and read: which are here, and fetching others."""
    if context.invoked_subcommand is None:
        _list()


@command.command("fetch")
@click.argument("names", metavar="NAME...", nargs=-1, required=True)
def fetch(names: tuple[str, ...]) -> None:
    """Fetch the model NAME and check every file of it; the only command that opens a connection."""
    for name in names:
        found = fetch_model(name, lambda doing, done, steps: click.echo(f"{done}/{steps} {doing}", err=True))
        click.echo(f"{found.name} is in {found.path}, every file as it should be.")


def _list() -> None:
    for model in models():
        size = f"{model.bytes / 1e6:.0f} MB"
        click.secho(f"{model.name} ({USE[model.kind]}, {size}, {model.licence}): {STATE[model.state]}", bold=True)
        where = (
            f"in {model.where}" if model.state == "complete" else f'"benchnotes weights fetch {model.name}" brings it'
        )
        for line in wrapped(model.trouble or where, 2):
            click.echo(line)
