"""Where a model lies on this machine: with the workshop, else in the user's cache, which all workshops share."""

from __future__ import annotations

from benchnotes.speech.weight_pins import cache_folder
from benchnotes.speech.weights import WeightsFolder, find


def model_here(name: str) -> WeightsFolder | None:
    """A model by name. Raises WeightsError where a file of it is not the pinned one."""
    return find(name) or find(name, cache=cache_folder({}))
