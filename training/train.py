"""Teaches the marker. On a GPU: minutes; on two cores: most of a day.

    python -m training.train --weights FOLDER --fold K --out FOLDER
        [--seconds 330 90] [--rank 64] [--rate 8e-5] [--seed 0]

First the whole encoder learns, then what it has learnt is brought into low-rank form and learns on a little.
--fold 0..4 holds out a fifth of the narrations (by narration) and writes what is marked in them to OUT/marks-K.json;
--fold -1 learns from all of them and writes OUT/marker-0.npz, marker-1.npz (adapters, biases and heads, fp16).
"""

from __future__ import annotations

import argparse
import collections
import json
import random
import time
import zlib
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import torch
from tokenizers import Tokenizer
from torch import Tensor, nn
from torch.nn import functional

from benchnotes.language.belonging.candidates import POINTING_KINDS, Mention, Things
from benchnotes.language.marking.heads import ATTRIBUTES, MARK_KINDS, Heads, link_row
from benchnotes.language.marking.learned import NEIGHBOURS, LearnedMarker, Thresholds
from benchnotes.language.marking.marker import Span
from benchnotes.language.marking.windows import Cut, Piece, pieces, windows
from benchnotes.record.heard import captioned
from training.known_spans import KnownMark, Narration, narration
from training.network import Adapted, encoder, factor, heads, learns_whole
from training.score_marks import f1, score

DEVICE = "cuda" if torch.cuda.is_available() else "cpu"
WIDTH = 768


@dataclass
class Choices:
    """Choices among candidates, padded: `pairs` (choices, most) index the flat candidates, -1 where there is none."""

    asked: Tensor
    """Which mark chooses."""
    candidates: Tensor
    """Which mark each flat candidate is."""
    askers: Tensor
    """Which mark asks about each flat candidate."""
    rows: Tensor
    pairs: Tensor
    right: Tensor
    """(choices, most + 1) bool: the right answers; the last column is for none of them."""


@dataclass
class Example:
    """A narration in word pieces, with everything about it that does not change between epochs."""

    narration: Narration
    pieces: tuple[Piece, ...]
    present: Tensor
    pointing: Choices | None
    linking: Choices | None


def example(one: Narration, tokenizer: Tokenizer) -> Example:
    present = torch.zeros(len(one.texts), len(MARK_KINDS))
    for mark in one.marks:
        present[mark.span.utterance, MARK_KINDS.index(mark.kind)] = 1
    made = pieces(one.texts, tokenizer)
    return Example(one, made, present.to(DEVICE), choices(_rows(one.marks)), choices(_links(one.marks)))


Asked = tuple[int, list[int], list[list[float]], list[int]]
"""A mark, its candidates, their rows, which of the candidates are right."""


def choices(asked: list[Asked]) -> Choices | None:
    asked = [each for each in asked if each[1]]
    if not asked:
        return None
    most = max(len(candidates) for _, candidates, _, _ in asked)
    pairs = torch.full((len(asked), most), -1)
    right = torch.zeros(len(asked), most + 1, dtype=torch.bool)
    first = 0
    for at, (_, candidates, _, answers) in enumerate(asked):
        pairs[at, : len(candidates)] = torch.arange(first, first + len(candidates))
        right[at, answers or [most]] = True
        first += len(candidates)
    parts = (
        torch.tensor([mark for mark, *_ in asked]),
        torch.tensor([j for _, candidates, _, _ in asked for j in candidates]),
        torch.tensor([mark for mark, candidates, _, _ in asked for _ in candidates]),
        torch.tensor([row for _, _, rows, _ in asked for row in rows]),
        pairs,
        right,
    )
    return Choices(*(part.to(DEVICE) for part in parts))


def choice_loss(flat: Tensor, none: Tensor, asked: Choices) -> Tensor:
    """Negative log likelihood of all right answers together, per choice."""
    scores = flat[asked.pairs.clamp(min=0)].masked_fill(asked.pairs < 0, -1e4)
    scores = torch.cat([scores, none], dim=1)
    return (scores.logsumexp(1) - scores.masked_fill(~asked.right, -1e4).logsumexp(1)).mean()


def _links(marks: tuple[KnownMark, ...]) -> list[Asked]:
    """Each statement chooses among the part spans near it, or none."""
    places = {mark.part: at for at, mark in enumerate(marks) if mark.part}
    asked: list[Asked] = []
    for at, mark in enumerate(marks):
        span = mark.span
        near = [part for part in places if abs(part.utterance - span.utterance) <= NEIGHBOURS]
        rows = [
            link_row((span.utterance, span.start, span.end), (part.utterance, part.start, part.end)) for part in near
        ]
        answers = [near.index(mark.part)] if mark.part in near else []
        asked.append((at, [places[part] for part in near], rows, answers))
    return asked


