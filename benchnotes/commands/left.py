"""`benchnotes left JOB`: what is still to do before the machine goes back, why, and what closes it."""

from __future__ import annotations

import click

from benchnotes.commands.completeness import how_much_left, not_heard_lines
from benchnotes.commands.sheet import evidence_lines, wrapped
from benchnotes.commands.wording import ITEM
from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.workshop import find_workshop


@click.command("left")
@click.argument("job")
def command(job: str) -> None:
    """What is still to do in JOB, by number or name, before the machine goes back."""
    kept = read_kept_job(find_workshop(), job)
    click.secho(f"Job {kept.job.number}, {kept.job.name}: {how_much_left(kept.read)}", bold=True)
    for number, item in enumerate(kept.read.items, 1):
        click.echo()
        for line in wrapped(f"{number}. {item.about} ({ITEM[item.kind]})", 0):
            click.secho(line, bold=True)
        for line in wrapped(item.why, 3):
            click.echo(line)
        for line in wrapped(f"Closed by: {item.close_by}", 3) if item.close_by else ():
            click.echo(line)
        for line in evidence_lines(item, indent=3):
            click.echo(line)
    for line in not_heard_lines(kept.read.facts):
        click.echo(line)
