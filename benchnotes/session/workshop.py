"""The one folder that holds everything a workshop keeps: BENCHNOTES_HOME, or the platform's usual place."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import platformdirs

from benchnotes.session.errors import NotSavedError


@dataclass(frozen=True, slots=True)
class Workshop:
    """Where things lie; makes nothing until `make` is called."""

    folder: Path

    @property
    def notebook(self) -> Path:
        return self.folder / "notebook.sqlite"

    @property
    def settings(self) -> Path:
        return self.folder / "settings.toml"

    @property
    def crashes(self) -> Path:
        return self.folder / "crashes"

    @property
    def trades(self) -> Path:
        """The user's own words, over those that come with the program."""
        return self.folder / "trades"

    def make(self) -> None:
        """Makes the folder, for its owner alone (0700)."""
        try:
            self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        except OSError as error:
            raise NotSavedError(
                f"The folder {self.folder} cannot be made ({error.strerror}). Nothing was kept. "
                "Set BENCHNOTES_HOME to a folder of yours."
            ) from error


def find_workshop(environment: Mapping[str, str] = os.environ) -> Workshop:
    """The workshop of this user."""
    named = environment.get("BENCHNOTES_HOME", "").strip()
    if named:
        return Workshop(Path(named).expanduser().absolute())
    return Workshop(Path(platformdirs.user_data_dir("benchnotes", appauthor=False)))
