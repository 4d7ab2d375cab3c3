"""How long a round takes from an unchanged book: aim 300 colonies x 200 members in 4 s, 600 MB.

The book is the demo's notebook over and over, under other names of colonies and yards. Every size
is measured in a new process: warm (the kernel compiled, the book read once before), with the
time of its parts and the most memory it took. Cost should be linear in colonies.
"""

import csv
import json
import resource
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from combwright.records.engine import open_book, writing
from combwright.records.weather import keep_weather
from combwright.services.book import add_notebook
from combwright.services.demo import CLIMATE, ON, known_weather, write_demo
from combwright.services.gathering import Asked, gather
from combwright.services.round import round_sheet

SIZES = (75, 150, 300)
MEMBERS = 200
AIM_S, AIM_MB, AIM_COLONIES = 4.0, 600.0, 300


def write_book(folder: Path, colonies: int) -> Path:
    """Write a book of so many colonies in yards of about sixteen."""
    demo = write_demo(folder / "demo")
    with demo.notebook.open(encoding="utf-8") as file:
        lines = list(csv.DictReader(file))
    names = list(dict.fromkeys(line["colony"] for line in lines))
    notebook = folder / f"{colonies}.csv"
    with notebook.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(lines[0]))
        writer.writeheader()
        for copy in range(-(-colonies // len(names))):
            kept = names[: colonies - copy * len(names)]
            writer.writerows(
                {**line, "colony": f"{line['colony']} {copy}", "yard": f"{line['yard']} {copy}"}
                for line in lines
                if line["colony"] in kept
            )
    book = folder / f"{colonies}.book"
    add_notebook(book, notebook)
    engine = open_book(book)
    with writing(engine) as db:
        keep_weather(db, CLIMATE, known_weather(), "sampled")
    engine.dispose()
    return book


def measure(book: Path) -> dict[str, float]:
    """Time one warm round and its first part, the belief."""
    gather(book, Asked(ON, members=20)).follow("Bramble 0")  # warms kernel and files
    start = perf_counter()
    sheet = round_sheet(book, ON, members=MEMBERS)
    whole = perf_counter() - start
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    start = perf_counter()
    gathered = gather(book, Asked(ON, members=MEMBERS))
    read = perf_counter() - start
    for colony in gathered.replay.colonies:
        gathered.replay.follow(colony, ON)
    belief = perf_counter() - start
    return {
        "colonies": len(sheet.colonies),
        "read_s": read,
        "belief_one_thread_s": belief,
        "round_s": whole,
        "most_mb": most,
    }


def main() -> None:
    """Print a line a size, and what a colony costs at each."""
    if len(sys.argv) > 1:
        print(json.dumps(measure(Path(sys.argv[1]))))
        return
    with TemporaryDirectory() as folder:
        for size in SIZES:
            book = write_book(Path(folder), size)
            command = (sys.executable, __file__, str(book))
            done = subprocess.run(command, check=True, capture_output=True)  # noqa: S603
            told = json.loads(done.stdout)
            print(
                f"{told['colonies']:4} colonies  round {told['round_s']:6.2f} s"
                f"  {1000.0 * told['round_s'] / told['colonies']:5.1f} ms each"
                f"  (read {told['read_s']:.2f} s, belief on one thread"
                f" {told['belief_one_thread_s']:.2f} s)  {told['most_mb']:4.0f} MB"
            )
    print(
        f"aim {AIM_COLONIES:5} colonies  {AIM_S:.0f} s, {AIM_MB:.0f} MB:"
        f" {told['round_s'] / AIM_S * AIM_COLONIES / told['colonies']:.1f} x the time,"
        f" {told['most_mb'] / AIM_MB:.1f} x the memory"
    )


if __name__ == "__main__":
    main()
