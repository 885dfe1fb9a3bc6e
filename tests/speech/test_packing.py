"""Utterances packed into sounds: whole, in order, cut at pauses; words back at their place."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchnotes.record.heard import Word
from benchnotes.speech.packing import packed, pieces_of
from benchnotes.speech.voice_activity import Voiced


@st.composite
def talks(draw: st.DrawFn) -> list[Voiced]:
    """Utterances of at most 15 s with pauses of any length."""
    at, said = 0.0, []
    for pause, length in draw(st.lists(st.tuples(st.floats(0, 60), st.floats(0.1, 15)), min_size=1, max_size=30)):
        said.append(Voiced(at + pause, at + pause + length))
        at += pause + length
    return said


@given(talks())
def test_every_utterance_is_in_one_sound_and_no_sound_is_too_long(said: list[Voiced]) -> None:
    packs = list(packed(pieces_of(said, said[-1].end_s + 1), 29.0))
    assert [piece.voiced for pack in packs for piece in pack.pieces] == said
    assert all(pack.length_s <= 29.0 or len(pack.pieces) == 1 for pack in packs)
    assert all(a.end_s <= b.start_s + 1e-6 for a, b in pairwise(packs))


def test_a_long_silence_is_left_out_of_the_sound() -> None:
    (pack,) = packed(pieces_of([Voiced(1, 3), Voiced(63, 65)], 66), 29.0)
    assert pack.length_s == pytest.approx(4.8)
    assert len(pack.sound(np.zeros(66 * 16_000, np.float32))) == round(4.8 * 16_000)


def test_words_come_back_to_their_place_and_lie_inside_an_utterance() -> None:
    (pack,) = packed(pieces_of([Voiced(1, 3), Voiced(63, 65)], 66), 29.0)
    first, stretched, last = pack.placed(
        [Word("loose.", 0.7, 1.7, 0.9), Word("The", 2.0, 2.9, 0.9), Word("pump", 3.1, 3.6, 0.9)]
    )
    assert (first.start_s, first.end_s) == pytest.approx((1.5, 2.5))
    assert (stretched.start_s, stretched.end_s) == pytest.approx((63.0, 63.3))
    assert (last.start_s, last.end_s) == pytest.approx((63.5, 64.0))


def test_a_full_sound_ends_at_its_longest_pause() -> None:
    said = [Voiced(0, 9), Voiced(9.2, 25), Voiced(26.5, 27.5), Voiced(27.6, 28.2), Voiced(28.3, 33)]
    packs = list(packed(pieces_of(said, 34), 29.0))
    assert [len(pack.pieces) for pack in packs] == [2, 3]
