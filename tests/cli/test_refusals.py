"""Every refusal of the terminal, the API, the pages and the files: in plain words, shown as it is.

Those beside the fields of forms are in ``tests/web/test_refusals.py``. Each other one is provoked
here, or named by the test of its own room; the source tells which there are.
"""

import ast
import re
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest
from fastapi.testclient import TestClient
from tests.cli.typed import typed
from tests.demo import copied
from tests.web.desks import PAGE, ROUND, client_of, desk_on
from tests.web.test_refusals import ROOMS, is_said, texts_of

import combwright
from combwright.kit.catalogue import catalogue
from combwright.services.demo import Paths
from combwright.sources.met_eireann_daily import read_met_eireann_daily
from combwright.sources.met_norway import read_met_norway
from combwright.sources.open_meteo import read_open_meteo
from combwright.sources.table import read_table
from combwright.terms import errors
from combwright.terms.errors import CombwrightError

SOURCE = Path(combwright.__file__).parent
TESTS = Path(__file__).parent.parent
TREE = {
    name
    for name, one in vars(errors).items()
    if isinstance(one, type) and issubclass(one, CombwrightError)
}
OF_A_PROGRAM = re.compile(r"`|(?<!\w)'|'(?!\w)|\bNone\b|\bTrue\b|isoformat|_")
HELPLESS = {"set_up:  cannot be …: …."}  # the gate itself says what it takes
UNNAMED: set[str] = set()
FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
SIDE_BY_SIDE, SHORTEST = 2, 7  # words of a refusal that a test must name, and their signs

WORDS = (
    ("mites --tray 5", "--tray needs --days."),
    ("mites --month 5 --date 2026-08-15 --tray 5 --days 3", "--month 5 and --date"),
    ("mites --tray 5 --days 3 --bees 300", "do not go together."),
    ("supply --what-if nonsense BOOK", "“nonsense” is not understood."),
    ("warm --frames-of-bees 12 --frames 6 --outside-c 5", "Bees cannot cover 12 of 6 frames."),
    ("queens --from nonsense --on 2027-05-20", "There is no start “nonsense”."),
    ("prices --aim nonsense BOOK", "There is no aim “nonsense”."),
    ("prices --set nonsense=5 BOOK", "There is no price of “nonsense”."),
    ("bees sheet nonsense BOOK", "There is no sale “nonsense” in the book."),
    ("honey labels nonsense BOOK", "There is no lot “nonsense” in the book."),
    ("honey trace nonsense BOOK", "is no lot, batch of honey, colony, yard or seller"),
    ("buyers delete Nobody --sure BOOK", "No note names “Nobody” as a buyer."),
    ("book check --code 0000-0000-0000 BOOK", "No seal of this book has the code"),
    ("book history --yard nonsense BOOK", "There is no yard “nonsense” in the book."),
    ("why Nobody --on 2027-04-24 BOOK", "No colony “Nobody” stands in the book on 24 April 2027."),
    ("weather forecast --yard nonsense --contact me@example.org BOOK", "There is no yard"),
    ("people invite  --role helper BOOK", "This is no name."),
    ("people role Nobody reader BOOK", "Nobody called “Nobody” shares this book."),
    ("serve --host 0.0.0.0 BOOK", "Listening on 0.0.0.0 would open the book to the whole network."),
    ("season --frames-of-bees 30 --stores-kg 5", "Bees of 30 frames do not go onto"),
    ("round --minutes -4 BOOK", "-4 minutes are no time for a round."),
    ("colony Bramble --on 4/5/2027 BOOK", "could be 4 May or 5 April 2027"),
    ("score --on 4/5/2027 BOOK", "could be 4 May or 5 April 2027"),
    ("weather show --from soon", "“soon” is not a day"),
    ("mix --ratio 2 --sugar-kg -1", "it is more than 0 and at most 100000 kg"),
    ("mix a\0b", "An argument holds a zero byte."),
    ("mix \udcff", "is not UTF-8 text."),
)


