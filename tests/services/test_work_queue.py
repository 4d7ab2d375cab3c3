from threading import Event

import pytest

from combwright.services.progress import Progress
from combwright.services.work_queue import MOST_WAITING, WorkQueue
from combwright.terms.errors import PassingError


def test_only_so_many_wait_and_nobody_who_waits_is_dropped() -> None:
    queue: WorkQueue[int, int] = WorkQueue("test", kept=3)
    go = Event()

    def make(_: Progress) -> int:
        go.wait(10)
        return 1

    begun = [queue.begin(number, make) for number in range(MOST_WAITING)]
    assert queue.begin(0, make) is begun[0]
    with pytest.raises(PassingError, match="ask again"):
        queue.begin(99, make)
    go.set()
    assert [one.future.result(10) for one in begun] == [1] * MOST_WAITING
    queue.close()


def test_only_the_last_asked_for_are_kept() -> None:
    queue: WorkQueue[int, int] = WorkQueue("test", kept=3)
    for number in range(10):
        queue.begin(number, lambda _, made=number: made).future.result(10)  # type: ignore[misc]
        assert len(queue) <= 4
    assert queue.newest() == 9
    queue.close()


def test_a_failure_is_told_again_and_is_not_the_newest() -> None:
    queue: WorkQueue[int, int] = WorkQueue("test", kept=3)

    def fail(_: Progress) -> int:
        raise ValueError("no")

    queue.begin(1, lambda _: 7).future.result(10)
    for _ in range(2):
        with pytest.raises(ValueError, match="no"):
            queue.begin(2, fail).future.result(10)
    assert queue.newest() == 7
    queue.close()
