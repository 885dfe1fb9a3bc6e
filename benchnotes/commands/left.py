"""`benchnotes left JOB`: what is still to do before the machine goes back, why, and what closes it."""

from __future__ import annotations

from collections.abc import Iterator

import click

from benchnotes.commands.completeness import how_much_left, not_heard_lines
from benchnotes.commands.sheet import evidence_lines, headed, wrapped
from benchnotes.exports.wording import item_title
from benchnotes.record.entries import Item
from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.workshop import find_workshop


def item_lines(number: int, item: Item) -> Iterator[str]:
    """One item: what, why, what closes it, and where it was said."""
    head = f"{number}. "
    yield from wrapped(f"{head}{item_title(item)}", 0)
    yield from wrapped(item.why, len(head))
    if item.close_by:
        yield from wrapped(f"Closed by: {item.close_by}", len(head))
    yield from evidence_lines(item, indent=len(head))


@click.command("left")
@click.argument("job")
def command(job: str) -> None:
    """What is still to do in JOB, by number or name, before the machine goes back."""
    kept = read_kept_job(find_workshop(), job)
    click.echo(headed(f"Job {kept.job.number}, {kept.job.name}: {how_much_left(kept.read)}"))
    for number, item in enumerate(kept.read.items, 1):
        click.echo()
        for line in item_lines(number, item):
            click.secho(line, bold=not line.startswith(" "))
    for line in not_heard_lines(kept.read.facts):
        click.echo(line)
