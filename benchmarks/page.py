"""How long the server takes for a page, 300 colonies and a season of notes in the book.

Aim: 95 % of requests under 150 ms. A season is 30 visits to each colony: the demo's notes over
and over, under other names and on later days. The pages are asked for over HTTP on this machine,
in a shuffled order, one at a time, with a note written after every tenth. What is worked out on
demand (a round, the weeks ahead of a colony, what if) shows progress and is timed apart.
"""

import random
import threading
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median, quantiles
from tempfile import TemporaryDirectory
from uuid import uuid4

import httpx
import uvicorn

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.demo import ON, VISITS, write_demo
from combwright.services.rounds.planned_note import as_advised
from combwright.terms.entries import PAPERS, Kit, Noted, Split, Unite
from combwright.web.app import build
from combwright.web.desk import Desk, lay_out

COLONIES, REPEATS, WEEKS = 300, 5, 7
ROUNDS, AIM_MS = 25, 150.0
SEASON = timedelta(days=7 * WEEKS)
LATER = ON + (REPEATS - 1) * SEASON
PORT = 8399
PAGES = (
    *(f"/round/{LATER}", f"/round/{LATER}?yard=Alder%20Bank%203", f"/bench/{LATER}", "/yards"),
    *(f"/round/{LATER}/note/Bramble%203", "/colony/Bramble%203", "/colony/Bramble%203/why"),
    *("/kit", "/settings", "/evidence", "/evidence/mites", "/numbers", "/glossary", "/why"),
    *("/syrup", "/more", "/waiting", "/sw.js", "/static/page.css"),
    *("/api/colonies", "/api/entries?colony=Bramble%203"),
)


def season(demo: list[Noted], copy: int) -> Iterator[Noted]:
    """Give the demo's notes under other names, five times one after the other."""
    for again in range(REPEATS):
        for each in demo:
            if isinstance(each, (Kit, Split, Unite, *PAPERS)):
                continue
            if again and each.kind in {"yard", "colony"}:
                continue
            named = {
                name: f"{getattr(each, name)} {copy}"
                for name in ("colony", "yard")
                if hasattr(each, name)
            }
            yield each.model_copy(update={**named, "id": uuid4(), "on": each.on + again * SEASON})


def write_book(folder: Path) -> Book:
    """Write the book."""
    demo = Book(write_demo(folder / "demo").book).now().entries
    colonies = sum(each.kind == "colony" for each in demo)
    book = Book(folder / "large.book")
    with book.writing() as db:
        for copy in range(-(-COLONIES // colonies)):
            keep(db, season(demo, copy))
    return book


def serve(desk: Desk) -> uvicorn.Server:
    """Start the server in a thread of its own."""
    config = uvicorn.Config(build(desk), port=PORT, log_level="error", lifespan="off")
    server = uvicorn.Server(config)
    threading.Thread(target=server.run, daemon=True).start()
    while not server.started:
        time.sleep(0.01)
    return server


def timed(client: httpx.Client, path: str) -> float:
    """Ask for a page and give its time in milliseconds."""
    start = time.perf_counter()
    answer = client.get(path, headers={"Accept": "text/html"})
    answer.raise_for_status()
    return 1000.0 * (time.perf_counter() - start)


def main() -> None:
    """Print a line a page, then all requests against the aim."""
    now = datetime.combine(LATER, datetime.min.time(), UTC)
    with TemporaryDirectory() as folder:
        book = write_book(Path(folder))
        desk = lay_out(book, clock=lambda: now)
        print(f"{len(desk.book.now().living)} colonies, {desk.book.now().last} entries, {VISITS=}")
        start = time.perf_counter()
        sheet = desk.rounds.sheet(LATER, 7)
        print(f"round worked out, shown with progress: {time.perf_counter() - start:.1f} s")
        server = serve(desk)
        with httpx.Client(base_url=f"http://127.0.0.1:{PORT}", timeout=60) as client:
            for path in PAGES:
                timed(client, path)  # the first time drawings are drawn and checks run
            asked = list(PAGES) * ROUNDS
            random.Random(1).shuffle(asked)  # noqa: S311  (an order, not a secret)
            times: dict[str, list[float]] = {path: [] for path in PAGES}
            notes = []
            for number, path in enumerate(asked):
                times[path].append(timed(client, path))
                if number % 10 == 0:
                    fields = as_advised(sheet.colonies[number // 10], LATER)
                    start = time.perf_counter()
                    client.post("/note", data=fields).raise_for_status()
                    notes.append(1000.0 * (time.perf_counter() - start))
            ahead = timed(client, "/colony/Teasel%203/ahead")
            what_if = timed(client, "/colony/Teasel%203/what-if?feed_g=1000")
        server.should_exit = True
    for path, each in times.items():
        print(f"{path[:48]:48} median {median(each):6.1f} ms  slowest {max(each):6.1f} ms")
    print(f"{'a note taken in':48} median {median(notes):6.1f} ms  slowest {max(notes):6.1f} ms")
    print(f"on demand: the weeks ahead {ahead:.0f} ms, what if {what_if:.0f} ms")
    everything = [one for each in times.values() for one in each]
    slow = quantiles(everything, n=100)[94]
    print(f"95 % of {len(everything)} requests within {slow:.0f} ms (aim {AIM_MS:.0f} ms)")


if __name__ == "__main__":
    main()
