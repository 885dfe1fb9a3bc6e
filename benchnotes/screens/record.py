"""The record of one job: in front what asks for a person, then the record as the workshop would write it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, ClassVar, cast

from textual.binding import Binding, BindingType

from benchnotes.exports.entry_lines import SECTIONS, entry_line
from benchnotes.exports.wording import clock
from benchnotes.record.edit_fields import ListName
from benchnotes.record.edits import StrikeEntry, address_of
from benchnotes.record.entries import Entry
from benchnotes.record.heard import Evidence, Unheard
from benchnotes.screens.desk import Desk
from benchnotes.screens.fields import FIELDS, first_field, typed_value
from benchnotes.screens.one_job import OneJob, Pointed, moment
from benchnotes.screens.page import Page
from benchnotes.screens.row import Row
from benchnotes.screens.typed import Typed
from benchnotes.session.attention import Question, accepted, entry_accepted, questions
from benchnotes.session.edit_json import HandEdit
from benchnotes.session.open_job import OpenJob
from benchnotes.session.putting_right import CannotBeError, put_right


class Record(OneJob):
    """What was said, entry by entry, each to be heard, accepted, put right or struck."""

    KEYS = "space hear  a accept  c correct  x strike  n next  u undo  g going back  ? keys"
    ALL_KEYS = (
        "space hear it    ← → another moment of it    ↑ ↓ rows\n"
        "a accept         c correct    x strike out\n"
        "n next that asks for you      b the one before\n"
        "u undo, as often as you like  r redo\n"
        "g what is left before it goes back            esc jobs\n"
        "f2 light or dark              ctrl+q leave"
    )
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("a", "accept", show=False),
        Binding("c", "correct", show=False),
        Binding("x", "strike", show=False),
        Binding("n", "question(1)", show=False),
        Binding("b", "question(-1)", show=False),
        Binding("g", "app.turn('going_back')", show=False),
    ]

    def __init__(self, desk: Desk, said: Evidence | None = None) -> None:
        """`said`: a moment to begin at."""
        super().__init__(desk)
        self._begin = said

    def rows(self, lying: OpenJob) -> Sequence[Row]:
        asked = questions(lying.now)
        return [*_questions(asked, lying), *_record(asked, lying), *_not_whole(lying)]

    def show_job(self, key: object | None = None) -> None:
        lying, said = self.desk.lying, self._begin
        if lying is not None and said is not None:
            self._begin = None
            key = _nearest(self.rows(lying), said)
        super().show_job(key)

    def action_question(self, by: int) -> None:
        """The next row that asks for a person, going round."""
        lying = self.desk.lying
        asked = [row.key for row in self.rows(lying) if _asks(row)] if lying else []
        if not asked:
            self.tell("Nothing here asks for you any more.")
            return
        here = self.pointed
        at = asked.index(here) + by if here in asked else 0
        self.query_one(Page).point_at(asked[at % len(asked)])

    def action_accept(self) -> None:
        """It is right as it stands."""
        pointed = self.pointed
        if pointed is None:
            return
        if pointed.part == "question":
            self._do(accepted(pointed.about), "Accepted")
        else:
            self._do(entry_accepted(_list(pointed), pointed.about), "Accepted")

    def action_strike(self) -> None:
        """It is wrong altogether."""
        found = self._entry()
        if found is None:
            self.tell("There is no entry to strike: accept it once you have listened.")
            return
        self._do(StrikeEntry(address=address_of(*found)), "Struck")

    async def action_correct(self) -> None:
        """Types over its fields."""
        found = self._entry()
        if found is None:
            self.tell("There is no entry to correct: accept it once you have listened.")
            return
        where, entry = found
        fields = [(field, typed_value(entry, field)) for field in FIELDS[where]]
        self.tell("Enter keeps it, Esc leaves it as it was; ↑ ↓ fields, ← → words to pick from.")
        await self.query_one(Typed).ask(fields, first_field(where, entry))

    def on_typed_kept(self, message: Typed.Kept) -> None:
        self.query_one(Page).focus()
        found = self._entry()
        if found is None:
            return
        where, entry = found
        if not message.changed:
            self._do(entry_accepted(where, entry), "Accepted")
            return
        try:
            edit = put_right(where, entry, message.changed, self._currency)
        except CannotBeError as error:
            self.tell(f"! {error}")
            return
        self._do(edit, "Put right")

    def on_typed_left(self) -> None:
        super().on_typed_left()
        self.tell("")

    def _do(self, edit: HandEdit, what: str) -> None:
        """Keeps it; of a question that is answered, the next one is pointed at."""
        pointed, before = self.pointed, self.desk.lying
        assert pointed is not None and before is not None
        if not self.trying(lambda: self.desk.do(edit)):
            return
        after = self.desk.lying
        assert after is not None
        self.show_job(None if pointed.part == "question" else _same_place(pointed, before, after))
        left = len(questions(after.now))
        self.tell(f"{what}: {_short(pointed.about)}. {f'{left} more for you' if left else 'Nothing more for you'}.")

    @property
    def _currency(self) -> str:
        assert self.desk.lying is not None
        return self.desk.lying.now.record.currency

    def _entry(self) -> tuple[ListName, Entry] | None:
        """The entry of the record that the page points at."""
        pointed = self.pointed
        if pointed is None:
            return None
        if pointed.part == "question":
            asked = pointed.about
            return None if asked.where is None else (asked.where, asked.about)
        return _list(pointed), pointed.about


def _questions(asked: Sequence[Question], lying: OpenJob) -> Iterator[Row]:
    yield Row(f"For you: {len(asked)}" if asked else "Nothing asks for you", kind="heading")
    for question in asked:
        yield Row(
            _what(question.about),
            key=Pointed("question", question, evidence=question.evidence),
            margin=moment(question.evidence, lying),
            mark="?",
            below=question.why,
        )


def _record(asked: Sequence[Question], lying: OpenJob) -> Iterator[Row]:
    open_ones = {id(question.about) for question in asked}
    for title, where, entries in _lists(lying):
        yield Row("")
        yield Row(title, kind="heading")
        known: Sequence[Any] = _as_read(lying, where)
        for entry in entries:
            mark = "?" if id(entry) in open_ones else "" if entry in known else "✓"
            yield Row(
                entry_line(entry),
                key=Pointed("entry", entry, where, entry.evidence),
                margin=moment(entry.evidence, lying),
                mark=mark,
            )


def _lists(lying: OpenJob) -> Iterator[tuple[str, ListName, Sequence[Entry]]]:
    yield "Machine", "machine", (lying.now.record.machine,)
    for title, where in SECTIONS:
        entries = getattr(lying.now.record, where)
        if entries:
            yield title, where, entries


def _as_read(lying: OpenJob, where: ListName) -> Sequence[Entry]:
    return (lying.as_read.machine,) if where == "machine" else getattr(lying.as_read, where)


def _not_whole(lying: OpenJob) -> Iterator[Row]:
    if lying.facts.warned:
        yield Row("")
        yield Row("Not whole", kind="heading")
    for warning in lying.facts.warned:
        yield Row(f"visit {warning.recording}: {warning.text}", kind="quiet")


def _what(about: Entry | Unheard) -> str:
    if isinstance(about, Unheard):
        return f"speech without words, {clock(about.start_s)} to {clock(about.end_s)}"
    return entry_line(about)


def _short(about: Entry | Unheard | Question) -> str:
    line = _what(about.about if isinstance(about, Question) else about)
    return line if len(line) <= 40 else f"{line[:39]}…"


def _list(pointed: Pointed) -> ListName:
    return cast(ListName, pointed.where)


def _asks(row: Row) -> bool:
    return isinstance(row.key, Pointed) and row.key.part == "question"


def _same_place(pointed: Pointed, before: OpenJob, after: OpenJob) -> Pointed | None:
    """The entry that now stands where the one pointed at stood."""
    if pointed.where == "machine":
        return Pointed("entry", after.now.record.machine, "machine", after.now.record.machine.evidence)
    at = getattr(before.now.record, pointed.where).index(pointed.about)
    entries = getattr(after.now.record, pointed.where)
    entry = entries[min(at, len(entries) - 1)] if entries else None
    return None if entry is None else Pointed("entry", entry, pointed.where, entry.evidence)


def _nearest(rows: Sequence[Row], said: Evidence) -> Pointed | None:
    """The entry said nearest to a moment."""
    away = [
        (abs(evidence.start_s - said.start_s), at, row.key)
        for at, row in enumerate(rows)
        if isinstance(row.key, Pointed) and row.key.part == "entry"
        for evidence in row.key.evidence
        if evidence.recording == said.recording
    ]
    return min(away, key=lambda one: one[:2])[2] if away else None
