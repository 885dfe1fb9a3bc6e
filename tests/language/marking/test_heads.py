"""The layers over the encoder, beside results worked out by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from language.marking.sealed import any_heads, layers, nothing

from benchnotes.language.belonging.candidates import WIDTH
from benchnotes.language.marking.heads import (
    ATTRIBUTES,
    ATTRIBUTES_OF,
    LINK_WIDTH,
    MARK_KINDS,
    Array,
    Heads,
    link_row,
    log_softmax,
    relu,
    softmax,
)
from benchnotes.record.statements import KINDS


def heads(**weights: object) -> Heads:
    """For vectors of two numbers; matrices not named are zeros."""
    every = nothing(2)
    for name, value in weights.items():
        layer, _, what = name.rpartition("_")
        every[f"{layer}.{what}"] = np.array(value, np.float32)
    return Heads(every)


def array(*rows: object) -> Array:
    return np.array(rows, np.float32)


def test_marks_are_the_kinds_of_statements() -> None:
    assert set(MARK_KINDS) == {kind.say for kind in KINDS} - {"cue"}  # a cue is looked for by its own words
    assert len(set(MARK_KINDS)) == len(MARK_KINDS)


def test_every_attribute_belongs_to_a_kind_that_there_is() -> None:
    of_some = {name for names in ATTRIBUTES_OF.values() for name in names}
    assert of_some == set(ATTRIBUTES)
    assert set(ATTRIBUTES_OF) == set(MARK_KINDS)
    assert ATTRIBUTES_OF["fit"] == ("part.quantity",)
    assert ATTRIBUTES_OF["work"] == ("work.action", "work.standing", "work.by")


def test_softmax_by_hand() -> None:
    """e^0 : e^ln2 : e^ln5 is 1 : 2 : 5."""
    shares = softmax(array([0, math.log(2), math.log(5)]))
    assert shares == pytest.approx(array([1 / 8, 2 / 8, 5 / 8]))
    assert log_softmax(array([0, math.log(2), math.log(5)])) == pytest.approx(np.log(shares))


def test_softmax_of_great_numbers_stays_a_number() -> None:
    shares = softmax(array([1e4, 0, -1e4], [-1e30, -1e30, -1e30]))
    assert shares == pytest.approx(array([1, 0, 0], [1 / 3, 1 / 3, 1 / 3]))


def test_relu() -> None:
    assert relu(array([-2, 0, 3])).tolist() == [[0, 0, 3]]


def test_part_tags_by_hand() -> None:
    """Scores: 1 · x0, 0, ln 3 - x1. For (0, 0) that is 0, 0, ln 3, so 1 : 1 : 3."""
    made = heads(parts_weight=[[1, 0], [0, 0], [0, -1]], parts_bias=[0, 0, math.log(3)])
    assert made.parts(array([0, 0], [math.log(4), math.log(3)])) == pytest.approx(
        array([0.2, 0.2, 0.6], [4 / 6, 1 / 6, 1 / 6])
    )


def test_tags_stand_kind_by_kind_outside_beginning_inside() -> None:
    """Only row 4 of the matrix is anything: the second kind's "beginning"."""
    weight = np.zeros((3 * len(MARK_KINDS), 2))
    weight[4] = [math.log(2), 0]
    found = heads(tags_weight=weight).tags(array([1, 0]))
    assert found.shape == (1, len(MARK_KINDS), 3)
    assert found[0, 1] == pytest.approx([0.25, 0.5, 0.25])
    assert found[0, 0] == pytest.approx([1 / 3] * 3)


def test_presence_is_logistic() -> None:
    bias = np.zeros(len(MARK_KINDS))
    bias[2] = math.log(3)
    (found,) = heads(present_bias=bias).present(array([0, 0]))
    assert found[:3] == pytest.approx([0.5, 0.5, 0.75])


def test_links_by_hand() -> None:
    """Query (w0, 0, 0, 0), key (p0, 0, 0, 0), over the root of 4; a point for the same utterance; none scores 0.25."""
    pick = np.zeros((4, 4))
    pick[0, 0] = 1
    place = np.zeros((1, LINK_WIDTH))
    place[0, 0] = 1
    made = heads(link_query_weight=pick, link_key_weight=pick[:, :2], link_place_weight=place, link_none_bias=[0.25])
    rows = np.array([link_row((0, 0, 4), (0, 5, 9)), link_row((0, 0, 4), (1, 0, 4))], np.float32)
    scores = made.links(np.array([3, 9, 9, 9], np.float32), array([2, 7], [-1, 7]), rows)
    assert scores == pytest.approx([3 * 2 / 2 + 1, 3 * -1 / 2, 0.25])


def test_without_parts_only_none_is_left() -> None:
    none = any_heads(2).links(np.array([1, 2, 3, 4], np.float32), np.zeros((0, 2), np.float32), np.zeros(0, np.float32))
    assert none.shape == (1,)


