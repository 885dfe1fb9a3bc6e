"""Word error rate on openly licensed human speech, against the figures published for Whisper base.

Radford et al. 2022 (arXiv 2212.04356): Whisper base, LibriSpeech test-other, greedy: 12.4 %. Measured outside this
project with faster-whisper 1.2.1 (int8, beam 5): 11.0 % on 100 clips of test-other, and on the clips here what
`clips.json` says was heard. Origins and licences: tests/published/speech/SOURCE.md.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from speech.said import text, wer

from benchnotes.capture.media import sound_windows
from benchnotes.speech.hearing import hear
from benchnotes.speech.whisper import Whisper

PUBLISHED, TOLERANCE = 0.124, 0.02
"""Two words in a hundred: our way cuts by voice activity and decodes without falling back to other temperatures."""


@pytest.fixture(scope="module")
def clips(root: Path) -> list[dict[str, Any]]:
    listed: list[dict[str, Any]] = json.loads((root / "tests/published/speech/clips.json").read_text(encoding="utf-8"))
    return listed


@pytest.mark.speech
def test_word_error_rate_is_that_of_the_published_model(
    root: Path, whisper: Whisper, clips: list[dict[str, Any]]
) -> None:
    heard = [read(root / "tests/published/speech" / clip["file"], whisper) for clip in clips]
    known, elsewhere = [clip["text"] for clip in clips], [clip["heard_by_faster_whisper"] for clip in clips]
    assert wer(known, heard) <= wer(known, elsewhere) + TOLERANCE
    other = [i for i, clip in enumerate(clips) if clip["group"] == "librispeech-test-other"]
    assert wer([known[i] for i in other], [heard[i] for i in other]) <= PUBLISHED + TOLERANCE


def read(path: Path, whisper: Whisper) -> str:
    stretches = hear(sound_windows(path), recording=1, transcriber=whisper)
    return text([utterance for stretch in stretches for utterance in stretch.utterances])


def test_every_clip_is_here_with_its_licence(root: Path, clips: list[dict[str, Any]]) -> None:
    assert {clip["file"] for clip in clips} == {path.name for path in (root / "tests/published/speech").glob("*.flac")}
    assert {clip["licence"] for clip in clips} == {"CC BY 4.0", "public domain"}
