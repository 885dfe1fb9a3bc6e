"""Whether an Ogg stream was closed. Its length comes from its own last page, so a cut one looks whole."""

from __future__ import annotations

from pathlib import Path

MAGIC = b"OggS"
LAST_PAGE = 4
"""Bit of the header type, byte 5 of a page (RFC 3533, section 6)."""
LONGEST_PAGE = 65_307
"""Bytes, by the same section."""


def is_cut_off(path: Path) -> bool:
    """True where the file is Ogg and its last page is not marked as the last."""
    with path.open("rb") as file:
        if file.read(len(MAGIC)) != MAGIC:
            return False
        file.seek(0, 2)
        file.seek(max(0, file.tell() - LONGEST_PAGE))
        tail = file.read()
    at = tail.rfind(MAGIC)
    return at < 0 or at + 5 >= len(tail) or not tail[at + 5] & LAST_PAGE
