"""People who share a book: each comes in by their own words, and does what their role allows."""

import re
from datetime import timedelta
from functools import cache
from uuid import UUID, uuid4

import pyotp
import pytest
from fastapi.routing import APIRoute
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, Clock, client_of

from combwright.records.store.people_rows import add_person
from combwright.services.access import Caller
from combwright.services.demo import ON
from combwright.services.passphrases import hashed
from combwright.services.people.second_factor import confirm, offer
from combwright.services.people.sharing import (
    INVITED,
    door_lines,
    invite,
    invite_again,
    person_named,
)
from combwright.terms.errors import NotAllowedError
from combwright.terms.person import Person, Role
from combwright.web.app import EVERY
from combwright.web.desk import Desk
from combwright.web.roles import refuse_beyond_role

WORDS = {
    "Anna": "nineteen orange kettles whistle",
    "Ben": "velvet anchors drift northward",
    "Cleo": "paper lanterns over granite",
}
ROLES = {"Anna": Role.KEEPER, "Ben": Role.HELPER, "Cleo": Role.READER}


@pytest.fixture
def shared(desk: Desk) -> Desk:
    """Give a book that a keeper, a helper and a reader share."""
    with desk.book.writing() as db:
        for at, name in enumerate(WORDS):
            one = Person(UUID(int=at), name, ROLES[name], desk.clock())
            add_person(db, one, passphrase=hash_of(name))
    return desk


@cache
def hash_of(name: str) -> str:
    return hashed(WORDS[name])


def inside(desk: Desk, name: str) -> TestClient:
    """A browser in which somebody is logged in."""
    client = client_of(desk)
    caller = Caller(person_named(desk.book, name))
    client.cookies["combwright"] = desk.access.begin(desk.clock(), caller)
    return client


def is_let_in(desk: Desk, name: str, code: str = "") -> bool:
    sent = {"name": name, "passphrase": WORDS[name], "code": code}
    return client_of(desk).post("/login", data=sent).status_code == 303


def note_of(client: TestClient, note: str, **fields: str) -> int:
    seen = {"note": note, "on": str(ON), "colony": "Bramble"} | fields
    return client.post("/note", data=seen).status_code


def test_each_note_says_whose_it_is_and_others_leave_it_alone(shared: Desk) -> None:
    anna, ben = inside(shared, "Anna"), inside(shared, "Ben")
    annas, bens = str(uuid4()), str(uuid4())
    assert note_of(anna, annas, remark="by the gate") == 200
    assert note_of(ben, bens, wash_bees="300", wash_mites="2") == 200
    told = ben.get("/colony/Bramble", headers=PAGE).text
    assert "(Anna)" in told
    assert "(Ben)" in told
    assert "(Anna, Ben)" in ben.get("/history?colony=Bramble", headers=PAGE).text
    authors = ben.get("/api/noted-by?colony=Bramble").json()
    assert set(authors.values()) == {"Anna", "Ben"}
    for entry, name in authors.items():
        assert f"{name} noted it." in ben.get(f"/mend/{entry}", headers=PAGE).text
    before = shared.book.now().last
    assert ben.post("/note/undo", data={"undoes": annas, "on": str(ON)}).status_code == 403
    assert shared.book.now().last == before
    assert ben.post("/note/undo", data={"undoes": bens, "on": str(ON)}).status_code == 200
    assert anna.post("/note/undo", data={"undoes": annas, "on": str(ON)}).status_code == 200


def test_a_helper_sets_nothing_and_a_reader_writes_nothing(shared: Desk) -> None:
    ben, cleo = inside(shared, "Ben"), inside(shared, "Cleo")
    aim = [{"kind": "limit", "id": str(uuid4()), "on": str(ON), "harm": "no room", "percent": 5}]
    before = shared.book.now().last
    assert ben.post("/api/entries", json=aim).status_code == 403
    assert ben.post("/book/add", files={"file": ("a.csv", b"date\n")}).status_code == 403
    assert ben.get("/people", headers=PAGE).status_code == 403
    assert "calendar/" not in ben.get("/settings", headers=PAGE).text
    assert "You may look at this book" in cleo.get("/yards", headers=PAGE).text
    assert "You may look at this book" not in ben.get("/yards", headers=PAGE).text
    assert note_of(cleo, str(uuid4())) == 403
    assert cleo.post("/api/entries", json=aim).status_code == 403
    assert shared.book.now().last == before
    log = [(one.name, one.what) for one in door_lines(shared.book, 20)]
    assert ("Cleo", "was refused: POST a page for keepers") in log
    assert ("Ben", "was refused: POST /api/entries") in log
    assert inside(shared, "Anna").post("/api/entries", json=aim).status_code == 200


