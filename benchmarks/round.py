"""How long a round takes from an unchanged book: aim 300 colonies x 200 members in 4 s, 600 MB.

The book is the demo's notebook over and over, under other names of colonies and yards. Every size
is measured in two new processes, both with the kernel compiled. The first follows all colonies
through all their notes and keeps what it believes; the second finds the book unchanged, and is
held against the aim, with the time of its parts and the most memory it took. Cost should be
linear in colonies.
"""

import json
import resource
import subprocess
import sys
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parent.parent))

from tests.demo import many_colonies

from combwright.planning.round import colony_sheet
from combwright.records.store.book_handle import Book
from combwright.services.demo import ON
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.situations import AskedRound, situations_of

SIZES = (75, 150, 300)
MEMBERS = 200
AIM_S, AIM_MB, AIM_COLONIES = 4.0, 600.0, 300


def measure(book: Book) -> dict[str, float]:
    """Time one round, and its parts one after the other on one thread."""
    situations_of(book, AskedRound(ON, members=20)).follow("Bramble 0")  # loads the kernel
    start = perf_counter()
    sheet = round_sheet(book, ON, members=MEMBERS)
    whole = perf_counter() - start
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    laps = [perf_counter()]
    situations = situations_of(book, AskedRound(ON, members=MEMBERS))
    laps.append(perf_counter())
    followed = [situations.follow(each.colony) for each in sheet.colonies]
    laps.append(perf_counter())
    for number, each in enumerate(followed):
        colony_sheet(each, situations.of(each), number)
    laps.append(perf_counter())
    read, belief, decisions = (later - earlier for earlier, later in pairwise(laps))
    return {
        "colonies": len(sheet.colonies),
        "round_s": whole,
        "read_s": read,
        "belief_s": belief,
        "decisions_s": decisions,
        "most_mb": most,
    }


def measured_apart(book: Book) -> dict[str, float]:
    """Measure in a new process."""
    command = (sys.executable, __file__, book.place)
    done = subprocess.run(command, check=True, capture_output=True)  # noqa: S603
    told: dict[str, float] = json.loads(done.stdout)
    return told


def main() -> None:
    """Print a line a size, and what a colony costs at each."""
    if len(sys.argv) > 1:
        print(json.dumps(measure(Book(Path(sys.argv[1])))))
        return
    with TemporaryDirectory() as folder:
        for size in SIZES:
            book = many_colonies(Path(folder), size)
            first, told = measured_apart(book), measured_apart(book)
            print(
                f"{told['colonies']:4} colonies  first {first['round_s']:5.2f} s,"
                f" unchanged {told['round_s']:5.2f} s,"
                f" {1000.0 * told['round_s'] / told['colonies']:4.1f} ms each"
                f"  {told['most_mb']:4.0f} MB  (on one thread: read {told['read_s']:.2f},"
                f" belief {told['belief_s']:.2f}, decisions {told['decisions_s']:.2f} s)"
            )
    print(
        f"aim {AIM_COLONIES:5} colonies  {AIM_S:.0f} s, {AIM_MB:.0f} MB:"
        f" {told['round_s'] / AIM_S * AIM_COLONIES / told['colonies']:.1f} x the time,"
        f" {told['most_mb'] / AIM_MB:.1f} x the memory"
    )


if __name__ == "__main__":
    main()
