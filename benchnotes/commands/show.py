"""`benchnotes show JOB`: the record as the workshop would write it."""

from __future__ import annotations

import click

from benchnotes.commands.completeness import how_much_left, not_heard_lines
from benchnotes.commands.sheet import headed, record_lines, visit_lines
from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.workshop import find_workshop


@click.command("show")
@click.argument("job")
def command(job: str) -> None:
    """The record of JOB, by number or name, with the moments in which each thing was said."""
    kept = read_kept_job(find_workshop(), job)
    click.echo(headed(f"Job {kept.job.number}, {kept.job.name}"))
    for line in visit_lines(kept.read.facts.heard.recordings):
        click.echo(line)
    for line in record_lines(kept.read.record):
        click.secho(line, bold=bool(line) and not line.startswith(" "))
    for line in not_heard_lines(kept.read.facts):
        click.echo(line)
    click.echo(f"\nBefore it goes back: {how_much_left(kept.read)}.")
    if kept.read.items:
        click.echo(f'"benchnotes left {kept.job.number}" says what, why, and what closes it.')
