"""A round noted in flight mode: nothing lost, nothing twice."""

import os
import re
import signal
import sqlite3
import subprocess
from contextlib import closing

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import House, Telephone
from tests.browser.hands import (
    ROUND,
    colonies,
    done_as_planned,
    expect_waiting,
    hive,
    look_at,
    signal_is_back,
    take_along,
    visited,
)

from combwright.services.demo import ON
from combwright.terms.entries import Visit

pytestmark = pytest.mark.browser
PUT_RIGHT = """async on => {
  const { notes } = await import("/static/outbox.js");
  const [note] = await notes.all();
  const fields = note.fields.map(([name, value]) => [name, name === "on" ? on : value]);
  await notes.put({ ...note, on, fields });
}"""
KEPT = """async () => {
  const cache = await caches.open("pages");
  const found = await Promise.all((await cache.keys()).map(each => cache.match(each)));
  return (await Promise.all(found.map(each => each.text()))).join("");
}"""
KEYS = """new Promise(told => {
  const asked = indexedDB.open("combwright-key");
  asked.onsuccess = () => {
    const counted = asked.result.transaction("keys").objectStore("keys").count();
    counted.onsuccess = () => told(counted.result);
    asked.result.close();
  };
})"""
SAVED = re.compile(r"/hive/[^?]*$|/round/[\d-]+$")
WORDS = "four unlikely words together"


def kill(telephone: Telephone) -> None:
    """End the browser at once, as an empty battery does."""
    found = subprocess.run(
        ["pgrep", "-f", f"user-data-dir={telephone.folder}"], check=True, capture_output=True
    )
    for process in found.stdout.split():
        try:
            os.kill(int(process), signal.SIGKILL)
        except ProcessLookupError:
            continue
    telephone.context = None


def test_a_whole_round_in_flight_mode_with_the_browser_killed_half_way(
    house: House, telephone: Telephone
) -> None:
    context = telephone.context
    assert context
    page = take_along(context, house)
    names = colonies(house)
    assert len(names) == 16

    house.shut()
    context.set_offline(True)
    page.goto(house.address + ROUND)
    for name in names[:7]:
        done_as_planned(page, name)
    # the eighth with what was seen, on its own screen
    page.get_by_role("link", name="Note what I saw").click()
    page.get_by_label("Frames of bees: more").click()
    page.get_by_label("no eggs").check()
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(SAVED)
    expect_waiting(page, 8)
    kill(telephone)

    context = telephone.start()
    context.set_offline(True)
    page = context.pages[0]
    page.goto(house.address + "/")  # leads to the last round by itself
    expect_waiting(page, 8)
    for name in names[8:]:
        done_as_planned(page, name)
    expect_waiting(page, 16)
    assert not visited(house)

    house.open()
    signal_is_back(context)
    expect_waiting(page, 0)
    assert visited(house) == dict.fromkeys(names, 1)
    eighth = [each for each in house.desk.book.now().of(names[7]) if each.on == ON]
    visit = next(each for each in eighth if isinstance(each, Visit))
    assert visit.frames_of_bees is not None
    assert visit.eggs is False
    page.reload()
    expect_waiting(page, 0)
    assert visited(house) == dict.fromkeys(names, 1)


def test_a_lost_answer_makes_no_second_note(house: House, telephone: Telephone) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    name = colonies(house)[0]
    lost = 0

    def swallow(route: object) -> None:  # the server gets the note, its answer is lost
        nonlocal lost
        route.fetch()  # type: ignore[attr-defined]
        lost += 1
        route.abort()  # type: ignore[attr-defined]

    page.route("**/note", swallow)
    with page.expect_event("requestfailed"):
        done_as_planned(page, name)
    expect_waiting(page, 1)
    assert visited(house) == {name: 1}
    page.unroute_all(behavior="wait")
    page.reload()
    expect_waiting(page, 0)
    assert lost >= 1
    assert visited(house) == {name: 1}


def test_an_expired_login_keeps_the_notes(house: House, telephone: Telephone) -> None:
    house.desk.access.set_passphrase(WORDS)
    assert telephone.context
    page = telephone.context.pages[0]
    page.goto(house.address + ROUND)
    page.get_by_label("Passphrase").fill(WORDS)
    page.get_by_role("button", name="Open the book").click()
    take_along(telephone.context, house)
    name = colonies(house)[0]
    kept = page.evaluate(KEPT)
    assert page.evaluate(KEYS) == 1
    assert len(kept) > 100_000
    assert "<html" not in kept
    page.goto(house.address + hive(name))
    telephone.context.set_offline(True)
    page.get_by_role("button", name="Log out").click()
    expect(page.locator("#said")).to_contain_text("No signal")
    signal_is_back(telephone.context)
    assert page.evaluate(KEYS) == 1
    house.clock.pass_days(31)
    page.get_by_role("button", name="Done as planned").click()
    expect(page.locator("#net")).to_contain_text("log in to send")
    expect_waiting(page, 1)
    assert not visited(house)
    assert page.evaluate(KEPT) == ""
    assert page.evaluate(KEYS) == 0  # what may be left on the disk says nothing
    page.get_by_label("Passphrase").fill(WORDS)
    page.get_by_role("button", name="Open the book").click()
    page.wait_for_url(re.compile("/round/"))
    expect_waiting(page, 0)
    assert visited(house) == {name: 1}


