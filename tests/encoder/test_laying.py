"""What was learnt, laid over the published encoder: rounding, layout, and two processes at once."""

from __future__ import annotations

import itertools
import multiprocessing
from pathlib import Path

import numpy as np
import pytest

from benchnotes.encoder.laying import is_laid, laid_in, lay, rounded
from benchnotes.encoder.layout import ALIGNED, layout
from benchnotes.session.learned_reader import published_encoder


def test_rows_are_rounded_to_eight_bits_and_never_far_off() -> None:
    values = np.random.default_rng(4).normal(size=(80, 90)).astype(np.float32)
    off = np.abs(rounded(values) - values).max(axis=1)
    assert (off <= np.abs(values).max(axis=1) / 127).all()
    assert len(np.unique(np.round(rounded(values)[0] / np.abs(values[0]).max() * 127))) <= 255


def test_a_row_of_nothing_stays_nothing() -> None:
    assert not rounded(np.zeros((80, 90), np.float32)).any()


def test_every_matrix_has_a_place_of_its_own() -> None:
    slots = layout()
    assert len({slot.name for slot in slots}) == len(slots)
    for one, two in itertools.pairwise(slots):
        assert one.offset + one.bytes <= two.offset and two.offset % ALIGNED == 0


@pytest.mark.reader
def test_two_processes_lay_at_once(root: Path, tmp_path: Path) -> None:
    published = published_encoder()
    assert published is not None, "make weights fetches the encoder"
    model, out = root / "models" / "reader", tmp_path / "reader"
    (out / "earlier").mkdir(parents=True)
    both = [multiprocessing.get_context("spawn").Process(target=lay, args=(model, published.path, out)) for _ in "ab"]
    for one in both:
        one.start()
    for one in both:
        one.join()
    assert [one.exitcode for one in both] == [0, 0]
    assert is_laid(model, published.path, out)
    assert [folder.name for folder in out.iterdir()] == [laid_in(model, published.path, out).name]
