"""From talk to an issued bill and back, through the command line, before the official judges."""

from __future__ import annotations

from pathlib import Path

import pytest
from commands.conftest import Run
from exports.official_rules import judged

pytestmark = pytest.mark.whole

DONE = """\
WEBVTT

00:00.000 --> 00:05.000
This is a Corvane butter churn, serial 4471.

00:05.000 --> 00:10.000
Fitted a new lid gasket, four pounds fifty.
"""
ABOUT = "\n00:10.000 --> 00:15.000\nFitted a new drive belt as well, about six pounds.\n"
SETTINGS = """\
currency = "GBP"
[workshop]
name = "Tarn Bench"
country = "GB"
tax_number = "GB999000117"
[tax]
usual = 20
"""


@pytest.fixture
def churn(run: Run, home: Path, tmp_path: Path) -> None:
    """A churn that is done, its owner noted, in a workshop that has said how it bills."""
    take_in(run, tmp_path, DONE)
    (home / "settings.toml").write_text(SETTINGS)
    assert run("owner", "churn", "--name", "Mrs <Quillby>").returncode == 0


def take_in(run: Run, folder: Path, talk: str) -> None:
    (folder / "visit.vtt").write_text(talk)
    assert run("read", folder / "visit.vtt", "--job", "churn", "--currency", "GBP").returncode == 0


@pytest.mark.usefixtures("churn")
def test_draft_bill_credit_note_and_bill_again(run: Run, tmp_path: Path) -> None:
    drafted = run("export", "churn", "--to", tmp_path / "a", "--only", "invoice.xml")
    assert drafted.returncode == 0
    assert "Only a draft, and marked as one: invoice.xml." in drafted.stderr
    asked = run("issue", "churn")
    assert "4.50  lid gasket, 1 at 4.50" in asked.stdout
    assert "5.40 GBP to pay" in asked.stdout
    assert "Stopped" in asked.stderr
    assert run("issue", "churn", "--yes").stdout.startswith("Bill 0001 of ")
    again = run("issue", "churn", "--yes")
    assert (again.returncode, again.stdout) == (1, "")
    assert "Bill 0001" in again.stderr
    assert run("export", "churn", "--to", tmp_path / "b", "--only", "invoice.xml").stderr == ""
    assert run("issue", "churn", "--credit", "--yes").stdout.startswith("Credit note 0002 of ")
    assert run("issue", "churn", "--yes").stdout.startswith("Bill 0003 of ")
    assert run("export", "churn", "--to", tmp_path / "c", "--only", "invoice.xml").returncode == 0
    found = sorted(tmp_path.glob("[abc]/*.xml"))
    assert [str(path.relative_to(tmp_path)) for path in found] == [
        "a/invoice.xml", "b/invoice.xml", "c/credit-note-0002.xml", "c/invoice-0001.xml", "c/invoice.xml",
    ]  # fmt: skip
    assert [judged(path.read_bytes()) for path in found] == [[]] * 5
    assert found[1].read_bytes() == found[3].read_bytes()


@pytest.mark.usefixtures("churn")
def test_what_was_issued_stands_when_the_job_changes(run: Run, tmp_path: Path) -> None:
    run("issue", "churn", "--yes")
    run("export", "churn", "--to", tmp_path / "a", "--only", "invoice.xml")
    assert run("owner", "churn", "--name", "Mr Quillby").stdout.count("Mr Quillby") == 1
    later = run("export", "churn", "--to", tmp_path / "b", "--only", "invoice.xml")
    assert "the job has changed since" in later.stderr
    assert (tmp_path / "a/invoice.xml").read_bytes() == (tmp_path / "b/invoice.xml").read_bytes()


def test_what_is_open_is_listed_and_nothing_is_issued(run: Run, tmp_path: Path) -> None:
    take_in(run, tmp_path, DONE + ABOUT)
    refused = run("issue", "churn", "--yes")
    assert (refused.returncode, refused.stdout) == (1, "")
    assert "only about 6" in refused.stderr
    assert "The owner has no name" in refused.stderr
    assert "Set it under [tax]" in refused.stderr
    exported = run("export", "churn", "--to", tmp_path / "out")
    assert exported.returncode == 0
    assert "Left out: invoice.xml and invoice.pdf:" in exported.stderr
    assert "invoice.xml" not in {path.name for path in (tmp_path / "out").iterdir()}


def test_an_owner_that_cannot_be_noted(run: Run, tmp_path: Path) -> None:
    take_in(run, tmp_path, DONE)
    refused = run("owner", "churn", "--name", "Mrs Quillby", "--country", "Ruritania")
    assert refused.returncode == 1
    assert 'There is no country "RURITANIA"' in refused.stderr
    assert "Quillby" not in run("owner", "churn").stdout
