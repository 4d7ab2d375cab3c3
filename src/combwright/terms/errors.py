"""What can go wrong that a person can put right.

Each error says what is wrong, where, and what to do; the faces show its text as it is.
Anything else that goes wrong is a bug and stays a traceback.
"""


class CombwrightError(Exception):
    """Anything that a person can put right."""

    def __init__(self, what: str, *, where: str = "", remedy: str = "") -> None:
        self.what = what
        self.where = where
        self.remedy = remedy
        place = f"{where}: " if where else ""
        advice = f" {remedy}" if remedy else ""
        super().__init__(f"{place}{what}{advice}")


class OutOfRangeError(CombwrightError):
    """A number is impossible, or looks like one in another unit."""


class NotFoundError(CombwrightError):
    """What was asked for is not in the book, the kit or the folder."""


class NotAllowedError(CombwrightError):
    """Who asks may not do this; another person of the book may."""


class NotebookError(CombwrightError):
    """Lines of a file cannot be taken as they stand."""


class ClashError(CombwrightError):
    """Two entries, or an entry and the stack, cannot both be true."""


class BookError(CombwrightError):
    """The book's file cannot be read or written."""


class PassingError(BookError):
    """What is wanted of the book cannot be had now; asking again may be all that is needed."""


class SourceError(CombwrightError):
    """Weather or other outside data cannot be had or read."""

    def __init__(
        self, what: str, *, where: str = "", remedy: str = "Fetch it again, or use another source."
    ) -> None:
        super().__init__(what, where=where, remedy=remedy)


class OutputError(CombwrightError):
    """The answer cannot be written out."""
