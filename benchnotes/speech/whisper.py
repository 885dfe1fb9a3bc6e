"""faster-whisper behind the Transcriber Protocol; the only file that imports its model.

The encoder takes two thirds of the time; so it runs once for a batch, and every way of reading decodes from that.
Nothing here reads a long file in a row: with hotwords, half a minute was lost without an error.
"""

from __future__ import annotations

import math
import os
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy as np
from faster_whisper import WhisperModel
from faster_whisper.audio import pad_or_trim
from faster_whisper.tokenizer import Tokenizer
from faster_whisper.transcribe import get_suppressed_tokens, merge_punctuations

from benchnotes.record.heard import Word
from benchnotes.speech.errors import SpeechError
from benchnotes.speech.number_sense import same_value, says_number
from benchnotes.speech.sound import Sound, seconds
from benchnotes.speech.transcriber import Reading, Way

BATCH = 8
"""Sounds encoded at once: 16 gains no time and takes twice the memory (measured)."""
LONGEST_S = 29.0
"""Whisper's window is 30 s."""
ALTERNATIVES = 40
"""So many of the likeliest tokens are looked at for other numbers, and other ways to write this one."""
HOP_S = 0.01
"""Whisper's feature frames are 10 ms apart; its encoder halves them."""
MOST_TOKENS = 224
"""Whisper's text context is 448 tokens, half of it for the prompt."""
OPENING = "\"'“¿([{-"
CLOSING = "\"'.。,，!！?？:：”)]}、"


