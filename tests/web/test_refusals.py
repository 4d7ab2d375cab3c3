"""Every refusal that a form can meet: shown on the page, beside its field, once."""

import ast
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import unescape
from io import BytesIO
from pathlib import Path
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, client_of, desk_with_round
from tests.web.test_entering import FILLED

import combwright
from combwright.services.book.entry_form import FORMS
from combwright.services.book.hive_form import all_taken
from combwright.services.demo import ON, Paths
from combwright.terms.entries.fields import fields_of
from combwright.web.desk import Desk

SOURCE = Path(combwright.__file__).parent
# Where a form is refused: which of a call's arguments says what is wrong.
ROOMS = (
    *sorted((SOURCE / "records/replay").glob("*.py")),
    *(SOURCE / f"kit/{name}.py" for name in ("fits", "standing", "catalogue")),
    *(SOURCE / f"weather/{name}.py" for name in ("climates", "forage")),
    *(
        SOURCE / f"services/book/{name}.py"
        for name in ("beginning", "field_words", "mending", "notes", "photos")
    ),
)
SAYING = {"wrong": 2, "Misfit": 1, "FieldProblem": 1, "NotFoundError": 0}
# What no form can meet, and what is said elsewhere.
ELSEWHERE = {
    "This correction names the entry": "files and programs alone correct by id",
    "was lost on the way to the tank": "odd, not refused",
    "is a contact: something came from": "odd, not refused",
    "could be several": "the form offers whole names; typed ones come with files",
    "dummy boards in one box": "the field itself takes no more",
    "supers: … at most are meant": "the field itself takes no more",
    "Nothing is to be changed.": "the terminal alone",
    "has no “": "the terminal alone",
    "with “": "an address, answered with a page of its own",
    "There is no such photo.": "an address, answered with a page of its own",
}
FERN = str(uuid4())
LATER = {"on": "2027-04-25"}
JARS = FILLED["jar run"]
# Notes of the day that the refusals need, in their order.
BEFORE: tuple[tuple[str, dict[str, str]], ...] = (
    ("colony", FILLED["colony"] | {"id": FERN}),
    ("end", FILLED["end"]),
    *((kind, FILLED[kind]) for kind in ("batch", "batch counts", "order", "honey batch")),
    ("honey batch", FILLED["honey batch"] | {"honey": "Heather", "kg": "10"}),
    ("jar run", JARS),
    *((kind, FILLED[kind]) for kind in ("honey sale", "bees sold", "product")),
    ("suspicion", FILLED["suspicion"] | {"yard": "Quarry Field"}),
    ("product", {"product": "Slow strip", "withdrawal_days": "30"}),
)


@dataclass(frozen=True)
class Case:
    """A form that is refused: where it goes, what it says, beside which field, in which words."""

    where: str
    fields: dict[str, str]
    beside: str
    words: str
    photo: bytes = b""


def entered(kind: str, change: dict[str, str], beside: str, words: str) -> Case:
    return Case(f"/enter/{kind}", FILLED[kind] | change, beside, words)


def noted(change: dict[str, str], beside: str, words: str, photo: bytes = b"") -> Case:
    return Case("/note", {"colony": "Bramble"} | change, beside, words, photo)


def begun(change: dict[str, str], beside: str, words: str) -> Case:
    told = {"yard": "Home", "place": "Bantry", "colony-1": "1", "hive-1": "national timber"}
    return Case("/begin", told | change, beside, words)


