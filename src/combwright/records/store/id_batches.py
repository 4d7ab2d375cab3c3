"""Ids of entries in portions that one statement takes."""

from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Final
from uuid import UUID

AT_ONCE: Final = 900  # SQLite takes some 32 000 values in one statement, older builds 999


def in_batches(ids: Iterable[UUID]) -> Iterator[list[UUID]]:
    """Give ids in their order, so many at once.

    Examples
    --------
    >>> [len(some) for some in in_batches([UUID(int=0)] * 1000)]
    [900, 100]

    """
    wanted = iter(ids)
    while some := list(islice(wanted, AT_ONCE)):
        yield some
