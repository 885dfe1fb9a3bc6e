"""`benchnotes export JOB --to FOLDER`: record.json and parts.csv."""

from __future__ import annotations

from pathlib import Path

import click

from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.outputs import save_outputs
from benchnotes.session.workshop import find_workshop


@click.command("export")
@click.argument("job")
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="Folder to write into.")
@click.option("--overwrite", is_flag=True, help="Write over files that are there.")
def command(job: str, folder: Path, overwrite: bool) -> None:
    """The record (record.json) and the parts list (parts.csv) of JOB, by number or name."""
    kept = read_kept_job(find_workshop(), job)
    for path in save_outputs(kept.read, folder, overwrite=overwrite):
        click.echo(path)