CASES = (
    entered("colony", {"colony": "Ivy", "yard": "Nowhere"}, "yard", "no yard “Nowhere”"),
    entered("colony", {"colony": "Teasel"}, "colony", "a colony “Teasel” already"),
    entered("colony", {"colony": "TEASEL"}, "colony", "only in its capitals"),
    entered("colony", {"colony": "Ivy", "hive": "basket"}, "hive", "in the catalogue"),
    entered("yard", {"climate": "Paris"}, "climate", "no climate “Paris”"),
    entered("yard", {"district": "Paris"}, "district", "no forage calendar for “Paris”"),
    entered("unite", {"into": "Clary"}, "into", "cannot be united with itself"),
    entered("queen", LATER, "colony", "left the book on"),
    entered("queen", {"colony": "Nobody"}, "colony", "no colony “Nobody”"),
    entered("queen", {"colony": "Fern", "on": "2027-04-20"}, "colony", "enters the book only on"),
    entered("queen", {"colony": "Teasel", "on": "2039-04-20"}, "on", "lies years ahead"),
    entered("queen", {"colony": "Teasel", "on": "1927-04-20"}, "on", "lies in the year 1927"),
    entered("split", {"new_colony": "Oak", "frames_of_bees": "20"}, "frames_of_bees", "were split"),
    entered(
        "split",
        {"new_colony": "Oak", "frames_of_bees": "8", "colony": "Tansy"},
        "frames_of_bees",
        "do not fit into",
    ),
    entered("honey sale", {"jars": "80"}, "jars", "went out, but 50 were filled"),
    entered("jar run", {}, "lot", "a lot “L27114-1” already"),
    entered("honey batch", {}, "honey", "a batch of honey “Spring” already"),
    entered("jar run", {"lot": "L2", "honey": "None"}, "honey", "no batch of honey “None”"),
    entered("jar run", {"lot": "L2", "jars": "900"}, "jars", "more than there is"),
    entered("honey source", {"yard": ""}, "colony", "It must come from a colony"),
    entered("honey source", {"yard": "", "from_honey": "Spring", "kg": ""}, "kg", "be weighed"),
    entered("honey source", {"yard": "", "from_honey": "Spring"}, "from_honey", "come from itself"),
    entered("honey source", {"yard": "", "supplier": "Byrne"}, "country", "country of bought"),
    entered("honey source", {"kg": "20"}, "kg", "in the tank, but only 20 kg came in"),
    entered(
        "honey source",
        {"yard": "", "honey": "Heather", "from_honey": "Spring", "kg": "39"},
        "kg",
        "less than is run over",
    ),
    entered("purchase", {"product": "Nothing"}, "product", "no medicine “Nothing”"),
    entered("purchase", {"expiry": "2027-01-01"}, "expiry", "before it was bought"),
    entered("order", {}, "order", "There is order “A9” already"),
    entered("order news", {"order": "Z"}, "order", "There was no order “Z”"),
    entered("order", {"order": "B1", "wanted_by": "2027-04-01"}, "wanted_by", "was over when"),
    entered(
        "order", {"order": "B1", "what": "mated queen", "frames": "5"}, "frames", "is not sold by"
    ),
    entered("order", {"order": "B1", "frames": "12"}, "frames", "more than a nuc box holds"),
    entered("order news", {"week": ""}, "week", "A promise needs its week"),
    entered("order news", {"week": "2027-04-12"}, "week", "was over on"),
    entered("order news", {"event": "delivered", "week": "", "count": "9"}, "count", "only 2 were"),
    entered("batch counts", {"on": "2027-05-01"}, "on", "before the batch began"),
    entered("batch counts", {"accepted": "31"}, "accepted", "31 accepted, but only 30 begun"),
    entered("bees sold", {}, "sale", "a sale “9” already"),
    entered("bees sold", {"sale": "10", "yard": ""}, "yard", "an inspector asks for it"),
    entered("bees sold", {"sale": "10", "inspected": "2027-05-01"}, "inspected", "inspected on"),
    entered("bees sold", {"sale": "10", "order": "Z"}, "order", "no order “Z” here"),
    entered("movement", {"yard": ""}, "yard", "It must have gone to a yard"),
    entered("movement", {"from_yard": "Quarry Field"}, "on", "Nothing may leave “Quarry"),
    noted({"frames_of_bees": "0", "eggs": "yes"}, "eggs", "cannot be eggs without bees"),
    noted({"frames_of_brood": "20"}, "frames_of_brood", "20 frames of brood in"),
    noted({"feeder": "2"}, "feeder", "is no note of a feeder"),
    noted({"frames": "4", "foundation": "6"}, "foundation", "frames of foundation among"),
    noted({"colony": "Nuc Ash", "brood_boxes": "3"}, "brood_boxes", "brood boxes on"),
    noted({"colony": "Nuc Ash", "supers": "1"}, "supers", "takes no super"),
    noted({"frames": "20"}, "frames", "do not fit into"),
    noted({"supers": "0", "honey_kg": "9", "harvest_supers": "3"}, "harvest_supers", "were taken"),
    noted({"frames_of_bees": "9"}, "frames_of_bees", "is 9 here and 7 in another note"),
    noted({"colony": "Vetch", "honey_kg": "5"}, "honey_kg", "Honey of “Vetch” waits until"),
    noted({"note": ""}, "all", "The note has no id"),
    Case(f"/mend/{FERN}", FILLED["colony"] | {"reason": ""}, "reason", "it is not given"),
    noted({}, "photo", "This is not a photo", b"no photo"),
    noted({}, "photo", "The photo has", b"x" * 4_000_001),
    begun({"colony-1": ""}, "colony-1", "No colony is named"),
    begun({"frames-2": "5"}, "colony-2", "This row has no name"),
    begun({"place": "Newport"}, "place", "There are several of that name"),
    begun({"place": "Nowhereville"}, "place", "No place “Nowhereville”"),
    begun({"place": ""}, "place", "Where is the yard?"),
)
FAULTS = re.compile(r'id="fault-([^"]+)"[^>]*>\s*([^<\s][^<]*)<')
NOTES = (
    {"colony": "Bramble", "frames_of_bees": "7"},
    {"colony": "Vetch", "substance": "formic acid", "product": "Slow strip"},
)


