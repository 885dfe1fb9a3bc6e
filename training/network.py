"""The marker as PyTorch sees it while it learns: the published encoder, low-rank adapters, the heads.

The encoder is MPNet (Song et al. 2020, "MPNet: Masked and Permuted Pre-training for Language Understanding"), written
out here: twelve blocks, one relative position bias shared by all of them. Names are those of the published weights.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import torch
from torch import Tensor, nn
from torch.nn import functional

from benchnotes.language.belonging.candidates import WIDTH
from benchnotes.language.marking.heads import ATTRIBUTES, LINK_WIDTH, MARK_KINDS

SIZE, INNER, HEADS, BLOCKS, VOCABULARY, PLACES = 768, 3072, 12, 12, 30527, 514
BUCKETS, FARTHEST, PADDING = 32, 128, 1
DROPOUT = 0.1


class Adapted(nn.Module):
    """The published linear layer, frozen, with a low-rank addition: W + up @ down."""

    def __init__(self, published: nn.Linear, up: Tensor, down: Tensor) -> None:
        super().__init__()
        self.frozen = published.requires_grad_(False)
        self.up, self.down = nn.Parameter(up), nn.Parameter(down)

    def forward(self, values: Tensor) -> Tensor:
        return self.frozen(values) + values @ self.down.T @ self.up.T


class SelfAttention(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.q, self.k, self.v, self.o = (nn.Linear(SIZE, SIZE) for _ in range(4))

    def forward(self, values: Tensor, bias: Tensor) -> Tensor:
        query, key, value = (
            layer(values).unflatten(-1, (HEADS, -1)).transpose(1, 2) for layer in (self.q, self.k, self.v)
        )
        dropped = DROPOUT if self.training else 0.0
        mixed = functional.scaled_dot_product_attention(query, key, value, bias.to(query.dtype), dropped)
        return self.o(mixed.transpose(1, 2).flatten(2))


class Attention(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.attn = SelfAttention()
        self.LayerNorm = nn.LayerNorm(SIZE, eps=1e-5)


class Dense(nn.Module):
    def __init__(self, inside: int, outside: int, *, norm: bool) -> None:
        super().__init__()
        self.dense = nn.Linear(inside, outside)
        if norm:
            self.LayerNorm = nn.LayerNorm(outside, eps=1e-5)


class Block(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.attention = Attention()
        self.intermediate = Dense(SIZE, INNER, norm=False)
        self.output = Dense(INNER, SIZE, norm=True)
        self.dropout = nn.Dropout(DROPOUT)

    def forward(self, values: Tensor, bias: Tensor) -> Tensor:
        values = self.attention.LayerNorm(values + self.dropout(self.attention.attn(values, bias)))
        inner = self.output.dense(functional.gelu(self.intermediate.dense(values)))
        return self.output.LayerNorm(values + self.dropout(inner))


class Embeddings(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.word_embeddings = nn.Embedding(VOCABULARY, SIZE, padding_idx=PADDING)
        self.position_embeddings = nn.Embedding(PLACES, SIZE, padding_idx=PADDING)
        self.LayerNorm = nn.LayerNorm(SIZE, eps=1e-5)


class Layers(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.layer = nn.ModuleList(Block() for _ in range(BLOCKS))
        self.relative_attention_bias = nn.Embedding(BUCKETS, HEADS)


class Encoder(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.embeddings = Embeddings()
        self.encoder = Layers()
        self.dropout = nn.Dropout(DROPOUT)

    def forward(self, ids: Tensor, mask: Tensor) -> Tensor:
        """(windows, pieces) both; gives (windows, pieces, SIZE)."""
        places = torch.cumsum(mask, dim=1) * mask + PADDING
        values = self.embeddings.word_embeddings(ids) + self.embeddings.position_embeddings(places)
        values = self.dropout(self.embeddings.LayerNorm(values))
        at = torch.arange(ids.shape[1], device=ids.device)
        near = self.encoder.relative_attention_bias(bucket(at[None, :] - at[:, None])).permute(2, 0, 1)[None]
        bias = near + (1.0 - mask[:, None, None, :].to(near.dtype)) * -1e4
        for block in self.encoder.layer:
            values = block(values, bias)
        return values


def bucket(distance: Tensor) -> Tensor:
    """Signed distances in word pieces -> BUCKETS classes, finer when near (as T5, Raffel et al. 2020)."""
    half = BUCKETS // 2
    side = (-distance < 0).long() * half
    far = distance.abs()
    exact = half // 2
    scaled = exact + (torch.log(far.clamp(min=1).float() / exact) / math.log(FARTHEST / exact) * (half - exact)).long()
    return side + torch.where(far < exact, far, scaled.clamp(max=half - 1))


def encoder(folder: Path) -> Encoder:
    """The published encoder from pieces.py's folders (int8 rows, widened)."""
    arrays: dict[str, np.ndarray] = {}
    for piece in sorted(folder.glob("mpnet*/*.npz")):
        arrays |= dict(np.load(piece))
    weights = {key.split("|")[0]: torch.tensor(widened(arrays, key)) for key in arrays if not key.endswith("|s")}
    model = Encoder()
    missing, extra = model.load_state_dict(weights, strict=False)
    if missing:
        raise ValueError(f"{folder} lacks {missing}")
    print("left out:", extra, flush=True)
    return model


