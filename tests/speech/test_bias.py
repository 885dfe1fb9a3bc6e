"""Words that the recogniser leans towards: the first that fit, each once."""

from __future__ import annotations

from benchnotes.speech.bias import MOST_CHARACTERS, hotwords


def test_words_in_their_order_each_once() -> None:
    assert hotwords(iter(["pump leather", "Circlip", " circlip ", "", "M6"])) == "pump leather, Circlip, M6"


def test_the_string_is_bounded() -> None:
    leaning = hotwords(f"word{i}" for i in range(1000))
    assert leaning.startswith("word0, word1, ")
    assert len(leaning) <= MOST_CHARACTERS
