"""Packs what train.py brought back into models/reader/marker.npz.  python -m training.pack FOLDER

FOLDER holds marker-0.npz and marker-1.npz of train.py and pointing.npz of fit_pointing.py.

Low-rank matrices in 8-bit rows with 16-bit scales; heads, biases and norms in 16 bits.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np


def packed(name: str, value: np.ndarray) -> dict[str, np.ndarray]:
    if not name.startswith("adapter/"):
        return {name: value.astype(np.float16)}
    rows = value.astype(np.float32)
    scale = np.maximum(np.abs(rows).max(1, keepdims=True) / 127, 1e-12).astype(np.float32)
    return {f"{name}|q": np.round(rows / scale).astype(np.int8), f"{name}|s": scale.astype(np.float16)}


def main() -> None:
    out: dict[str, np.ndarray] = {}
    for file in sorted(Path(sys.argv[1]).glob("*.npz")):
        with np.load(file) as arrays:
            for name in arrays.files:
                out |= packed(name, arrays[name])
    target = Path(__file__).parents[1] / "models" / "reader" / "marker.npz"
    np.savez_compressed(target, **out)
    print(f"{target}: {target.stat().st_size / 2**20:.1f} MiB, {len(out)} arrays")


if __name__ == "__main__":
    main()
