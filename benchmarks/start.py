"""How long a person waits: answers of the command line (aim 0.3 s), and the demo (aim 20 s).

Each command runs in a new process, some times over; the first run, which may have to compile
Python's own files, is not counted. The demo is timed as after an install, with an empty folder
for the compiled kernel, and again with that folder filled.
"""

import os
import subprocess
import sys
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

PROGRAM = Path(sys.executable).parent / "combwright"
AIM_S = 0.3
AIM_DEMO_S = 20.0
RUNS = 9
COMMANDS = (
    "--help",
    "mix --ratio 2 --sugar-kg 10 --json",
    "ripe --index 1.4915 --at-c 20 --json",
    "warm --json",
    "mites --tray 33 --days 1 --month 8 --json",
    "evidence syrup --json",
    "evidence --json",
)


def seconds(*command: str, cache: str | None = None) -> float:
    """Run a command once and give its wall time."""
    environment = os.environ if cache is None else os.environ | {"XDG_CACHE_HOME": cache}
    start = perf_counter()
    subprocess.run(command, check=True, capture_output=True, env=environment)  # noqa: S603
    return perf_counter() - start


def demo() -> None:
    """Print how long the demo takes the first time and the next."""
    with TemporaryDirectory() as folder:
        words = (str(PROGRAM), "demo", "--dir", f"{folder}/demo")
        for told in ("demo, first start after install", "demo, next start"):
            took = seconds(*words, cache=f"{folder}/cache")
            print(f"{told:45} {took:5.2f} s{'':17}   {took / AIM_DEMO_S:4.1f} x the aim")


def main() -> None:
    """Print a line a command: median, fastest, slowest, and the median against the aim."""
    bare = median(seconds(sys.executable, "-c", "") for _ in range(RUNS))
    print(f"{'bare interpreter':45} {bare:5.2f} s")
    for command in COMMANDS:
        words = (str(PROGRAM), *command.split())
        seconds(*words)
        times = sorted(seconds(*words) for _ in range(RUNS))
        middle = median(times)
        print(
            f"{command:45} {middle:5.2f} s ({times[0]:.2f} to {times[-1]:.2f})"
            f"   {middle / AIM_S:4.1f} x the aim"
        )
    demo()


if __name__ == "__main__":
    main()
