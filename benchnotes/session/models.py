"""The models on this machine, and fetching more."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.session.models_here import model_here
from benchnotes.speech.weight_sources import Progress, fetch
from benchnotes.speech.weights import WeightsFolder, WeightsState, listing


def models() -> tuple[WeightsState, ...]:
    """Every model that is known by name, and how it stands here."""
    return tuple(_state(known) for known in listing())


def fetch_model(name: str, progress: Progress) -> WeightsFolder:
    """Brings a model here and checks it against its hashes; at once where it is here. Raises WeightsError."""
    here = next((known for known in models() if known.name == name and known.state == "complete"), None)
    return fetch(name, progress, folder=here.where if here else None)


def _state(known: WeightsState) -> WeightsState:
    found = model_here(known.name) if known.state == "missing" else None
    return known if found is None else replace(known, state="complete", where=found.path)
