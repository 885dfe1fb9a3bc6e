"""What can go wrong with a file, in sentences: what happened, to which file, what to do."""

from __future__ import annotations


class CaptureError(Exception):
    """Nothing of this file could be taken in. Its text is meant for the person at the bench."""


class MediaError(CaptureError):
    """A sound or video file that gives no sound."""


class CaptionError(CaptureError):
    """A caption file that gives no captions."""
