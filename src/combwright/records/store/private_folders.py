"""Folders that only their owner may look into."""

from contextlib import suppress
from pathlib import Path


def private_folder(folder: Path) -> None:
    """Make a folder, and those above it that are missing: all of them, or, too long a name, none.

    Raises `OSError` where it cannot be made.
    """
    with suppress(FileNotFoundError):
        folder.lstat()  # a name that is too long is refused here, before any folder is made
    for each in reversed([folder, *folder.parents]):
        each.mkdir(mode=0o700, exist_ok=True)
