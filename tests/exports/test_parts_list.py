"""The parts list, read back by an independent reader (Python's own CSV reader in strict mode)."""

from __future__ import annotations

import csv
import io
import re
from decimal import Decimal

import pytest
from exports.records import records
from hypothesis import given, settings

from benchnotes.exports.parts_list import COLUMNS, parts_csv, safe_text
from benchnotes.record.entries import JobRecord, Part
from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money

NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def rows(record: JobRecord) -> list[dict[str, str]]:
    text = parts_csv(record).decode("utf-8")
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


@settings(max_examples=150, deadline=None)
@given(record=records())
def test_any_record_gives_a_sound_table(record: JobRecord) -> None:
    read = rows(record)
    assert len(read) == len(record.parts)
    for row, part in zip(read, record.parts, strict=True):
        assert tuple(row) == COLUMNS
        assert Decimal(row["quantity"]) == part.qty
        assert (Decimal(row["unit_price"]) if row["unit_price"] else None) == (
            part.unit_price.amount if part.unit_price else None
        )
        for column in ("quantity", "unit_price", "line_total", "recording", "said_at_s"):
            assert not row[column] or NUMBER.fullmatch(row[column])
        for column in ("name", "heard"):
            assert not row[column].lstrip(" ").startswith(("=", "+", "-", "@", "\t", "\r"))


def test_lines_end_as_rfc_4180_says() -> None:
    record = JobRecord(currency="GBP", parts=(Part(name='lid, 9" wide'),))
    assert parts_csv(record) == (
        b"name,quantity,unit_price,currency,basis,state,line_total,check,recording,said_at_s,heard\r\n"
        b'"lid, 9"" wide",1,,GBP,,needed,,no,,,\r\n'
    )


def test_a_line_total_is_the_number_times_the_price() -> None:
    """ "Three bobbins, one twenty each", and a lid that was dropped: the column adds up to what is to be paid."""
    price = Money(Decimal("1.20"), "GBP")
    said = (Evidence(1, 4.0, 6.0, "three bobbins"), Evidence(2, 65.04, 70.0, "one twenty each, those"))
    record = JobRecord(
        currency="GBP",
        parts=(
            Part(name="bobbin", qty=Decimal(3), unit_price=price, basis="exact", evidence=said, check=True),
            Part(name="lid", unit_price=price, state="not_needed"),
        ),
    )
    first, second = rows(record)
    assert first == {
        "name": "bobbin", "quantity": "3", "unit_price": "1.20", "currency": "GBP", "basis": "exact",
        "state": "needed", "line_total": "3.60", "check": "yes", "recording": "2", "said_at_s": "65.0",
        "heard": "one twenty each, those",
    }  # fmt: skip
    assert (second["state"], second["line_total"]) == ("not_needed", "")


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("=HYPERLINK(1)", "'=HYPERLINK(1)"),
        ("-12 tap", "'-12 tap"),
        ("  @SUM", "'  @SUM"),
        ("＝1", "'＝1"),
        ("\t=1", "' =1"),
        ("\x1f=1", "' =1"),
        ("lid = cap", "lid = cap"),
        ("café tap", "café tap"),
    ],
)
def test_no_text_becomes_a_formula(text: str, safe: str) -> None:
    assert safe_text(text) == safe
