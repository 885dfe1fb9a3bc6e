"""Small sound and video files written through PyAV, so that no test needs a recording to be lying about."""

from __future__ import annotations

from pathlib import Path

import av
import numpy as np
from numpy.typing import NDArray

RATE = 16_000


def tone(seconds: float, hertz: float = 440.0) -> NDArray[np.float32]:
    t = np.arange(round(seconds * RATE)) / RATE
    return (0.3 * np.sin(2 * np.pi * hertz * t)).astype(np.float32)


def write(
    path: Path,
    samples: NDArray[np.float32],
    *,
    codec: str = "pcm_s16le",
    pictures: int = 0,
    tags: dict[str, str] | None = None,
    options: dict[str, str] | None = None,
) -> Path:
    """A sound file, or a video of `pictures` grey frames at 10 a second with that sound."""
    with av.open(str(path), "w", options=options or {}) as out:
        out.metadata.update(tags or {})
        film = out.add_stream("mpeg4", rate=10) if pictures else None
        if film is not None:
            film.width, film.height, film.pix_fmt = 64, 48, "yuv420p"
        track = out.add_stream(codec, rate=RATE, layout="mono") if len(samples) or not pictures else None
        for i in range(pictures):
            frame = av.VideoFrame.from_ndarray(np.full((48, 64, 3), 40 + i % 100, np.uint8), format="rgb24")
            out.mux(film.encode(frame))
        if film is not None:
            out.mux(film.encode(None))
        if track is not None:
            _sound(out, track, samples)
    return path


def _sound(out: av.container.OutputContainer, track: av.AudioStream, samples: NDArray[np.float32]) -> None:
    fitting = av.AudioResampler(format=track.format.name, layout="mono", rate=RATE)
    at = 0
    for i in range(0, len(samples), 1024):
        piece = (samples[i : i + 1024] * 32767).astype(np.int16)
        frame = av.AudioFrame.from_ndarray(piece.reshape(1, -1), format="s16", layout="mono")
        frame.sample_rate, frame.pts = RATE, at
        at += len(piece)
        for fitted in fitting.resample(frame):
            out.mux(track.encode(fitted))
    out.mux(track.encode(None))
