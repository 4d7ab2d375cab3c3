"""A hundred thousand hostile inputs over every way in: no traceback, no 5xx, the book unharmed.

``HOSTILE=5000 python -m pytest -m validation tests/validation/hostile/test_hostile.py`` tries less,
``SEED=n`` others, ``MOST_S=60`` no longer than that for each way. What went wrong is named by its
way and number, from which it is made again.
"""

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random
from time import monotonic, process_time
from typing import Any, Final
from urllib.parse import quote, urlencode

import pytest
from fastapi.testclient import TestClient
from tests.cli.typed import typed
from tests.commands import COMMANDS
from tests.noted import noted
from tests.services.book.test_photos import picture
from tests.validation.hostile import inputs
from tests.web.desks import PAGE, client_of, desk_with_round

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_notebook, export
from combwright.services.demo import ON, Paths
from combwright.services.weather.kept_weather import add_file
from combwright.terms.errors import CombwrightError
from combwright.web.desk import Desk

pytestmark = [
    pytest.mark.validation,
    pytest.mark.filterwarnings("ignore::getpass.GetPassWarning"),  # there is no terminal here
]
MANY: Final = int(os.environ.get("HOSTILE", "100000"))
SEED: Final = int(os.environ.get("SEED", "20261127"))
MOST_S: Final = float(os.environ.get("MOST_S", "inf"))  # for each way
WAYS: Final = {  # shares: a page or a command takes five times what an entry does
    "notebook": 0.2,
    "json": 0.2,
    "weather": 0.2,
    "api": 0.2,
    "address": 0.05,
    "form": 0.05,
    "upload": 0.05,
    "options": 0.05,
}
AT_DESK: Final = {"api", "address", "form", "upload"}
RENEWED: Final = 250  # inputs after which a small book has grown enough
BRAMBLE: Final = "2027-04-03,Alder Bank,Bramble,national timber"
SLOW: Final = {"serve", "demo", "evidence", "weather fetch"}  # they wait, or work for minutes
PATHS: Final = (
    *("/round/{}", "/bench/{}", "/colony/{}", "/colony/{}/why", "/colony/{}/ahead", "/enter/{}"),
    *("/mend/{}", "/photo/{}", "/book.{}", "/calendar/{}.ics", "/numbers/{}", "/evidence/{}"),
    *(
        "/api/colonies/{}",
        "/api/round/{}",
        "/round/2027-04-24/note/{}",
        "/supply/plan?on={}",
        "/{}",
    ),
    *(
        "/api/entries?colony={}",
        "/api/syrup?ratio={}&litres=10",
        "/syrup?ratio={}",
        "/find?words={}",
    ),
    *("/register?year={}", "/login?to={}", "/round/2027-04-24?yard={}", "/round?on={}"),
)


