"""The errors whose text is a sentence for the user already."""

from __future__ import annotations

from benchnotes.capture.errors import CaptureError
from benchnotes.language.vocabulary_sheets import VocabularyError
from benchnotes.session.errors import SessionError
from benchnotes.speech.errors import SpeechError
from benchnotes.store.errors import StoreError

KNOWN: tuple[type[Exception], ...] = (SessionError, StoreError, CaptureError, SpeechError, VocabularyError)
