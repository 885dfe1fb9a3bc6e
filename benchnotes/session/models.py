"""The models on this machine, and fetching more."""

from __future__ import annotations

from benchnotes.speech.weight_sources import Progress, fetch
from benchnotes.speech.weights import WeightsFolder, WeightsState, listing


def models() -> tuple[WeightsState, ...]:
    """Every model that is known by name, and how it stands here."""
    return listing()


def fetch_model(name: str, progress: Progress) -> WeightsFolder:
    """Brings a model here and checks it against its hashes. Raises WeightsError."""
    return fetch(name, progress)
