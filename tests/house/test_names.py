"""The words of the record are the same in GUIDE.md's tables, in the code, and in the published JSON Schema.

GUIDE.md (`training/narrations/`) is what the narrations were written by; it is read here as a person would read it.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from benchnotes.record import terms
from benchnotes.record.statements import KINDS

ROOT = Path(__file__).resolve().parents[2]
GUIDE = (ROOT / "training/narrations/GUIDE.md").read_text(encoding="utf-8")
STATEMENTS = (ROOT / "training/narrations/STATEMENTS.md").read_text(encoding="utf-8")
SCHEMA = json.loads((ROOT / "benchnotes/exports/schemas/job-record-1.schema.json").read_text(encoding="utf-8"))
FLAT = " ".join(GUIDE.split())


def entries_in_guide() -> dict[str, list[str]]:
    """Key of each list of the record -> the fields of its example (`"faults": [{"part": ..., "kind": ...}]`)."""
    found = {}
    for name, example in re.findall(r'"(\w+)":\s+\[(\{.*?\})\]', GUIDE, re.DOTALL):
        found[name] = [field for field in re.findall(r'"(\w+)":', example) if field != "u"]
    return found


def words_after(opening: str, ending: str = ".") -> list[str]:
    """The words of a list in running text, without what stands in brackets to explain them."""
    start = FLAT.index(opening) + len(opening)
    text = re.sub(r"\([^()]*\)", "", FLAT[start:])
    text = re.split(rf"{re.escape(ending)}(?= |$)", text, maxsplit=1)[0]
    return [word.strip(" .") for word in text.split(",") if word.strip(" .")]


def in_schema(entry: str) -> dict[str, Any]:
    """Properties of one entry of the schema's list `entry`, references followed."""
    return followed(followed(SCHEMA["properties"][entry])["items"]).get("properties", {})


def followed(schema: dict[str, Any]) -> dict[str, Any]:
    while "$ref" in schema:
        step: Any = SCHEMA
        for name in schema["$ref"].removeprefix("#/").split("/"):
            step = step[name]
        schema = step
    return schema


def enum(schema: dict[str, Any]) -> set[str]:
    """The words that a field may hold, null left out."""
    schema = followed(schema)
    words = set(schema.get("enum", ()))
    for choice in schema.get("anyOf", schema.get("oneOf", ())):
        words |= enum(choice)
    return words - {None}


def test_the_guide_is_read_whole() -> None:
    assert sorted(entries_in_guide()) == sorted(
        ["faults", "parts", "charges", "work", "readings", "tests", "advice", "left_apart", "unsure"]
    )


@pytest.mark.parametrize(("entry", "fields"), entries_in_guide().items())
def test_json_fields_are_those_of_the_guide(entry: str, fields: list[str]) -> None:
    missing = set(fields) - set(in_schema(entry))
    assert not missing
    assert "evidence" in in_schema(entry)


@pytest.mark.parametrize("field", ["kind", "make", "model", "serial", "power", "holds_pressure"])
def test_the_machine_has_the_fields_of_the_guide(field: str) -> None:
    assert field in followed(SCHEMA["properties"]["machine"])["properties"]


WORDS = {
    ("faults", "kind"): (words_after("- kind: "), terms.FAULT_KINDS),
    ("charges", "kind"): ([*words_after("- kind: labour,"), "labour"], terms.CHARGE_KINDS),
    ("work", "action"): (
        words_after("- Work on this machine, one entry per action and target. action: "),
        terms.ACTIONS,
    ),
    ("readings", "unit"): (words_after("unit: the spoken unit's symbol: "), terms.UNITS),
    ("tests", "what"): (words_after("- what: "), terms.TRIAL_KINDS),
    ("tests", "result"): (words_after("result: ", " Something"), terms.TRIAL_RESULTS),
    ("faults", "status"): (words_after("- status: "), terms.FAULT_STATUSES),
    ("parts", "state"): (words_after("- state: "), terms.PART_STATES),
}


@pytest.mark.parametrize("place", WORDS, ids=".".join)
def test_words_are_the_same_in_guide_code_and_schema(place: tuple[str, str]) -> None:
    guide, code = WORDS[place]
    assert sorted(guide) == sorted(code)
    assert enum(in_schema(place[0])[place[1]]) == set(code)


def test_items_still_to_do_are_those_of_the_guide() -> None:
    table = GUIDE.split("| kind | when |", 1)[1]
    kinds = [kind for row in re.findall(r"^\| ([a-z_, ]+) \|", table, re.MULTILINE) for kind in row.split(", ")]
    assert sorted(kinds) == sorted(terms.ITEM_KINDS)
    assert enum(in_schema("open_items")["kind"]) == set(kinds)


def test_statements_are_those_of_the_guide() -> None:
    table = STATEMENTS.split("| say | fields", 1)[1]
    says = [say for row in re.findall(r"^\| ([a-z, ]+) \|", table, re.MULTILINE) for say in row.split(", ")]
    assert sorted(says) == sorted(kind.say for kind in KINDS if kind.say != "cue")


def test_our_own_page_lists_every_statement() -> None:
    page = (ROOT / "docs/statements.md").read_text(encoding="utf-8")
    assert not [kind.say for kind in KINDS if f"| {kind.say} |" not in page]
