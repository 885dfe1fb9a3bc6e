"""What can go wrong in a sitting, in sentences; and which errors of the rooms below are sentences already."""

from __future__ import annotations


class SessionError(Exception):
    """Something the user can put right; the text says what and how."""


class SettingsError(SessionError):
    """A settings file that cannot be followed."""


class NoSuchJobError(SessionError):
    """A job that the workshop does not have."""


class JobNameError(SessionError):
    """A name that no job can have."""


class NothingHeardError(SessionError):
    """A file in which nothing can be heard or read."""


class FileThereError(SessionError):
    """A file that would have been written over."""


class NotSavedError(SessionError):
    """A file that could not be written."""
