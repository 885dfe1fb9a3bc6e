"""The real recogniser, opened once a run from the weights that `make weights` has fetched."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchnotes.speech.whisper import Whisper


@pytest.fixture(scope="session")
def whisper(weights: Path) -> Whisper:
    """Whisper base."""
    if not (weights / "base" / "model.bin").is_file():
        pytest.skip("the speech weights are not here: run `make weights` first")
    return Whisper(weights / "base")
