"""Money that is no part's price: labour, outside work, postage, a discount."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import Charge, JobRecord
from benchnotes.record.statements import Charges
from benchnotes.record.talk import Said, Talk, resting_on

SPOKEN_WHAT = {
    "labour": "labour",
    "outside_work": "outside work",
    "postage": "postage",
    "discount": "discount",
    "other": "charge",
}


def charges(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Three hours on this" ... "call it ninety for labour" -> one charge: labour, 90, 3 h."""
    folded: list[list[tuple[Said, Charges]]] = []
    for said, charge in talk.of(Charges):
        same = next((group for group in folded if _same_charge(group, said, charge)), None)
        if same is None:
            folded.append([(said, charge)])
        else:
            same.append((said, charge))
    return replace(record, charges=tuple(_charge(group) for group in folded))


def _what(said: Said, charge: Charges) -> str:
    return said.name or SPOKEN_WHAT[charge.kind]


def _same_charge(group: list[tuple[Said, Charges]], said: Said, charge: Charges) -> bool:
    first_said, first = group[0]
    return first.kind == charge.kind and _what(first_said, first) == _what(said, charge)


def _charge(group: list[tuple[Said, Charges]]) -> Charge:
    said, first = group[0]
    priced = [charge for _, charge in group if charge.price is not None]
    timed = [charge.hours for _, charge in group if charge.hours is not None]
    entry = Charge(
        kind=first.kind,
        what=_what(said, first),
        amount=priced[-1].price if priced else None,
        basis=priced[-1].basis if priced else None,
        hours=timed[-1] if timed else None,
    )
    return resting_on(entry, (charge for _, charge in group))
