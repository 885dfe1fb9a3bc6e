"""Writes what leaves the program: beside its place first, then renamed; over another file only after a yes."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from benchnotes.session.errors import FileThereError, NotSavedError


def save_all(files: Mapping[Path, bytes], *, overwrite: bool) -> None:
    """Writes every file, or none where one is there already. Raises FileThereError, NotSavedError."""
    there = [path for path in files if path.exists()]
    if there and not overwrite:
        names = ", ".join(str(path) for path in there)
        verb = "is" if len(there) == 1 else "are"
        raise FileThereError(
            f"{names} {verb} there already. Nothing was written. Name another folder, or add --overwrite."
        )
    for path, content in files.items():
        save(path, content)


def be_writable(folder: Path) -> None:
    """Makes a folder where it is missing and tries whether files can be made in it. Raises NotSavedError."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            pass
    except OSError as error:
        raise NotSavedError(
            f"Nothing can be written into {folder} ({error.strerror}). Nothing was done; name another folder."
        ) from error


def save(path: Path, content: bytes) -> None:
    """Writes one file whole (0644 less the umask), over what was there: a power cut leaves the old or the new one."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        number, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        beside = Path(name)
        try:
            with open(number, "wb") as out:  # noqa: PTH123 - a descriptor, not a path
                out.write(content)
                out.flush()
                os.fsync(out.fileno())
            beside.chmod(0o666 & ~_umask())
            beside.replace(path)
        finally:
            beside.unlink(missing_ok=True)
    except OSError as error:
        raise NotSavedError(
            f"{path} was not written ({error.strerror}). What was there before is unchanged. "
            "Name another folder or make room, then try again."
        ) from error


def _umask() -> int:
    mask = os.umask(0o077)
    os.umask(mask)
    return mask
