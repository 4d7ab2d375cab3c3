"""A form that is no note: without signal it stays as it was typed, and goes when there is some."""

import pytest
from playwright.sync_api import expect
from tests.browser.conftest import House, Telephone
from tests.browser.hands import signal_is_back, take_along

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("is_known", [True, False])
def test_a_split_typed_without_signal_is_not_lost(
    house: House, telephone: Telephone, *, is_known: bool
) -> None:
    """Also where the telephone still takes itself to have signal."""
    assert telephone.context
    page = take_along(telephone.context, house)
    page.goto(f"{house.address}/enter/split?colony=Bramble")
    page.get_by_label("Name of the new colony").fill("Fern")
    page.get_by_label("Frames of bees given").fill("3")
    house.shut()
    telephone.context.set_offline(is_known)
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_contain_text("No signal")
    expect(page.get_by_label("Frames of bees given")).to_have_value("3")
    house.open()
    signal_is_back(telephone.context)
    page.get_by_role("button", name="Save").click()
    page.wait_for_url("**/yards")
    assert house.desk.book.now().colony("Fern").yard == "Alder Bank"
