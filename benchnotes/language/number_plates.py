"""Serial and model numbers as one writes them: "five four one three" is 5413, "M K two" is MK2.

A number plate is read out sign by sign ("double oh four", "B for Bruce", "dash nine") or as numbers ("seventeen").
"""

from __future__ import annotations

from collections.abc import Sequence

from benchnotes.language.amounts import numerals
from benchnotes.language.amounts.numbers import number_at, word_at
from benchnotes.language.amounts.tokens import JOINERS, Token, tokens

MARKS = {"dash": "-", "hyphen": "-", "stroke": "/", "slash": "/"}
"""What is said for a mark between signs; common practice."""
PAUSES = frozenset(",;")


def as_written(words: str) -> str | None:
    """The words with numbers in figures, joined where they were spelled out; None where they are written already."""
    said = tokens(words)
    pieces: list[str] = []
    at, spoken = 0, False
    while at < len(said):
        piece, end = _piece_at(said, at)
        if _hyphened(words, said, at) and pieces and not pieces[-1].isdigit():
            pieces.append("-")
        as_it_stands = piece == said[at].written
        spoken = spoken or not as_it_stands
        if as_it_stands and said[at].glued and pieces and piece not in PAUSES:
            pieces[-1] += piece
        elif piece not in PAUSES:
            pieces.append(piece)
        at = end
    joined = "".join(_spaced(pieces))
    return joined if spoken and joined and joined != words else None


def _piece_at(said: Sequence[Token], at: int) -> tuple[str, int]:
    """What stands at `at` as one writes it, and where the next begins."""
    word, after = word_at(said, at), word_at(said, at + 1)
    if word in numerals.DOUBLES and (sign := _sign(said, at + 1)):
        return sign * numerals.DOUBLES[word], at + 2
    if word in MARKS and 0 < at < len(said) - 1:
        return MARKS[word], at + 1
    if len(word) == 1 and word.isalpha() and (after == "for" or (after, word_at(said, at + 2)) == ("as", "in")):
        return said[at].written, min(len(said), at + (3 if after == "for" else 4))
    if (digit := _said_alone(said, at)) is not None:
        return digit, at + 1
    number = None if said[at].kind == "figure" else number_at(said, at)
    if number is not None and number.end > at:
        return f"{number.value:f}", number.end
    return said[at].written, at + 1


def _sign(said: Sequence[Token], at: int) -> str:
    """One digit or letter, in words or written; "" for anything longer."""
    digit = numerals.digit(word_at(said, at))
    if digit is not None:
        return str(digit)
    return said[at].written if len(word_at(said, at)) == 1 and said[at].kind != "mark" else ""


def _said_alone(said: Sequence[Token], at: int) -> str | None:
    """A digit in words, one of several in a row: "four" of "four one", and not of "four fifty". An "oh" is one
    beside a number, and else a word."""
    digit = numerals.digit(word_at(said, at))
    before, after = (_is_sign_of_number(said, near) for near in (at - 1, at + 1))
    if digit is None or (word_at(said, at) == "o" and not before):
        return None
    return str(digit) if after or (before and word_at(said, at) in numerals.NOUGHTS) else None


def _is_sign_of_number(said: Sequence[Token], at: int) -> bool:
    word = word_at(said, at)
    doubled = word in numerals.DOUBLES and bool(_sign(said, at + 1))
    return numerals.digit(word) is not None or doubled or (len(word) == 1 and word.isdigit())


def _hyphened(words: str, said: Sequence[Token], at: int) -> bool:
    """ "SK-two": the grammar of numbers leaves such hyphens out."""
    return at > 0 and words[said[at - 1].end : said[at].start] in JOINERS


def _spaced(pieces: list[str]) -> list[str]:
    """Single letters and figures stand together, and marks join what stands around them; words stand apart."""
    made: list[str] = []
    for piece in pieces:
        short = len(piece) == 1 or piece.isdigit() or _is_sign(piece)
        joins = piece in MARKS.values() or (bool(made) and made[-1] in MARKS.values())
        if made and not joins and not (short and (made[-1][-1:].isdigit() or _is_sign(made[-1]))):
            made.append(" ")
        made.append(piece)
    return made


def _is_sign(piece: str) -> bool:
    """One letter, or one doubled: "AA"."""
    return len(piece) in {1, 2, 3} and len(set(piece)) == 1
