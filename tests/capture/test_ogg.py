"""An Ogg file whose recorder was cut off is told from a whole one."""

from pathlib import Path

import pytest

from benchnotes.capture.errors import MediaError
from benchnotes.capture.media import describe, sound_windows
from benchnotes.capture.ogg import is_cut_off


@pytest.fixture
def whole(demo_audio: Path) -> Path:
    return demo_audio / "hat-steamer-1-inspection.opus"


def test_a_whole_file_is_closed(whole: Path) -> None:
    assert not is_cut_off(whole)


def test_the_first_eighth_of_it_was_never_closed(whole: Path, tmp_path: Path) -> None:
    cut = tmp_path / "cut.opus"
    cut.write_bytes(whole.read_bytes()[: whole.stat().st_size // 8])
    assert is_cut_off(cut)
    *_, last = sound_windows(cut)
    assert any("cut.opus" in warning and "never closed it" in warning for warning in last.warnings)


def test_what_is_no_ogg_is_not_judged(tmp_path: Path) -> None:
    other = tmp_path / "other.wav"
    other.write_bytes(b"RIFF....WAVE")
    assert not is_cut_off(other)


def test_a_folder_is_called_one(tmp_path: Path) -> None:
    folder = tmp_path / "film.mp4"
    folder.mkdir()
    with pytest.raises(MediaError, match=r"film\.mp4 is a folder"):
        describe(folder)