@pytest.fixture(scope="module")
def desk(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    yield from desk_with_round(demo, tmp_path_factory.mktemp("hostile"))


@pytest.fixture(scope="module")
def client(desk: Desk) -> Iterator[TestClient]:
    with client_of(desk) as made:
        made._transport.raise_server_exceptions = False  # type: ignore[attr-defined]  # noqa: SLF001
        yield made


def safe(text: object) -> str:
    return str(text).encode("utf-8", "replace").decode()


class Ways:
    """Each way in: it tries one input and says what was wrong with the answer, if anything."""

    def __init__(self, client: TestClient | None, room: Path, root: Path) -> None:
        self.room, self._client, self._tried = room, client, 0
        self.samples = sorted(
            each for each in (root / "tests/data/weather").iterdir() if each.suffix != ".md"
        )
        self.commands = [words for words in COMMANDS if words not in SLOW]
        self.known: dict[str, list[str]] = {
            words: [one for param in getattr(COMMANDS[words], "params", []) for one in param.opts]
            for words in self.commands
        }
        self.begun = noted(room, BRAMBLE, headings="date,yard,colony,hive").read_bytes()
        self.small = self._new()

    @property
    def client(self) -> TestClient:
        assert self._client is not None
        return self._client

    def _new(self) -> Book:
        path = self.room / f"{self._tried}.book"
        path.write_bytes(self.begun)
        return Book(path)

    def look(self) -> None:
        """Look through the small book, and now and then go on with a new one."""
        self._tried += 1
        if self._tried % RENEWED == 0:
            self.finish()
            self.small = self._new()

    def finish(self) -> None:
        assert self.small.check() == []
        self.small.close()
        assert self.small.file
        self.small.file.unlink()

    def notebook(self, luck: Random) -> str:
        return self._added(inputs.notebook(luck))

    def json(self, luck: Random) -> str:
        return self._added(inputs.as_json(luck))

    def _added(self, content: bytes) -> str:
        file = self.room / "in.csv"
        file.write_bytes(content)
        return _sentence(lambda: add_notebook(self.small, file))

    def api(self, luck: Random) -> str:
        body = inputs.as_json(luck)
        told = self.client.post(
            "/api/entries", content=body, headers={"Content-Type": "application/json"}
        )
        return _status(told)

    def address(self, luck: Random) -> str:
        part = luck.choice((*inputs.NASTY, *inputs.NAMES, "visit", "csv"))
        path = luck.choice(PATHS).format(quote(safe(part)[:2000], safe=luck.choice(["", "/"])))
        return _status(self.client.get(path, headers=luck.choice([PAGE, {}])))

    def form(self, luck: Random) -> str:
        path = luck.choice(["/note", "/note/undo", "/login", "/mend/" + inputs.ENTRY["id"]])
        path = luck.choice([path, f"/enter/{quote(luck.choice(inputs.KINDS))}"])
        told = {"note": inputs.ENTRY["id"], "on": str(ON), "colony": luck.choice(inputs.NAMES)}
        told |= {
            luck.choice((*inputs.FIELDS, "feed_g", "id", "undoes")): safe(inputs.value(luck))
            for _ in range(4)
        }
        headers = luck.choice([PAGE, {}]) | {"Content-Type": "application/x-www-form-urlencoded"}
        return _status(self.client.post(path, content=urlencode(told), headers=headers))

    def upload(self, luck: Random) -> str:
        path, field = luck.choice(
            [("/book/add", "file"), ("/weather/add", "file"), ("/note", "photo")]
        )
        content = luck.choice(
            [inputs.notebook(luck), inputs.bent(picture(), luck), inputs.as_json(luck)]
        )
        name = luck.choice(inputs.NASTY)[:300].encode("utf-8", "surrogatepass")
        name = name.translate(None, b'"\r\n\0')
        head = f'--x\r\nContent-Disposition: form-data; name="{field}"; filename="'.encode() + name
        body = head + b'"\r\n\r\n' + content + b"\r\n--x--\r\n"
        headers = {"Content-Type": "multipart/form-data; boundary=x"} | luck.choice([PAGE, {}])
        return _status(self.client.post(path, content=body, headers=headers))

    def weather(self, luck: Random) -> str:
        name, content = inputs.weather(self.samples, luck)
        file = self.room / name
        file.write_bytes(content)
        return _sentence(lambda: add_file(self.small, file, None, None, "Dublin Airport"))

    def options(self, luck: Random) -> str:
        words = inputs.words(self.commands, self.known, luck)
        given = [word for word in words if not word.startswith("/")]
        with pytest.MonkeyPatch.context() as patch:
            patch.chdir(self.room)
            done = typed(*given)
        return "" if done.returncode in {0, 1, 2} else f"exit code {done.returncode}"


def _sentence(act: Callable[[], Any]) -> str:
    try:
        act()
    except CombwrightError as error:
        return "" if str(error).strip() else "an empty sentence"
    return ""


def _status(answer: Any) -> str:  # noqa: ANN401  (the client's own)
    told: int = answer.status_code
    return f"status {told}" if told >= 500 and told != 503 else ""


@pytest.mark.parametrize("way", WAYS)
def test_whatever_comes_in_is_answered(
    request: pytest.FixtureRequest, tmp_path: Path, root: Path, way: str
) -> None:
    client = request.getfixturevalue("client") if way in AT_DESK else None
    ways, wrong, number, began = Ways(client, tmp_path, root), [], 0, monotonic()
    try_one = getattr(ways, way)
    for number in range(1, 1 + round(MANY * WAYS[way])):
        if monotonic() - began > MOST_S:
            break
        try:
            told = try_one(inputs.dice(SEED, way, number))
        except Exception as error:  # noqa: BLE001  (whatever it is, it is what is looked for)
            told = f"{type(error).__name__}: {error}"
        if told:
            wrong.append(f"SEED={SEED} {way} {number}: {told[:200]}")
        ways.look()
    ways.finish()
    print(f"{way}: {number} inputs, {process_time():.0f} s of processor until now")  # noqa: T201
    assert wrong == []


def test_after_all_that_the_book_is_whole(desk: Desk, tmp_path: Path) -> None:
    assert desk.book.check() == []
    (tmp_path / "all.json").write_text(export(desk.book, "json"), "utf-8")
    again = Book(tmp_path / "again.book")
    add_notebook(again, tmp_path / "all.json")
    assert again.now().last == desk.book.now().last
