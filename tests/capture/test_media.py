"""Sound of any file: how long, from when, sample for sample; and a sentence where there is none."""

from __future__ import annotations

import os
import threading
from datetime import UTC, datetime
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import numpy as np
import pytest
import soundfile
from capture.sounds import RATE, tone, write

from benchnotes.capture.errors import MediaError
from benchnotes.capture.fingerprint import sha256
from benchnotes.capture.media import SoundWindow, describe, sound_windows


def whole(windows: list[SoundWindow]) -> np.ndarray:
    return np.concatenate([window.samples for window in windows])


def test_windows_join_to_what_soundfile_reads(tmp_path: Path) -> None:
    path = write(tmp_path / "hum.wav", tone(3.3))
    windows = list(sound_windows(path, window_s=1.0))
    expected, rate = soundfile.read(path, dtype="float32")
    assert rate == RATE
    assert [round(w.start_s, 6) for w in windows] == [0.0, 1.0, 2.0, 3.0]
    assert windows[0].samples.dtype == np.float32
    np.testing.assert_allclose(whole(windows), expected, atol=1e-4)


def test_reading_goes_on_from_a_second_inside(tmp_path: Path) -> None:
    samples = np.linspace(-0.5, 0.5, 10 * RATE, dtype=np.float32)
    path = tmp_path / "ramp.flac"
    soundfile.write(path, samples, RATE)
    (window,) = sound_windows(path, from_s=7.25)
    assert window.start_s == 7.25
    np.testing.assert_allclose(window.samples, samples[round(7.25 * RATE) :], atol=2e-3)
    assert list(sound_windows(path, from_s=11.0)) == []


def test_stereo_and_other_rates_become_mono_16_khz(tmp_path: Path) -> None:
    path = tmp_path / "stereo.wav"
    soundfile.write(path, np.stack([np.full(44_100, 0.2), np.full(44_100, 0.4)], axis=1), 44_100)
    samples = whole(list(sound_windows(path)))
    assert len(samples) == pytest.approx(RATE, abs=20)
    # FFmpeg's downmix of two channels: each at 1/sqrt(2) (libswresample, rematrix.c); ours must not clip it.
    assert float(np.median(samples)) == pytest.approx(0.6 / np.sqrt(2), abs=0.01)


def test_a_video_gives_its_sound_and_its_own_date(tmp_path: Path) -> None:
    path = write(
        tmp_path / "film.mp4",
        tone(2.0),
        codec="aac",
        pictures=20,
        tags={"creation_time": "2026-03-04T05:06:07.000000Z"},
    )
    facts = describe(path)
    assert (facts.kind, facts.started_from) == ("video", "container")
    assert facts.started_at == datetime(2026, 3, 4, 5, 6, 7, tzinfo=UTC)
    assert facts.duration_s == pytest.approx(2.0, abs=0.15)
    assert len(whole(list(sound_windows(path)))) / RATE == pytest.approx(2.0, abs=0.15)


def test_without_a_date_inside_the_file_s_own_is_taken_and_named(tmp_path: Path) -> None:
    path = write(tmp_path / "hum.wav", tone(1.0))
    os.utime(path, (1_700_000_000, 1_700_000_000))
    facts = describe(path)
    assert (facts.kind, facts.started_from) == ("sound", "file")
    assert facts.started_at is not None
    assert facts.started_at.tzinfo is not None
    assert facts.started_at.timestamp() == 1_700_000_000


def test_a_clock_that_was_never_set_is_no_date(tmp_path: Path) -> None:
    path = write(
        tmp_path / "film.mov", tone(1.0), codec="aac", pictures=10, tags={"creation_time": "1970-01-01T00:00:01Z"}
    )
    assert describe(path).started_from == "file"


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("empty.wav", b"", "is empty"),
        ("notes.mp4", b"to do: order two seals and a spindle\n" * 30, "is a text file"),
        ("list.m3u8", b"#EXTM3U\nhttp://127.0.0.1:9/a.ts\n", "playlist"),
        ("noise.mp3", bytes(range(256)) * 2, "not sound or video"),
    ],
)
def test_what_is_no_recording_is_told_by_name(tmp_path: Path, name: str, content: bytes, said: str) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    with pytest.raises(MediaError, match=said) as told:
        describe(path)
    assert name in str(told.value)
    with pytest.raises(MediaError, match=said):
        list(sound_windows(path))


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(MediaError, match=r"gone\.wav cannot be opened"):
        describe(tmp_path / "gone.wav")


def test_a_video_without_sound_is_told(tmp_path: Path) -> None:
    path = write(tmp_path / "silent.mp4", tone(0.0), pictures=10)
    with pytest.raises(MediaError, match="without a sound track"):
        describe(path)


def test_sound_of_no_length_is_told(tmp_path: Path) -> None:
    path = tmp_path / "nothing.wav"
    soundfile.write(path, np.zeros(0, np.float32), RATE)
    with pytest.raises(MediaError, match="no length"):
        list(sound_windows(path))


def test_a_truncated_film_gives_what_is_there_and_says_so(tmp_path: Path) -> None:
    path = write(tmp_path / "film.mp4", tone(20.0), codec="aac", pictures=200, options={"movflags": "faststart"})
    whole_bytes = path.read_bytes()
    cut = tmp_path / "cut.mp4"
    cut.write_bytes(whole_bytes[: len(whole_bytes) // 2])
    windows = list(sound_windows(cut))
    assert 2.0 < len(whole(windows)) / RATE < 19.0
    told = " ".join(windows[-1].warnings)
    assert "cut.mp4 is cut off" in told
    assert list(sound_windows(path))[-1].warnings == ()


def test_a_film_cut_before_its_index_is_told(tmp_path: Path) -> None:
    path = write(tmp_path / "film.mp4", tone(5.0), codec="aac", pictures=50)
    cut = tmp_path / "cut.mp4"
    cut.write_bytes(path.read_bytes()[:2000])
    with pytest.raises(MediaError, match="cut off before"):
        describe(cut)


def test_a_damaged_middle_is_skipped_and_told(tmp_path: Path) -> None:
    path = tmp_path / "scratched.flac"
    rng = np.random.default_rng(1)
    soundfile.write(path, rng.uniform(-0.3, 0.3, 20 * RATE).astype(np.float32), RATE)
    data = bytearray(path.read_bytes())
    middle = len(data) // 2
    data[middle : middle + 4000] = bytes(4000)
    path.write_bytes(data)
    windows = list(sound_windows(path))
    assert len(whole(windows)) / RATE > 15
    assert "hold no sound data" in windows[-1].warnings[0]


def test_a_playlist_opens_no_network_address(tmp_path: Path) -> None:
    """A listener on this machine counts who calls: nobody does."""
    calls: list[str] = []

    class Listener(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            calls.append(self.path)
            self.send_error(404)

        def log_message(self, *args: object) -> None:
            return

    with HTTPServer(("127.0.0.1", 0), Listener) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        playlist = tmp_path / "bench.m3u8"
        address = f"http://127.0.0.1:{server.server_port}/a.ts"
        playlist.write_text(f"#EXTM3U\n#EXT-X-TARGETDURATION:5\n#EXTINF:5,\n{address}\n#EXT-X-ENDLIST\n")
        with pytest.raises(MediaError, match="playlist"):
            list(sound_windows(playlist))
        server.shutdown()
    assert calls == []


def test_the_fingerprint_is_that_of_sha256sum(tmp_path: Path) -> None:
    path = tmp_path / "abc"
    path.write_bytes(b"abc")
    # FIPS 180-2, appendix B.1
    assert sha256(path) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
