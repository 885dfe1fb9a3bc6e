"""Where every matrix of the encoder stands in `encoder.bin`; the graph and the laying out both go by this.

The encoder is MPNet base (Song et al. 2020): twelve blocks of 768, twelve heads. Names are those of the published
weights; linear layers are stored (in, out), as the graph multiplies.
"""

from __future__ import annotations

from dataclasses import dataclass

SIZE, INNER, HEADS, BLOCKS = 768, 3072, 12, 12
WORDS, PLACES, BUCKETS, FARTHEST, PADDING = 30527, 514, 32, 128, 1
LINEAR = (
    ("attention.attn.q", SIZE, SIZE),
    ("attention.attn.k", SIZE, SIZE),
    ("attention.attn.v", SIZE, SIZE),
    ("attention.attn.o", SIZE, SIZE),
    ("intermediate.dense", SIZE, INNER),
    ("output.dense", INNER, SIZE),
)
"""Of every block: name, inputs, outputs."""
NORMS = ("attention.LayerNorm", "output.LayerNorm")
ALIGNED = 64
"""Bytes; matrices are read in place."""


@dataclass(frozen=True, slots=True)
class Slot:
    name: str
    shape: tuple[int, ...]
    offset: int
    turned: bool = False
    """Published as (out, in), stored as (in, out)."""

    @property
    def bytes(self) -> int:
        size = 4
        for length in self.shape:
            size *= length
        return size


def layout() -> tuple[Slot, ...]:
    """Every matrix, in the order of the file."""
    slots: list[Slot] = []
    for name, shape, turned in _shapes():
        end = slots[-1].offset + slots[-1].bytes if slots else 0
        slots.append(Slot(name, shape, -(-end // ALIGNED) * ALIGNED, turned))
    return tuple(slots)


def _shapes() -> list[tuple[str, tuple[int, ...], bool]]:
    shapes: list[tuple[str, tuple[int, ...], bool]] = [
        ("embeddings.word_embeddings.weight", (WORDS, SIZE), False),
        ("embeddings.position_embeddings.weight", (PLACES, SIZE), False),
        *_norm("embeddings.LayerNorm"),
    ]
    for block in range(BLOCKS):
        for name, inside, outside in LINEAR:
            shapes.append((f"encoder.layer.{block}.{name}.weight", (inside, outside), True))
            shapes.append((f"encoder.layer.{block}.{name}.bias", (outside,), False))
        for name in NORMS:
            shapes += _norm(f"encoder.layer.{block}.{name}")
    return shapes


def _norm(name: str) -> list[tuple[str, tuple[int, ...], bool]]:
    return [(f"{name}.{part}", (SIZE,), False) for part in ("weight", "bias")]
