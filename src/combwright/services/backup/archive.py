"""The file of a backup: a ZIP with a list of its contents and their checksums, or a sealed one.

Whoever has lost this program can still open one that is not sealed: ``book`` is an SQLite file.
"""

import re
import zlib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from datetime import datetime
from hashlib import sha256
from pathlib import Path
from typing import Final, Literal
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from combwright.services.backup.seal import Making, Seal
from combwright.terms.errors import BookError

LIST: Final = "contents.json"
SEAL: Final = "seal.json"
NAMES: Final = re.compile(r"book|access|headings\.json|photos/[0-9a-f-]{36}\.(jpg|png|webp)")
LARGEST: Final = 4_000_000_000  # bytes of one content; a bound on what a made-up file may ask for
LARGEST_LIST: Final = 50_000_000


class BackedUp(BaseModel):
    """One content of a backup."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: str = Field(pattern=f"^({NAMES.pattern})$")
    length: int = Field(ge=0, le=LARGEST)
    sha256: str = Field(min_length=64, max_length=64)


class BackupList(BaseModel):
    """What a backup holds, and of which book it was made when."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    form: Literal[1] = 1
    book: str
    made: datetime
    version: str
    entries: int
    kept: tuple[BackedUp, ...]


class Archive:
    """A backup that is open to read."""

    def __init__(self, file: ZipFile, seal: Seal | None) -> None:
        self._file, self._seal = file, seal
        try:
            self.contents = BackupList.model_validate_json(self._read(LIST, LARGEST_LIST))
        except ValidationError as error:
            raise damaged("its list of contents cannot be read") from error

    def read(self, kept: BackedUp) -> bytes:
        """Give a content that is as it was, or say that it is not."""
        content = self._read(kept.name, kept.length)
        if len(content) != kept.length or sha256(content).hexdigest() != kept.sha256:
            raise damaged(f"“{kept.name}” is not what was kept")
        return content

    def _read(self, name: str, longest: int) -> bytes:
        try:
            if self._seal is None:
                with self._file.open(name) as content:
                    return content.read(longest + 1)
            opened = self._seal.open(self._file.read(name), name)
            return zlib.decompressobj().decompress(opened, longest + 1)
        except (BadZipFile, zlib.error, KeyError, EOFError, NotImplementedError) as error:
            raise damaged(f"“{name}” cannot be read") from error


@contextmanager
def opened(path: Path, passphrase: str = "") -> Iterator[Archive]:
    """Open a backup to read."""
    try:
        with ZipFile(path) as file:
            seal = None
            if SEAL in file.namelist():
                making = Making.model_validate_json(file.read(SEAL))
                if not passphrase:
                    raise BookError(
                        "This backup is sealed.",
                        where=str(path),
                        remedy="Give its passphrase with --sealed or --passphrase-file.",
                    )
                seal = Seal.as_made(passphrase, making)
            yield Archive(file, seal)
    except (BadZipFile, ValidationError, UnicodeDecodeError, NotImplementedError) as error:
        raise BookError(
            "This is no backup, or it is damaged.", where=str(path), remedy="Take another one."
        ) from error
    except OSError as error:
        raise BookError(
            f"The backup cannot be read: {error.strerror or error}.",
            where=str(path),
            remedy="Check its name and folder.",
        ) from error


def write(
    path: Path, about: BackupList, contents: Iterable[tuple[str, bytes]], seal: Seal | None
) -> BackupList:
    """Write a backup from its contents, with their list behind them."""
    kept = []
    with ZipFile(path, "w", ZIP_STORED if seal else ZIP_DEFLATED) as file:
        if seal is not None:
            file.writestr(SEAL, seal.making.model_dump_json())

        def put(name: str, content: bytes) -> None:
            sealed = seal.close(zlib.compress(content), name) if seal else content
            file.writestr(name, sealed)

        for name, content in contents:
            put(name, content)
            digest = sha256(content).hexdigest()
            kept.append(BackedUp(name=name, length=len(content), sha256=digest))
        whole = about.model_copy(update={"kept": tuple(kept)})
        put(LIST, whole.model_dump_json(indent=1).encode())
    return whole


def damaged(what: str) -> BookError:
    """Say that a backup cannot be used."""
    return BookError(f"The backup is damaged: {what}.", remedy="Take another one.")
