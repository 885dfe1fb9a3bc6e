#!/usr/bin/env python3
"""Makes the recordings of demo_audio/ again: speaks the narrations there, and writes the times as spoken into them.

    python3 -m venv /tmp/voices && /tmp/voices/bin/pip install -r tests/demo/requirements.txt
    /tmp/voices/bin/python tests/demo/make_demo.py demo_audio

The words, the statements and the known record in the narrations are written by hand and stay as they are; only
`start` and `end` (seconds on the job's time line) and each recording's `starts_at` and `duration` are set. The voices
have an environment of their own: the program never needs them.
"""

from __future__ import annotations

import argparse
import json
import zlib
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import numpy as np
from pictures import SIZE, moving, picture
from voices import RATE, Sound, Voice, in_a_workshop, voice

BREATH_S = 0.45
"""Between two utterances; twice that where the talk turns to something else."""
NOISE_BELOW_DB = 22.0
FRAMES_A_SECOND = 8
X264 = {"crf": "30", "preset": "slow"}
SWING_S = 0.5
"""How long the camera moves when the picture changes."""

Json = dict[str, Any]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    folder = parser.parse_args().folder
    for path in sorted(folder.glob("*.json")):
        narration = json.loads(path.read_text(encoding="utf-8"))
        make(narration, folder)
        path.write_text(page(narration), encoding="utf-8")


def make(narration: Json, folder: Path) -> None:
    """Speaks every recording of one job; the second begins on the time line where the first ends."""
    starts_at = 0.0
    for number, recording in enumerate(narration["recordings"], start=1):
        utterances = [u for u in narration["utterances"] if u["recording"] == number]
        sound = speak(utterances, voice(recording["voice"]), starts_at)
        sound = in_a_workshop(sound, seed=zlib.crc32(recording["file"].encode()), below_db=NOISE_BELOW_DB)
        write(folder / recording["file"], sound, recording, narration["utterances"], starts_at)
        recording["starts_at"], recording["duration"] = round(starts_at, 3), round(len(sound) / RATE, 3)
        starts_at += recording["duration"]
        print(f"{recording['file']}: {recording['duration']:.0f} s")


def speak(utterances: list[Json], say: Voice, starts_at: float) -> Sound:
    """One after the other, with a breath between; sets `start` and `end` of each."""
    pieces = [np.zeros(RATE, np.float32)]
    for place, utterance in enumerate(utterances):
        pause = BREATH_S * (2 if place % 5 == 4 else 1)
        pieces.append(np.zeros(int(pause * RATE), np.float32))
        now = starts_at + sum(map(len, pieces)) / RATE
        pieces.append(say(utterance["text"]))
        utterance["start"], utterance["end"] = round(now, 3), round(now + len(pieces[-1]) / RATE, 3)
    pieces.append(np.zeros(RATE, np.float32))
    speech = np.concatenate(pieces)
    return (speech * 0.5 / float(np.abs(speech).max())).astype(np.float32)


def write(path: Path, sound: Sound, recording: Json, utterances: list[Json], starts_at: float) -> None:
    """Opus in Ogg, or with pictures H.264 and AAC in MP4; the container says when it was made."""
    with av.open(str(path), "w") as out:
        out.metadata["creation_time"] = recording["started_at"]
        pictured = recording.get("scenes")
        film = (
            out.add_stream("libx264", rate=FRAMES_A_SECOND, options={"crf": "30", "preset": "slow"})
            if pictured
            else None
        )
        track = out.add_stream("aac" if pictured else "libopus", rate=RATE)
        track.bit_rate = 40_000 if pictured else 28_000
        track.layout = "mono"
        if film is not None:
            film.width, film.height, film.pix_fmt = *SIZE, "yuv420p"
            cuts = [(utterances[s["u"]]["start"] - starts_at if s["u"] else 0.0, s["picture"]) for s in pictured]
            write_film(out, film, cuts, len(sound) / RATE)
        write_sound(out, track, sound)


def write_sound(out: Any, track: Any, sound: Sound) -> None:
    samples = (sound * 32767).astype(np.int16)[np.newaxis, :]
    for start in range(0, samples.shape[1], RATE):
        frame = av.AudioFrame.from_ndarray(samples[:, start : start + RATE], format="s16", layout="mono")
        frame.sample_rate, frame.pts, frame.time_base = RATE, start, Fraction(1, RATE)
        out.mux(track.encode(frame))
    out.mux(track.encode(None))


def write_film(out: Any, film: Any, cuts: list[tuple[float, str]], length_s: float) -> None:
    """Still pictures, each in view from its cut on; the camera swings for half a second at every cut."""
    drawn = {name: picture(name) for _, name in cuts}
    for number in range(int(length_s * FRAMES_A_SECOND)):
        at = number / FRAMES_A_SECOND
        since, name = max(cut for cut in cuts if cut[0] <= at)
        image = drawn[name]
        if since and at - since < SWING_S:
            image = moving(image, int(90 * (1 - (at - since) / SWING_S)))
        frame = av.VideoFrame.from_image(image)
        frame.pts, frame.time_base = number, Fraction(1, FRAMES_A_SECOND)
        out.mux(film.encode(frame))
    out.mux(film.encode(None))


def page(narration: Json) -> str:
    """The narration as JSON, one utterance, statement or entry a line, so that it reads like a page."""
    shown = [f' "{key}": {_block(value, 1)}' for key, value in narration.items()]
    return "{\n" + ",\n".join(shown) + "\n}\n"


def _block(value: Any, depth: int) -> str:
    pad = "  " * depth
    if isinstance(value, list) and value and isinstance(value[0], dict):
        rows = [pad + json.dumps(row, ensure_ascii=False) for row in value]
        return "[\n" + ",\n".join(rows) + f"\n{pad[:-1]}]"
    if isinstance(value, dict) and any(isinstance(row, list) for row in value.values()):
        rows = [f'{pad}"{key}": {_block(row, depth + 1)}' for key, row in value.items()]
        return "{\n" + ",\n".join(rows) + f"\n{pad[:-1]}}}"
    return json.dumps(value, ensure_ascii=False)


if __name__ == "__main__":
    main()
