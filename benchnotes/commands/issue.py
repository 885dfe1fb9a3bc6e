"""`benchnotes issue JOB`: the bill gets its number and its date, once and for good."""

from __future__ import annotations

import click

from benchnotes.exports.bill_of_job import Unsettled
from benchnotes.exports.bill_words import bill_lines
from benchnotes.session.billing import billing_of, issue_bill, issue_credit
from benchnotes.session.job_by_name import read_kept_job
from benchnotes.session.workshop import find_workshop


@click.command("issue")
@click.argument("job")
@click.option("--credit", is_flag=True, help="Take the issued bill back, whole, by a credit note.")
@click.option("--yes", is_flag=True, help="Do not ask.")
def command(job: str, credit: bool, yes: bool) -> None:
    """Issue the bill of JOB, by number or name: it takes the next number and today's date, and never changes again.

    What is only "about" or has no price is named, and nothing is issued.
    """
    workshop = find_workshop()
    kept = read_kept_job(workshop, job)
    billing = billing_of(workshop, kept)
    shown = billing.standing.invoice if credit and billing.standing else billing.draft
    if not isinstance(shown, Unsettled) and not yes and (credit or not billing.standing):
        for line in bill_lines(shown):
            click.echo(line)
        click.confirm("Take it back by a credit note?" if credit else "Issue this bill?", abort=True)
    paper = (issue_credit if credit else issue_bill)(workshop, kept, billing)
    what = "Credit note" if credit else "Bill"
    click.echo(f"{what} {paper.kept.shown} of {paper.kept.on} was issued.")
    click.echo(f'"benchnotes export {kept.job.number} --to FOLDER" writes it.')
