"""Files kept in the user's cache, which cost time and never an answer.

They can be thrown away at any time; a damaged one counts as none, and on a full, locked or
read-only disk nothing is kept.
"""

from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

from combwright.records.store.private_folders import private_folder
from combwright.services.whole_file import write_whole


def read_kept(path: Path) -> bytes | None:
    """Give what was kept in a file, if it is still there whole."""
    try:
        said, _, content = path.read_bytes().partition(b"\n")
    except OSError:
        return None
    whole = said == _sum(content)
    with suppress(OSError):
        path.touch() if whole else path.unlink()  # those asked for lately are kept longest
    return content if whole else None


def keep_file(path: Path, content: bytes) -> None:
    """Keep a content behind its checksum, for its owner alone."""
    with suppress(OSError):
        private_folder(path.parent)
        write_whole(path, _sum(content) + b"\n" + content, mode=0o600)


def leave_the_newest(folder: Path, ending: str, most: int) -> None:
    """Throw the oldest files of a folder away; another program may do the same at that moment."""
    with suppress(OSError):
        old = sorted(folder.glob(f"*{ending}"), key=lambda each: -each.stat().st_mtime)
        for each in old[most:]:
            each.unlink(missing_ok=True)


def _sum(content: bytes) -> bytes:
    return blake2b(content, digest_size=16).hexdigest().encode()
