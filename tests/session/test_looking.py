"""What a file is, said before anybody listens; whatever is wrong with it is a sentence with its name."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from benchnotes.session.known_errors import KNOWN
from benchnotes.session.looking import look_at


def test_captions_have_no_date(tmp_path: Path) -> None:
    path = tmp_path / "Visit.SRT"
    path.write_text("1\n00:00:01,000 --> 00:00:02,500\nlid off\n")
    looked = look_at(path)
    assert (looked.name, looked.kind, looked.duration_s, looked.started_at) == ("Visit.SRT", "captions", 2.5, None)
    assert looked.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()


def test_a_film_has_its_kind_and_length(demo_audio: Path) -> None:
    looked = look_at(demo_audio / "boardwalk-viewer.mp4")
    assert looked.kind == "video"
    assert looked.duration_s > 60
    assert looked.started_at is not None
    assert looked.started_at.tzinfo is not None


def test_a_name_that_is_no_text_is_read_all_the_same(tmp_path: Path) -> None:
    path = Path(os.fsdecode(os.fsencode(tmp_path) + b"/caf\xe9.vtt"))
    path.write_text("WEBVTT\n\n00:01.000 --> 00:02.000\nlid off\n")
    looked = look_at(path)
    assert looked.name == "caf\N{REPLACEMENT CHARACTER}.vtt"
    assert looked.path.exists()


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("none.wav", None),
        ("empty.wav", b""),
        ("letter.mp4", b"Dear Mrs Quillby"),
        ("none.vtt", None),
        ("no.srt", b"hm"),
    ],
)
def test_what_is_wrong_is_said_with_the_name(tmp_path: Path, name: str, content: bytes | None) -> None:
    if content is not None:
        (tmp_path / name).write_bytes(content)
    with pytest.raises(KNOWN, match=name):
        look_at(tmp_path / name)


def test_a_folder_is_no_recording(tmp_path: Path) -> None:
    with pytest.raises(KNOWN, match="is a folder"):
        look_at(tmp_path)