def _rows(marks: tuple[KnownMark, ...]) -> list[Asked]:
    """Each mark chooses among the earlier ones of the same thing, or it names a new one."""
    things, by_ref, taken, rows = Things(), {}, [], []
    for at, mark in enumerate(marks):
        if mark.kind not in POINTING_KINDS or not mark.ref:
            continue
        part = mark.part
        mention = Mention.of(
            mark.kind, mark.span.utterance, mark.said_part, part and (part.utterance, part.start, part.end)
        )
        recent = taken[things.first :]
        same = [j for j, other in enumerate(recent) if marks[other].ref == mark.ref]
        rows.append((at, recent, things.rows(mention), same))
        by_ref[mark.ref] = things.add(mention, by_ref.get(mark.ref))
        taken.append(at)
    return rows


class Marker(nn.Module):
    def __init__(self, weights: Path) -> None:
        super().__init__()
        self.encoder = encoder(weights)
        learns_whole(self.encoder)
        self.heads = heads()
        self.dropout = nn.Dropout(0.1)

    def forward(self, ids: Tensor, mask: Tensor) -> Tensor:
        return self.encoder(ids, mask)


def laid_out(
    one: Example, generator: random.Random, cut: Cut
) -> tuple[Tensor, Tensor, list[tuple[int, int, int]], Tensor]:
    """Windows of an epoch: cores begin elsewhere each time, punctuation and later context are missing now and then."""
    talk = one.pieces
    if one.narration.style != "captions" and generator.random() < 0.3:
        talk = tuple(_unpunctuated(piece, one.narration.texts[piece.utterance]) for piece in talk)
    if generator.random() < 0.2:
        cut = Cut(limit=generator.choice([96, 192]), before=cut.before, after=generator.choice([0, 1]))
    made = windows(talk, cut, first_core=generator.randint(1, 12))
    longest = max(len(window.ids) for window in made)
    ids = torch.ones(len(made), longest, dtype=torch.long)
    mask = torch.zeros(len(made), longest, dtype=torch.long)
    tokens, kept = [], []
    for row, window in enumerate(made):
        ids[row, : len(window.ids)] = torch.tensor(window.ids)
        mask[row, : len(window.ids)] = 1
        for at in range(*window.core):
            token = window.tokens[at]
            if token.utterance >= 0:
                tokens.append((token.utterance, token.start, token.end))
                kept.append(row * longest + at)
    return ids, mask, tokens, torch.tensor(kept)


def _unpunctuated(piece: Piece, text: str) -> Piece:
    keep = [
        at
        for at, (start, end) in enumerate(piece.offsets)
        if not (text[start:end] in ".,;:!?-" and (end >= len(text) or text[end] == " "))
    ]
    return Piece(piece.utterance, tuple(piece.ids[at] for at in keep), tuple(piece.offsets[at] for at in keep))


