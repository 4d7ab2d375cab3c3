"""The catalogue of kit: what comes with the program, and the keeper's own in the same format."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from hashlib import blake2b
from importlib import resources
from typing import TypeVar

from combwright.kit.catalogue_files import nearest, read_items
from combwright.kit.items import Board, Cover, Feeder, Frame, Hive, Item
from combwright.terms.errors import NotFoundError

Kind = TypeVar("Kind", bound=Item)


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All kit by key; ``own`` tells one keeper's own kit from another's."""

    items: Mapping[str, Item]
    own: str = ""

    def item(self, key: str) -> Item:
        """Give the thing with this key; an unknown key is answered with its neighbours."""
        return self._of(key, Item, "kit")

    def hive(self, key: str) -> Hive:
        """Give the hive or nuc box with this key.

        Examples
        --------
        >>> catalogue().hive("national timber").frames, catalogue().hive("National").frames
        (11, 11)

        """
        return self._of(key, Hive, "hive")

    def frame(self, key: str) -> Frame:
        """Give the frame with this key, such as “dn4”."""
        return self._of(key, Frame, "frame")

    def board(self, key: str) -> Board:
        """Give the dummy board with this key."""
        return self._of(key, Board, "board")

    def cover(self, key: str) -> Cover:
        """Give the crown board, cushion or roof with this key."""
        return self._of(key, Cover, "cover")

    def feeder(self, key: str) -> Feeder:
        """Give the feeder with this key."""
        return self._of(key, Feeder, "feeder")

    def hives(self) -> tuple[Hive, ...]:
        """Give all hives and nuc boxes in the order of their keys."""
        return self.all_of(Hive)

    def all_of(self, kind: type[Kind]) -> tuple[Kind, ...]:
        """Give everything of one kind in the order of the keys."""
        found = (item for item in self.items.values() if isinstance(item, kind))
        return tuple(sorted(found, key=lambda item: item.key))

    def _of(self, key: str, kind: type[Kind], word: str) -> Kind:
        plain = " ".join(key.lower().split())
        # a box named without its material is of timber, as in “National”
        found = self.items.get(plain) or self.items.get(f"{plain} timber")
        if isinstance(found, kind):
            return found
        keys = [item.key for item in self.all_of(kind)]
        raise NotFoundError(
            f"There is no {word} “{key}” in the catalogue.",
            remedy=nearest(key.lower(), keys) or f"There are: {', '.join(keys)}.",
        )


def catalogue(extra_toml_texts: Mapping[str, str] | None = None) -> Catalogue:
    """Give the catalogue, with the keeper's own kit where texts are given.

    The same object for the same texts.

    Each text has the label that errors should name, such as a file's name.

    Examples
    --------
    >>> catalogue().hive("nuc 6 polystyrene").capacity
    6

    """
    return _catalogue(tuple((extra_toml_texts or {}).items()))


@lru_cache(maxsize=8)
def _catalogue(extra: tuple[tuple[str, str], ...]) -> Catalogue:
    own = blake2b(repr(extra).encode(), digest_size=8).hexdigest() if extra else ""
    return Catalogue(read_items((*_packaged(), *extra)), own)


def _packaged() -> list[tuple[str, str]]:
    folder = resources.files("combwright.kit").joinpath("data")
    files = sorted((f for f in folder.iterdir() if f.name.endswith(".toml")), key=lambda f: f.name)
    return [(file.name, file.read_text("utf-8")) for file in files]
