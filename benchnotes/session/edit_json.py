"""Hand edits as the notebook keeps them: JSON that names a recording by its sha256, since its number on the time line
changes when an older recording comes in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from typing import Any, Final

from benchnotes.record.edits import AddEntry, Address, CloseItem, CorrectEntry, Edit, StrikeEntry


@dataclass(frozen=True, slots=True)
class Listened:
    """A stretch of speech without words that a person has listened to."""

    recording: int | None
    start_s: float


@dataclass(frozen=True, slots=True)
class Seen:
    """A notice that a person has looked at and found in order."""

    kind: str
    about: str


HandEdit = Edit | Listened | Seen

_NAMES: Final[Mapping[str, type[Any]]] = {
    "add": AddEntry,
    "correct": CorrectEntry,
    "strike": StrikeEntry,
    "close": CloseItem,
    "listened": Listened,
    "seen": Seen,
}
_OF_TYPE: Final = {kind: name for name, kind in _NAMES.items()}


def packed(edit: HandEdit, sha256: Mapping[int, str]) -> dict[str, Any]:
    """The edit as JSON. `sha256`: of each recording by its number."""
    row: dict[str, Any] = {"do": _OF_TYPE[type(edit)], **asdict(edit)}
    place = row.get("address", row)
    if "recording" in place:
        place["recording"] = sha256.get(place["recording"])
    return row


def unpacked(row: Mapping[str, Any], number: Mapping[str, int]) -> HandEdit | None:
    """The edit that `packed` made; None for one that this version does not know, which stays in the notebook.

    `number`: of each recording by its sha256.
    """
    fields = {name: value for name, value in row.items() if name != "do"}
    try:
        edit = _NAMES[row["do"]](**fields)
        if isinstance(edit, (CorrectEntry, StrikeEntry)):
            address = Address(**fields["address"])
            return replace(edit, address=replace(address, recording=number.get(fields["address"]["recording"])))
        if isinstance(edit, Listened):
            return replace(edit, recording=number.get(fields["recording"]))
    except (KeyError, TypeError):
        return None
    assert isinstance(edit, (AddEntry, CloseItem, Seen))
    return edit
