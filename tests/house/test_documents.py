"""The documents say what the program does today: commands, trades, files, links and pasted output."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from benchnotes.commands.main import COMMANDS, benchnotes

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
CHANGELOG = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
OWN_PAGES = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "demo_audio/README.md"]
PAGES = [*OWN_PAGES, *sorted(str(path.relative_to(ROOT)) for path in (ROOT / "docs").glob("*.md"))]


def command(name: str) -> click.Command:
    found = benchnotes.get_command(click.Context(benchnotes), name)
    assert found is not None
    return found


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_in_the_readme(name: str) -> None:
    assert f"`benchnotes {name}" in README


@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_is_explained_by_its_command(name: str) -> None:
    asked = CliRunner().invoke(benchnotes, [name, "--help"])
    assert asked.exit_code == 0, asked.output
    unexplained = [p.name for p in command(name).params if isinstance(p, click.Option) and not p.help]
    assert not unexplained


@pytest.mark.parametrize("page", PAGES)
def test_commands_and_options_in_the_documents_exist(page: str) -> None:
    """`benchnotes read FILE --json` in running text: the command is there, and so is the option."""
    for spoken in re.findall(r"`benchnotes ([a-z][^`]*)`", (ROOT / page).read_text(encoding="utf-8")):
        name = spoken.split()[0]
        assert name in COMMANDS, spoken
        assert not set(re.findall(r"--[a-z-]+", spoken)) - options(command(name)), spoken


def options(asked: click.Command) -> set[str]:
    """All options of a command and of the commands under it."""
    under = asked.commands.values() if isinstance(asked, click.Group) else ()
    return {name for p in asked.params for name in p.opts}.union(*(options(one) for one in under))


def test_make_commands_in_the_documents_exist() -> None:
    targets = set(re.findall(r"^([a-z]+):", (ROOT / "Makefile").read_text(encoding="utf-8"), re.MULTILINE))
    for page in PAGES:
        asked = set(re.findall(r"`make ([a-z]+)`", (ROOT / page).read_text(encoding="utf-8")))
        assert not asked - targets, page


@pytest.mark.parametrize("path", sorted((ROOT / "benchnotes/trades").glob("*.toml")), ids=lambda path: path.stem)
def test_every_trade_is_listed(path: Path) -> None:
    assert f"`{path.name}`" in DEVELOPERS


@pytest.mark.parametrize("page", PAGES)
def test_links_lead_somewhere(page: str) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#]+)[^)]*\)", text):
        assert ((ROOT / page).parent / target).exists(), target


@pytest.mark.parametrize("page", PAGES)
def test_paths_named_in_the_documents_exist(page: str) -> None:
    """Every `benchnotes/...`, `tests/...`, `docs/...` and the like in back quotes is there."""
    text = (ROOT / page).read_text(encoding="utf-8")
    named = re.findall(r"`((?:benchnotes|tests|docs|training|models|demo_audio)/[\w./*-]*)`", text)
    gone = [path for path in named if not (list(ROOT.glob(path)) if "*" in path else (ROOT / path).exists())]
    assert not gone


def test_the_changelog_names_this_version() -> None:
    version = subprocess.run(
        ["git", "show", "HEAD:benchnotes/__init__.py"], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout
    number = re.search(r'"(\d+\.\d+\.\d+)"', version)
    assert number is not None
    assert f"## {number[1]}" in CHANGELOG