def test_a_refused_note_is_kept_and_mended(house: House, telephone: Telephone) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    name = colonies(house)[0]
    page.goto(f"{house.address}{ROUND}/note/{name}")
    page.locator("#f-frames_of_bees").fill("6")
    # a value that only the server can find wrong: no such day
    page.evaluate("document.querySelector('[name=on]').value = '2019-04-24'")
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(SAVED)
    expect(page.locator("#net")).to_have_attribute("data-refused", "1")
    assert not visited(house)
    page.goto(house.address + "/waiting")
    expect(page.locator("#waiting")).to_contain_text("Not accepted")
    expect(page.locator("#waiting")).to_contain_text("enters the book only on")
    # the day is no field to type in: it is put right as a new form would
    page.evaluate(PUT_RIGHT, str(ON))
    page.reload()
    page.get_by_role("link", name="Mend").click()
    expect(page.locator("#fault-all")).to_contain_text("enters the book only on")
    expect(page.locator("#f-frames_of_bees")).to_have_value("6")
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(SAVED)
    expect_waiting(page, 0)
    expect(page.locator("#net")).to_have_attribute("data-refused", "0")
    assert visited(house) == {name: 1}


def test_an_impossible_value_stays_as_a_draft(house: House, telephone: Telephone) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    name = colonies(house)[0]
    page.goto(f"{house.address}{ROUND}/note/{name}")
    field = page.locator("#f-frames_of_bees")
    field.fill("99")
    page.get_by_role("button", name=re.compile("Save")).click()
    expect(page.locator("#fault-frames_of_bees")).to_contain_text("Give 0 to 40")
    expect(field).to_be_focused()
    kill(telephone)
    context = telephone.start()
    page = context.pages[0]
    page.goto(f"{house.address}{ROUND}/note/{name}")
    expect(page.locator("#draft")).to_contain_text("You began this note")
    field = page.locator("#f-frames_of_bees")
    expect(field).to_have_value("99")
    field.fill("9")
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(SAVED)
    expect_waiting(page, 0)
    assert visited(house) == {name: 1}


def test_two_phones_note_the_same_colony(
    house: House, telephone: Telephone, second_telephone: Telephone
) -> None:
    assert telephone.context
    assert second_telephone.context
    name = colonies(house)[0]
    pages = [take_along(each, house) for each in (telephone.context, second_telephone.context)]
    house.shut()
    for page, bees in zip(pages, ("7", "5"), strict=True):
        page.context.set_offline(True)
        page.goto(f"{house.address}{ROUND}/note/{name}")
        page.locator("#f-frames_of_bees").fill(bees)
        page.get_by_role("button", name=re.compile("Save")).click()
        page.wait_for_url(SAVED)
        expect_waiting(page, 1)
    house.open()
    first, second = pages
    signal_is_back(first.context)
    expect_waiting(first, 0)
    signal_is_back(second.context)
    expect(second.locator("#net")).to_have_attribute("data-refused", "1")
    assert visited(house) == {name: 1}
    second.goto(house.address + "/waiting")
    expect(second.locator("#waiting")).to_contain_text("is 5 here and 7 in another note")
    second.get_by_role("link", name="Mend").click()
    expect(second.locator("#fault-frames_of_bees")).to_contain_text("another note")
    second.locator("#f-frames_of_bees").fill("")
    second.get_by_text("I did it otherwise").click()
    second.locator("#f-feed_g").fill("0")
    second.locator("#f-frames_of_brood").fill("3")
    second.get_by_role("button", name=re.compile("Save")).click()
    second.wait_for_url(SAVED)
    expect_waiting(second, 0)
    visits = [each for each in house.desk.book.now().on(ON) if isinstance(each, Visit)]
    seen = [(each.frames_of_bees, each.frames_of_brood) for each in visits]
    assert seen == [(7.0, None), (None, 3.0)]


