"""Windows of talk: every piece is marked once, none is lost, and neighbours stand around the core."""

from __future__ import annotations

import pytest
from language.marking.sealed import PlainTokenizer

from benchnotes.language.marking.windows import LONGEST_PIECE, SEPARATOR, Cut, Piece, Token, Window, pieces, windows

TIGHT = Cut(limit=24, before=2, after=1, start_id=0, end_id=2)


def talk(*sizes: int) -> tuple[Piece, ...]:
    """Pieces of so many tokens; every token's id tells where it belongs."""
    return tuple(
        Piece(at, tuple(1000 * (at + 1) + n for n in range(size)), tuple((2 * n, 2 * n + 1) for n in range(size)))
        for at, size in enumerate(sizes)
    )


def core(window: Window) -> tuple[int, ...]:
    return window.ids[slice(*window.core)]


def test_pieces_keep_their_places_in_the_text() -> None:
    text = "The  gland's weeping."
    (piece,) = pieces([text], PlainTokenizer())
    assert [text[start:end] for start, end in piece.offsets] == ["The", "glan", "d", "'", "s", "weep", "ing", "."]
    assert len(piece.ids) == len(piece.offsets)


@pytest.mark.parametrize("text", ["", " ", "\t\n"])
def test_an_utterance_without_words_gives_no_piece_and_shifts_no_number(text: str) -> None:
    found = pieces(["one", text, "two"], PlainTokenizer())
    assert [piece.utterance for piece in found] == [0, 2]


def test_ten_thousand_words_in_one_breath_are_cut_and_nothing_falls_off() -> None:
    text = " ".join(f"w{n}" for n in range(10_000))
    whole = PlainTokenizer().encode(text, add_special_tokens=False)
    found = pieces([text], PlainTokenizer())
    assert [id_ for piece in found for id_ in piece.ids] == whole.ids
    assert [place for piece in found for place in piece.offsets] == whole.offsets
    assert max(len(piece.ids) for piece in found) == LONGEST_PIECE
    assert {piece.utterance for piece in found} == {0}
    made = windows(found, Cut())
    assert [id_ for window in made for id_ in core(window) if id_ != Cut().end_id] == whole.ids
    assert max(len(window.ids) for window in made) <= Cut().limit


def test_a_window_by_hand() -> None:
    """Four short utterances, room for all: one window, separators between, all of it core."""
    (window,) = windows(talk(1, 2, 1, 1), TIGHT)
    assert window.ids == (0, 1000, 2, 2000, 2001, 2, 3000, 2, 4000, 2)
    assert window.core == (1, 9)
    assert window.tokens == (
        SEPARATOR, Token(0, 0, 1), SEPARATOR, Token(1, 0, 1), Token(1, 2, 3), SEPARATOR, Token(2, 0, 1), SEPARATOR,
        Token(3, 0, 1), SEPARATOR,
    )  # fmt: skip


def test_neighbours_stand_around_the_core() -> None:
    """Utterances of four tokens, room for four of them: of a window in the middle two before and one after."""
    made = windows(talk(*[4] * 6), TIGHT)
    assert [core(window)[0] // 1000 - 1 for window in made] == [0, 3, 4]
    assert {token.utterance for token in made[1].tokens} - {-1} == {1, 2, 3, 4}


def test_context_is_given_up_before_the_core_is() -> None:
    """An utterance that fills the window is marked alone; what comes before goes first, then what comes after."""
    made = windows(talk(4, 4, 21, 4), TIGHT)
    alone = next(window for window in made if core(window)[0] == 3000)
    assert {token.utterance for token in alone.tokens} == {-1, 2}
    squeezed = next(window for window in windows(talk(4, 4, 12, 4), TIGHT) if core(window)[0] == 3000)
    assert {token.utterance for token in squeezed.tokens} == {-1, 1, 2, 3}


def test_the_first_core_may_be_bounded() -> None:
    """Training begins windows elsewhere each time; still every piece is in one core."""
    made = windows(talk(*[2] * 5), Cut(limit=100), first_core=2)
    assert [sorted({token.utterance for token in window.tokens[slice(*window.core)]} - {-1}) for window in made] == [
        [0, 1],
        [2, 3, 4],
    ]


def test_no_talk_no_windows() -> None:
    assert windows((), Cut()) == ()
    assert windows((), Cut(), first_core=3) == ()
