"""`benchnotes jobs`: the jobs of the workshop, the newest first."""

from __future__ import annotations

import click
from rich.console import Console
from rich.table import Table

from benchnotes.exports.wording import clock
from benchnotes.session.jobs import all_jobs, open_workshop
from benchnotes.session.workshop import find_workshop


@click.command("jobs")
def command() -> None:
    """The jobs of the workshop, the newest first."""
    with open_workshop(find_workshop()) as notebook:
        lines = all_jobs(notebook)
    if not lines:
        click.echo('No jobs yet. "benchnotes read FILE" takes in the first.')
        return
    table = Table("No.", "Job", "Visits", "Talk", "Last taken in", box=None, pad_edge=False, header_style="bold")
    for line in lines:
        visits = f"{line.recordings}" + (f" ({line.unfinished} not finished)" if line.unfinished else "")
        last = f"{line.last_added.astimezone():%Y-%m-%d %H:%M}" if line.last_added else ""
        table.add_row(str(line.job.number), line.job.name, visits, clock(line.duration_s), last)
    # highlight=False: a name is no number to be coloured
    Console(highlight=False, markup=False).print(table)