def batch_loss(model: Marker, batch: list[Example], generator: random.Random, cut: Cut) -> Tensor:
    """All windows of several narrations go through the encoder at once; it is the slow part."""
    laid = [laid_out(one, generator, cut) for one in batch]
    longest = -(-max(ids.shape[1] for ids, *_ in laid) // 8) * 8  # the attention kernel wants eights
    ids = torch.cat([functional.pad(ids, (0, longest - ids.shape[1]), value=1) for ids, *_ in laid])
    mask = torch.cat([functional.pad(mask, (0, longest - mask.shape[1])) for _, mask, *_ in laid])
    with torch.autocast(DEVICE, dtype=torch.bfloat16, enabled=DEVICE == "cuda"):
        encoded = model(ids.to(DEVICE), mask.to(DEVICE)).float()
    total, first = encoded.sum() * 0, 0
    for one, (own, _, tokens, kept) in zip(batch, laid, strict=True):
        hidden = encoded[first : first + len(own), : own.shape[1]].flatten(0, 1)[kept.to(DEVICE)]
        total = total + loss_of(model, one, tokens, model.dropout(hidden))
        first += len(own)
    return total / len(batch)


def loss_of(model: Marker, one: Example, tokens: list[tuple[int, int, int]], hidden: Tensor) -> Tensor:
    at_utterance: dict[int, list[int]] = {}
    for at, token in enumerate(tokens):
        at_utterance.setdefault(token[0], []).append(at)
    marks = one.narration.marks
    spans = [_inside(tokens, at_utterance, mark.span) for mark in marks]
    parts = [_inside(tokens, at_utterance, mark.part) if mark.part else [] for mark in marks]
    owner = torch.tensor([token[0] for token in tokens], device=DEVICE)
    means = torch.zeros(len(one.narration.texts), WIDTH, device=DEVICE).index_add(0, owner, hidden)
    means = means / torch.bincount(owner, minlength=len(means)).clamp(min=1)[:, None]
    total = _tag_loss(model, hidden, marks, spans, parts)
    total = (
        total
        + functional.binary_cross_entropy_with_logits(
            model.heads["present"](means), one.present, pos_weight=torch.tensor(2.0, device=DEVICE)
        )
        * 2
    )
    if not any(spans):
        return total
    words = _span_means(hidden, spans)
    named = _span_means(hidden, parts)
    utterances = means[torch.tensor([mark.span.utterance for mark in marks], device=DEVICE)]
    vectors = torch.cat([words, named, utterances], dim=1)
    if one.linking:
        total = total + _link_loss(model, one.linking, words, utterances, named)
    total = total + _attribute_loss(model, marks, vectors)
    return total + (0.5 * _pointing_loss(model, one.pointing, vectors) if one.pointing else 0)


def _inside(tokens: list[tuple[int, int, int]], at_utterance: dict[int, list[int]], span: Span) -> list[int]:
    near = at_utterance.get(span.utterance, [])
    return [at for at in near if tokens[at][1] >= span.start and tokens[at][2] <= span.end]


def _span_means(hidden: Tensor, spans: list[list[int]]) -> Tensor:
    owner = torch.tensor([at for at, span in enumerate(spans) for _ in span], dtype=torch.long, device=DEVICE)
    flat = torch.tensor([token for span in spans for token in span], dtype=torch.long, device=DEVICE)
    sums = torch.zeros(len(spans), WIDTH, device=DEVICE).index_add(0, owner, hidden[flat])
    counts = torch.bincount(owner, minlength=len(spans)).clamp(min=1)
    return sums / counts[:, None]


def _tag_loss(
    model: Marker, hidden: Tensor, marks: tuple[KnownMark, ...], spans: list[list[int]], parts: list[list[int]]
) -> Tensor:
    labels = torch.zeros(len(hidden), len(MARK_KINDS), dtype=torch.long)
    named = torch.zeros(len(hidden), dtype=torch.long)
    for mark, span, part in zip(marks, spans, parts, strict=True):
        kind = MARK_KINDS.index(mark.kind)
        for place, at in enumerate(span):
            labels[at, kind] = 1 if place == 0 else 2
        for place, at in enumerate(part):
            named[at] = max(int(named[at]), 1 if place == 0 else 2) if named[at] != 1 else 1
    weight = torch.tensor([1.0, 2.0, 2.0], device=DEVICE)
    scores = model.heads["tags"](hidden).unflatten(-1, (len(MARK_KINDS), 3))
    tags = functional.cross_entropy(scores.flatten(0, 1), labels.flatten().to(DEVICE), weight=weight)
    return len(MARK_KINDS) * tags + functional.cross_entropy(model.heads["parts"](hidden), named.to(DEVICE))


def _link_loss(model: Marker, asked: Choices, words: Tensor, utterances: Tensor, named: Tensor) -> Tensor:
    query_from = torch.cat([words, utterances], dim=1)
    queries, keys = model.heads["link_query"](query_from), model.heads["link_key"](named)
    flat = (queries[asked.askers] * keys[asked.candidates]).sum(1) / queries.shape[1] ** 0.5
    flat = flat + model.heads["link_place"](asked.rows)[:, 0]
    return choice_loss(flat, model.heads["link_none"](query_from[asked.asked]), asked)


def _attribute_loss(model: Marker, marks: tuple[KnownMark, ...], vectors: Tensor) -> Tensor:
    state = model.dropout(functional.relu(model.heads["attribute_state"](vectors)))
    total = vectors.sum() * 0
    for name, values in ATTRIBUTES.items():
        with_it = [at for at, mark in enumerate(marks) if name in mark.attributes]
        if with_it:
            answers = torch.tensor([values.index(marks[at].attributes[name]) for at in with_it], device=DEVICE)
            scores = model.heads[f"attribute_{name.replace('.', ':')}"](state[with_it])
            total = total + functional.cross_entropy(scores, answers, reduction="sum") / max(20, len(with_it))
    return total


def _pointing_loss(model: Marker, asked: Choices, vectors: Tensor) -> Tensor:
    queries, keys = model.heads["point_query"](vectors), model.heads["point_key"](vectors)
    pairs = torch.cat([queries[asked.askers] * keys[asked.candidates], asked.rows], dim=1)
    flat = model.heads["point_score"](functional.relu(model.heads["point_state"](pairs)))[:, 0]
    rows = asked.rows[asked.pairs.clamp(min=0)].masked_fill((asked.pairs < 0)[..., None], -1e4).amax(1)
    state = functional.relu(model.heads["new_state"](torch.cat([queries[asked.asked], rows], dim=1)))
    return choice_loss(flat, model.heads["new_score"](state), asked)


class Averaged:
    """A running mean of everything that learns; steadier than its last state."""

    def __init__(self, model: nn.Module, decay: float) -> None:
        self.decay, self.steps = decay, 0
        self.values = {name: p.detach().clone() for name, p in model.named_parameters() if p.requires_grad}

    def update(self, model: nn.Module) -> None:
        self.steps += 1
        decay = min(self.decay, self.steps / (self.steps + 10))
        now = [p.detach() for name, p in model.named_parameters() if name in self.values]
        torch._foreach_lerp_(list(self.values.values()), now, 1 - decay)

    def into(self, model: nn.Module) -> None:
        with torch.no_grad():
            for name, p in model.named_parameters():
                if name in self.values:
                    p.copy_(self.values[name])


def train(
    model: Marker, examples: list[Example], cut: Cut, *, seconds: float, rate: float, head_rate: float, name: str
) -> None:
    """Goes over the narrations until the time is up; rates rise for a tenth of it, then fall to nothing."""
    generator = random.Random(zlib.crc32(name.encode()))
    inner = [p for p in model.encoder.parameters() if p.requires_grad]
    rates = (rate, head_rate)
    optimiser = torch.optim.AdamW(
        [{"params": inner, "lr": rate}, {"params": list(model.heads.parameters()), "lr": head_rate}], weight_decay=0.01
    )
    averaged, began, epoch = Averaged(model, 0.995), time.time(), 0
    model.train()
    while (gone := (time.time() - began) / seconds) < 1:
        generator.shuffle(examples)
        seen = 0.0
        for one in examples:
            gone = min(1.0, (time.time() - began) / seconds)
            for group, highest in zip(optimiser.param_groups, rates, strict=True):
                group["lr"] = highest * min(1.0, gone / 0.1, (1 - gone) / 0.9)
            optimiser.zero_grad()
            loss = batch_loss(model, [one], generator, cut)
            loss.backward()
            seen += loss.item()
            torch.nn.utils.clip_grad_norm_(model.parameters(), 1.0)
            optimiser.step()
            averaged.update(model)
            if gone >= 1:
                break
        print(f"{name} epoch {epoch} loss {seen / len(examples):.3f} {time.time() - began:.0f} s", flush=True)
        epoch += 1
    averaged.into(model)


def learned(model: Marker, tokenizer: Tokenizer, cut: Cut, thresholds: Thresholds) -> LearnedMarker:
    """The product's own marker over the trained network."""
    model.eval()

    def encode(ids: np.ndarray, mask: np.ndarray) -> np.ndarray:
        with torch.no_grad(), torch.autocast(DEVICE, dtype=torch.bfloat16, enabled=DEVICE == "cuda"):
            return model(torch.tensor(ids).to(DEVICE), torch.tensor(mask).to(DEVICE)).float().cpu().numpy()

    return LearnedMarker(encode, tokenizer, Heads(head_weights(model), vectors_weight=1), cut, thresholds, batch=8)


def head_weights(model: Marker) -> dict[str, np.ndarray]:
    return {name.replace(":", "."): p.detach().float().cpu().numpy() for name, p in model.heads.state_dict().items()}


def encoder_weights(model: Marker) -> dict[str, np.ndarray]:
    """What differs from the published encoder: low-rank additions, and every bias and norm whole."""
    found = {}
    for name, module in model.encoder.named_modules():
        if isinstance(module, Adapted):
            found[f"adapter/{name}.up"] = module.up.detach().float().cpu().numpy()
            found[f"adapter/{name}.down"] = module.down.detach().float().cpu().numpy()
    for name, value in model.encoder.encoder.layer.named_parameters():
        if value.ndim == 1:
            found[f"plain/encoder.layer.{name.replace('.frozen', '')}"] = value.detach().float().cpu().numpy()
    return found


def written(model: Marker, out: Path) -> None:
    """Two files, each small enough to travel."""
    values = {f"head/{name}": value for name, value in head_weights(model).items()} | encoder_weights(model)
    names = sorted(values)
    for which in range(2):
        half = {name: values[name].astype(np.float16) for at, name in enumerate(names) if at % 2 == which}
        np.savez(out / f"marker-{which}.npz", **half)


def marks_of(marker: LearnedMarker, one: Narration) -> dict[str, object]:
    talk = [captioned(1, float(at), at + 1.0, text) for at, text in enumerate(one.texts)]
    marked = marker.mark(talk)
    place = lambda span: span and [span.utterance, span.start, span.end]  # noqa: E731
    return {
        "marks": [[m.kind, place(m.span), place(m.part), dict(m.attributes), round(m.sure, 4)] for m in marked.marks],
        "pointers": [[[p.earlier, round(p.score, 3)] for p in each] for each in marked.pointers or ()],
    }


def reported(marker: LearnedMarker, held: list[Narration], stage: str, out: Path, fold: int) -> None:
    """Marks what was held out, writes the marks, prints how good they are."""
    marks = {one.name: marks_of(marker, one) for one in held}
    (out / f"marks-{fold}.json").write_text(json.dumps(marks), encoding="utf-8")
    counts: dict[str, list[int]] = collections.defaultdict(lambda: [0, 0, 0])
    for one in held:
        if one.marks:
            score(one, marks[one.name], 0.5, counts)
    total = [sum(counts[kind][n] for kind in MARK_KINDS) for n in range(3)]
    full = sum(counts["=" + kind][0] for kind in MARK_KINDS)
    thing = counts["#thing"][0] / max(1, counts["#thing"][1])
    print(
        f"fold {fold} {stage}: statement {f1(*total):.3f} full {f1(full, *total[1:]):.3f} thing {thing:.3f}", flush=True
    )


def main() -> None:
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument("--weights", type=Path, required=True)
    ap.add_argument("--narrations", type=Path, nargs="+", default=[Path("training/narrations/train")])
    ap.add_argument("--also", type=Path, nargs="*", default=[], help="more to mark after training, never learned from")
    ap.add_argument("--fold", type=int, default=-1)
    ap.add_argument("--folds", type=int, default=5)
    ap.add_argument("--out", type=Path, required=True)
    ap.add_argument("--rank", type=int, default=64, help="of what is kept of the learning")
    ap.add_argument("--seconds", type=float, nargs=2, default=[330, 90], help="for the two stages")
    ap.add_argument("--rate", type=float, default=8e-5)
    ap.add_argument("--seed", type=int, default=0)
    a = ap.parse_args()
    torch.manual_seed(a.seed)
    torch.set_num_threads(3)
    tokenizer = Tokenizer.from_file(str(a.weights / "config" / "tokenizer.json"))
    tokenizer.no_truncation()
    tokenizer.no_padding()
    cut = Cut()
    known = [narration(path) for folder in a.narrations for path in sorted(folder.glob("*.json"))]
    held = [one for one in known if zlib.crc32(one.name.encode()) % a.folds == a.fold]
    learn = [example(one, tokenizer) for one in known if zlib.crc32(one.name.encode()) % a.folds != a.fold]
    held += [narration(path) for folder in a.also for path in sorted(folder.glob("*.json"))]
    a.out.mkdir(parents=True, exist_ok=True)
    model = Marker(a.weights).to(DEVICE)
    published = {name: value.detach().cpu().clone() for name, value in model.encoder.state_dict().items()}
    thresholds = Thresholds(piece=0.3, part=0.3, statement=0.15)
    train(model, learn, cut, seconds=a.seconds[0], rate=a.rate, head_rate=1e-3, name=f"fold {a.fold} whole")
    reported(learned(model, tokenizer, cut, thresholds), held, "whole", a.out, a.fold)
    factor(model.encoder, published, a.rank)
    if a.fold < 0:
        written(model, a.out)
    reported(learned(model, tokenizer, cut, thresholds), held, "low rank", a.out, a.fold)
    train(model, learn, cut, seconds=a.seconds[1], rate=1.5e-4, head_rate=3e-4, name=f"fold {a.fold} low rank")
    if a.fold < 0:
        written(model, a.out)
    reported(learned(model, tokenizer, cut, thresholds), held, "learnt on", a.out, a.fold)


if __name__ == "__main__":
    main()