class Whisper:
    """A Whisper model in CTranslate2 form, from a folder that `weights.find` has checked.

    `threads`: as many as there are processors where 0; CTranslate2's own choice is four, which slows down two.
    """

    def __init__(self, folder: Path, *, threads: int = 0) -> None:
        try:
            self._model: Any = WhisperModel(
                str(folder),
                device="cpu",
                compute_type="int8",
                cpu_threads=threads or os.cpu_count() or 1,
                local_files_only=True,
            )
        except (RuntimeError, ValueError, OSError) as error:
            raise SpeechError(
                f"The speech weights in {folder} cannot be opened ({error}). "
                "Fetch them again with `benchnotes weights`, or name another folder."
            ) from None
        multilingual = self._model.model.is_multilingual
        self._tokenizer: Any = Tokenizer(self._model.hf_tokenizer, multilingual, task="transcribe", language="en")
        self._suppressed = get_suppressed_tokens(self._tokenizer, [-1])

    @property
    def longest_s(self) -> float:
        return LONGEST_S

    def read(self, sounds: Sequence[Sound], ways: Sequence[Way]) -> tuple[tuple[Reading, ...], ...]:
        read: list[list[Reading]] = [[] for _ in ways]
        for i in range(0, len(sounds), BATCH):
            batch = sounds[i : i + BATCH]
            encoded = self._model.encode(np.stack([self._features(sound) for sound in batch]))
            for so_far, way in zip(read, ways, strict=True):
                so_far.extend(self._decoded(encoded, batch, way))
        return tuple(tuple(readings) for readings in read)

    def _features(self, sound: Sound) -> Any:
        return pad_or_trim(self._model.feature_extractor(sound)[..., :-1])

    def _decoded(self, encoded: Any, sounds: Sequence[Sound], way: Way) -> list[Reading]:
        prompt = self._model.get_prompt(
            self._tokenizer, [], without_timestamps=not way.timestamps, hotwords=way.hotwords or None
        )
        results = self._model.model.generate(
            encoded,
            [list(prompt) for _ in sounds],
            beam_size=way.beam,
            max_length=min(self._model.max_length, len(prompt) + MOST_TOKENS),
            suppress_blank=True,
            suppress_tokens=self._suppressed,
            return_scores=True,
            # Only greedy decoding gives the logits of what it wrote; with beams they are of other guesses.
            return_logits_vocab=way.beam == 1,
            return_no_speech_prob=True,
            max_initial_timestamp_index=50,
        )
        tokens = [[t for t in result.sequences_ids[0] if t < self._tokenizer.eot] for result in results]
        frames = [math.ceil(seconds(sound) / HOP_S) for sound in sounds]
        aligned = self._model.model.align(encoded, self._tokenizer.sot_sequence, tokens, frames, median_filter_width=7)
        return [
            Reading(
                _words(self._timed(some, alignment, self._number_p(some, result.logits[0] if way.beam == 1 else None))),
                math.exp(result.scores[0]),
                result.no_speech_prob,
            )
            for some, alignment, result in zip(tokens, aligned, results, strict=True)
        ]

    def _number_p(self, tokens: list[int], logits: Any) -> dict[int, float]:
        """For each token that says a number or a piece of one: how sure its value is, however it may be written."""
        sure: dict[int, float] = {}
        written = self._written_words(tokens) if logits is not None else []
        numeric = [says_number(self._tokenizer.decode(tokens[start:end])) for start, end in written]
        for i, (start, end) in enumerate(written):
            if numeric[i]:
                more = i + 1 < len(written) and numeric[i + 1]
                rests = [(k, self._tokenizer.decode(tokens[k:end])) for k in range(start, end)]
                # What stands before the first digit ("M" of "M12") is no part of the value.
                first = next((k for k, _ in rests if says_number(self._tokenizer.decode([tokens[k]]))), start)
                sure |= {k: self._mass(logits[k], rest, more) for k, rest in rests if k >= first and says_number(rest)}
        return sure

    def _mass(self, logits: Any, rest: str, more: bool) -> float:
        """The share of this value among all numbers that might stand here."""
        values = np.asarray(logits, np.float32).reshape(-1)
        p = np.exp(values - values.max())
        same, other = 0.0, 0.0
        for token in np.argpartition(p, -ALTERNATIVES)[-ALTERNATIVES:]:
            piece = self._tokenizer.decode([int(token)])
            if same_value(piece, rest, more=more):
                same += float(p[token])
            elif says_number(piece):
                other += float(p[token])
        return same / (same + other) if same else 0.0

    def _written_words(self, tokens: list[int]) -> list[tuple[int, int]]:
        """Runs of tokens between spaces."""
        starts = [k for k, token in enumerate(tokens) if k == 0 or self._tokenizer.decode([token]).startswith(" ")]
        return list(zip(starts, [*starts[1:], len(tokens)], strict=True))

    def _timed(self, tokens: list[int], alignment: Any, number_p: dict[int, float]) -> list[dict[str, Any]]:
        """Words as Whisper splits them, with times; a word is as probable as the least probable of its pieces.

        faster-whisper's own `find_alignment` gives the mean of the pieces, which hides one wrong digit among four.
        """
        words, pieces = self._tokenizer.split_to_word_tokens([*tokens, self._tokenizer.eot])
        if len(words) <= 1:
            return []
        ends = np.cumsum([len(piece) for piece in pieces])
        starts = ends - [len(piece) for piece in pieces]
        at = np.array(alignment.alignments)
        first_frame = at[np.diff(at[:, 0], prepend=-1).astype(bool), 1] * (2 * HOP_S)
        p = alignment.text_token_probs
        # Of a word with a number in it, only the number counts: how "$" or "mil" is written is no doubt about it.
        sure = [[number_p[k] for k in range(a, b) if k in number_p] for a, b in zip(starts, ends, strict=True)]
        return [
            {
                "word": word,
                "tokens": piece,
                "start": first_frame[a],
                "end": first_frame[b],
                "probability": min(q or p[a:b]),
            }
            for word, piece, a, b, q in zip(words[:-1], pieces, starts, ends, sure, strict=False)
        ]


def _words(alignment: list[dict[str, Any]]) -> tuple[Word, ...]:
    """Words with their punctuation, without the spaces that Whisper writes before them."""
    merge_punctuations(alignment, OPENING, CLOSING)
    words: list[Word] = []
    for timing in alignment:
        text = timing["word"]
        if not text.strip():
            continue
        word = Word(text.strip(), float(timing["start"]), float(timing["end"]), float(timing["probability"]))
        # A piece without a space before it goes on with the word before ("3" ".5", "o" "'clock").
        if words and not text[0].isspace():
            last = words.pop()
            lower = min(last.probability or 0.0, word.probability or 0.0)
            word = Word(last.text + word.text, last.start_s, word.end_s, lower)
        words.append(word)
    return tuple(words)
