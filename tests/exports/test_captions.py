"""Captions and chapters, read back with other people's readers: webvtt-py and pysubs2."""

from __future__ import annotations

import io
from itertools import pairwise

import pysubs2
import webvtt
from exports.records import HEARD
from hypothesis import given, settings

from benchnotes.exports.captions import NOT_MADE_OUT, captions_of, film_captions
from benchnotes.exports.plain_words import one_line
from benchnotes.record.entries import Fault, JobRecord, Trial
from benchnotes.record.heard import Evidence, Recording, Unheard, captioned
from benchnotes.record.job import Heard

FILM = Recording(1, "churn.mp4", "video", 60.0, "0" * 64)
HOSTILE = "<b>tight</b> & a --> b\r\n\r\n2\n00:00:01.000 --> 00:00:02.000 {\\an8} NOTE \x1b[31m \\N &lt; ok"
TALK = Heard(
    (FILM,),
    (
        captioned(1, 1.0, 4.0, "The lid gasket is split right round."),
        captioned(1, 10.0, 22.0, "and then " * 30),
        captioned(1, 30.0, 34.0, HOSTILE),
    ),
    (Unheard(1, 40.0, 41.5),),
)


def seconds(recording: int, start_s: float) -> tuple[Evidence, ...]:
    return (Evidence(recording, start_s, start_s + 2, "words"),)


RECORD = JobRecord(
    currency="GBP",
    faults=(
        Fault(part="lid gasket", kind="wrong_part", evidence=seconds(1, 1.0)),
        Fault(part="hoop <i>", kind="loose", evidence=seconds(1, 2.5)),
        Fault(part="paddle", kind="worn", evidence=seconds(2, 3.0)),
    ),
    tests=(Trial(what="leak", result="pass", of="lid", evidence=seconds(1, 30.0)),),
)


def read_vtt(content: bytes) -> list[webvtt.Caption]:
    return list(webvtt.from_buffer(io.BytesIO(content)))


def test_every_word_is_in_both_forms() -> None:
    files = film_captions(RECORD, TALK)
    assert sorted(files) == ["film-chapters.vtt", "film.srt", "film.vtt"]
    said = " ".join(one_line(each.text) for each in TALK.utterances)
    vtt = read_vtt(files["film.vtt"])
    shown = " ".join(cue.raw_text.replace("\n", " ") for cue in vtt[:-1])
    assert shown.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&") == said
    srt = pysubs2.SSAFile.from_string(files["film.srt"].decode(), "srt")
    assert " ".join(event.plaintext.replace("\n", " ") for event in srt[:-1]) == said.translate(
        str.maketrans("<>{}\\", "＜＞｛｝＼")
    )
    assert vtt[-1].text == srt[-1].plaintext == NOT_MADE_OUT


def test_times_are_those_of_the_talk() -> None:
    vtt = read_vtt(film_captions(RECORD, TALK)["film.vtt"])
    assert (vtt[0].start, vtt[0].end) == ("00:00:01.000", "00:00:04.000")
    long = [cue for cue in vtt if "and then" in cue.text]
    assert len(long) > 2
    assert long[0].start == "00:00:10.000"
    assert long[-1].end == "00:00:22.000"
    assert all(first.end == second.start for first, second in pairwise(long))


def test_chapters_at_findings_and_tests() -> None:
    """Two findings in one breath share a chapter; one in another recording has none here."""
    chapters = read_vtt(film_captions(RECORD, TALK)["film-chapters.vtt"])
    assert [(cue.start, cue.end, cue.raw_text) for cue in chapters] == [
        ("00:00:01.000", "00:00:30.000", "Found: lid gasket, wrong part; Found: hoop &lt;i&gt;, loose"),
        ("00:00:30.000", "00:01:00.000", "Test: leak of lid, pass"),
    ]


def test_two_films_are_told_apart_and_sound_beside_a_film_is_none() -> None:
    second = Recording(2, "later.mp4", "video", 60.0, "1" * 64)
    sound = Recording(3, "sound.flac", "sound", 60.0, "2" * 64)
    heard = Heard((FILM, second, sound), (*TALK.utterances, captioned(2, 0, 2, "later"), captioned(3, 0, 2, "x")))
    files = film_captions(RECORD, heard)
    assert sorted(name for name in files if name.endswith("vtt")) == [
        "film-1-chapters.vtt", "film-1.vtt", "film-2-chapters.vtt", "film-2.vtt",
    ]  # fmt: skip
    assert [cue.text for cue in read_vtt(files["film-2.vtt"])] == ["later"]


def test_nothing_said_makes_no_file() -> None:
    assert film_captions(JobRecord(currency="GBP"), Heard((FILM,), ())) == {}


@settings(max_examples=100, deadline=None)
@given(heard=HEARD)
def test_any_talk_reads_back_cue_for_cue(heard: Heard) -> None:
    """Nothing that was said can make, break or hide a cue."""
    alone = Heard((FILM,), heard.utterances, heard.unheard)
    files = film_captions(JobRecord(currency="GBP"), alone)
    wanted = captions_of(FILM, alone)
    assert bool(files) == bool(wanted)
    if wanted:
        assert files["film.vtt"].decode().count("-->") == files["film.srt"].decode().count("-->") == len(wanted)
        assert len(read_vtt(files["film.vtt"])) == len(wanted)
        assert len(pysubs2.SSAFile.from_string(files["film.srt"].decode(), "srt")) == len(wanted)