def test_whatever_can_be_written_is_the_keepers_unless_it_is_named() -> None:
    def may(role: Role, path: str) -> bool:
        try:
            refuse_beyond_role(role, "POST", path)
        except NotAllowedError:
            return False
        return True

    paths = {
        route.path
        for router in EVERY
        for route in router.routes
        if isinstance(route, APIRoute) and (route.methods or set()) - {"GET", "HEAD"}
    }
    own = {path for path in paths if path.startswith(("/own-login/", "/join/"))}
    own |= {"/login", "/logout"}
    assert {path for path in paths if may(Role.READER, path)} == own
    notes = {"/note", "/note/undo", "/enter/{kind}", "/mend/{entry}", "/round/{on}/written"}
    assert {path for path in paths if may(Role.HELPER, path)} == own | notes | {"/api/entries"}


def test_a_link_works_once_and_not_for_ever(shared: Desk, clock: Clock) -> None:
    anna = inside(shared, "Anna")
    sent = {"name": "Dora", "role": "reader", "passphrase": WORDS["Anna"]}
    told = anna.post("/people/invite", data=sent, headers=PAGE).text
    (link,) = re.findall(r"/join/[\w-]+", told)
    dora = client_of(shared)
    assert dora.get(link).headers["Cache-Control"] == "no-store"
    assert dora.post(link, data={"passphrase": "short"}).status_code == 422
    assert dora.post(link, data={"passphrase": "copper rivers climb sideways"}).status_code == 303
    assert dora.get("/yards", headers=PAGE).status_code == 200
    assert client_of(shared).get(link).status_code == 404
    late = invite(shared.book, "Emil", Role.READER, clock(), None)
    clock.now += INVITED + timedelta(seconds=1)
    assert client_of(shared).get(f"/join/{late}").status_code == 404


def test_who_leaves_or_changes_role_is_held_to_it_at_once(shared: Desk) -> None:
    anna, ben = inside(shared, "Anna"), inside(shared, "Ben")
    whom = {"person": str(person_named(shared.book, "Ben").id), "passphrase": WORDS["Anna"]}
    assert anna.post("/people/change", data=whom | {"what": "reader"}).status_code == 303
    assert note_of(ben, str(uuid4())) == 403
    assert anna.post("/people/change", data=whom | {"what": "end"}).status_code == 303
    assert ben.get("/api/colonies").status_code == 401
    alone = {"person": str(person_named(shared.book, "Anna").id), "passphrase": WORDS["Anna"]}
    assert anna.post("/people/change", data=alone | {"what": "end"}).status_code == 403
    wrong = whom | {"what": "keeper", "passphrase": "not the words of Anna"}
    assert anna.post("/people/change", data=wrong).status_code == 403


def test_sessions_are_listed_and_ended_from_afar(shared: Desk) -> None:
    anna, ben = inside(shared, "Anna"), inside(shared, "Ben")
    shown = anna.get("/people", headers=PAGE).text
    keys = dict(re.findall(r'value="(\w{12})"> (\w+)', shown))
    assert sorted(keys.values()) == ["Anna", "Ben"]
    key = next(key for key, name in keys.items() if name == "Ben")
    cleo = inside(shared, "Cleo")
    sent = {"session": key, "passphrase": WORDS["Cleo"]}
    cleo.post("/own-login/sessions", data=sent)  # of somebody else: it stays
    assert ben.get("/api/colonies").status_code == 200
    anna.post("/people/sessions", data=sent | {"passphrase": WORDS["Anna"]})
    assert ben.get("/api/colonies").status_code == 401
    log = anna.get("/people", headers=PAGE).text
    assert "Anna: ended a session of Ben" in log


