"""A disk of a few hundred kilobytes, to be filled. Mounting one needs Linux and root, as CI has them."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest


@contextmanager
def mounted(folder: Path, size: str) -> Iterator[Path]:
    """`folder` as a file system of its own, of `size` ("64k"); whoever may not mount skips the test."""
    if sys.platform != "linux" or os.geteuid() != 0:
        pytest.skip("a small disk can be mounted by root on Linux only")
    folder.mkdir()
    subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size}", "tmpfs", folder], check=True)
    try:
        yield folder
    finally:
        subprocess.run(["umount", folder], check=True)
