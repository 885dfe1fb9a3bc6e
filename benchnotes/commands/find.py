"""`benchnotes find WORDS`: full text over everything that was said."""

from __future__ import annotations

import click

from benchnotes.commands.sheet import headed, wrapped
from benchnotes.exports.wording import moment
from benchnotes.session.jobs import open_workshop, search
from benchnotes.session.workshop import find_workshop


@click.command("find")
@click.argument("words", nargs=-1, required=True)
def command(words: tuple[str, ...]) -> None:
    """Where all of WORDS were said, with job and time. Endings do not count; a phrase goes in double quotes."""
    with open_workshop(find_workshop()) as notebook:
        hits = search(notebook, " ".join(words))
    job = 0
    for hit in hits:
        if hit.job != job:
            job = hit.job
            click.echo(headed(f"Job {hit.job}, {hit.job_name}"))
        for line in wrapped(f"{moment(hit.recording, hit.start_s)}: {hit.text}", 2):
            click.echo(line)
    if not hits:
        click.echo(f"Nobody said “{' '.join(words)}” in any job.")
