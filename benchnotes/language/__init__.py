"""Utterances become statements. Opens no file, knows no clock: models are opened at the edge and handed in."""
