"""Models lie with the workshop or in the cache that all workshops share; a damaged one is named and can be mended."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from benchnotes.session.models import models
from benchnotes.session.models_here import model_here
from benchnotes.speech.errors import WeightsError
from benchnotes.speech.weight_pins import cache_folder

MODEL = b"a small model"


@pytest.fixture
def shared(nobodys_workshop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The model "small" in the shared cache of a user of our own; the workshop pins it and has none of it."""
    monkeypatch.setenv("HOME", str(tmp_path / "user"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "user" / "cache"))
    (nobodys_workshop / "weights.toml").write_text(
        '[small]\nkind = "speech"\nmodel = "small"\nrevision = "1"\nlicence = "MIT"\n[small.files."model.bin"]\n'
        f'bytes = {len(MODEL)}\nsha256 = "{hashlib.sha256(MODEL).hexdigest()}"\n'
    )
    file = cache_folder({}) / "small" / "model.bin"
    file.parent.mkdir(parents=True)
    file.write_bytes(MODEL)
    return file


def state() -> str:
    return next(known.state for known in models() if known.name == "small")


def test_the_shared_cache_serves_every_workshop(shared: Path) -> None:
    found = model_here("small")
    assert found is not None
    assert found.path == shared.parent
    assert state() == "complete"


def test_one_byte_changed_is_listed_then_refused_and_deleted(shared: Path) -> None:
    """It is our own cache, so fetching can bring it back; a look at the list deletes nothing and does not fail."""
    shared.write_bytes(MODEL.upper())
    assert state() == "damaged"
    assert shared.exists()
    with pytest.raises(WeightsError, match=r"model\.bin.*It was deleted; `benchnotes weights fetch small` brings it"):
        model_here("small")
    assert not shared.exists()
    assert state() == "missing"
    assert model_here("small") is None
