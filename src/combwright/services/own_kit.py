"""The kit in use: what comes with the program, and the keeper's own files in a folder."""

from pathlib import Path

from platformdirs import user_config_path

from combwright.kit.catalogue import Catalogue, catalogue
from combwright.terms.errors import NotFoundError, OutOfRangeError


def own_folder() -> Path:
    """Give the folder in which a keeper's own kit is looked for when none is named."""
    return user_config_path("combwright", appauthor=False) / "kit"


def kit_in_use(folder: Path | None = None) -> Catalogue:
    """Read the catalogue, with the keeper's own kit from a folder, or from the usual one."""
    if folder is not None and not folder.is_dir():
        raise NotFoundError(
            "There is no such folder of kit.", where=str(folder), remedy="Check its name."
        )
    files = sorted((folder or own_folder()).glob("*.toml"))
    return catalogue({str(file): _text(file) for file in files})


def _text(file: Path) -> str:
    try:
        return file.read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise OutOfRangeError(
            "The file of kit cannot be read as text.",
            where=str(file),
            remedy="Save it as UTF-8, in a place that you may read.",
        ) from error
