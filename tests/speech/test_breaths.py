"""Words become breaths of talk; none is lost, none is added, none changes places."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from speech.said import words

from benchnotes.record.heard import Word
from benchnotes.speech.breaths import MOST, breaths


def texts(said: tuple[Word, ...]) -> list[str]:
    return [utterance.text for utterance in breaths(1, said)]


def test_a_sentence_is_a_breath() -> None:
    said = words("The seal is gone. I have ordered a new one.")
    assert texts(said) == ["The seal is gone.", "I have ordered a new one."]


def test_a_long_pause_ends_a_breath() -> None:
    said = words("so the seal is gone") + words("and this one leaks", at=4.0)
    assert texts(said) == ["so the seal is gone", "and this one leaks"]


def test_a_fragment_joins_the_nearer_neighbour() -> None:
    said = words("Right. The seal is gone.") + words("New one.", at=2.5) + words("It leaks at the back.", at=5.0)
    assert texts(said) == ["Right. The seal is gone. New one.", "It leaks at the back."]


def test_a_lone_word_in_silence_stays_alone() -> None:
    said = words("The seal is gone.") + words("Lovely.", at=10.0) + words("It leaks at the back.", at=20.0)
    assert texts(said) == ["The seal is gone.", "Lovely.", "It leaks at the back."]


@given(st.lists(st.tuples(st.floats(0, 3), st.sampled_from(["so", "gone.", "well,", "6.5", "pump?"])), max_size=150))
def test_every_word_is_in_one_breath(said: list[tuple[float, str]]) -> None:
    at, spoken = 0.0, []
    for pause, text in said:
        spoken.append(Word(text, at + pause, at + pause + 0.3, 0.9))
        at += pause + 0.3
    got = breaths(2, spoken)
    assert [word for utterance in got for word in utterance.words] == spoken
    assert all(1 <= len(utterance.words) <= MOST for utterance in got)
    assert all(u.start_s <= u.words[0].start_s and u.words[-1].end_s <= u.end_s for u in got)
