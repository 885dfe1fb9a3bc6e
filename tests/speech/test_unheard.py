"""The audit, on readings written by hand: what one loses the other gives back; voice without words is found."""

from __future__ import annotations

from speech.said import reading, voiced_all, words

from benchnotes.record.heard import Word
from benchnotes.speech.unheard import Hole, agreed, fills, goes_round, holes

WHOLE = "the thread on the tank is M6 and it leaks at the back"


def text(said: tuple[Word, ...]) -> str:
    return " ".join(word.text for word in said)


def test_what_only_the_second_reading_has_is_put_back() -> None:
    lossy = (*words("the", each=0.3), Word("thread", 0.3, 2.1, 0.9), *words("and it leaks at the back", at=2.1))
    assert text(agreed(reading(lossy), reading(words(WHOLE)))) == WHOLE


def test_what_only_the_first_reading_has_stays() -> None:
    assert text(agreed(reading(words(WHOLE)), reading(words("the thread and it leaks at the back")))) == WHOLE


def test_a_word_heard_otherwise_is_no_loss() -> None:
    first, second = words("the pump leather is hard"), words("the pump ladder is hard")
    assert agreed(reading(first), reading(second)) == first


def test_improbable_words_are_not_put_back() -> None:
    second = (*words("the seal is gone"), *words("thanks for watching everybody", at=1.2, p=0.1))
    assert text(agreed(reading(words("the seal is gone")), reading(second))) == "the seal is gone"


def test_a_reading_that_goes_round_in_circles_counts_for_nothing() -> None:
    loop = words("I am going to get a new one " * 12)
    assert goes_round(loop)
    assert not goes_round(words("tick tick tick"))
    assert text(agreed(reading(loop), reading(words(WHOLE)))) == WHOLE
    assert agreed(reading(loop), reading(loop)) == ()


def test_words_where_nobody_speaks_are_dropped() -> None:
    invented = reading(words("Thank you."), confidence=0.2, no_speech_p=0.9)
    assert agreed(invented, invented) == ()


def test_a_word_stretched_over_lost_ones_does_not_hide_them() -> None:
    """ "it" lasts 3 s: nobody says "it" for 3 s."""
    voice = voiced_all(6.0)
    said = (
        *words("so then", each=0.4),
        Word("it", 0.8, 3.8, 0.9),
        *words("leaks all over the bench", at=3.8, each=0.44),
    )
    (hole,) = holes(voice.utterances[0], said, voice)
    assert 0.8 <= hole.start_s < hole.end_s <= 3.8
    assert hole.voiced_s > 2.0


def test_talk_at_the_usual_pace_has_no_hole() -> None:
    voice = voiced_all(3.9)
    assert holes(voice.utterances[0], words(WHOLE), voice) == []


def test_an_utterance_without_words_is_one_hole() -> None:
    voice = voiced_all(3.0)
    assert holes(voice.utterances[0], (), voice) == [Hole(0.0, 3.0, 3.008)]


def test_a_second_listening_adds_only_what_its_neighbours_lack() -> None:
    around = (*words("the seal"), *words("is gone", at=2.4))
    hole = Hole(0.6, 2.4, 1.8)
    again = reading(words("seal on the left side is", at=0.3, each=0.35))
    assert text(fills(hole, again, around)) == "on the left side"
