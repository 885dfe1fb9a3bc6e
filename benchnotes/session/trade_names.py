"""The trades whose words can be listened for."""

from __future__ import annotations

from benchnotes.session.workshop import Workshop
from benchnotes.trades.shelf import trades_on_the_shelf


def trade_names(workshop: Workshop) -> tuple[str, ...]:
    """Those that come with the program and the workshop's own."""
    return trades_on_the_shelf(workshop.trades)
