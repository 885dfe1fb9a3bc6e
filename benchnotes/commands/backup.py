"""`benchnotes backup FILE`: a consistent copy of the notebook."""

from __future__ import annotations

from pathlib import Path

import click

from benchnotes.session.jobs import back_up_to, open_workshop
from benchnotes.session.workshop import find_workshop


@click.command("backup")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--overwrite", is_flag=True, help="Write over a file that is there.")
def command(file: Path, overwrite: bool) -> None:
    """A copy of the notebook in FILE, also while another window is listening."""
    with open_workshop(find_workshop()) as notebook:
        back_up_to(notebook, file, overwrite=overwrite)
    click.echo(f"Everything kept is copied into {file}. Sound and video files stay where they are.")