@pytest.fixture(scope="module")
def client(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    desk = desk_on(copied(demo, tmp_path_factory.mktemp("refusals")))
    yield client_of(desk)
    desk.close()


@pytest.mark.parametrize(("words", "said"), WORDS)
def test_the_terminal_refuses_in_a_sentence(demo: Paths, words: str, said: str) -> None:
    line = [part for word in words.split(" ") for part in named(word, demo)]
    done = typed(*line)
    assert (done.returncode, done.stdout) == (2, ""), done
    assert said in done.stderr
    assert done.stderr.startswith("combwright: ")


def named(word: str, demo: Paths) -> list[str]:
    return ["--book", str(demo.book)] if word == "BOOK" else [word]


ASKED = (
    ("/enter/nonsense", "There is no form for “nonsense”."),
    ("/calendar/nonsense.ics", "There is no such calendar."),
    ("/measures", "There is no such page."),
    ("/hive/labels.pdf?sheet=3", "There is no sheet of 3 labels here."),
    ("/honey/labels?lot=nonsense", "There is no lot “nonsense” in the book."),
    ("/history?yard=nonsense", "There is no yard “nonsense” in the book."),
    ("/join/nonsense", "This link has been used, or is too old."),
    ("/round/2039-01-01", "1 January 2039 is more than 400 days from the last note."),
    ("/api/colonies/Nobody", "There is no colony “Nobody” in the book."),
    ("/evidence/nonsense", "There is no evidence on “nonsense”."),
)
BEGUN = {"yard": "Home", "place": "Bantry", "colony-1": "1", "hive-1": "national timber"}
SENT: tuple[tuple[str, dict[str, str], str], ...] = (
    ("/note/undo", {}, "This names no note."),
    ("/begin", BEGUN, "This table has no id."),
    (f"{ROUND}/written", {}, "This page has no id."),
)


@pytest.mark.parametrize(("where", "said"), ASKED)
@pytest.mark.parametrize("accept", [PAGE, {}], ids=["page", "JSON"])
def test_an_address_is_refused_in_a_sentence(
    client: TestClient, where: str, said: str, accept: dict[str, str]
) -> None:
    answer = client.get(where, headers=accept)
    assert 400 <= answer.status_code < 500
    assert said in answer.text


@pytest.mark.parametrize(("where", "told", "said"), SENT)
def test_what_is_sent_is_refused_in_a_sentence(
    client: TestClient, where: str, told: dict[str, str], said: str
) -> None:
    answer = client.post(where, data=told)
    assert 400 <= answer.status_code < 500
    assert said in answer.json()["what"]
    assert answer.json()["remedy"]


NOTES = """date,yard,colony,hive,frames of bees
soon,Home,Alder,national timber,5-6
"""
UNEVEN = """{"latitude": 53, "daily_units": {"temperature_2m_max": "°C"},
    "daily": {"time": ["2026-01-01"], "temperature_2m_max": []}}"""
WEATHER = (
    (read_open_meteo, "[" * 100_000, "This JSON is nested too deep."),
    (read_open_meteo, "1" * 5000, "This JSON holds a number of thousands of digits."),
    (read_open_meteo, "[1, 2]", "The answer holds 2 places."),
    (read_open_meteo, '{"error": true, "reason": "too many"}', "The service says: too many."),
    (read_open_meteo, "{}", "There is no “latitude” where the service puts it."),
    (
        read_open_meteo,
        '{"latitude": 53, "hourly": {}}',
        "The answer has neither daily nor hourly temperatures and rain.",
    ),
    (
        read_open_meteo,
        UNEVEN,
        "“temperature_2m_max” has not one value for each time.",
    ),
    (
        read_met_norway,
        '{"geometry": {"coordinates": []}, "properties": {"timeseries": []}}',
        "The place has no coordinates.",
    ),
    (read_met_eireann_daily, "nothing", "There is no line that starts with “date”."),
    (read_met_eireann_daily, "date,ind,wdsp\n", "This station has no temperatures or no rain."),
    (read_table, "date,tmax_c\n", "There is no column for tmin, rain."),
    (read_table, "date,tmax_x\n", "The heading “tmax_x” does not say its unit."),
)
KIT = (
    ("[[basket]]\nname = 'x'", "“basket” is not a kind of kit."),
    ("hive = 1", "“[hive]” needs double brackets."),
)


@pytest.mark.parametrize(("read", "text", "said"), WEATHER)
def test_a_file_of_weather_is_refused_in_a_sentence(
    read: Callable[[str, str], object], text: str, said: str
) -> None:
    with pytest.raises(CombwrightError, match=re.escape(said)) as caught:
        read(text, "a file")
    assert caught.value.remedy


def test_a_notebook_and_a_passphrase_are_refused_in_a_sentence(tmp_path: Path) -> None:
    notes, words, book = (tmp_path / name for name in ("notes.csv", "words.txt", "a.book"))
    notes.write_text(NOTES, "utf-8")
    words.write_text("short", "utf-8")
    told = typed("book", "add", str(notes), "--book", str(book))
    assert told.returncode == 2
    assert "“soon” is not a day." in told.stdout + told.stderr
    assert "“5-6” is a span." in told.stdout + told.stderr
    told = typed("people", "begin", "Anna", "--passphrase-file", str(words), "--book", str(book))
    assert (told.returncode, "The passphrase has 5 signs." in told.stderr) == (2, True)


@pytest.mark.parametrize(("text", "said"), KIT)
def test_a_file_of_kit_is_refused_in_a_sentence(text: str, said: str) -> None:
    with pytest.raises(CombwrightError, match=re.escape(said)) as caught:
        catalogue({"own.toml": text})
    assert caught.value.remedy


@cache
def refused() -> list[tuple[str, list[str], ast.Call]]:
    """Go through the source for every refusal, but those beside the fields of forms."""
    found: dict[ast.Call, list[tuple[str, list[str], ast.Call]]] = {}
    for path in sorted(SOURCE.rglob("*.py")):
        text = path.read_text("utf-8")
        if path in ROOMS or "Error(" not in text:
            continue
        for body in (each for each in ast.walk(ast.parse(text)) if isinstance(each, FUNCTIONS)):
            for call in (each for each in ast.walk(body) if isinstance(each, ast.Call)):
                if ast.unparse(call.func) in TREE and call.args and call not in found:
                    found[call] = [
                        (f"{path.stem}: {'…'.join(parts)}", parts, call)
                        for parts in texts_of(call.args[0], body)
                    ]
    return [one for some in found.values() for one in some]


def phrases(parts: list[str]) -> Iterator[str]:
    """Give what tells a refusal from others: some words of it side by side."""
    for part in parts:
        words = part.split()
        for at in range(max(1, len(words) - SIDE_BY_SIDE + 1)):
            phrase = " ".join(words[at : at + SIDE_BY_SIDE]).strip(".,:;“” ")
            if len(phrase) >= SHORTEST:
                yield phrase


def test_every_refusal_is_in_plain_words_and_says_what_to_do() -> None:
    assert len(refused()) > 200
    assert [name for name, parts, _ in refused() if OF_A_PROGRAM.search(" ".join(parts))] == []
    helpless = {
        name
        for name, _, call in refused()
        if ast.unparse(call.func) != "SourceError"  # which has a remedy of its own
        and not any(each.arg == "remedy" for each in call.keywords)
    }
    assert helpless == HELPLESS


def test_every_refusal_is_named_by_a_test() -> None:
    told = "\n".join(path.read_text("utf-8") for path in sorted(TESTS.rglob("*.py")))
    unnamed = {
        name
        for name, parts, _ in refused()
        if any(parts)
        and not any(phrase in told for phrase in phrases(parts))
        and not is_said(parts, told)
    }
    assert unnamed == UNNAMED
