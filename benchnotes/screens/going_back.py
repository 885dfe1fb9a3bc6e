"""Everything still to do before the machine goes back, grouped by what blocks; each with its reason and its end."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar, Final

from textual.binding import Binding, BindingType

from benchnotes.exports.wording import item_title
from benchnotes.record.edits import CloseItem
from benchnotes.record.entries import Item
from benchnotes.record.terms import ItemKind
from benchnotes.screens.fields import Field
from benchnotes.screens.one_job import OneJob, Pointed, moment
from benchnotes.screens.page import Page
from benchnotes.screens.row import Row
from benchnotes.screens.typed import Typed
from benchnotes.session.open_job import OpenJob

GROUPS: Final[tuple[tuple[str, tuple[ItemKind, ...]], ...]] = (
    ("Tests come first", ("safety_check", "test_failed")),
    ("Not right yet", ("fault_open",)),
    ("Put right, not tried since", ("not_retested",)),
    ("Parts to fit", ("part_to_fit",)),
    ("Work to do", ("work_to_do", "left_apart")),
    ("Questions", ("unsure",)),
    ("Money", ("price_missing", "price_differs")),
)
"""What blocks, the hardest first; and which items it holds."""


class GoingBack(OneJob):
    """What keeps the machine here."""

    KEYS = "space hear  c close with a reason  u undo  r redo  g record  esc jobs  ? keys"
    ALL_KEYS = (
        "space hear it    ← → another moment of it    ↑ ↓ rows\n"
        "c close it by hand, with a reason that stays on the job\n"
        "u undo, as often as you like  r redo\n"
        "g the record                  esc jobs\n"
        "f2 light or dark              ctrl+q leave"
    )
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("c", "close_item", show=False),
        Binding("g", "app.turn('record')", show=False),
    ]

    def rows(self, lying: OpenJob) -> Sequence[Row]:
        rows = [*_items(lying), *_closed(lying)]
        return rows or [Row(_nothing(lying), kind="quiet")]

    async def action_close_item(self) -> None:
        """Closes it with a reason."""
        pointed = self.pointed
        if pointed is None or pointed.part != "item":
            self.tell("Point at something that is still to do.")
            return
        self.tell(f"Why is {item_title(pointed.about)} closed? Enter keeps it, Esc leaves it open.")
        await self.query_one(Typed).ask([(Field("reason", "reason"), "")])

    def on_typed_kept(self, message: Typed.Kept) -> None:
        self.query_one(Page).focus()
        pointed, reason = self.pointed, message.changed.get("reason", "").strip()
        if pointed is None or not isinstance(pointed.about, Item):
            return
        if not reason:
            self.tell("It stays open: a reason is needed, so that the next person knows why.")
            return
        item = pointed.about
        if self.trying(lambda: self.desk.do(CloseItem(kind=item.kind, about=item.about, reason=reason))):
            self.show_job()
            self.tell(f"Closed: {item_title(item)}. u opens it again.")

    def on_typed_left(self) -> None:
        super().on_typed_left()
        self.tell("")


def _items(lying: OpenJob) -> Iterator[Row]:
    first = True
    for title, kinds in GROUPS:
        items = [item for item in lying.now.items if item.kind in kinds]
        if items:
            if not first:
                yield Row("")
            first = False
            yield Row(f"{title}: {len(items)}", kind="heading")
        for item in items:
            yield Row(
                item.why,
                key=Pointed("item", item, evidence=item.evidence),
                margin=moment(item.evidence, lying),
                mark="?" if item.check else "",
                below=f"→ {item.close_by}" if item.close_by else "",
            )


def _closed(lying: OpenJob) -> Iterator[Row]:
    if lying.now.closed:
        yield Row("")
        yield Row(f"Closed by hand: {len(lying.now.closed)}", kind="heading")
    for edit in lying.now.closed:
        item = Item(kind=edit.kind, about=edit.about, why="")
        yield Row(item_title(item), key=Pointed("closed", edit), mark="✓", below=edit.reason)


def _nothing(lying: OpenJob) -> str:
    if not lying.facts.heard.utterances:
        return "Nothing was heard in this job yet, so nobody knows what is left."
    return "Nothing keeps it here. As far as was said, everything is done."