def texts_of(said: ast.expr, body: ast.AST) -> Iterator[list[str]]:
    """Give the fixed parts of every text that an expression may be, in their order."""
    match said:
        case ast.Constant(value=str(words)):
            yield [words]
        case ast.JoinedStr(values=parts):
            yield [str(one.value) for one in parts if isinstance(one, ast.Constant)]
        case ast.IfExp(body=one, orelse=other):
            yield from texts_of(one, body)
            yield from texts_of(other, body)
        case ast.BinOp(left=first):
            yield from texts_of(first, body)
        case ast.Name(id=name):
            for each in ast.walk(body):
                if isinstance(each, ast.Assign) and name in {ast.unparse(t) for t in each.targets}:
                    yield from texts_of(each.value, body)


def refusals() -> Iterator[tuple[str, list[str]]]:
    """Go through the source for every text with which a form is refused."""
    for path in ROOMS:
        tree = ast.parse(path.read_text("utf-8"))
        for body in (each for each in ast.walk(tree) if isinstance(each, ast.FunctionDef)):
            for call in (each for each in ast.walk(body) if isinstance(each, ast.Call)):
                if (at := SAYING.get(ast.unparse(call.func))) is not None:
                    for parts in texts_of(call.args[at], body):
                        yield f"{path.stem}: {'…'.join(parts)}", parts


def is_said(parts: Sequence[str], told: str) -> bool:
    return re.search(".+?".join(map(re.escape, parts)), told) is not None


def answer(client: TestClient, case: Case) -> tuple[int, str]:
    """Send a form as a browser does, with an id of its own, on the day of the round."""
    own = "note" if case.where == "/note" else "id"
    fields = {own: str(uuid4()), "on": str(ON)} | case.fields
    files = {"photo": ("hive.jpg", BytesIO(case.photo), "image/jpeg")} if case.photo else None
    sent = client.post(case.where, data=fields, files=files, headers=PAGE)
    return sent.status_code, sent.text


def words_on(page: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", page)).split())


@pytest.fixture(scope="module")
def desk(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """One desk for all: what is refused leaves it as it is."""
    yield from desk_with_round(demo, tmp_path_factory.mktemp("refusals"))


@pytest.fixture(scope="module")
def client(desk: Desk) -> TestClient:
    made = client_of(desk)
    for kind, told in BEFORE:
        assert answer(made, Case(f"/enter/{kind}", told, "", ""))[0] == 303, (kind, told)
    for told in NOTES:
        assert answer(made, Case("/note", told, "", ""))[0] in {200, 303}, told
    return made


def test_every_refusal_stands_beside_its_field_and_once(client: TestClient, desk: Desk) -> None:
    before, all_said, wrong = desk.book.now().last, [], []
    for case in CASES:
        status, page = answer(client, case)
        beside = re.search(rf'id="fault-{case.beside}"[^>]*>([^<]+)<', page)
        told = unescape(beside[1]) if beside else ""
        if status != 422 or case.words not in told or words_on(page).count(case.words) != 1:
            wrong.append((case, status, told or re.findall(r'class="fault"[^>]*>[^<]+', page)))
        all_said.append(told)
    assert not wrong
    assert desk.book.now().last == before
    unmet = {
        name
        for name, parts in refusals()
        if not any(is_said(parts, told) for told in all_said)
        and not any(words in name for words in ELSEWHERE)
    }
    assert unmet == set(), "a refusal without a case"


JUNK = ("?", "x" * 3000, "-999999", "nan", "a\x07b")
OF_A_PROGRAM = re.compile(r"[Ii]nput|should (be|match)|valid|[Vv]alue error|'|None|True|_")


@pytest.mark.parametrize("where", ["/note", *(f"/enter/{kind}" for kind in FORMS)])
def test_no_field_is_refused_in_the_words_of_a_program(client: TestClient, where: str) -> None:
    """Whatever is typed: each field that refuses it says so beside itself, in plain words."""
    names = all_taken() if where == "/note" else fields_of(FORMS[where.removeprefix("/enter/")])
    for junk in JUNK:
        own = {"colony": "Bramble", "on": str(ON)} if where == "/note" else {}
        status, page = answer(client, Case(where, dict.fromkeys(names, junk) | own, "", ""))
        told = {name: unescape(words) for name, words in FAULTS.findall(page)}
        assert (status, bool(told)) == (422, True)
        for name, words in told.items():
            plain = words.replace(junk, "")
            assert OF_A_PROGRAM.search(plain) is None, (name, words)
            assert re.match(r"[A-Z“].*\.", plain), (name, words)
