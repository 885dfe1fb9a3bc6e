"""What all tests share: the project's folders, a workshop that is nobody's, and in CI no test that is skipped."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from benchnotes.speech.weight_pins import cache_folder

ROOT = Path(__file__).resolve().parents[1]
WEIGHTS = cache_folder({})
"""Where `make weights` put the models: in the user's cache, which serves every workshop."""


@pytest.fixture(scope="session")
def root() -> Path:
    """The top folder of the project."""
    return ROOT


@pytest.fixture(scope="session")
def demo_audio() -> Path:
    """The demo recordings, and beside them what is known to be said there."""
    return ROOT / "demo_audio"


@pytest.fixture(scope="session")
def weights() -> Path:
    """The folder with the models, each in a folder of its name. No test may damage them: copy what is to be spoiled."""
    return WEIGHTS


@pytest.fixture(autouse=True)
def nobodys_workshop(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Every test keeps its jobs in an empty folder of its own: none ever opens the notebook of whoever runs it."""
    home = tmp_path_factory.mktemp("workshop")
    monkeypatch.setenv("BENCHNOTES_HOME", str(home))
    return home


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """In CI a skipped test is a failure: `.ci/run` installs all that the tests need."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if os.environ.get("CI") == "true" and reporter is not None and reporter.stats.get("skipped") and not exitstatus:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
