"""The words around an evidence, and where its sound lies."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchnotes.record.heard import Evidence, Recording, captioned
from benchnotes.session.evidence import NoSoundError, around, sound_of

TALK = [
    captioned(1, 0.0, 2.0, "good morning"),
    captioned(1, 2.0, 4.0, "the pin is loose"),
    captioned(1, 4.0, 6.0, "and the lid is bent"),
    captioned(2, 0.0, 2.0, "back again"),
]


def words(breaths: object) -> list[str]:
    assert isinstance(breaths, tuple)
    return [" ".join(word for word, _ in breath.words) for breath in breaths]


def test_before_said_and_after_of_the_same_recording() -> None:
    near = around(Evidence(1, 2.0, 4.0, "the pin is loose"), TALK, 5)
    assert words(near.before) == ["good morning"]
    assert words(near.said) == ["the pin is loose"]
    assert words(near.after) == ["and the lid is bent"]
    assert all(rests for _, rests in near.said[0].words)


def test_only_the_words_that_it_rests_on_are_marked() -> None:
    pin = TALK[1].words[1]
    near = around(Evidence(1, pin.start_s, pin.end_s, "pin"), TALK, 1)
    assert [word for word, rests in near.said[0].words if rests] == ["pin"]


def test_where_nothing_was_made_out_there_are_the_words_before_and_after() -> None:
    talk = [TALK[0], TALK[2]]
    near = around(Evidence(1, 2.1, 3.9, ""), talk, 1)
    assert (words(near.before), words(near.said), words(near.after)) == (
        ["good morning"],
        [],
        ["and the lid is bent"],
    )


def test_a_moment_of_no_length_finds_its_breath() -> None:
    assert words(around(Evidence(1, 2.5, 2.5, ""), TALK, 0).said) == ["the pin is loose"]


def test_what_has_no_sound_says_why(tmp_path: Path) -> None:
    evidence = Evidence(1, 0.0, 1.0, "")
    captions = [Recording(1, "talk.vtt", "captions", 6.0, "a")]
    sound = [Recording(1, "talk.wav", "sound", 6.0, "a")]
    with pytest.raises(NoSoundError, match=r"talk\.vtt holds captions"):
        sound_of(evidence, captions, {1: tmp_path / "talk.vtt"})
    with pytest.raises(NoSoundError, match=r"no longer at"):
        sound_of(evidence, sound, {1: tmp_path / "talk.wav"})
    with pytest.raises(NoSoundError, match=r"no recording of it"):
        sound_of(Evidence(9, 0.0, 1.0, ""), sound, {})
