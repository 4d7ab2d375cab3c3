"""Random numbers by key: each process has a stream of its own, whatever else is drawn."""

from zlib import crc32

import numpy as np


def stream(seed: int, *key: str | int) -> np.random.Generator:
    """Random numbers of one process, kept apart from all others by its key.

    Examples
    --------
    >>> bool(stream(1, "mating", 5).random() == stream(1, "mating", 5).random())
    True
    >>> bool(stream(1, "mating", 5).random() == stream(1, "mating", 6).random())
    False

    """
    words = [seed, *(crc32(part.encode()) if isinstance(part, str) else part for part in key)]
    try:
        return np.random.default_rng(np.array(words, np.uint32))  # the same, in half the time
    except OverflowError:  # a seed of many digits
        return np.random.default_rng(words)
