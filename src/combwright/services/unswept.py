"""Leaving what may go where it lies for a moment, while much is made that stays.

Python looks through all that there is whenever it has grown by a quarter: while a book of 300
colonies is read that takes a tenth of a second, and finds nothing.
"""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def unswept() -> Iterator[None]:
    """Look for nothing that may go until this is done; it is looked for as before then."""
    swept = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if swept:
            gc.enable()
