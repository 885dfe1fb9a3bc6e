"""What can go wrong with the recogniser and its weights, in sentences: what happened, to which file, what to do."""

from __future__ import annotations


class SpeechError(Exception):
    """Sound could not be listened to. Its text is meant for the person at the bench."""


class WeightsError(SpeechError):
    """Weights that are missing, damaged or not to be had."""
