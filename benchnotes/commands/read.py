"""`benchnotes read FILE...`: what was said, into a job of the notebook or, with --json, out as a record."""

from __future__ import annotations

from pathlib import Path

import click

from benchnotes.commands.read_and_keep import read_and_keep
from benchnotes.commands.read_to_json import read_to_json
from benchnotes.session.settings import currency_code
from benchnotes.session.trade_names import trade_names
from benchnotes.session.workshop import find_workshop


def _currency(ctx: click.Context, parameter: click.Parameter, value: str | None) -> str | None:
    if value is None:
        return None
    try:
        return currency_code(value)
    except ValueError as wrong:
        raise click.BadParameter(f"{value!r} must be {wrong}.") from wrong


def _trade(ctx: click.Context, parameter: click.Parameter, value: str | None) -> str | None:
    if value is None or value in (there := trade_names(find_workshop())):
        return value
    raise click.BadParameter(f'There is no trade "{value}". There are: {", ".join(there)}.')


@click.command("read")
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE...")
@click.option("--job", metavar="JOB", help="Number or name of the job they belong to; a new name opens a new job.")
@click.option("--currency", callback=_currency, metavar="CODE", help="Currency of the prices said, such as AUD.")
@click.option("--trade", callback=_trade, metavar="NAME", help="Whose words to listen for besides the common ones.")
@click.option("--json", "as_json", is_flag=True, help="Keep nothing: print the record of each file as JSON.")
@click.option("--out", type=click.Path(path_type=Path), metavar="FOLDER", help="With --json: write FOLDER/<name>.json.")
@click.option("--overwrite", is_flag=True, help="With --out: write over files that are there.")
def command(
    *,
    files: tuple[Path, ...],
    job: str | None,
    currency: str | None,
    trade: str | None,
    as_json: bool,
    out: Path | None,
    overwrite: bool,
) -> int:
    """Take in sound, video or captions (WebVTT, SRT).

    All files become visits of one job, in the order in which they were recorded. Stop it at any moment: what was
    heard is kept, and the same command goes on from there.
    """
    if not as_json and (out is not None or overwrite):
        raise click.UsageError(
            "--out and --overwrite go with --json. To write the files of a kept job: benchnotes export."
        )
    if as_json and job is not None:
        raise click.UsageError("--json keeps nothing, so there is no --job to put it in. Leave one of the two out.")
    if overwrite and out is None:
        raise click.UsageError("--overwrite goes with --out FOLDER.")
    if as_json:
        return read_to_json(files, currency=currency, trade=trade, out=out, overwrite=overwrite)
    return read_and_keep(files, named=job, currency=currency, trade=trade)
