"""How long a round of 300 colonies takes, against the aims; cost should be linear in colonies.

The book is the demo's notebook over and over, under other names of colonies and yards. Each size is
measured in two new processes, with the kernel compiled. The first follows all colonies through all
their notes and keeps what it believes. The second plans all from the beliefs at hand, with no plan
kept; then again with nothing new; then after one new note. The plain reference is one colony after
the other on one thread, in the same process: shared out among the processors it is the machine's
limit. Memory is that of the process and of those it starts, what they share counted once.
"""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Event, Thread
from time import perf_counter
from uuid import uuid4

sys.path.insert(0, str(Path(__file__).parent.parent))

from tests.demo import many_colonies

from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.demo import ON
from combwright.services.progress import Step
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.entries import Visit

SIZES = (75, 150, 300)
SAMPLE = 24  # colonies planned on one thread, one after the other
AIMS = {"first": 20.0, "first hive": 0.5, "anew": 8.0, "unchanged": 1.0, "one note": 0.5}
AIM_MB = 500.0


@dataclass
class FirstHive:
    """When the sheet of the hive where the walk begins could be read."""

    began: float = field(default_factory=perf_counter)
    after: float = 0.0

    def __call__(self, step: Step) -> None:
        """Take the time of the first part that is ready."""
        if isinstance(step.part, ColonySheet) and not self.after:
            self.after = perf_counter() - self.began


@dataclass
class Held:
    """The most memory that was held together, looked at twice a second. [MB]."""

    mb: float = 0.0
    is_over: Event = field(default_factory=Event)

    def __call__(self) -> None:
        """Look until it is over."""
        while not self.is_over.wait(0.5):
            self.mb = max(self.mb, sum(map(shared_out_mb, processes())))


def processes() -> list[str]:
    """Name this process and those that its threads have started."""
    tasks = Path("/proc/self/task").glob("*/children")
    return ["self", *(name for each in tasks for name in each.read_text().split())]


def shared_out_mb(process: str) -> float:
    """Memory of a process, what it shares with others in parts; nothing once it has ended. [MB]."""
    try:
        told = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()
    except OSError:
        return 0.0
    return sum(float(line.split()[1]) for line in told if line.startswith("Pss:")) / 1024.0


def seconds(work: Callable[[], object]) -> float:
    """Time some work."""
    start = perf_counter()
    work()
    return perf_counter() - start


def measure(book: Book) -> dict[str, float]:
    """Time the rounds of a book in this process; the first reads what is not yet believed."""
    kept, hive, held = KeptPlans(), FirstHive(), Held()
    Thread(target=held, daemon=True).start()
    anew = seconds(lambda: round_sheet(book, ON, kept=kept, progress=hive))
    unchanged = seconds(lambda: round_sheet(book, ON, kept=kept))
    seen = Visit(id=uuid4(), on=ON - timedelta(days=1), colony="Bramble 1", frames_of_bees=7.0)
    add_entries(book, [seen])
    one_note = seconds(lambda: round_sheet(book, ON, kept=kept))
    held.is_over.set()
    return {
        "first hive": hive.after,
        "anew": anew,
        "unchanged": unchanged,
        "one note": one_note,
        "mb": held.mb,
        "each": plain(book),
    }


def plain(book: Book) -> float:
    """Time a colony planned by itself on one thread."""
    situations = situations_of(book, AskedRound(ON))
    followed = [situations.follow(name) for name in situations.replay.colonies[:SAMPLE]]

    def plan() -> None:
        for one in followed:
            colony_sheet(one, situations.of(one), 1)

    return seconds(plan) / SAMPLE


def measured_apart(book: Book) -> dict[str, float]:
    """Measure in a new process, with the kernel loaded."""
    command = (sys.executable, __file__, book.place)
    done = subprocess.run(command, check=True, capture_output=True)  # noqa: S603
    told: dict[str, float] = json.loads(done.stdout)
    return told


def main() -> None:
    """Print a line a size, and how the largest stands to the aims."""
    if len(sys.argv) > 1:
        book = Book(Path(sys.argv[1]))
        situations_of(book, AskedRound(ON, members=20)).follow("Bramble 0")
        print(json.dumps(measure(book)))
        return
    with TemporaryDirectory() as folder:
        for size in SIZES:
            book = many_colonies(Path(folder), size)
            first, told = measured_apart(book), measured_apart(book)
            told["first"] = first["anew"] - told["anew"]
            parts = ", ".join(f"{name} {told[name]:.2f} s" for name in AIMS)
            limit = size * told["each"] / (os.cpu_count() or 1)
            print(
                f"{size:4} colonies: {parts}, {told['mb']:.0f} MB; a colony alone"
                f" {1000.0 * told['each']:.0f} ms, so anew {told['anew'] / limit:.1f} x the limit"
            )
    against = ", ".join(f"{name} {told[name] / aim:.1f}" for name, aim in AIMS.items())
    print(f"times the aim for {size}: {against}, memory {told['mb'] / AIM_MB:.1f}")


if __name__ == "__main__":
    main()
