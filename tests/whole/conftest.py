"""The demo jobs, read from sound once for all tests of this folder."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from whole.shop import STEAMER, VIEWER, Json, Shop


@pytest.fixture(scope="session")
def shop(tmp_path_factory: pytest.TempPathFactory, demo_audio: Path) -> Shop:
    """A shop in which both visits of the steamer have been read."""
    opened = Shop(tmp_path_factory.mktemp("shop"))
    read = opened.run("read", *(demo_audio / name for name in STEAMER), "--job", "hat steamer", "--currency", "GBP")
    assert read.returncode == 0, read.stderr
    return opened


@pytest.fixture(scope="session")
def steamer(shop: Shop, tmp_path_factory: pytest.TempPathFactory) -> Json:
    return shop.record("hat steamer", tmp_path_factory.mktemp("steamer"))


@pytest.fixture(scope="session")
def viewer(shop: Shop, demo_audio: Path) -> Json:
    """The film, read to standard output and not kept."""
    read = shop.run("read", demo_audio / VIEWER, "--json", "--currency", "USD")
    assert read.returncode == 0, read.stderr
    loaded: Json = json.loads(read.stdout)
    return loaded
