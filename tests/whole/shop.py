"""A workshop folder for the tests that go from a file to a record, and the program as a user starts it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Json = dict[str, Any]
STEAMER = ("hat-steamer-1-inspection.opus", "hat-steamer-2-repair.opus")
VIEWER = "boardwalk-viewer.mp4"


@dataclass(frozen=True)
class Shop:
    """A workshop folder, and the program as a user starts it."""

    home: Path

    def run(self, *arguments: str | Path) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-m", "benchnotes", *map(str, arguments)],
            env={**os.environ, "BENCHNOTES_HOME": str(self.home)},
            capture_output=True, text=True, check=False, timeout=600,
        )  # fmt: skip

    def record(self, job: str, to: Path) -> Json:
        exported = self.run("export", job, "--to", to)
        assert exported.returncode == 0, exported.stderr
        loaded: Json = json.loads((to / "record.json").read_text(encoding="utf-8"))
        return loaded
