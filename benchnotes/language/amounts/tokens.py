"""Talk cut into the small pieces that the grammar of amounts reads: words, figures and marks, each with its place.

Figures and letters that stand together come apart ("4.7k" is "4.7" and "k", "M6" is "m" and "6"), because a
recogniser glues them or not as it likes; `glued` keeps how they stood.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

PIECE = re.compile(
    r"""(?P<figure> \d+ (?: [.,] \d+ )* | (?<! [\d.] ) \. \d+ )
      | (?P<initials> (?: [A-Za-z] \. ){2,} )
      | (?P<rounded> [^\W\d_]+ (?: ty | een ) (?= ish \b ) )
      | (?P<word> ['’]? [^\W\d_]+ (?: ['’] [^\W\d_]+ )? )
      | (?P<mark> \S )""",
    re.VERBOSE,
)
VULGAR = {
    "½": (1, 2),
    "¼": (1, 4),
    "¾": (3, 4),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
}
JOINERS = frozenset("-‐‑–")


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of talk; `start` and `end` are characters of the text it was cut from."""

    text: str
    """Lower case; initials without their dots, a dropped h put back ("'undred")."""
    start: int
    end: int
    kind: str
    """figure, word or mark."""
    glued: bool
    """Nothing stands between this piece and the one before."""
    written: str
    """Letter by letter."""


def tokens(text: str) -> tuple[Token, ...]:
    """Every piece of `text` in order; hyphens inside spoken words are left out ("twenty-five" is two glued words)."""
    pieces: list[Token] = []
    last_end = -1
    for match in PIECE.finditer(text):
        written = match.group()
        if written in JOINERS and _joins(text, match):
            last_end = match.end() if last_end == match.start() else last_end
            continue
        kind = "word" if match.lastgroup in {"initials", "rounded"} else str(match.lastgroup)
        pieces.append(Token(_plain(written), match.start(), match.end(), kind, match.start() == last_end, written))
        last_end = match.end()
    return tuple(pieces)


def _joins(text: str, match: re.Match[str]) -> bool:
    """A hyphen between a letter and a letter, or a figure and a word; a minus before a figure stays."""
    before, after = text[: match.start()][-1:], text[match.end() :][:1]
    return before.isalnum() and (after.isalpha() or (after.isdigit() and before.isalpha()))


def _plain(written: str) -> str:
    word = written.lower().replace("’", "'")
    if word.startswith("'") and len(word) > 1:
        return {"'undred": "hundred", "'alf": "half", "'our": "hour", "'ours": "hours"}.get(word, word[1:])
    if len(word) > 2 and "." in word and word[0].isalpha():
        return word.replace(".", "")
    return word
