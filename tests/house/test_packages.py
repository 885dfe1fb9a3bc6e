"""What the program imports is what it asks for, and what it asks for is pinned: a fresh machine lacks nothing."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def plain(name: str) -> str:
    """A package's name as the registry compares it (Python packaging guide, "Name normalization")."""
    return re.sub(r"[-_.]+", "-", name).lower()


def asked_for(requirements: list[str]) -> set[str]:
    return {plain(re.split(r"[^\w.-]", requirement, maxsplit=1)[0]) for requirement in requirements}


def imported() -> set[str]:
    """The top names of all modules that the program imports and that are neither its own nor Python's."""
    names: set[str] = set()
    for path in (ROOT / "benchnotes").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                names.update(alias.name.split(".")[0] for alias in node.names)
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                names.add(node.module.split(".")[0])
    return names - sys.stdlib_module_names - {"benchnotes"}


def test_every_import_is_asked_for_by_name() -> None:
    """Not left to what another package happens to bring along."""
    carried_by = packages_distributions()
    asked = asked_for(PROJECT["dependencies"])
    missing = {name for name in imported() if not asked & {plain(package) for package in carried_by.get(name, [])}}
    assert not missing


@pytest.mark.parametrize(
    ("lock", "wanted"),
    [
        ("requirements.lock", PROJECT["dependencies"]),
        ("requirements-tests.lock", PROJECT["dependencies"] + PROJECT["optional-dependencies"]["tests"]),
    ],
)
def test_what_is_asked_for_is_pinned_with_its_hash(lock: str, wanted: list[str]) -> None:
    """After a change of pyproject.toml: `make lock`."""
    text = (ROOT / lock).read_text(encoding="utf-8")
    pinned = {plain(name) for name in re.findall(r"^([\w.-]+)==\S+[^\n]*\\\n +--hash=sha256:", text, re.MULTILINE)}
    assert asked_for(wanted) <= pinned
