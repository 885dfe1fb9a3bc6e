"""The JSON that leaves the program keeps its published schema, whatever the record; checked by `jsonschema`."""

from __future__ import annotations

import json
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from exports.records import HEARD, ITEMS, records
from hypothesis import given, settings
from jsonschema import Draft202012Validator, FormatChecker, ValidationError

from benchnotes.exports.job_json import job_document, job_text, published_schema
from benchnotes.record import terms
from benchnotes.record.entries import Charge, Fault, Item, JobRecord, Part, Reading, Trial
from benchnotes.record.heard import Evidence
from benchnotes.record.job import Heard
from benchnotes.record.money import Money

SCHEMA = published_schema()
VALIDATOR = Draft202012Validator(SCHEMA, format_checker=FormatChecker())
GUIDE = Path(__file__).parents[2] / "training" / "narrations" / "GUIDE.md"
NOTHING_HEARD = Heard((), ())


@settings(max_examples=150, deadline=None)
@given(record=records(), items=ITEMS, heard=HEARD)
def test_every_record_keeps_the_schema(record: JobRecord, items: tuple[Item, ...], heard: Heard) -> None:
    text = job_text(job_document(record, items, heard))
    VALIDATOR.validate(json.loads(text))
    prices = [part["unit_price"] for part in json.loads(text)["parts"]]
    assert [price and Decimal(price) for price in prices] == [
        part.unit_price and part.unit_price.amount for part in record.parts
    ]


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"].endswith("draft/2020-12/schema")


def _objects(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        if node.get("type") == "object":
            yield node
        for child in node.values():
            yield from _objects(child)
    elif isinstance(node, list):
        for child in node:
            yield from _objects(child)


def test_the_schema_is_closed() -> None:
    """No object may carry what the schema does not name, and none may lack what it names."""
    for node in _objects(SCHEMA):
        assert node["additionalProperties"] is False
        assert node["required"] == list(node["properties"])


@pytest.mark.parametrize(
    ("where", "field", "known"),
    [
        ("machine", "power", (*terms.POWERS, None)),
        ("fault", "kind", terms.FAULT_KINDS),
        ("fault", "status", terms.FAULT_STATUSES),
        ("part", "basis", (*terms.BASES, None)),
        ("part", "state", terms.PART_STATES),
        ("charge", "kind", terms.CHARGE_KINDS),
        ("work", "action", terms.ACTIONS),
        ("work", "status", terms.STANDINGS),
        ("work", "by", terms.PLACES),
        ("reading", "unit", terms.UNITS),
        ("reading", "when", (*terms.WHENS, None)),
        ("test", "what", terms.TRIAL_KINDS),
        ("test", "result", terms.TRIAL_RESULTS),
        ("open_item", "kind", terms.ITEM_KINDS),
    ],
)
def test_the_enums_are_those_of_the_record(where: str, field: str, known: tuple[str | None, ...]) -> None:
    assert SCHEMA["$defs"][where]["properties"][field]["enum"] == list(known)


def test_open_items_have_the_kinds_of_the_guide() -> None:
    """The table at the end of GUIDE.md, read as text."""
    table = GUIDE.read_text(encoding="utf-8").split("| kind | when |")[1]
    first = [line.split("|")[1].strip() for line in table.splitlines() if line.startswith("| ") and "---" not in line]
    kinds = [kind.strip() for cell in first for kind in cell.split(",")]
    assert sorted(kinds) == sorted(SCHEMA["$defs"]["open_item"]["properties"]["kind"]["enum"])


def test_numbers_are_numbers_and_money_is_text() -> None:
    record = JobRecord(
        currency="JPY",
        parts=(Part(name="bobbin", qty=Decimal("2"), unit_price=Money(Decimal("1200.00"), "JPY"), basis="about"),),
        charges=(Charge(kind="labour", what="", hours=Decimal("1.50")),),
        readings=(
            Reading(what="gap", value=Decimal("0.25"), unit="mm"),
            Reading(what="bore", value=Decimal("1E+1"), unit="mm"),
        ),
    )
    document = job_document(record, (), NOTHING_HEARD)
    assert (document["parts"][0]["qty"], document["parts"][0]["unit_price"]) == (2, "1200")
    assert document["charges"][0]["hours"] == 1.5
    assert [reading["value"] for reading in document["readings"]] == [0.25, 10]


@pytest.mark.parametrize(
    ("amount", "currency", "written"),
    [
        ("4.5", "GBP", "4.50"),
        ("4", "GBP", "4.00"),
        ("1E+2", "USD", "100.00"),
        ("0.125", "EUR", "0.125"),
        ("1200", "JPY", "1200"),
        ("3.5", "KWD", "3.500"),
        ("-5", "AUD", "-5.00"),
    ],
)
def test_amounts_have_the_digits_of_their_currency(amount: str, currency: str, written: str) -> None:
    record = JobRecord(currency=currency, parts=(Part(name="lid", unit_price=Money(Decimal(amount), currency)),))
    assert job_document(record, (), NOTHING_HEARD)["parts"][0]["unit_price"] == written


def test_evidence_and_items_have_their_fields() -> None:
    said = Evidence(1, 35.25, 38.0, "the lid gasket is split")
    fault = Fault(part="lid gasket", kind="cracked", evidence=(said,), sure=0.8765, check=True)
    item = Item(kind="fault_open", about="lid gasket", why="nobody said it was put right", evidence=(said,))
    document = job_document(JobRecord(currency="GBP", faults=(fault,)), (item,), NOTHING_HEARD)
    evidence = [{"recording": 1, "start": 35.25, "end": 38.0, "heard": "the lid gasket is split"}]
    assert document["faults"] == [
        {"part": "lid gasket", "kind": "cracked", "status": "open", "sure": 0.876, "check": True, "evidence": evidence}
    ]
    assert document["open_items"] == [
        {"kind": "fault_open", "about": "lid gasket", "why": "nobody said it was put right", "evidence": evidence}
    ]


def test_the_schema_refuses_what_the_guide_does_not_know() -> None:
    document = job_document(JobRecord(currency="GBP", tests=(Trial(what="leak", result="pass"),)), (), NOTHING_HEARD)
    for wrong in ({"result": "passed"}, {"what": "smell"}, {"colour": "red"}):
        changed = json.loads(json.dumps(document))
        changed["tests"][0].update(wrong)
        with pytest.raises(ValidationError):
            VALIDATOR.validate(changed)
