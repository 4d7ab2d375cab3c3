"""Who shares a book: keepers, helpers and readers, and what each may do with it."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Final, final
from uuid import UUID

# what a note of these kinds says holds for the whole book: a keeper decides it
SETTINGS: Final = frozenset({"aim", "counting", "keeper", "limit", "names deleted", "price"})


class Role(StrEnum):
    """What a person may do: a keeper everything, a helper note, a reader look."""

    KEEPER = "keeper"
    HELPER = "helper"
    READER = "reader"

    @property
    def notes(self) -> bool:
        """Whether such a person may note what was seen and done."""
        return self is not Role.READER

    @property
    def settles(self) -> bool:
        """Whether such a person may change settings, people, and what others noted."""
        return self is Role.KEEPER


@final
@dataclass(frozen=True, slots=True)
class Person:
    """One who shares a book; one who has left keeps the name beside what they noted."""

    id: UUID
    name: str
    role: Role
    since: datetime
    ended: datetime | None = None
    is_invited: bool = False
    has_second_factor: bool = False


@dataclass(frozen=True, slots=True)
class Author:
    """Who writes into a book, and when."""

    person: UUID
    role: Role
    at: datetime
