"""The encoder at work: word pieces in, one vector each out. The only file that imports onnxruntime."""

from __future__ import annotations

import math
import os
from functools import lru_cache
from pathlib import Path

import numpy as np
import onnxruntime
from numpy.typing import NDArray
from safetensors import safe_open

from benchnotes.encoder.laying import GRAPH, rounded
from benchnotes.encoder.layout import BUCKETS, FARTHEST, PADDING

Array = NDArray[np.float32]
CLOSED = -1e4
"""Added to the score of what must not be looked at."""


class OnnxEncoder:
    """Gives (windows, pieces, 768) for ids and mask of (windows, pieces)."""

    def __init__(self, laid: Path, published: Path, *, threads: int | None = None) -> None:
        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = threads or os.cpu_count() or 1
        options.log_severity_level = 3
        options.add_session_config_entry("session.disable_prepacking", "1")  # else the weights lie in memory twice
        self._session = onnxruntime.InferenceSession(str(laid / GRAPH), options, providers=["CPUExecutionProvider"])
        with safe_open(published / "model.safetensors", framework="numpy") as base:
            self._near = rounded(base.get_tensor("encoder.relative_attention_bias.weight").astype(np.float32))
        self._bias_for = lru_cache(maxsize=64)(self._bias)

    def __call__(self, ids: NDArray[np.int64], mask: NDArray[np.int64]) -> Array:
        places = np.cumsum(mask, axis=1) * mask + PADDING
        shut = (1 - mask[:, None, None, :].astype(np.float32)) * CLOSED
        bias = self._bias_for(ids.shape[1]) + shut
        return np.asarray(self._session.run(None, {"ids": ids, "places": places, "bias": bias})[0], dtype=np.float32)

    def _bias(self, pieces: int) -> Array:
        at = np.arange(pieces)
        near = self._near[buckets(at[None, :] - at[:, None])]
        return np.ascontiguousarray(near.transpose(2, 0, 1)[None], dtype=np.float32)


def buckets(distance: NDArray[np.int64]) -> NDArray[np.int64]:
    """Signed distances in word pieces -> BUCKETS classes, finer when near (T5, Raffel et al. 2020, section 2.1)."""
    half = BUCKETS // 2
    exact = half // 2
    far = np.abs(distance)
    ratio = np.log(np.maximum(far, 1).astype(np.float32) / exact) / np.float32(math.log(FARTHEST / exact))
    scaled = exact + (ratio * (half - exact)).astype(np.int64)
    return np.where(distance > 0, half, 0) + np.where(far < exact, far, np.minimum(scaled, half - 1))
