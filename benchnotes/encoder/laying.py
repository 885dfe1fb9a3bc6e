"""Lays what was learnt over the published encoder: one file of float32 that the graph reads in place. No PyTorch."""

from __future__ import annotations

import hashlib
import os
import shutil
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from safetensors import safe_open

from benchnotes.encoder.layout import Slot, layout

Array = NDArray[np.float32]
SMALLEST_ROUNDED = 5000
"""Entries; smaller matrices were not rounded when the learning was done."""
GRAPH, WEIGHTS = "encoder.onnx", "encoder.bin"


def rounded(values: Array) -> Array:
    """A matrix as it was when the learning was done: rows in 8 bits with a 16-bit scale."""
    if values.ndim != 2 or values.size <= SMALLEST_ROUNDED:
        return values.astype(np.float16).astype(np.float32)
    scale = (np.abs(values).max(1, keepdims=True) / 127).astype(np.float32)
    scale[scale == 0] = 1
    rows = np.round(values / scale).astype(np.int8).astype(np.float32)
    return np.asarray(rows * scale.astype(np.float16).astype(np.float32), dtype=np.float32)


def learnt(file: Path, *, only: str = "") -> dict[str, Array]:
    """What is in models/reader/marker.npz, widened: names that begin with `only` (adapter/, plain/ or head/)."""
    with np.load(file) as arrays:
        packed = {name: arrays[name] for name in arrays.files if name.startswith(only)}
    return {name.removesuffix("|q"): _widened(packed, name) for name in packed if not name.endswith("|s")}


def _widened(packed: Mapping[str, NDArray[np.generic]], name: str) -> Array:
    values = np.asarray(packed[name], dtype=np.float32)
    if name.endswith("|q"):
        values = values * np.asarray(packed[name.removesuffix("q") + "s"], dtype=np.float32)
    return values


def stamp(model: Path, published: Path) -> str:
    """Changes whenever what was laid must be laid anew."""
    digest = hashlib.sha256()
    for file in sorted(model.iterdir()):
        if file.is_file() and file.suffix in (".npz", ".onnx"):
            digest.update(file.read_bytes())
    digest.update(str((published / "model.safetensors").stat().st_size).encode())
    return digest.hexdigest()


def laid_in(model: Path, published: Path, out: Path) -> Path:
    """Where in `out` the encoder lies that these two make, in a folder of its own."""
    return out / stamp(model, published)[:16]


def is_laid(model: Path, published: Path, out: Path) -> bool:
    return (laid_in(model, published, out) / WEIGHTS).is_file()


def lay(model: Path, published: Path, out: Path, progress: Callable[[float], None] = lambda share: None) -> Path:
    """Writes the graph and its weights into a folder of their own in `out`, whole or not at all; gives that folder.

    `published` holds model.safetensors. Two processes may lay at once: the first to be done stands. Earlier readers'
    folders are cleared away. Raises OSError where there is no room.
    """
    target = laid_in(model, published, out)
    out.mkdir(parents=True, exist_ok=True, mode=0o700)
    beside = Path(tempfile.mkdtemp(prefix="laying-", dir=out))
    try:
        _write(model, published, beside / WEIGHTS, progress)
        shutil.copyfile(model / GRAPH, beside / GRAPH)
        _stand(beside, target)
    finally:
        shutil.rmtree(beside, ignore_errors=True)
    for earlier in out.iterdir():
        if earlier != target and not earlier.name.startswith("laying-"):
            shutil.rmtree(earlier, ignore_errors=True)
    return target


def _stand(beside: Path, target: Path) -> None:
    try:
        beside.rename(target)
    except OSError:
        if not (target / WEIGHTS).is_file():  # else another process was done first
            raise


def _write(model: Path, published: Path, to: Path, progress: Callable[[float], None]) -> None:
    added = learnt(model / "marker.npz")
    slots = layout()
    with safe_open(published / "model.safetensors", framework="numpy") as base, to.open("wb") as file:
        for number, slot in enumerate(slots):
            file.write(b"\0" * (slot.offset - file.tell()))
            file.write(_matrix(slot, base.get_tensor(slot.name), added).tobytes())
            progress((number + 1) / len(slots))
        file.flush()
        os.fsync(file.fileno())


def _matrix(slot: Slot, published: Array, added: Mapping[str, Array]) -> Array:
    if (plain := added.get(f"plain/{slot.name}")) is not None:
        return plain.astype(np.float32)
    values = rounded(published.astype(np.float32))
    layer = f"adapter/{slot.name.removesuffix('.weight')}"
    if f"{layer}.up" in added:
        values = values + added[f"{layer}.up"] @ added[f"{layer}.down"]
    return np.ascontiguousarray(values.T if slot.turned else values, dtype=np.float32)
