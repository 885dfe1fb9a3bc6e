"""The job sheet: what stands on it, as tables, as HTML read by html5 rules, as PDF read by pypdf."""

from __future__ import annotations

import io
from dataclasses import replace
from decimal import Decimal
from html.parser import HTMLParser

from exports.records import HEARD, ITEMS, records
from exports.sheets import ABOUT, HOSTILE, RECORD, billed, hostile, pounds, whole
from exports.sheets import ITEMS as LEFT
from hypothesis import given, settings
from pypdf import PdfReader

from benchnotes.exports.plain_words import one_line
from benchnotes.exports.sheet import Sheet, Table
from benchnotes.exports.sheet_html import sheet_html
from benchnotes.exports.sheet_pdf import NoLetterError, sheet_pdf
from benchnotes.exports.sheet_tables import About, job_sheet
from benchnotes.record.entries import Item, JobRecord, Part
from benchnotes.record.job import Heard


def table(sheet: Sheet, heading: str) -> Table:
    return next(each for each in sheet.tables if each.heading.startswith(heading))


def cells(sheet: Sheet) -> list[str]:
    facts = [text for label, text in sheet.facts] + [each.heading for each in sheet.tables]
    return [sheet.title, *facts, *sheet.notes, *(cell for each in sheet.tables for row in each.rows for cell in row)]


class Seen(HTMLParser):
    """Tags and text of a page as a browser's parser meets them."""

    def __init__(self, page: bytes) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.text = ""
        self.feed(page.decode("utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        assert not [name for name, _ in attrs if name.startswith("on") or name in ("src", "href", "style")]

    def handle_data(self, data: str) -> None:
        self.text += data


def pdf_text(content: bytes) -> str:
    """Without spaces and line ends, which the setting of lines moves."""
    return squeezed("".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages))


def squeezed(text: str) -> str:
    return "".join(text.replace("\u00ad", "").replace("-\n", "").split())


def test_what_the_owner_reads() -> None:
    sheet = whole()
    assert ("Machine", "Corvane No. 6 butter churn, serial 4471") in sheet.facts
    assert ("On the bench", "2026-03-02") in sheet.facts
    assert table(sheet, "What was found").rows[1] == (
        "left paddle bearing (check by ear)", "seized", "put right, not tried yet",
    )  # fmt: skip
    assert table(sheet, "Work").rows[2] == ("paint: stand", "here", "to be done")
    assert table(sheet, "Measured").rows == (
        ("end play", "0.8 mm", "about 0.1 mm", ""), ("shaft", "", "", "12 mm (check by ear)"),
    )  # fmt: skip
    assert table(sheet, "What is left").rows[0] == ("stave", "Left as it is, on purpose.")
    assert "local codes and licensed practice decide" in sheet.notes[-1]
    assert sheet.notes[1] == "In one place of the recordings (2 s in all) speech could not be made out."


def test_a_settled_bill_is_added_up() -> None:
    """9.00 + 2.5 h at 38 + 35 - 5 = 134.00; 20 % on it 26.80."""
    money = table(whole(), "Parts and prices in GBP")
    assert money.rows[1] == ("Labour", "20 %", "2.5 h at 38.00", "95.00")
    assert money.rows[-3:] == (
        ("Without tax", "", "", "134.00"), ("20 % tax on 134.00", "", "", "26.80"), ("To pay", "", "", "160.80"),
    )  # fmt: skip


def test_what_is_open_is_never_added_up() -> None:
    belt = Part(name="belt", unit_price=pounds("6"), basis="about", qty=Decimal(2), state="ordered")
    record = replace(RECORD, parts=(belt, *RECORD.parts))
    money = table(job_sheet(record, LEFT, ABOUT, billed(record)), "Parts and prices in GBP, as far as")
    assert money.sums == 0
    assert money.rows[0] == ("belt", "on order", "2", "about 6.00", "about 12.00")
    assert money.rows[3] == ("Labour", "", "2.5 h", "", "open")


def test_html_and_pdf_say_all_of_it() -> None:
    sheet = whole()
    page, paper = Seen(sheet_html(sheet)), pdf_text(sheet_pdf(sheet))
    for said in cells(sheet):
        assert said in page.text
        assert squeezed(said) in paper, said


def test_text_of_others_stays_text() -> None:
    sheet = hostile()
    assert any(one_line(HOSTILE) in cell for cell in cells(sheet))
    page = Seen(sheet_html(sheet))
    assert set(page.tags) <= set(Seen(sheet_html(whole())).tags)
    assert "script" not in page.tags
    assert page.text.count("<script>alert(1)</script>") >= 5
    paper = pdf_text(sheet_pdf(sheet))
    assert squeezed("#panic() *bold* </td>") in paper
    assert squeezed("<lab> // /* [#]") in paper


def test_the_paper_can_be_read_aloud_and_is_the_same_each_time() -> None:
    content = sheet_pdf(whole())
    assert content == sheet_pdf(whole())
    paper = PdfReader(io.BytesIO(content))
    assert len(paper.pages) == 1
    assert paper.metadata is not None
    assert paper.metadata.title == "Job 7: Corvane churn"
    root = paper.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert "/StructTreeRoot" in root
    fonts = [font.get_object() for page in paper.pages for font in page["/Resources"]["/Font"].values()]
    assert all("/FontFile" in str(f["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()) for f in fonts)


@settings(max_examples=25, deadline=None)
@given(record=records(), items=ITEMS, heard=HEARD)
def test_any_job_has_a_sheet(record: JobRecord, items: tuple[Item, ...], heard: Heard) -> None:
    about = About(job=1, name="any", recordings=heard.recordings, unheard=heard.unheard)
    sheet = job_sheet(record, items, about, billed(record))
    assert all(cell.isprintable() for cell in cells(sheet))
    assert all(len(row) == len(each.columns) for each in sheet.tables for row in each.rows)
    page = Seen(sheet_html(sheet))
    assert all(said in page.text for said in cells(sheet))
    try:
        assert sheet_pdf(sheet).startswith(b"%PDF-")
    except NoLetterError as error:
        assert "no font here has the letters" in str(error)


def test_a_letter_that_no_font_has_is_said() -> None:
    """U+0898 came with Unicode 14, and no font that comes with typst has it; on paper it would be an empty box."""
    sheet = job_sheet(JobRecord(currency="GBP"), (), About(job=1, name="\u0898"), billed(RECORD))
    try:
        content = sheet_pdf(sheet)
    except NoLetterError as error:
        assert "\\u{898}" in str(error)
    else:  # a font of this machine has it
        assert content.startswith(b"%PDF-")


def test_names_of_many_languages_are_set() -> None:
    names = "Zoë Müller, Łukasz Żak, Ελένη, Ирина, Đặng"
    sheet = job_sheet(JobRecord(currency="GBP"), (), About(job=1, name=names), billed(RECORD))
    assert squeezed(names) in pdf_text(sheet_pdf(sheet))
