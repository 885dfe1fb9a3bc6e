"""`benchnotes check`: what works here, what does not, and what to do."""

from __future__ import annotations

import click

from benchnotes.commands.sheet import wrapped
from benchnotes.commands.telling import FAILED
from benchnotes.session.checking import checks
from benchnotes.session.workshop import find_workshop


@click.command("check")
def command() -> int:
    """What works here, what does not, and what to do. Ends with 1 where nothing can be read."""
    failed = 0
    for check in checks(find_workshop()):
        state = click.style("works", fg="green") if check.works else click.style("does not work", fg="red")
        click.echo(f"{check.name}: {state}")
        for line in wrapped(check.says, 2):
            click.echo(line)
        for line in wrapped(check.to_do, 2) if check.to_do else ():
            click.echo(line)
        if check.needed and not check.works:
            failed = FAILED
    return failed
