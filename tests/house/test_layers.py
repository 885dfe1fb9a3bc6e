"""The house rules that a machine can check: which way imports run, how long a file may be, how a class is made."""

from __future__ import annotations

import ast
import re
import statistics
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = sorted((ROOT / "benchnotes").rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
NAMES_THAT_SAY_NOTHING = {"utils", "util", "helpers", "helper", "manager", "misc"}

Function = ast.FunctionDef | ast.AsyncFunctionDef


def short(path: Path) -> str:
    return str(path.relative_to(ROOT))


def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def functions(path: Path) -> Iterator[Function]:
    return (node for node in ast.walk(tree(path)) if isinstance(node, Function))


def lines_of(node: Function) -> int:
    assert node.end_lineno is not None
    return node.end_lineno - node.lineno + 1


def test_imports_run_one_way() -> None:
    checked = subprocess.run(
        [Path(sys.executable).with_name("lint-imports"), "--no-cache"],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert checked.returncode == 0, checked.stdout + checked.stderr


@pytest.mark.parametrize("path", PACKAGE + TESTS, ids=short)
def test_a_file_is_about_one_thing(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count("\n") <= 400
    assert path.stem not in NAMES_THAT_SAY_NOTHING
    too_long = [f"{f.name}: {lines_of(f)}" for f in functions(path) if lines_of(f) > 60]
    assert not too_long


@pytest.mark.parametrize("path", [p for p in PACKAGE if p.name != "__init__.py"], ids=short)
def test_a_module_says_what_it_is_for(path: Path) -> None:
    said = ast.get_docstring(tree(path))
    assert said, "no docstring"
    assert len(said.splitlines()) <= 8


@pytest.mark.parametrize("path", PACKAGE, ids=short)
def test_nothing_of_ours_is_imported_inside_a_function(path: Path) -> None:
    """Such an import hides a circle. (Commands are loaded by name in one place, `commands/main.py`, and only there.)"""
    hidden = [
        f"line {node.lineno}"
        for function in functions(path)
        for node in ast.walk(function)
        if (isinstance(node, ast.ImportFrom) and (node.module or "").startswith("benchnotes"))
        or (isinstance(node, ast.Import) and any(name.name.startswith("benchnotes") for name in node.names))
    ]
    assert not hidden
    assert "TYPE_CHECKING" not in path.read_text(encoding="utf-8")


@pytest.mark.parametrize("path", PACKAGE, ids=short)
def test_every_dataclass_is_frozen(path: Path) -> None:
    melting = [
        node.name
        for node in ast.walk(tree(path))
        if isinstance(node, ast.ClassDef)
        for mark in node.decorator_list
        if "dataclass" in ast.unparse(mark) and "frozen=True" not in ast.unparse(mark)
    ]
    assert not melting


def test_functions_stay_short() -> None:
    """Median under 12 lines and nine in ten under 35, as in the code we admire."""
    lengths = sorted(lines_of(function) for path in PACKAGE for function in functions(path))
    assert statistics.median(lengths) < 12
    assert lengths[int(len(lengths) * 0.9)] < 35


ADDRESS = re.compile("http" + r"s?://(?!127\.0\.0\.1|localhost)[\w{]")


def test_no_address_is_written_anywhere() -> None:
    """Nothing is fetched but by name, from wherever the user's own tools are told to look."""
    found = [
        f"{short(path)}:{number}"
        for path in tracked_text()
        for number, line in enumerate(path.read_text(encoding="utf-8", errors="replace").splitlines(), 1)
        if ADDRESS.search(line)
    ]
    assert not found


def tracked_text() -> list[Path]:
    """Files of ours that git keeps and that a person wrote; sources copied in carry their own addresses."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=True).stdout
    paths = [ROOT / name.decode() for name in listed.split(b"\0") if name]
    written = {".py", ".toml", ".md", ".lock", ".sh", ".txt", ".cfg", ".tcss", ""}
    return [p for p in paths if p.suffix in written and p.is_file() and "published" not in p.parts]
