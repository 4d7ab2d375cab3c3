"""A small file of plain data beside the book that only its owner may read."""

import json
from pathlib import Path
from typing import Any

from combwright.services.whole_file import write_whole
from combwright.terms.errors import BookError


class PrivateFile:
    """What the file says now, whichever program wrote it last."""

    def __init__(self, path: Path, remedy: str) -> None:
        self._path, self._remedy = path, remedy
        self._seen: tuple[int, int, int] | None = None
        self._told: dict[str, Any] = {}

    def read(self) -> dict[str, Any]:
        """Give what it says; nothing where there is none. It is read again when it changed."""
        try:
            stat = self._path.stat()
            seen = (stat.st_ino, stat.st_mtime_ns, stat.st_size)
            if seen != self._seen:
                self._told, self._seen = self._plain(self._path.read_text("utf-8")), seen
        except FileNotFoundError:
            return {}
        except (OSError, ValueError, RecursionError) as error:
            raise BookError(
                "The file cannot be read.", where=str(self._path), remedy=self._remedy
            ) from error
        return dict(self._told)

    def write(self, told: dict[str, Any]) -> None:
        """Put other content in its place."""
        try:
            write_whole(self._path, json.dumps(told).encode(), mode=0o600)
        except OSError as error:
            raise BookError(
                f"The file cannot be written: {error.strerror}.",
                where=str(self._path),
                remedy="Allow writing beside the book.",
            ) from error

    @staticmethod
    def _plain(text: str) -> dict[str, Any]:
        told = json.loads(text)
        if not isinstance(told, dict):
            raise ValueError("no object")  # noqa: TRY004  (what is wrong is the file's text)
        return told
