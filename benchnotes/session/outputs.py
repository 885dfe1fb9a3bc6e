"""The files that leave for one job: each made if it can be, else a sentence that says what is missing."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from benchnotes.exports.bill_of_job import Unsettled
from benchnotes.exports.bill_on_paper import bill_on_paper
from benchnotes.exports.captions import film_captions
from benchnotes.exports.e_invoice import e_invoice
from benchnotes.exports.invoice import Invoice, Issued
from benchnotes.exports.job_json import job_text
from benchnotes.exports.parts_list import parts_csv
from benchnotes.exports.sheet import Sheet
from benchnotes.exports.sheet_html import sheet_html
from benchnotes.exports.sheet_pdf import NoLetterError, sheet_pdf
from benchnotes.exports.sheet_tables import About, job_sheet
from benchnotes.session.billing import JobBilling, Paper
from benchnotes.session.job_by_name import KeptJob
from benchnotes.session.saving import save_all


@dataclass(frozen=True, slots=True)
class Leaving:
    """What outputs are made of."""

    kept: KeptJob
    billing: JobBilling


@dataclass(frozen=True, slots=True)
class LeftOut:
    """An output that cannot be written yet."""

    why: str
    """In sentences, with what would help."""


@dataclass(frozen=True, slots=True)
class Written:
    """What was written, and what was not."""

    paths: tuple[Path, ...]
    left_out: tuple[str, ...] = ()
    """One line each: the output's name, and why."""
    remarks: tuple[str, ...] = ()
    """What to know about a file that was written."""


Files = Mapping[str, bytes]
"""File name -> content."""


def _captions(ending: str) -> Callable[[Leaving], Files | LeftOut]:
    def made(job: Leaving) -> Files | LeftOut:
        files = film_captions(job.kept.read.record, job.kept.read.facts.heard)
        mine = {name: content for name, content in files.items() if name.endswith(ending)}
        return mine or LeftOut("nothing was heard in this job yet. Take in a recording first.")

    return made


def _invoices(ending: str, shown: Callable[[Invoice, Issued], bytes]) -> Callable[[Leaving], Files | LeftOut]:
    """The bill that holds as invoice, else a draft marked as one; everything else that was issued by its number."""

    def made(job: Leaving) -> Files | LeftOut:
        billing = job.billing
        try:
            files = {
                ("invoice" if paper == billing.standing else _paper_name(paper)) + ending: shown(
                    paper.invoice, paper.issued
                )
                for paper in billing.papers
            }
            if not billing.standing and not isinstance(billing.draft, Unsettled):
                files[f"invoice{ending}"] = shown(billing.draft, billing.undated())
        except NoLetterError as error:
            return LeftOut(f"{error}. Install a font that has them, and try again.")
        return files or LeftOut(_what_is_missing(billing))

    return made


def _what_is_missing(billing: JobBilling) -> str:
    return "\n  ".join(("", *billing.draft.because)) if isinstance(billing.draft, Unsettled) else ""


def _bill_pdf(invoice: Invoice, issued: Issued) -> bytes:
    return sheet_pdf(bill_on_paper(invoice, issued))


def _sheet(job: Leaving) -> Sheet:
    """With the bill that was issued, where one holds; else as it would be billed today."""
    read, billing = job.kept.read, job.billing
    about = About(
        job=job.kept.job.number,
        name=job.kept.job.name,
        workshop=billing.workshop,
        owner=billing.owner,
        recordings=read.facts.heard.recordings,
        unheard=read.facts.heard.unheard,
    )
    return job_sheet(read.record, read.items, about, billing.standing.invoice if billing.standing else billing.draft)


def _sheet_on_paper(job: Leaving) -> Files | LeftOut:
    try:
        return {"sheet.pdf": sheet_pdf(_sheet(job))}
    except NoLetterError as error:
        return LeftOut(f"{error}. sheet.html says the same. Install a font that has them, and try again.")


def _paper_name(paper: Paper) -> str:
    kind = "credit-note" if paper.kept.takes_back else "invoice"
    number = "".join(letter if letter.isalnum() or letter in "-_." else "-" for letter in paper.kept.shown)
    return f"{kind}-{number}"


OUTPUTS: Final[dict[str, Callable[[Leaving], Files | LeftOut]]] = {
    "record.json": lambda job: {"record.json": job_text(job.kept.read.document()).encode("utf-8")},
    "parts.csv": lambda job: {"parts.csv": parts_csv(job.kept.read.record)},
    "invoice.xml": _invoices(".xml", e_invoice),
    "invoice.pdf": _invoices(".pdf", _bill_pdf),
    "sheet.pdf": _sheet_on_paper,
    "sheet.html": lambda job: {"sheet.html": sheet_html(_sheet(job))},
    "film.vtt": _captions(".vtt"),
    "film.srt": _captions(".srt"),
}
"""What `--only` can name, in the order in which they are written."""


def save_outputs(job: Leaving, folder: Path, *, only: Sequence[str] = (), overwrite: bool) -> Written:
    """Writes what can be written into `folder`, of `only` or of everything. Raises FileThereError, NotSavedError."""
    files: dict[Path, bytes] = {}
    why: dict[str, list[str]] = {}
    for name in only or OUTPUTS:
        made = OUTPUTS[name](job)
        if isinstance(made, LeftOut):
            why.setdefault(made.why, []).append(name)
        else:
            files |= {folder / file: content for file, content in made.items()}
    left_out = [f"{' and '.join(names)}: {reason}" for reason, names in why.items()]
    save_all(files, overwrite=overwrite)
    billed = [path.name for path in files if path.stem == "invoice"]
    return Written(tuple(files), tuple(left_out), tuple(_remarks(job, " and ".join(billed))) if billed else ())


def _remarks(job: Leaving, billed: str) -> Iterator[str]:
    number = job.kept.job.number
    if job.billing.standing is None:
        yield f'Only a draft, and marked as one: {billed}. "benchnotes issue {number}" issues the bill.'
    elif job.billing.changed_since:
        yield (
            f"Bill {job.billing.standing.kept.shown} stands as it was issued; the job has changed since. "
            f'"benchnotes issue {number} --credit" takes it back.'
        )
