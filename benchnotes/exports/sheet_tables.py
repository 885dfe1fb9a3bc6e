"""What the owner reads of a job: what came in, was found and done, what it costs, was measured and tried, is left."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from benchnotes.exports.bill_of_job import Unsettled
from benchnotes.exports.currencies import plain_decimal
from benchnotes.exports.invoice import Invoice, Party
from benchnotes.exports.plain_words import in_words, one_line
from benchnotes.exports.sheet import CHECK, Sheet, Table
from benchnotes.exports.sheet_money import money_table
from benchnotes.record.entries import Entry, Item, JobRecord, Machine, Reading
from benchnotes.record.heard import Recording, Unheard
from benchnotes.record.terms import FaultStatus, Place, Standing, TrialResult

FAULT_WORDS: Final[dict[FaultStatus, str]] = {
    "open": "still open", "fixed": "put right, not tried yet", "verified": "put right and tried",
    "left": "left as it is",
}  # fmt: skip
RESULT_WORDS: Final[dict[TrialResult, str]] = {"pass": "passed", "fail": "FAILED", "unclear": "unclear"}
STANDING_WORDS: Final[dict[Standing, str]] = {"done": "done", "planned": "to be done", "failed": "tried, did not work"}
PLACE_WORDS: Final[dict[Place, str]] = {"bench": "here", "outside": "by others"}
CAUTION: Final = (
    "This sheet is the repairer's own record of what was seen, said and done; it certifies nothing. For mains "
    "electricity, gas, fuel, flues and vessels under pressure, local codes and licensed practice decide what may be "
    "done, and by whom."
)
CHECK_MEANS: Final = "“Check by ear”: a name or number in it was not heard clearly, and nobody has confirmed it yet."


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What a sheet says beside the record."""

    job: int
    name: str
    workshop: Party = field(default_factory=Party)
    owner: Party = field(default_factory=Party)
    recordings: Sequence[Recording] = ()
    unheard: Sequence[Unheard] = ()


def job_sheet(record: JobRecord, items: Sequence[Item], about: About, bill: Invoice | Unsettled) -> Sheet:
    """The sheet; sections with nothing in them are left away."""
    tables = (
        Table(heading="What was found", columns=("Part", "Finding", "Now"), rows=tuple(_found(record))),
        Table(heading="Work", columns=("Work", "Where", "How it stands"), rows=tuple(_work(record))),
        money_table(record, bill),
        Table(heading="Measured", columns=("What", "Before", "After", "No time told"), rows=tuple(_measured(record))),
        Table(heading="Tests", columns=("Test", "Of", "Result"), rows=tuple(_tests(record))),
        Table(heading="What is left", columns=("What", "Why"), rows=tuple(_left(record, items))),
        Table(heading="Advice to the owner", columns=("Advice",), rows=tuple(_advice(record))),
    )
    told = tuple(table for table in tables if table.rows)
    return Sheet(
        title=f"Job {about.job}: {one_line(about.name)}",
        facts=tuple(_facts(record, about)),
        tables=told,
        notes=tuple(_notes(told, about)),
    )


def machine_words(machine: Machine) -> str:
    """ "Corvane No. 6 butter churn, serial 4471"; empty where nothing is known."""
    name = one_line(" ".join(word for word in (machine.make, machine.model, machine.kind) if word))
    serial = f"serial {one_line(machine.serial)}" if machine.serial else ""
    return ", ".join(part for part in (name, serial) if part)


def _facts(record: JobRecord, about: About) -> Iterator[tuple[str, str]]:
    dated = sorted(each.started_at.date() for each in about.recordings if each.started_at)
    days = " to ".join(dict.fromkeys(day.isoformat() for day in (dated[0], dated[-1]))) if dated else ""
    facts = (
        ("Machine", machine_words(record.machine) + (CHECK if record.machine.check else "")),
        ("Power", in_words(record.machine.power or "")),
        ("Owner", _address(about.owner)),
        ("Workshop", _address(about.workshop)),
        ("On the bench", days),
    )
    return ((label, text) for label, text in facts if text)


def _address(party: Party) -> str:
    """Nothing where there is no name: a country alone is nobody."""
    lines = (party.name, party.street, " ".join(word for word in (party.postcode, party.town) if word), party.phone)
    return ", ".join(one_line(line) for line in lines if line) if party.name else ""


def _found(record: JobRecord) -> Iterator[tuple[str, ...]]:
    for fault in record.faults:
        yield _named(fault.part, fault), in_words(fault.kind), FAULT_WORDS[fault.status]


def _work(record: JobRecord) -> Iterator[tuple[str, ...]]:
    for work in record.work:
        what = work.target if work.action == "other" else f"{in_words(work.action)}: {work.target}"
        yield _named(what, work), PLACE_WORDS[work.by], STANDING_WORDS[work.status]


def _measured(record: JobRecord) -> Iterator[tuple[str, ...]]:
    """Before and after of one thing in one unit stand on one row."""
    rows: dict[tuple[str, str], list[Reading]] = {}
    for reading in record.readings:
        rows.setdefault((one_line(reading.what).casefold(), reading.unit), []).append(reading)
    for readings in rows.values():
        cells = (
            ", ".join(_value(each) for each in readings if each.when == when) for when in ("before", "after", None)
        )
        yield one_line(readings[0].what), *cells


def _value(reading: Reading) -> str:
    about = "about " if reading.about else ""
    return f"{about}{plain_decimal(reading.value)} {reading.unit}{CHECK if reading.check else ''}"


def _tests(record: JobRecord) -> Iterator[tuple[str, ...]]:
    for trial in record.tests:
        yield _named(in_words(trial.what), trial), one_line(trial.of or ""), RESULT_WORDS[trial.result]


def _left(record: JobRecord, items: Iterable[Item]) -> Iterator[tuple[str, ...]]:
    for fault in record.faults:
        if fault.status == "left":
            yield one_line(fault.part), "Left as it is, on purpose."
    for item in items:
        yield one_line(item.about), one_line(item.why)


def _advice(record: JobRecord) -> Iterator[tuple[str, ...]]:
    for advice in record.advice:
        yield (_named(advice.text, advice),)


def _notes(tables: Sequence[Table], about: About) -> Iterator[str]:
    if any(CHECK in cell for table in tables for row in table.rows for cell in row):
        yield CHECK_MEANS
    if about.unheard:
        seconds = sum(gap.end_s - gap.start_s for gap in about.unheard)
        places = "one place" if len(about.unheard) == 1 else f"{len(about.unheard)} places"
        yield f"In {places} of the recordings ({seconds:.0f} s in all) speech could not be made out."
    yield CAUTION


def _named(text: str, entry: Entry) -> str:
    return one_line(text) + (CHECK if entry.check else "")
