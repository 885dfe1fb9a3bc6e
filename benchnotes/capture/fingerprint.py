"""The SHA-256 of a file: how a recording is known again, whatever it is called and wherever it lies."""

from __future__ import annotations

import hashlib
from pathlib import Path

CHUNK_BYTES = 1 << 20


def sha256(path: Path) -> str:
    """Hexadecimal SHA-256 of the file's bytes, read in pieces so that a long film needs no memory."""
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while piece := file.read(CHUNK_BYTES):
            digest.update(piece)
    return digest.hexdigest()
