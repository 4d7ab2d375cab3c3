"""Files that come with a request."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from fastapi import UploadFile

LONGEST: Final = 80  # signs of a name


def plain_name(told: str | None, otherwise: str) -> str:
    """Give the name of a file without any path, and of signs that every disk takes.

    Examples
    --------
    >>> plain_name("notes/spring.csv", "a.csv"), plain_name("..", "a.csv")
    ('spring.csv', 'a.csv')

    """
    last = (told or "").replace("\\", "/").rsplit("/", 1)[-1]
    kept = "".join(sign for sign in last if sign.isprintable() and sign.isascii())
    return kept.strip(". ")[-LONGEST:] or otherwise


@contextmanager
def on_disk(content: bytes, file: UploadFile, otherwise: str) -> Iterator[Path]:
    """Lay a file on the disk for a while, by its own name: its ending, and errors, tell of it."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / plain_name(file.filename, otherwise)
        path.write_bytes(content)
        yield path
