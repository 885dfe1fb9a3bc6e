"""The models are listed by name; nothing is fetched but what is asked for, and an unknown name is said."""

from __future__ import annotations

from pathlib import Path

from commands.conftest import Run


def test_the_list_says_what_is_here_and_how_to_get_the_rest(
    run: Run, environment: dict[str, str], tmp_path: Path
) -> None:
    environment["XDG_CACHE_HOME"] = str(tmp_path / "empty")
    listed = run("weights")
    assert listed.returncode == 0
    assert "base (hears, 148 MB, MIT): not here" in listed.stdout
    assert '"benchnotes weights fetch base" brings it' in listed.stdout


def test_an_unknown_model(run: Run) -> None:
    ended = run("weights", "fetch", "enormous")
    assert (ended.returncode, ended.stdout) == (1, "")
    assert 'There is no model "enormous"' in ended.stderr
