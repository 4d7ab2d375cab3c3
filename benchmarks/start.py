"""How long a person waits for an answer of the command line, from nothing: aim 0.3 s.

Each command runs in a new process, some times over; the first run, which may have to compile
Python's own files, is not counted.
"""

import subprocess
import sys
from pathlib import Path
from statistics import median
from time import perf_counter

PROGRAM = Path(sys.executable).parent / "combwright"
AIM_S = 0.3
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


def seconds(*command: str) -> float:
    """Run a command once and give its wall time."""
    start = perf_counter()
    subprocess.run(command, check=True, capture_output=True)  # noqa: S603
    return perf_counter() - start


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


if __name__ == "__main__":
    main()
