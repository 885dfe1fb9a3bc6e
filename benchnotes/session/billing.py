"""From a kept job to its bill: a draft of today, what keeps it from being issued, and what was issued."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date

from benchnotes.exports.bill import Bill
from benchnotes.exports.bill_of_job import Prices, Unsettled, bill_of_job
from benchnotes.exports.invoice import DRAFT, Invoice, Issued, Party, what_is_missing
from benchnotes.exports.invoice_json import frozen, thawed
from benchnotes.exports.sheet_tables import machine_words
from benchnotes.record.money import Money
from benchnotes.session.currency import usual_currency
from benchnotes.session.errors import SessionError
from benchnotes.session.job_by_name import KeptJob
from benchnotes.session.jobs import now, open_workshop
from benchnotes.session.owner import owner_on
from benchnotes.session.settings import Settings, read_settings
from benchnotes.session.workshop import Workshop
from benchnotes.store.issued import IssuedBill, issue, issued_for, standing
from benchnotes.store.jobs import Job, card


class NotIssuedError(SessionError):
    """A bill that cannot be issued yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """An issued bill or credit note, ready to be shown."""

    kept: IssuedBill
    invoice: Invoice

    @property
    def issued(self) -> Issued:
        return Issued(self.kept.shown, self.kept.on)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobBilling:
    """The money side of one job."""

    draft: Invoice | Unsettled
    """What would be issued today, or what keeps it from that."""
    papers: tuple[Paper, ...]
    """All that was issued, in order of number."""
    today: date
    workshop: Party = field(default_factory=Party)
    owner: Party = field(default_factory=Party)

    @property
    def standing(self) -> Paper | None:
        """The bill that holds; None where there is none or a credit note took it back."""
        holds = standing(tuple(paper.kept for paper in self.papers))
        return next((paper for paper in self.papers if paper.kept == holds), None)

    @property
    def changed_since(self) -> bool:
        """The job would be billed otherwise today."""
        holds = self.standing
        return holds is not None and self.draft != holds.invoice

    def undated(self) -> Issued:
        """What stands on a draft: no number, and today's date."""
        return Issued(DRAFT, self.today)


def billing_of(workshop: Workshop, kept: KeptJob) -> JobBilling:
    """The bill of a job as its record, its card and the settings stand, and what was issued for it."""
    settings = read_settings(workshop.settings)
    with open_workshop(workshop) as notebook:
        noted = card(notebook, kept.job.number)
        papers = issued_for(notebook, kept.job.number)
    bill = bill_of_job(kept.read.record, kept.read.items, prices_of(settings))
    return JobBilling(
        draft=_draft(bill, kept, noted, settings),
        papers=tuple(Paper(kept=each, invoice=thawed(each.frozen)) for each in papers),
        today=now().date(),
        workshop=settings.workshop,
        owner=owner_on(noted, country=settings.workshop.country),
    )


def prices_of(settings: Settings) -> Prices:
    """What the workshop has set, an hour in its own currency."""
    hour = settings.bill.labour_an_hour
    return Prices(
        tax=settings.tax,
        labour_an_hour=Money(hour, settings.currency or usual_currency()) if hour is not None else None,
        by_the_metre=settings.bill.by_the_metre,
    )


def issue_bill(workshop: Workshop, kept: KeptJob, billing: JobBilling) -> Paper:
    """Issues the draft: next number, today's date, frozen. Raises NotIssuedError, AlreadyIssuedError."""
    if isinstance(billing.draft, Unsettled):
        what = "\n".join(f"  {line}" for line in billing.draft.because)
        raise NotIssuedError(f"The bill of job {kept.job.number} cannot be issued yet. Nothing was issued.\n{what}")
    return _issued(workshop, kept.job, billing.draft)


def issue_credit(workshop: Workshop, kept: KeptJob, billing: JobBilling) -> Paper:
    """Takes the standing bill back, whole, by a credit note. Raises NotIssuedError, AlreadyIssuedError."""
    holds = billing.standing
    if holds is None:
        raise NotIssuedError(f"Job {kept.job.number} has no bill that could be taken back. Nothing was issued.")
    credit = replace(holds.invoice, kind="credit_note", takes_back=holds.issued)
    return _issued(workshop, kept.job, credit, takes_back=holds.kept.number)


def _issued(workshop: Workshop, job: Job, invoice: Invoice, takes_back: int | None = None) -> Paper:
    shown = _numbering(read_settings(workshop.settings).bill.number_prefix)
    with open_workshop(workshop) as notebook:
        kept = issue(notebook, job.number, frozen(invoice), at=now(), shown=shown, takes_back=takes_back)
    return Paper(kept=kept, invoice=invoice)


def _numbering(prefix: str) -> Callable[[int], str]:
    return lambda number: f"{prefix}{number:04}"


def _draft(bill: Bill | Unsettled, kept: KeptJob, noted: dict[str, str], settings: Settings) -> Invoice | Unsettled:
    """Everything that is missing, of the record and of the names, is told at once."""
    open_points = bill.because if isinstance(bill, Unsettled) else ()
    invoice = Invoice(
        bill=Bill(currency=kept.read.record.currency, lines=()) if isinstance(bill, Unsettled) else bill,
        seller=settings.workshop,
        buyer=owner_on(noted, country=settings.workshop.country),
        payment=settings.bill.payment,
        exempt_because=(settings.tax.exempt_because or "") if settings.tax else "",
        about=_about(kept),
    )
    missing = (*open_points, *what_is_missing(invoice))
    return Unsettled(missing) if missing else invoice


def _about(kept: KeptJob) -> str:
    machine = machine_words(kept.read.record.machine)
    return f"Job {kept.job.number}, {machine or kept.job.name}"
