"""What the README shows of the demo is what the program says today."""

from __future__ import annotations

from difflib import SequenceMatcher
from pathlib import Path

import pytest
from whole.pasted import Pasted, pasted_again, pasted_in
from whole.shop import Shop

pytestmark = [pytest.mark.whole, pytest.mark.speech, pytest.mark.reader]


def test_pasted_output_is_todays(shop: Shop, root: Path) -> None:
    """Line for line but for one in ten: another processor may hear a word otherwise. `make readme` pastes it again."""
    blocks = pasted_in((root / "README.md").read_text(encoding="utf-8"))
    assert len(blocks) >= 2
    for block in blocks:
        there, today = block.text.splitlines(), block.today(shop).splitlines()
        assert SequenceMatcher(None, there, today, autojunk=False).ratio() >= 0.9, "\n".join(today)


def test_a_block_is_pasted_in_its_place() -> None:
    page = 'before\n<!-- paste: show "a job" | 2 -->\n```text\nold\n```\nafter\n'
    again = pasted_again(page, lambda block: " ".join(block.words) + f" {block.lines}\n")
    assert again == page.replace("old", "show a job 2")
    assert pasted_in(page) == [Pasted(("show", "a job"), 2, "old\n")]