def test_a_code_lets_in_once_and_so_does_one_from_paper(shared: Desk, clock: Clock) -> None:
    ben = person_named(shared.book, "Ben")
    seed = offer(shared.book, ben, clock()).seed
    made = pyotp.TOTP(seed)
    papers = confirm(shared.book, ben, made.at(clock()), clock())
    assert not is_let_in(shared, "Ben")
    assert not is_let_in(shared, "Ben", made.at(clock()))  # used
    clock.now += timedelta(minutes=1)
    code = made.at(clock() - timedelta(seconds=30))  # typed late
    assert is_let_in(shared, "Ben", code)
    assert not is_let_in(shared, "Ben", code)
    old = made.at(clock() - timedelta(minutes=5))
    assert not is_let_in(shared, "Ben", old)
    assert is_let_in(shared, "Ben", papers[3].lower())
    clock.now += timedelta(minutes=11)  # wrong tries are counted
    assert not is_let_in(shared, "Ben", papers[3])
    log = [(one.name, one.what) for one in door_lines(shared.book, 20)]
    assert log.count(("Ben", "logged in")) == 2
    assert log.count(("Ben", "a wrong name, passphrase or code")) == 5
    again = invite_again(shared.book, ben, clock(), None)
    joined = client_of(shared).post(f"/join/{again}", data={"passphrase": WORDS["Ben"]})
    assert joined.headers["Location"] == "/login"  # a link is no way round the second factor


def test_the_second_factor_and_the_passphrase_are_changed_by_who_knows_it(shared: Desk) -> None:
    ben, elsewhere = inside(shared, "Ben"), inside(shared, "Ben")
    assert ben.post("/own-login/factor", data={"passphrase": "wrong words"}).status_code == 403
    shown = ben.post("/own-login/factor", data={"passphrase": WORDS["Ben"]}).text
    (seed,) = re.findall(r"<code>([A-Z2-7]{32})</code>", shown)
    assert "data:image/svg+xml" in shown
    code = pyotp.TOTP(seed).at(shared.clock())
    assert ben.post("/own-login/factor/confirm", data={"code": "000000"}).status_code == 404
    papers = ben.post("/own-login/factor/confirm", data={"code": code}).text
    assert len(re.findall(r"<code>([A-Z2-7-]{29})</code>", papers)) == 8
    assert not is_let_in(shared, "Ben")
    lost = {"person": str(person_named(shared.book, "Ben").id), "what": "factor"}
    for who, word in {"Ben": 403, "Cleo": 403, "Anna": 303}.items():  # only a keeper, who knows Ben
        told = lost | {"passphrase": WORDS[who]}
        assert inside(shared, who).post("/people/change", data=told).status_code == word
    assert is_let_in(shared, "Ben")
    assert elsewhere.get("/api/colonies").status_code == 200
    new = {"passphrase": WORDS["Ben"], "new": "copper rivers climb sideways"}
    assert ben.post("/own-login/passphrase", data=new).status_code == 303
    assert ben.get("/own-login", headers=PAGE).status_code == 200
    assert elsewhere.get("/api/colonies").status_code == 401


def test_one_keeper_alone_begins_with_a_name_and_the_book_s_passphrase_goes(desk: Desk) -> None:
    desk.access.set_passphrase(WORDS["Anna"])
    alone = client_of(desk)
    assert "f-name" not in alone.get("/login", headers=PAGE).text
    alone.post("/login", data={"passphrase": WORDS["Anna"]})
    sent = {"name": "Anna", "passphrase": WORDS["Anna"]}
    assert alone.post("/people/begin", data=sent | {"passphrase": "no"}).status_code == 403
    assert alone.post("/people/begin", data=sent).status_code == 303
    assert "Anna, keeper" in alone.get("/own-login", headers=PAGE).text
    assert "f-name" in client_of(desk).get("/login", headers=PAGE).text
    nameless = client_of(desk)
    assert nameless.post("/login", data={"passphrase": WORDS["Anna"]}).status_code == 422
    with pytest.raises(NotAllowedError, match="each with a passphrase"):
        desk.access.set_passphrase("copper rivers climb sideways")
