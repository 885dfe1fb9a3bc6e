"""Serial and model numbers as one writes them: "five four one three" is 5413, "M K two" is MK2."""

from __future__ import annotations

from benchnotes.language.amounts.numbers import number_at
from benchnotes.language.amounts.tokens import tokens


def as_written(words: str) -> str | None:
    """The words with numbers in figures, joined where they were spelled out; None where they are written already."""
    if not _spoken(words):
        return None
    said = tokens(words)
    pieces: list[str] = []
    at = 0
    while at < len(said):
        number = number_at(said, at)
        if number is not None and number.end > at and not _in_figures(words[said[at].start :]):
            pieces.append(f"{number.value:f}")
            at = number.end
        else:
            pieces.append(words[said[at].start : said[at].end])
            at += 1
    joined = "".join(_spaced(pieces))
    return joined if joined and joined != words else None


def _spoken(words: str) -> bool:
    """Some number in it is in words, or figures stand apart as they were spelled out."""
    said = tokens(words)
    numbers = [number for at in range(len(said)) if (number := number_at(said, at)) is not None]
    return any(not _in_figures(words[said[number.first].start :]) for number in numbers)


def _in_figures(words: str) -> bool:
    return words[0].isdigit()


def _spaced(pieces: list[str]) -> list[str]:
    """Single letters and figures stand together; words stand apart."""
    made: list[str] = []
    for piece in pieces:
        short = len(piece) == 1 or piece.isdigit()
        if made and not (short and (made[-1].isdigit() or len(made[-1].split(" ")[-1]) == 1)):
            made.append(" ")
        made.append(piece)
    return made
