"""Captions: times and words as written, rolling lines once, mended times told. The oracle is webvtt-py."""

from __future__ import annotations

import html
import json
from pathlib import Path

import pytest
import webvtt

from benchnotes.capture.captions import Captions, Cue, read_captions
from benchnotes.capture.errors import CaptionError


def captions(folder: Path, text: str | bytes, name: str = "talk.vtt") -> Captions:
    path = folder / name
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return read_captions(path)


def test_a_cue_keeps_its_time_and_its_words(tmp_path: Path) -> None:
    read = captions(tmp_path, "WEBVTT\n\n00:01.500 --> 00:04.000 align:start\nThe seal is gone.\n")
    assert read == Captions((Cue(1.5, 4.0, "The seal is gone."),))


def test_markup_goes_entities_and_bare_signs_stay(tmp_path: Path) -> None:
    head = "WEBVTT\n\n00:00.000 --> 00:02.000\n"
    text = f"{head}<v Ann>under <i>5</i> &lt; 6 &amp; {{brass}}</v> <00:01.000><c> bush</c>\nof 3 < 4 mil\n"
    assert captions(tmp_path, text).cues[0].text == "under 5 < 6 & {brass} bush of 3 < 4 mil"


def test_heads_notes_styles_and_names_are_no_talk(tmp_path: Path) -> None:
    text = (
        "WEBVTT - Bench\nKind: captions\n\nSTYLE\n::cue { color: red }\n\nNOTE not said -->\nnor this\n\n"
        "first\n00:00.000 --> 00:01.000\none\n\nNOTE between\n\nsecond cue\n00:01.000 --> 00:02.000\ntwo\n"
    )
    assert [cue.text for cue in captions(tmp_path, text).cues] == ["one", "two"]


def test_srt_is_read_too(tmp_path: Path) -> None:
    first = "1\r\n00:00:01,000 --> 00:00:02,500\r\n<i>Pump</i> it up\r\n\r\n"
    text = first + "2\r\n00:00:03,000 --> 00:00:04,000\r\n{\\an8}it holds\r\n"
    assert captions(tmp_path, text, "talk.srt").cues == (Cue(1.0, 2.5, "Pump it up"), Cue(3.0, 4.0, "it holds"))


def test_rolling_captions_say_everything_once(tmp_path: Path) -> None:
    text = (
        "WEBVTT\n\n00:00.000 --> 00:02.000\n \nso this<00:00.500><c> is it</c>\n\n"
        "00:02.000 --> 00:02.010\nso this is it\n \n\n"
        "00:02.010 --> 00:04.000\nso this is it\nthe<00:03.000><c> valve</c>\n\n"
        "00:04.000 --> 00:04.010\nthe valve\n \n\n"
        "00:04.010 --> 00:06.000\nthe valve\nthe valve\n"
    )
    read = captions(tmp_path, text)
    assert [cue.text for cue in read.cues] == ["so this is it", "the valve", "the valve"]
    assert "kept once" in read.warnings[0]


def test_what_is_said_twice_is_kept_twice(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:00.000 --> 00:01.000\ntick\n\n00:01.000 --> 00:02.000\ntick\n\n00:05.000 --> 00:06.000\ntick\n"
    assert [cue.text for cue in captions(tmp_path, text).cues] == ["tick", "tick", "tick"]


def test_overlaps_end_where_the_next_begins_and_it_is_told(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:00.000 --> 00:05.000\none\n\n00:03.000 --> 00:06.000\ntwo\n\n00:03.000 --> 00:06.000\nthree\n"
    read = captions(tmp_path, text)
    assert read.cues[0] == Cue(0.0, 3.0, "one")
    assert [cue.text for cue in read.cues] == ["one", "two", "three"]
    assert all(a.end_s <= b.start_s for a, b in zip(read.cues, read.cues[1:], strict=False))
    assert "overlap" in read.warnings[0]


def test_backward_times_are_put_in_order_and_it_is_told(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:10.000 --> 00:12.000\nlater\n\n00:04.000 --> 00:02.000\nearlier on\n"
    read = captions(tmp_path, text)
    assert read.cues == (Cue(4.0, 4.6, "earlier on"), Cue(10.0, 12.0, "later"))
    assert len(read.warnings) == 2


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "is empty"),
        (b"\x00\x01\x02\xff\xfe binary", "no text"),
        (b"shopping list: two seals", "not a caption file"),
        (b"WEBVTT\n", "not a caption file"),
        (b"WEBVTT\n\n00:01.000 --> 00:02.000\n \n", "no captions"),
    ],
)
def test_what_is_no_caption_file_is_told_by_name(tmp_path: Path, content: bytes, said: str) -> None:
    with pytest.raises(CaptionError, match=said) as told:
        captions(tmp_path, content, "bench.vtt")
    assert "bench.vtt" in str(told.value)


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(CaptionError, match="cannot be opened"):
        read_captions(tmp_path / "gone.vtt")


def test_other_encodings_are_read(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:00.000 --> 00:01.000\n£4 for the Gläser\n"
    assert captions(tmp_path, text.encode("utf-16")).cues[0].text == "£4 for the Gläser"
    windows = captions(tmp_path, text.encode("cp1252"))
    assert windows.cues[0].text == "£4 for the Gläser"
    assert "Windows-1252" in windows.warnings[0]


def narrations(root: Path) -> list[Path]:
    return sorted((root / "training/narrations/dev").glob("*.json"))


def test_narrations_come_back_cue_for_cue_as_webvtt_py_reads_them(root: Path, tmp_path: Path) -> None:
    """Every utterance of the dev narrations, written as WebVTT, is one cue with its text unchanged."""
    for path in narrations(root):
        utterances = json.loads(path.read_text(encoding="utf-8"))["utterances"]
        lines = ["WEBVTT"]
        for u in utterances:
            text = html.escape(u["text"], quote=False)
            lines.append(f"{clock(u['start'])} --> {clock(u['end'])}\n{text}")
        file = tmp_path / f"{path.stem}.vtt"
        file.write_text("\n\n".join(lines) + "\n", encoding="utf-8")
        ours, theirs = read_captions(file), list(webvtt.read(str(file)))
        assert [cue.text for cue in ours.cues] == [" ".join(u["text"].split()) for u in utterances], path.name
        assert ours.warnings == ()
        assert len(ours.cues) == len(theirs)
        for cue, other in zip(ours.cues, theirs, strict=True):
            assert cue.start_s == pytest.approx(other.start_in_seconds, abs=1.0)
            assert clock(cue.start_s) == other.start
            assert clock(cue.end_s) == other.end
            assert cue.text == " ".join(html.unescape(other.text).split())


def clock(s: float) -> str:
    ms = round(s * 1000)
    return f"{ms // 3_600_000:02}:{ms // 60_000 % 60:02}:{ms // 1000 % 60:02}.{ms % 1000:03}"
