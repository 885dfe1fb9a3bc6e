"""docs/adding-a-trade.md: its example is a trade that works, and its table names every key there is."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from benchnotes.language.machines import implied
from benchnotes.language.marking.listed import ListedMarker
from benchnotes.language.pipeline import build
from benchnotes.language.vocabulary_sheets import LISTS, TABLES
from benchnotes.record.heard import captioned
from benchnotes.trades.english import open_english
from benchnotes.trades.shelf import load

PAGE = (Path(__file__).parents[2] / "docs" / "adding-a-trade.md").read_text(encoding="utf-8")


@pytest.fixture
def shelf_of_a_beekeeper(tmp_path: Path) -> Path:
    example = re.search(r"```toml\n(.*?)```", PAGE, re.DOTALL)
    assert example is not None
    (tmp_path / "beehives.toml").write_text(example.group(1), encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(
    ("talk", "kind", "attributes", "part"),
    [
        ("The crown board is propolised.", "fault", {"kind": "dirty"}, "The crown board"),
        (
            "I scorched out the brood box.",
            "work",
            {"action": "clean", "standing": "done", "by": "bench"},
            "the brood box",
        ),
        ("The honey gate isn't dribbling honey.", "clear", {}, "The honey gate"),
    ],
)
def test_the_example_reads_as_the_page_says(
    shelf_of_a_beekeeper: Path, talk: str, kind: str, attributes: dict[str, str], part: str
) -> None:
    words = load(shelf_of_a_beekeeper)
    marks = ListedMarker(build(open_english(), words), words).mark([captioned(1, 0, 4, talk)]).marks
    found = next(mark for mark in marks if mark.kind == kind)
    assert found.attributes == attributes
    assert found.part is not None
    assert talk[found.part.start : found.part.end] == part


def test_the_examples_machine_is_known(shelf_of_a_beekeeper: Path) -> None:
    assert implied("wax steamer", load(shelf_of_a_beekeeper)) == ("manual", False)


def test_every_key_is_in_the_table() -> None:
    for key in (*LISTS, "title", "words", "forget"):
        assert f"| `{key}` |" in PAGE
    for key in (*TABLES, "irregular", "hazards"):
        assert re.search(rf"\| `\[{key}[\].]", PAGE), key
