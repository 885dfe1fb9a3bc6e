"""Cuts the published encoder into files that travel: `python -m training.pieces MODEL.safetensors NAME OUT`.

Writes OUT/NAME0/NAME0.npz, OUT/NAME1/NAME1.npz ... of at most 20 MiB (an embedding matrix alone may be more): rows of
matrices in 8 bits with a 16-bit scale, the rest in 16 bits. `network.encoder` reads them back.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

import numpy as np
from safetensors.numpy import load_file

LIMIT = 20 * 2**20
SMALLEST_ROUNDED = 5000
"""Entries; benchnotes/encoder/laying.py rounds by the same rule, so that what was learnt fits what it is laid over."""


def quantised(weights: Mapping[str, np.ndarray]) -> Iterator[tuple[str, np.ndarray]]:
    for name, value in weights.items():
        if value.dtype.kind == "f" and value.ndim == 2 and value.size > SMALLEST_ROUNDED:
            scale = (np.abs(value).max(1, keepdims=True) / 127).astype(np.float32)
            scale[scale == 0] = 1
            yield name + "|q", np.round(value / scale).astype(np.int8)
            yield name + "|s", scale.astype(np.float16)
        else:
            yield name, value.astype(np.float16) if value.dtype.kind == "f" else value


def pieces(weights: Mapping[str, np.ndarray]) -> Iterator[dict[str, np.ndarray]]:
    piece: dict[str, np.ndarray] = {}
    size = 0
    for name, value in quantised(weights):
        if size + value.nbytes > LIMIT:
            yield piece
            piece, size = {}, 0
        piece[name], size = value, size + value.nbytes
    yield piece


def main(source: str, name: str, out: str) -> None:
    for number, piece in enumerate(pieces(load_file(source))):
        folder = Path(out) / f"{name}{number}"
        folder.mkdir(parents=True, exist_ok=True)
        np.savez_compressed(folder / f"{name}{number}.npz", **piece)


if __name__ == "__main__":
    main(*sys.argv[1:])
