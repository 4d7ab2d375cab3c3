"""Files that hold all of the new or all of the old."""

import os
from pathlib import Path


def write_whole(path: Path, content: bytes, *, mode: int = 0o666) -> None:
    """Write beside a file, then put that in its place: nobody ever reads half of it."""
    part = path.with_name(f".{path.name}.part")
    part.unlink(missing_ok=True)  # one left behind keeps its own mode
    try:
        with os.fdopen(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode), "wb") as out:
            out.write(content)
        part.replace(path)
    except OSError:
        part.unlink(missing_ok=True)
        raise
