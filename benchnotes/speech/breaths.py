"""Words become utterances: one breath of talk each, 3 to 40 words, cut at sentence ends and pauses."""

from __future__ import annotations

from collections.abc import Sequence

from benchnotes.record.heard import Utterance, Word

FEWEST, MOST = 3, 40
PAUSE_S = 0.7
"""A pause this long ends a breath even inside a sentence."""
NEAR_S = 1.5
"""A fragment joins a neighbour that is no farther than this; a lone word in silence stays alone."""
SENTENCE_END = (".", "?", "!", "…")


def breaths(recording: int, words: Sequence[Word]) -> tuple[Utterance, ...]:
    """Every word in exactly one utterance, in order."""
    runs = [run for group in _at_breaks(words) for run in _short_enough(group)]
    return tuple(_utterance(recording, run) for run in _joined(runs))


def _at_breaks(words: Sequence[Word]) -> list[list[Word]]:
    groups: list[list[Word]] = []
    for i, word in enumerate(words):
        before = words[i - 1] if i else None
        if before is None or before.text.endswith(SENTENCE_END) or word.start_s - before.end_s >= PAUSE_S:
            groups.append([])
        groups[-1].append(word)
    return groups


def _short_enough(run: list[Word]) -> list[list[Word]]:
    """A run of at most 40 words: cut at the longest pause near its middle, a comma counting as one."""
    if len(run) <= MOST:
        return [run]
    middle = range(len(run) // 4, len(run) - len(run) // 4)
    at = max(middle, key=lambda i: run[i].start_s - run[i - 1].end_s + 0.2 * run[i - 1].text.endswith((",", ";", ":")))
    return [*_short_enough(run[:at]), *_short_enough(run[at:])]


def _joined(runs: list[list[Word]]) -> list[list[Word]]:
    """Fragments of one or two words go to the nearer neighbour, where there is one within reach."""
    joined: list[list[Word]] = []
    for i, run in enumerate(runs):
        to_last = run[0].start_s - joined[-1][-1].end_s if joined else float("inf")
        to_next = runs[i + 1][0].start_s - run[-1].end_s if i + 1 < len(runs) else float("inf")
        last_is_short = bool(joined) and len(joined[-1]) < FEWEST
        backwards = to_last <= to_next if len(run) < FEWEST else last_is_short
        if backwards and to_last <= NEAR_S and len(joined[-1]) + len(run) <= MOST:
            joined[-1] = [*joined[-1], *run]
        else:
            joined.append(run)
    return joined


def _utterance(recording: int, words: Sequence[Word]) -> Utterance:
    return Utterance(recording, words[0].start_s, max(word.end_s for word in words), tuple(words))
