"""`benchnotes export JOB --to FOLDER`: everything that can leave for one job, or what `--only` names."""

from __future__ import annotations

from pathlib import Path

import click

from benchnotes.session.billing import billing_of
from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.outputs import OUTPUTS, Leaving, save_outputs
from benchnotes.session.workshop import find_workshop


@click.command("export")
@click.argument("job")
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="Folder to write into.")
@click.option("--only", multiple=True, type=click.Choice(list(OUTPUTS)), help="This file alone; may be given again.")
@click.option("--overwrite", is_flag=True, help="Write over files that are there.")
def command(job: str, folder: Path, only: tuple[str, ...], overwrite: bool) -> None:
    """All that leaves for JOB, by number or name: record, parts list, invoice, job sheet, captions.

    What cannot be written yet is left out, with a line that says what is missing.
    """
    workshop = find_workshop()
    kept = read_kept_job(workshop, job)
    leaving = Leaving(kept, billing_of(workshop, kept))
    written = save_outputs(leaving, folder, only=only, overwrite=overwrite)
    for path in written.paths:
        click.echo(path)
    for line in written.left_out:
        click.echo(f"Left out: {line}", err=True)
    for line in written.remarks:
        click.echo(line, err=True)
    if not written.paths:
        raise click.exceptions.Exit(1)