def test_undo_takes_a_note_back_before_and_after_it_was_sent(
    house: House, telephone: Telephone
) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    first, second = colonies(house)[:2]
    done_as_planned(page, first)
    expect_waiting(page, 0)
    page.get_by_role("button", name="Undo").click()
    expect_waiting(page, 0)
    expect(page.locator("#said")).to_contain_text("taken back")
    page.reload()
    # the note and its undoing changed the book: the round is worked out anew before the signal goes
    expect(page.locator("article")).to_be_visible()
    expect_waiting(page, 0)
    assert not visited(house)
    house.shut()
    telephone.context.set_offline(True)
    done_as_planned(page, second)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#said")).to_contain_text("taken back")
    house.open()
    signal_is_back(telephone.context)
    page.reload()
    expect_waiting(page, 0)
    assert not visited(house)


def test_what_became_of_a_note_stands_at_its_colony(
    house: House, telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Waiting for a busy book, kept with a warning, refused with the reason, taken back."""
    assert telephone.context
    page = take_along(telephone.context, house)
    name = colonies(house)[0]
    bar = page.locator("#said")

    monkeypatch.setattr("combwright.records.store.sqlite_file.BUSY_TIMEOUT_MS", 20)
    with closing(sqlite3.connect(house.desk.book.place, isolation_level=None)) as db:
        db.execute("BEGIN IMMEDIATE")
        note(page, house, name, bees="2", brood="6")
        state = look_at(page, name)
        expect(state).to_contain_text("noted, waits: Another program is writing")
        expect(state.get_by_role("link", name="Mend it")).to_be_visible()
    page.evaluate("import('/static/app.js').then(app => app.flush())")
    expect(state).to_contain_text("noted. Worth a second look")
    expect_waiting(page, 0)

    note(page, house, name, bees="9", brood="")
    expect(bar).to_contain_text("not accepted")
    state = look_at(page, name)
    expect(state).to_contain_text("not accepted: frames of bees of “")
    state.get_by_role("button", name="Take it back").click()
    expect(state).to_contain_text("noted. Worth a second look")
    state.get_by_role("button", name="Take it back").click()
    expect(state).to_have_text("taken back")
    expect(bar).to_contain_text("taken back")
    page.locator("article h1").click()
    expect(bar).to_have_count(0)
    page.goto(house.address + ROUND)
    expect(page.locator(f'li[data-colony="{name}"] i')).to_have_text("")
    assert not visited(house)


def note(page: Page, house: House, name: str, *, bees: str, brood: str) -> None:
    page.goto(f"{house.address}{ROUND}/note/{name}")
    page.locator("#f-frames_of_bees").fill(bees)
    page.locator("#f-frames_of_brood").fill(brood)
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(SAVED)


def test_an_old_cache_after_an_upgrade_neither_breaks_nor_loses_notes(
    house: House, telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    name = colonies(house)[0]
    house.shut()
    telephone.context.set_offline(True)
    done_as_planned(page, name)
    expect_waiting(page, 1)
    monkeypatch.setattr("combwright.web.installing.edition", lambda: "a newer edition")
    house.open()
    signal_is_back(telephone.context)
    expect_waiting(page, 0)
    page.evaluate("navigator.serviceWorker.getRegistration().then(r => r.update())")
    page.wait_for_function(
        "caches.keys().then(names => names.join() === 'files-a newer edition,pages'"
        " || names.join() === 'pages,files-a newer edition')"
    )
    house.shut()
    telephone.context.set_offline(True)
    page.reload()
    expect(page.locator("article")).to_be_visible()
    done_as_planned(page, colonies(house)[1])
    expect_waiting(page, 1)
    house.open()
    signal_is_back(telephone.context)
    expect_waiting(page, 0)
    assert visited(house) == dict.fromkeys(colonies(house)[:2], 1)


def test_branches_answer_at_once_without_signal(house: House, telephone: Telephone) -> None:
    assert telephone.context
    sheet = house.desk.rounds.sheet(ON, 7)
    several = next(each for each in sheet.colonies if len(each.branches) > 1)
    page = take_along(telephone.context, house)
    house.shut()
    telephone.context.set_offline(True)
    page.goto(house.address + hive(several.colony))
    find = page.locator("article .find details").first
    find.locator("summary").click()
    expect(find.locator("li").first).to_be_visible()
    second = page.locator("article .find details").nth(1)
    second.locator("summary").click()
    expect(find.locator("li").first).to_be_hidden()


def test_the_vehicle_empties_as_portions_are_given(house: House, telephone: Telephone) -> None:
    assert telephone.context
    page = take_along(telephone.context, house)
    house.shut()
    telephone.context.set_offline(True)
    sheet = house.desk.rounds.sheet(ON, 7)
    fed = next(each for each in sheet.colonies if each.portion.syrup_g)
    before = float(page.locator(".vehicle[data-feed=syrup]").get_attribute("data-loaded") or 0)
    done_as_planned(page, fed.colony)
    page.goto(house.address + ROUND)
    left = page.locator("#left-syrup")
    expect(left).to_have_js_property("value", before - fed.portion.syrup_g)
