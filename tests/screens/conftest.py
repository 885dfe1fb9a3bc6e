"""A shop of its own for every test of the screens."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from screens.shop import Shop, make_shop


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    made = make_shop(tmp_path / "shop")
    yield made
    made.notebook.close()
