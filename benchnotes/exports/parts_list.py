"""The parts of a job as CSV (RFC 4180, UTF-8): for a spreadsheet, a supplier's order form, a stock program."""

from __future__ import annotations

import csv
import io
from typing import Final

from benchnotes.exports.currencies import plain_amount, plain_decimal
from benchnotes.record.entries import JobRecord, Part

COLUMNS: Final = (
    "name", "quantity", "unit_price", "currency", "basis", "state", "line_total", "check", "recording", "said_at_s",
    "heard",
)  # fmt: skip
"""In this order for good; new ones only at the end."""

# A cell that begins so may be run as a formula: OWASP, "CSV Injection"; the full-width forms count too
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def parts_csv(record: JobRecord) -> bytes:
    """One row a part, in the order of the record; lines end with CR LF."""
    out = io.StringIO(newline="")
    rows = csv.writer(out, lineterminator="\r\n")
    rows.writerow(COLUMNS)
    rows.writerows(_row(part, record.currency) for part in record.parts)
    return out.getvalue().encode("utf-8")


def _row(part: Part, currency: str) -> tuple[str, ...]:
    said = part.evidence[-1] if part.evidence else None
    return (
        safe_text(part.name),
        plain_decimal(part.qty),
        plain_amount(part.unit_price) if part.unit_price else "",
        part.unit_price.currency if part.unit_price else currency,
        part.basis or "",
        part.state,
        _line_total(part),
        "yes" if part.check else "no",
        str(said.recording) if said else "",
        f"{said.start_s:.1f}" if said else "",
        safe_text(said.heard) if said else "",
    )


def _line_total(part: Part) -> str:
    """Empty where there is no price, and where the part was dropped: the column can be added up as it stands."""
    if part.unit_price is None or part.state == "not_needed":
        return ""
    return plain_amount(part.unit_price.times(part.qty))


def safe_text(text: str) -> str:
    """Text that no spreadsheet takes for a formula: an apostrophe in front makes it plain text."""
    shown = "".join(letter if letter.isprintable() else " " for letter in text)
    # both forms: a control character in front is a space once shown, and hides no "=" behind it
    risky = any(each.lstrip(" ").startswith(FORMULA_STARTS) for each in (text, shown))
    return f"'{shown}" if risky else shown
