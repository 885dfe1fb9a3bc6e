"""Fixed words and other people's text as a reader sees them on one line."""

from __future__ import annotations


def in_words(term: str) -> str:
    """A fixed word of the record for people: "wrong_part" is "wrong part"."""
    return term.replace("_", " ")


def one_line(text: str) -> str:
    """Other people's text without line ends and without what no printer prints (terminal escapes, marks that turn
    the direction of writing, characters that XML forbids)."""
    return " ".join("".join(letter if letter.isprintable() else " " for letter in text).split())
