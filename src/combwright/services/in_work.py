"""Work that goes on in the background, and how far it is."""

from concurrent.futures import CancelledError, Future
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from combwright.services.progress import Step

Made = TypeVar("Made")


@dataclass
class InWork(Generic[Made]):
    """Something that is being worked out, and how far that is."""

    step: Step
    future: "Future[Made]" = field(default_factory=Future)
    is_wanted: bool = True

    def tell(self, step: Step) -> None:
        """Take note of progress; work that nobody wants any more ends here."""
        if not self.is_wanted:
            raise CancelledError
        self.step = step
