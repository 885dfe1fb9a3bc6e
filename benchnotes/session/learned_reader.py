"""Opens the learned reader: what it learnt (models/reader) over the published encoder, laid out once on a machine."""

from __future__ import annotations

from pathlib import Path

from tokenizers import Tokenizer

from benchnotes.encoder.laying import is_laid, laid_in, lay, learnt
from benchnotes.encoder.opened import OnnxEncoder
from benchnotes.language.marking.heads import Heads
from benchnotes.language.marking.learned import LearnedMarker
from benchnotes.session.models_here import model_here
from benchnotes.speech.errors import WeightsError
from benchnotes.speech.weight_pins import cache_folder, models_folder
from benchnotes.speech.weights import WeightsFolder

ENCODER = "all-mpnet-base-v2"
"""The published encoder, by its name in models/weights.toml."""


def published_encoder() -> WeightsFolder | None:
    """Raises WeightsError where a file of it is not the pinned one."""
    return model_here(ENCODER)


def open_learned_marker() -> LearnedMarker | None:
    """None where the published encoder is not on this machine; lays the reader out where that was not done yet.

    Raises WeightsError (a damaged file, no room to lay it out).
    """
    published = published_encoder()
    if published is None:
        return None
    laid = laid_out(published.path)
    tokenizer = Tokenizer.from_file(str(published.path / "tokenizer.json"))
    tokenizer.no_truncation()
    tokenizer.no_padding()
    return LearnedMarker(OnnxEncoder(laid, published.path), tokenizer, heads())


def laid_out(published: Path) -> Path:
    """The folder with the encoder as this version of the reader needs it. Raises WeightsError where it has no room."""
    model, out = models_folder() / "reader", cache_folder({}) / "reader"
    if is_laid(model, published, out):
        return laid_in(model, published, out)
    try:
        return lay(model, published, out)
    except OSError as error:
        raise WeightsError(
            f"The reader could not be laid out in {out}: {error.strerror or error}. It needs 440 MB there; "
            "nothing else was changed."
        ) from error


def heads() -> Heads:
    values = learnt(models_folder() / "reader" / "marker.npz", only="head/")
    return Heads({name.removeprefix("head/"): value for name, value in values.items()})
