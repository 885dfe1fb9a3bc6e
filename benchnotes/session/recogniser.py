"""Opens the recogniser for a workshop: its weights, and the words it should lean towards."""

from __future__ import annotations

from dataclasses import dataclass

from benchnotes.language.vocabulary import bias_words
from benchnotes.session.models_here import model_here
from benchnotes.session.settings import Settings
from benchnotes.session.workshop import Workshop
from benchnotes.speech.errors import WeightsError
from benchnotes.speech.transcriber import Transcriber
from benchnotes.speech.weights import WeightsFolder, adopt
from benchnotes.speech.whisper import Whisper
from benchnotes.trades.shelf import load


@dataclass(frozen=True, slots=True)
class Recogniser:
    """What hears, and what it expects to hear."""

    transcriber: Transcriber
    bias: tuple[str, ...]
    weights: WeightsFolder


def open_recogniser(workshop: Workshop, settings: Settings, trades: tuple[str, ...]) -> Recogniser:
    """Raises WeightsError where the weights are not here or not the pinned ones, SpeechError where they do not open."""
    weights = find_weights(settings)
    vocabulary = load(workshop.trades, trades)
    return Recogniser(Whisper(weights.path), bias_words(vocabulary, trades), weights)


def find_weights(settings: Settings) -> WeightsFolder:
    """The speech weights that the settings name."""
    if settings.model_folder is not None:
        return adopt(settings.model_folder)
    found = model_here(settings.model)
    if found is None:
        raise WeightsError(
            f'The speech model "{settings.model}" is not on this machine, so sound cannot be read yet. '
            f'"benchnotes weights fetch {settings.model}" fetches it; captions can be read without it.'
        )
    return found
