"""Opens what reading needs, once: the English pipeline with our components, the words of the trades, and a marker."""

from __future__ import annotations

from benchnotes.language.marking.listed import ListedMarker
from benchnotes.language.marking.marker import Marker
from benchnotes.language.pipeline import build
from benchnotes.language.reader import ReadingTools
from benchnotes.session.errors import SessionError
from benchnotes.session.learned_reader import open_learned_marker
from benchnotes.session.workshop import Workshop
from benchnotes.trades.english import EnglishMissingError, open_english
from benchnotes.trades.shelf import load


class ReaderMissingError(SessionError):
    """Nothing that was said can be read."""


def open_reading_tools(workshop: Workshop, trades: tuple[str, ...]) -> ReadingTools:
    """The learned marker where its weights are here, else the listed one.

    Raises ReaderMissingError, VocabularyError (a file of words that is wrong, a trade that is not there),
    WeightsError (a file of the learned reader that is not the pinned one).
    """
    vocabulary = load(workshop.trades, trades)
    try:
        nlp = build(open_english(), vocabulary)
    except EnglishMissingError as error:
        raise ReaderMissingError(str(error)) from error
    marker: Marker = open_learned_marker() or ListedMarker(nlp, vocabulary)
    return ReadingTools(nlp=nlp, vocabulary=vocabulary, marker=marker)


def said_of(tools: ReadingTools) -> str:
    """Which reader it is, in words."""
    listed = isinstance(tools.marker, ListedMarker)
    return "reads by lists of words; the learned reader is not here" if listed else "the learned reader"
