"""Numbers, sizes and prices that may be misheard: their statements are marked to be checked by ear before the fold."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from benchnotes.record.heard import Utterance, Word
from benchnotes.record.statements import Charges, Measures, Names, PartStatement, Prices, Statement

UNSURE_BELOW_P = 0.6
"""A number's word under this probability may be another number. A recogniser with its own scale gives its own limit."""

_NUMBERS = """nought naught zero oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen
fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand half
quarter quarters third thirds eighth eighths sixteenth sixteenths point"""
NUMBER_WORDS = frozenset(_NUMBERS.split())
_PIECES = re.compile(r"[a-z]+|\d+(?:[.,]\d+)*")


def checked_by_ear(
    statements: Sequence[Statement], talk: Sequence[Utterance], *, below_p: float = UNSURE_BELOW_P
) -> tuple[Statement, ...]:
    """The statements, those marked `check` of whose number some word is unsure. `order` is the index into `talk`.

    Captions and typed words have no probability and are never marked.
    """
    return tuple(replace(s, check=True) if _misheard(s, talk, below_p) else s for s in statements)


def _misheard(statement: Statement, talk: Sequence[Utterance], below_p: float) -> bool:
    if not _has_number(statement) or not 0 <= statement.order < len(talk):
        return False
    words = words_of(statement.words, talk[statement.order])
    numbers = [word for word in words if is_number(word.text)]
    unsure = [word for word in numbers or words if word.probability is not None and word.probability < below_p]
    return bool(unsure)


def _has_number(statement: Statement) -> bool:
    if isinstance(statement, Names):
        return statement.field in ("serial", "model")
    if isinstance(statement, PartStatement):
        return statement.quantity is not None and statement.quantity != 1
    return isinstance(statement, (Prices, Charges, Measures))


def is_number(text: str) -> bool:
    """True for a word that says a number or part of one: "7.2", "fifty", "M6", "forty-two"."""
    pieces = _PIECES.findall(text.lower())
    return any(piece[0].isdigit() or piece in NUMBER_WORDS for piece in pieces)


def words_of(stretch: str, utterance: Utterance) -> tuple[Word, ...]:
    """The words of the utterance that a stretch of it covers; all its words where it is not found there."""
    at = utterance.text.find(stretch) if stretch else -1
    if at < 0:
        return utterance.words
    spans = zip(utterance.words, utterance.word_spans(), strict=True)
    return tuple(word for word, (start, end) in spans if start < at + len(stretch) and at < end)
