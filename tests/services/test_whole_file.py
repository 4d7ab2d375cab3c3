"""Files are there whole, or as they were."""

from pathlib import Path

import pytest

from combwright.services.whole_file import write_whole


def test_the_new_takes_the_place_of_the_old_and_nothing_is_left_beside_it(tmp_path: Path) -> None:
    file = tmp_path / "kept"
    file.write_bytes(b"old")
    (tmp_path / ".kept.part").write_bytes(b"half of an earlier one")
    write_whole(file, b"new", mode=0o600)
    assert file.read_bytes() == b"new"
    assert file.stat().st_mode & 0o777 == 0o600
    assert [each.name for each in tmp_path.iterdir()] == ["kept"]


def test_what_cannot_be_written_leaves_the_old(tmp_path: Path) -> None:
    folder = tmp_path / "kept"
    (folder / "in it").mkdir(parents=True)
    with pytest.raises(OSError, match="irectory"):
        write_whole(folder, b"new")  # a folder cannot be replaced by a file
    assert (folder / "in it").is_dir()
    assert [each.name for each in tmp_path.iterdir()] == ["kept"]
