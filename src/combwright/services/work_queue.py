"""Work that goes on in the background, one piece after the other, and is kept by what it rests on.

However many pieces are asked for, only a few wait and only a few are kept: memory stays bounded.
"""

from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import CancelledError, Future, ThreadPoolExecutor
from dataclasses import dataclass, field
from threading import Lock
from typing import Final, Generic, TypeVar

from combwright.services.progress import BUSY, OPENING, Progress, Step
from combwright.terms.errors import PassingError

Key = TypeVar("Key")
Made = TypeVar("Made")

MOST_WAITING: Final = 8  # unfinished, the one in work included; judgement


@dataclass
class InWork(Generic[Made]):
    """Something that is being worked out: how far that is, and the parts that are ready."""

    step: Step
    future: "Future[Made]" = field(default_factory=Future)
    parts: list[object] = field(default_factory=list)
    is_wanted: bool = True

    def tell(self, step: Step) -> None:
        """Take note of progress; work that nobody wants any more ends here."""
        if not self.is_wanted:
            raise CancelledError
        self.step = step
        if step.part is not None:
            self.parts.append(step.part)


class WorkQueue(Generic[Key, Made]):
    """Pieces of work by key, those asked for longest ago first."""

    def __init__(self, name: str, *, kept: int) -> None:
        self._kept = kept
        self._worker = ThreadPoolExecutor(1, thread_name_prefix=name)
        self._known: OrderedDict[Key, InWork[Made]] = OrderedDict()
        self._lock = Lock()

    def __len__(self) -> int:
        return len(self._known)

    def begin(self, key: Key, make: Callable[[Progress], Made]) -> InWork[Made]:
        """Give a piece of work, done or in work."""
        with self._lock:
            if key not in self._known:
                self._known[key] = self._start(make)
            self._known.move_to_end(key)
            done = [key for key, one in self._known.items() if one.future.done()]
            for old in done[: max(0, len(done) - self._kept)]:
                del self._known[old]
            return self._known[key]

    def _start(self, make: Callable[[Progress], Made]) -> InWork[Made]:
        waiting = sum(not each.future.done() for each in self._known.values())
        if waiting >= MOST_WAITING:
            raise PassingError(
                f"{waiting} others are being worked out already.",
                remedy="Wait half a minute, then ask again.",
            )
        working: InWork[Made] = InWork(Step(BUSY if waiting else OPENING))
        working.future = self._worker.submit(make, working.tell)
        return working

    def newest(self) -> Made | None:
        """Give what was asked for last and is ready, if anything."""
        with self._lock:
            ready = [each.future for each in self._known.values() if each.future.done()]
        return next((one.result() for one in reversed(ready) if one.exception() is None), None)

    def close(self) -> None:
        """Stop working, without going to the end of the piece in work."""
        for each in self._known.values():
            each.is_wanted = False
        self._worker.shutdown(wait=False, cancel_futures=True)
