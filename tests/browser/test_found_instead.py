"""What was done where something else was found is noted as its branch says, without signal too."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import House, Telephone
from tests.browser.hands import ROUND, expect_waiting, hive, signal_is_back, take_along

from combwright.planning.sheet import ColonySheet
from combwright.services.demo import ON
from combwright.services.rounds.planned_note import as_advised
from combwright.terms.entries import Feed, Stack

pytestmark = pytest.mark.browser
DRAFTED = """async typed => {
  const { drafts } = await import("/static/outbox.js");
  return (await drafts.all()).some(one => one.fields.some(([, value]) => value === typed));
}"""


def given(house: House, colony: str) -> list[float]:
    """What was fed at a colony on the day, by the book."""
    entries = house.desk.book.now().of(colony)
    return [each.grams for each in entries if isinstance(each, Feed) and each.on == ON]


def otherwise(house: House) -> tuple[ColonySheet, int]:
    """A colony that is fed, with a branch that feeds it otherwise."""
    return next(
        (each, number)
        for each in house.desk.rounds.sheet(ON, 7).colonies
        for number, branch in enumerate(each.branches)
        if each.portion.syrup_g and branch.portion
        if branch.portion.syrup_g != each.portion.syrup_g
    )


def save(page: Page) -> None:
    page.get_by_role("button", name=re.compile("Save")).click()
    page.wait_for_url(re.compile(r"/hive/[^?]*$|/round/[\d-]+$"))


def test_a_branch_noted_without_signal_is_noted_as_it_says(
    house: House, telephone: Telephone
) -> None:
    """The phone has the page as planned, and a draft of what was seen."""
    assert telephone.context
    colony, number = otherwise(house)
    branch = colony.branches[number]
    assert branch.portion
    page = take_along(telephone.context, house)
    house.shut()
    telephone.context.set_offline(True)
    page.goto(f"{house.address}{ROUND}/note/{colony.colony}")
    page.locator("#f-frames_of_bees").fill("3")
    page.wait_for_function(DRAFTED, arg="3")
    page.goto(house.address + hive(colony.colony))
    page.locator("article .find summary", has_text=branch.found).click()
    page.locator("article .find details[open]").get_by_role("link", name="Note this").click()
    expect(page.locator("#done-as")).to_contain_text(branch.found)
    expect(page.locator("#done")).to_contain_text(branch.do[0])
    expect(page.locator("#f-frames_of_bees")).to_have_value("3")
    expect(page.locator("#f-feed_g")).to_have_value(str(branch.portion.syrup_g))
    page.evaluate("document.querySelector('#f-feed_g').closest('details').open = true")
    page.locator("#f-feed_g").fill("500")
    page.wait_for_function(DRAFTED, arg="500")
    page.reload()
    expect(page.locator("#done-as")).to_contain_text(branch.found)
    expect(page.locator("#f-feed_g")).to_have_value("500")
    save(page)
    expect_waiting(page, 1)
    house.open()
    signal_is_back(telephone.context)
    expect_waiting(page, 0)
    assert given(house, colony.colony) == [500]


def test_reading_what_else_may_be_found_changes_nothing(house: House, telephone: Telephone) -> None:
    assert telephone.context
    colony, number = otherwise(house)
    page = telephone.context.pages[0]
    page.goto(f"{house.address}{ROUND}/note/{colony.colony}")
    planned = page.locator("#f-feed_g").input_value()
    page.locator("summary", has_text="I found something else").click()
    page.locator("summary", has_text=colony.branches[number].found).click()
    expect(page.locator("#f-feed_g")).to_have_value(planned)
    save(page)
    expect_waiting(page, 0)
    assert given(house, colony.colony) == [float(planned)]


def test_a_branch_chosen_on_the_note_fills_feed_and_stack(
    house: House, telephone: Telephone
) -> None:
    assert telephone.context
    colony, number = next(
        (each, number)
        for each in house.desk.rounds.sheet(ON, 7).colonies
        for number, branch in enumerate(each.branches)
        if as_advised(each, ON, branch)["frames"] != as_advised(each, ON)["frames"]
        or as_advised(each, ON, branch)["supers"] != as_advised(each, ON)["supers"]
    )
    told = as_advised(colony, ON, colony.branches[number])
    page = telephone.context.pages[0]
    page.goto(f"{house.address}{ROUND}/note/{colony.colony}")
    page.locator("summary", has_text="I found something else").click()
    page.locator("summary", has_text=colony.branches[number].found).click()
    page.locator("details[open] details[open]").get_by_role("link", name="I did this").click()
    expect(page.locator("#done-as")).to_contain_text(colony.branches[number].found)
    save(page)
    expect_waiting(page, 0)
    stack = next(
        each
        for each in house.desk.book.now().of(colony.colony)
        if isinstance(each, Stack) and each.on == ON
    )
    assert (str(stack.frames), str(stack.supers)) == (told["frames"], told["supers"])
