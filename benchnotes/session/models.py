"""The models on this machine, and fetching more."""

from __future__ import annotations

from benchnotes.speech.weight_pins import cache_folder
from benchnotes.speech.weight_sources import Progress, fetch
from benchnotes.speech.weights import WeightsFolder, WeightsState, listing


def models() -> tuple[WeightsState, ...]:
    """Every model that is known by name, and how it stands here."""
    shared = {known.name: known for known in listing(cache_folder({}))}
    return tuple(shared[own.name] if own.state == "missing" else own for own in listing())


def fetch_model(name: str, progress: Progress) -> WeightsFolder:
    """Brings a model here and checks it against its hashes; at once where it is here. Raises WeightsError."""
    here = next((known for known in models() if known.name == name and known.state == "complete"), None)
    return fetch(name, progress, folder=here.where if here else None)
