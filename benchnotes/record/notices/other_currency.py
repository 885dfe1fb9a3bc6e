"""Prices said in another currency than the job's: the record does not convert."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import JobRecord, Notice
from benchnotes.record.notices.notice import notice_of


def said_in_another_currency(record: JobRecord) -> Iterable[Notice]:
    """ "Four quid" in a job that counts in euros -> somebody has to settle what it is in euros."""
    priced = [(part.name, part.unit_price, part) for part in record.parts]
    charged = [(charge.what or charge.kind, charge.amount, charge) for charge in record.charges]
    for about, money, entry in (*priced, *charged):
        if money is not None and money.currency != record.currency:
            why = f"{about}: its price was said in {money.currency}, and this job counts in {record.currency}."
            yield notice_of("other_currency", about, why, entry)