def widened(arrays: dict[str, np.ndarray], key: str) -> np.ndarray:
    value = arrays[key]
    if key.endswith("|q"):
        return value.astype(np.float32) * arrays[key[:-1] + "s"].astype(np.float32)
    return value.astype(np.float32) if value.dtype.kind == "f" else value


def learns_whole(model: Encoder) -> None:
    """Every block learns; the embeddings and the shared position bias stay as published."""
    model.requires_grad_(False)
    model.encoder.layer.requires_grad_(True)


def factor(model: Encoder, published: dict[str, Tensor], rank: int) -> None:
    """Replaces what every linear layer has learnt by its best low-rank form (truncated SVD); layers then learn on
    in that form."""
    for at, block in enumerate(model.encoder.layer):
        for path in ADAPTED:
            holder, name = _holder(block, path)
            layer = getattr(holder, name)
            before = published[f"encoder.layer.{at}.{path}.weight"].to(layer.weight.device)
            left, values, right = torch.svd_lowrank(layer.weight.detach() - before, q=rank + 16, niter=4)
            root = values[:rank].sqrt()
            layer.weight.data.copy_(before)
            setattr(holder, name, Adapted(layer, left[:, :rank] * root, (right[:, :rank] * root).T.contiguous()))


ADAPTED = (
    "attention.attn.q", "attention.attn.k", "attention.attn.v", "attention.attn.o", "intermediate.dense",
    "output.dense",
)  # fmt: skip


def _holder(block: nn.Module, path: str) -> tuple[nn.Module, str]:
    *way, name = path.split(".")
    for step in way:
        block = getattr(block, step)
    return block, name


def heads() -> nn.ModuleDict:
    """Layers named as `benchnotes.language.marking.heads.Heads` reads them."""
    layers = {
        "tags": (SIZE, len(MARK_KINDS) * 3),
        "parts": (SIZE, 3),
        "present": (SIZE, len(MARK_KINDS)),
        "link_query": (2 * SIZE, 128),
        "link_key": (SIZE, 128),
        "link_place": (LINK_WIDTH, 1),
        "link_none": (2 * SIZE, 1),
        "attribute_state": (3 * SIZE, 384),
        "point_query": (3 * SIZE, 96),
        "point_key": (3 * SIZE, 96),
        "point_state": (96 + WIDTH, 64),
        "point_score": (64, 1),
        "new_state": (96 + WIDTH, 32),
        "new_score": (32, 1),
    }
    layers |= {f"attribute_{name.replace('.', ':')}": (384, len(values)) for name, values in ATTRIBUTES.items()}
    return nn.ModuleDict({name: nn.Linear(*shape) for name, shape in layers.items()})