@pytest.mark.parametrize(
    ("words", "part", "row"),
    [
        # same, before, inside, gap / 100, touching, near, the utterance after, the utterance before
        ((3, 10, 14), (3, 4, 9), [1, 1, 0, 0.01, 1, 1, 0, 0]),
        ((3, 10, 14), (3, 15, 20), [1, 0, 0, 0.01, 1, 1, 0, 0]),
        ((3, 10, 14), (3, 20, 25), [1, 0, 0, 0.06, 0, 1, 0, 0]),
        ((3, 10, 24), (3, 12, 16), [1, 0, 1, 0.0, 1, 1, 0, 0]),
        ((3, 60, 64), (3, 0, 10), [1, 1, 0, 0.5, 0, 0, 0, 0]),
        ((3, 10, 14), (4, 0, 5), [0, 0, 0, 2.0, 0, 0, 1, 0]),
        ((3, 10, 14), (2, 0, 5), [0, 1, 0, 2.0, 0, 0, 0, 1]),
    ],
)
def test_how_a_part_lies_to_its_statement(
    words: tuple[int, int, int], part: tuple[int, int, int], row: list[float]
) -> None:
    assert link_row(words, part) == pytest.approx(row)
    assert len(row) == LINK_WIDTH


def test_attributes_by_hand() -> None:
    """State is what of the span is above nothing; the second number of it speaks for the third kind of fault."""
    pick = np.zeros((6, 6))
    pick[0, 0], pick[1, 1] = -1, 1
    weight = np.zeros((len(ATTRIBUTES["fault.kind"]), 6))
    weight[0, 0], weight[2, 1] = 50, math.log(len(weight) - 1)
    made = heads(attribute_state_weight=pick, **{"attribute_fault.kind_weight": weight})
    found = made.attributes(array([5, 1, 0, 0, 0, 0]))
    assert found["fault.kind"][0, 2] == pytest.approx(0.5)
    assert found["price.basis"][0] == pytest.approx([1 / len(ATTRIBUTES["price.basis"])] * 2)
    assert set(found) == set(ATTRIBUTES)


def test_no_spans_have_no_attributes() -> None:
    assert all(len(shares) == 0 for shares in any_heads(2).attributes(np.zeros((0, 6), np.float32)).values())


def test_pointers_by_hand() -> None:
    """By vectors an earlier mention scores its key times the query plus the first of its row, a new thing the best
    of the rows; by rows alone twice the first of its row, a new thing 4. Both as log probabilities, mixed 1 : 3."""
    state, new, rows_state = np.zeros((5, 3 + WIDTH)), np.zeros((5, 3 + WIDTH)), np.zeros((5, WIDTH))
    state[0, 0], state[1, 3], new[0, 3], rows_state[0, 0] = 1, 1, 2, 2
    score = [[1, 1, 0, 0, 0]]
    plain = heads(point_state_weight=state, point_score_weight=score, new_state_weight=new, new_score_weight=score,
                  new_score_bias=[0.5], rows_state_weight=rows_state, rows_score_weight=score,
                  rows_new_score_bias=[4])  # fmt: skip
    rows = [[1.0] + [0.0] * (WIDTH - 1), [4.0] + [0.0] * (WIDTH - 1)]
    by_vectors = log_shares(2 * 3 + 1, 0 + 4, 2 * 4 + 0.5)
    by_rows = log_shares(2, 8, 4)
    keys = np.array([[3, 1, 1], [-9, 1, 1]], np.float32)
    for weight in (0.0, 0.25, 1.0):
        mixed = [weight * one + (1 - weight) * other for one, other in zip(by_vectors, by_rows, strict=True)]
        made = replace(plain, vectors_weight=weight)
        assert made.pointers(np.array([2, 0, 0], np.float32), keys, rows) == pytest.approx(mixed, abs=1e-5)


def log_shares(*scores: float) -> list[float]:
    whole = sum(math.exp(score) for score in scores)
    return [math.log(math.exp(score) / whole) for score in scores]


def test_the_first_mention_is_of_a_new_thing() -> None:
    assert any_heads(2).pointers(np.array([1, 2, 3], np.float32), np.zeros((0, 3), np.float32), []).tolist() == [0.0]


def test_shapes() -> None:
    made, hidden = any_heads(2), np.ones((7, 2), np.float32)
    assert made.tags(hidden).shape == (7, len(MARK_KINDS), 3)
    assert made.parts(hidden).shape == (7, 3)
    assert made.present(hidden).shape == (7, len(MARK_KINDS))
    query, keys = made.pointing_vectors(np.ones((7, 6), np.float32))
    assert query.shape == keys.shape == (7, layers(2)["point_query"][1])
