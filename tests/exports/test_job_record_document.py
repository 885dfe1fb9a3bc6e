"""docs/job-record.md says what the schema and the parts list hold, no less and no more."""

from __future__ import annotations

import re
from pathlib import Path

from benchnotes.exports.job_json import published_schema
from benchnotes.exports.parts_list import COLUMNS

TEXT = (Path(__file__).parents[2] / "docs" / "job-record.md").read_text(encoding="utf-8")


def _table(head: str) -> dict[str, str]:
    """The rows of the table whose head is `head`: first cell (its names in backquotes) to second cell."""
    rows = TEXT.split(head, 1)[1].split("\n\n", 1)[0].splitlines()[2:]
    cells = (row.strip("|").split("|") for row in rows)
    return {name: words for first, words in cells for name in re.findall(r"`(\w+)`", first)}


def test_every_field_is_there() -> None:
    schema = published_schema()
    described = _table("| field | what |")
    assert list(described) == list(schema["properties"])
    for name, words in described.items():
        kind = schema["properties"][name].get("items", schema["properties"][name]).get("$ref", "").split("/")[-1]
        fields = schema["$defs"].get(kind, {}).get("properties", {})
        for field in fields.keys() - {"sure", "check", "evidence", "recording"}:
            assert f"`{field}`" in words, f"{name}.{field}"


def test_every_kind_of_item_is_there() -> None:
    kinds = published_schema()["$defs"]["open_item"]["properties"]["kind"]["enum"]
    assert list(_table("| kind | when |")) == kinds


def test_every_column_is_there() -> None:
    assert tuple(_table("| column | what |")) == COLUMNS
