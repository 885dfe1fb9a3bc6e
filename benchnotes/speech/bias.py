"""Words of the trade and of the job, as one short string towards which the recogniser leans."""

from __future__ import annotations

from collections.abc import Iterable

MOST_CHARACTERS = 400
"""About a hundred tokens; Whisper takes 223 at most, and a long list costs accuracy on everything else."""


def hotwords(words: Iterable[str]) -> str:
    """The first words that fit, each once, in the order given: put the job's own words first."""
    chosen: dict[str, str] = {}
    length = 0
    for word in words:
        plain = " ".join(word.split())
        if not plain or plain.casefold() in chosen or length + len(plain) + 2 > MOST_CHARACTERS:
            continue
        chosen[plain.casefold()] = plain
        length += len(plain) + 2
    return ", ".join(chosen.values())
