"""The job sheet as one HTML file: no script, nothing fetched, prints black on white."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from typing import Final

from benchnotes.exports.sheet import Sheet, Table

STYLE: Final = """
@page { size: A4; margin: 18mm 16mm; }
body { font: 11pt/1.4 Georgia, "Liberation Serif", serif; color: #000; background: #fff; max-width: 48rem;
  margin: 2rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; border-bottom: 3px solid #000; padding-bottom: .3rem; }
h2, caption { font-size: 1.1rem; font-weight: bold; text-align: left; padding: .2rem 0; break-after: avoid; }
dl { display: grid; grid-template-columns: 8rem 1fr; gap: .1rem .8rem; margin: 0; }
dt { font-weight: bold; } dd { margin: 0; }
table { width: 100%; border-collapse: collapse; margin: 1.4rem 0 0; }
th, td { text-align: left; vertical-align: top; padding: .2rem .5rem .2rem 0; border-bottom: 1px solid #000; }
thead { display: table-header-group; } tr { break-inside: avoid; }
thead th { border-bottom-width: 2px; font-size: .85rem; } tbody th { font-weight: normal; }
.number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
.sum > * { font-weight: bold; border-bottom-style: none; }
footer { margin-top: 2rem; border-top: 1px solid #000; font-size: .85rem; }
@media print { body { margin: 0; padding: 0; max-width: none; } }
"""
# what others wrote cannot run or load anything, even where it slipped past the escaping
POLICY: Final = "default-src 'none'; style-src 'unsafe-inline'"


def sheet_html(sheet: Sheet) -> bytes:
    """UTF-8 HTML that needs nothing beside it."""
    return "\n".join(_lines(sheet)).encode("utf-8")


def _lines(sheet: Sheet) -> Iterator[str]:
    yield '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">'
    yield f'<meta http-equiv="Content-Security-Policy" content="{escape(POLICY)}">'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<title>{escape(sheet.title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n<main>"
    yield f"<h1>{escape(sheet.title)}</h1>"
    if sheet.facts:
        yield "<dl>"
        yield from (f"<dt>{escape(label)}</dt><dd>{escape(text)}</dd>" for label, text in sheet.facts)
        yield "</dl>"
    for table in sheet.tables:
        yield from _table(table)
    yield "</main>\n<footer>"
    yield from (f"<p>{escape(note)}</p>" for note in sheet.notes)
    yield "</footer>\n</body>\n</html>\n"


def _table(table: Table) -> Iterator[str]:
    yield f"<table>\n<caption>{escape(table.heading)}</caption>\n<thead><tr>"
    for at, column in enumerate(table.columns):
        yield f'<th scope="col"{_to_the_right(table, at)}>{escape(column)}</th>'
    yield "</tr></thead>\n<tbody>"
    for number, row in enumerate(table.rows):
        sums = ' class="sum"' if number >= len(table.rows) - table.sums else ""
        cells = "".join(f"<td{_to_the_right(table, at)}>{escape(cell)}</td>" for at, cell in enumerate(row[1:], 1))
        yield f'<tr{sums}><th scope="row">{escape(row[0])}</th>{cells}</tr>'
    yield "</tbody>\n</table>"


def _to_the_right(table: Table, at: int) -> str:
    return ' class="number"' if at in table.numbers else ""
