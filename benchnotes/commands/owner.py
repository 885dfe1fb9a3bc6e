"""`benchnotes owner JOB`: whose machine it is, for the bill and the job sheet."""

from __future__ import annotations

import click

from benchnotes.exports.plain_words import in_words
from benchnotes.session.owner import FIELDS, note_owner
from benchnotes.session.workshop import find_workshop


@click.command("owner")
@click.argument("job")
@click.option("--name", help="Name of the owner, person or firm.")
@click.option("--street", help="Street and house.")
@click.option("--town", help="Town.")
@click.option("--postcode", help="Postcode.")
@click.option("--country", help="Country by its two letters; the workshop's own where nothing is said.")
@click.option("--tax-number", help="Tax number with its country in front, of a firm.")
@click.option("--company-number", help="Number in a public register, of a firm.")
@click.option("--phone", help="Telephone.")
@click.option("--email", help="E-mail.")
def command(job: str, **told: str | None) -> None:
    """Note the owner of JOB, by number or name, and show what is known. Only what is given is changed."""
    kept, owner = note_owner(find_workshop(), job, {field: value for field, value in told.items() if value is not None})
    click.secho(f"Job {kept.number}, {kept.name}", bold=True)
    for field in FIELDS:
        if getattr(owner, field):
            click.echo(f"  {in_words(field)}: {getattr(owner, field)}")
