"""What the solver says of itself, kept out of the answer."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

OUT, ERRORS = 1, 2  # the file descriptors of a process


@contextmanager
def solver_words_aside() -> Iterator[None]:
    """Send to the errors what the compiled solver prints: the answer may be JSON.

    HiGHS prints a line now and then whatever it is told, past Python's own streams.
    """
    try:
        kept = os.dup(OUT)
        os.dup2(ERRORS, OUT)
    except OSError:  # nothing is open to print to
        yield
        return
    try:
        yield
    finally:
        os.dup2(kept, OUT)
        os.close(kept)
