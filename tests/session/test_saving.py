"""What leaves the program is written whole or not at all, and over nothing without a yes."""

from __future__ import annotations

from pathlib import Path

import pytest
from small_disk import mounted

from benchnotes.session.errors import FileThereError, NotSavedError
from benchnotes.session.saving import be_writable, save, save_all


def test_all_or_none(tmp_path: Path) -> None:
    (tmp_path / "b").write_text("mine")
    with pytest.raises(FileThereError, match=r"/b is there already. Nothing was written"):
        save_all({tmp_path / "a": b"1", tmp_path / "b": b"2"}, overwrite=False)
    assert [path.name for path in tmp_path.iterdir()] == ["b"]
    save_all({tmp_path / "a": b"1", tmp_path / "b": b"2"}, overwrite=True)
    assert [(tmp_path / name).read_bytes() for name in "ab"] == [b"1", b"2"]


def test_a_folder_is_tried_before_an_hour_of_listening(tmp_path: Path) -> None:
    be_writable(tmp_path / "new" / "folder")
    assert list((tmp_path / "new" / "folder").iterdir()) == []
    (tmp_path / "letter").touch()
    with pytest.raises(NotSavedError, match=r"letter \(File exists\)\. Nothing was done"):
        be_writable(tmp_path / "letter")


def test_others_may_read_what_the_umask_lets_them(tmp_path: Path) -> None:
    save(tmp_path / "new" / "record.json", b"{}")
    (tmp_path / "plain").touch()
    assert (tmp_path / "new" / "record.json").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_full_disk_leaves_the_old_file(tmp_path: Path) -> None:
    with mounted(tmp_path / "disk", "64k") as folder:
        save(folder / "record.json", b"old")
        with pytest.raises(NotSavedError, match=r"No space left.*What was there before is unchanged"):
            save(folder / "record.json", b"x" * 100_000)
        assert [(path.name, path.read_bytes()) for path in folder.iterdir()] == [("record.json", b"old")]
