"""Bills and credit notes that were issued: numbered without gaps, frozen, neither changed nor taken away."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlite_utils import Database

from benchnotes.store.errors import AlreadyIssuedError
from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedBill:
    """A bill or credit note as it left."""

    number: int
    """Its place in the workshop's one row of numbers, from 1, bills and credit notes together."""
    shown: str
    """The number as it stands on paper."""
    job: int
    on: date
    takes_back: int | None
    """The number of the bill that a credit note takes back; None for a bill."""
    frozen: str
    """All that stands on it, as text."""


def issue(
    notebook: Notebook,
    job: int,
    frozen: str,
    *,
    at: datetime,
    shown: Callable[[int], str],
    takes_back: int | None = None,
) -> IssuedBill:
    """Takes the next number and the day of `at`, in one transaction. Raises AlreadyIssuedError where the job has a
    bill that no credit note has taken back, or where a credit note's bill has been taken back before."""
    with notebook.writing() as db:
        _refuse_second(db, job, takes_back)
        number = db.execute("SELECT coalesce(max(number), 0) + 1 FROM issued").fetchone()[0]
        row = {
            "number": number,
            "shown": shown(number),
            "job": job,
            "issued_on": at.date().isoformat(),
            "issued_at": at.isoformat(),
            "takes_back": takes_back,
            "frozen": frozen,
        }
        db.table("issued").insert(row, pk="number")
    return _issued(row)


def issued_for(notebook: Notebook, job: int) -> tuple[IssuedBill, ...]:
    """Everything issued for a job, in order of number."""
    with notebook.reading() as db:
        return tuple(_issued(row) for row in db.table("issued").rows_where("job = ?", [job], order_by="number"))


def standing(bills: tuple[IssuedBill, ...]) -> IssuedBill | None:
    """The bill that holds: the one that no credit note has taken back."""
    taken_back = {each.takes_back for each in bills}
    return next((each for each in bills if each.takes_back is None and each.number not in taken_back), None)


def _refuse_second(db: Database, job: int, takes_back: int | None) -> None:
    """Asked inside the transaction, so that two windows cannot both issue."""
    rows = tuple(_issued(row) for row in db.table("issued").rows_where("job = ?", [job]))
    holds = standing(rows)
    if takes_back is None and holds is not None:
        raise AlreadyIssuedError(
            f"Bill {holds.shown} of {holds.on} was issued for this job already. Nothing was issued now. "
            "A credit note takes it back: add --credit."
        )
    if takes_back is not None and (holds is None or holds.number != takes_back):
        raise AlreadyIssuedError("The bill was taken back already. Nothing was issued now.")


def _issued(row: Mapping[str, Any]) -> IssuedBill:
    return IssuedBill(
        number=row["number"],
        shown=row["shown"],
        job=row["job"],
        on=date.fromisoformat(row["issued_on"]),
        takes_back=row["takes_back"],
        frozen=row["frozen"],
    )
