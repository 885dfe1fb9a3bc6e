"""The README's pasted output: which command made each block, and pasting today's output again (`make readme`).

A block is a line `<!-- paste: left "hat steamer" -->` (`... | 40 -->`: the first 40 lines) and the fenced text below.
"""

from __future__ import annotations

import re
import shlex
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from whole.shop import Shop

BLOCK = re.compile(r"<!-- paste: (?P<words>[^|>]+?)(?: \| (?P<lines>\d+))? -->\n```text\n(?P<text>.*?)```\n", re.DOTALL)


@dataclass(frozen=True)
class Pasted:
    """One block: the command's words, how many lines of its output stand there (None: all), and the text."""

    words: tuple[str, ...]
    lines: int | None
    text: str

    def today(self, shop: Shop) -> str:
        """What the command says now."""
        said = shop.run(*self.words).stdout.rstrip().splitlines()
        return "\n".join(line.rstrip() for line in said[: self.lines]) + "\n"


def pasted_in(page: str) -> list[Pasted]:
    """Every block of a page."""
    return [_pasted(match) for match in BLOCK.finditer(page)]


def pasted_again(page: str, output: Callable[[Pasted], str]) -> str:
    """The page with `output` of every block in place of what stood there."""

    def again(match: re.Match[str]) -> str:
        head = match[0][: match.start("text") - match.start()]
        return head + output(_pasted(match)) + "```\n"

    return BLOCK.sub(again, page)


def _pasted(match: re.Match[str]) -> Pasted:
    lines = int(match["lines"]) if match["lines"] else None
    return Pasted(tuple(shlex.split(match["words"])), lines, match["text"])


if __name__ == "__main__":
    readme, shop = Path(sys.argv[1]), Shop(Path(sys.argv[2]))
    readme.write_text(
        pasted_again(readme.read_text(encoding="utf-8"), lambda block: block.today(shop)), encoding="utf-8"
    )
