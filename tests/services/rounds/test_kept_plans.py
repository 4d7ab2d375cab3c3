"""Plans of colonies that are kept: the same answers, and only what is new is made again."""

from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest
from tests.demo import copied
from tests.noted import noted

from combwright.advice.situation import Situation
from combwright.belief.following.replay import Followed
from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, Paths
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans, rests_on
from combwright.services.rounds.situations import AskedRound, Situations, situations_of

MEMBERS = 20
LINES = (
    "2027-04-17,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-17,Low,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1",
)


@pytest.fixture(scope="module")
def situations(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Situations:
    book = Book(copied(demo, tmp_path_factory.mktemp("plans")))
    return situations_of(book, AskedRound(ON, members=MEMBERS))


def test_an_unchanged_book_is_answered_from_what_was_planned(tmp_path: Path) -> None:
    """By this program, and by another that finds the plans in the folder."""
    book, folder = Book(noted(tmp_path, *LINES)), tmp_path / "plans"
    kept = KeptPlans(folder)
    first = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert kept.made == len(kept) == len(first.colonies)
    again = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert again == first == round_sheet(book, ON, members=MEMBERS)
    assert len(kept) == len(first.colonies)
    assert {path.stat().st_mode & 0o777 for path in folder.iterdir()} == {0o600}
    another = KeptPlans(folder)
    assert round_sheet(book, ON, members=MEMBERS, kept=another) == first
    assert another.made == 0


@pytest.mark.parametrize("damage", ["", "no plan", "0\n{}"])
def test_a_damaged_plan_is_made_again(situations: Situations, tmp_path: Path, damage: str) -> None:
    followed = situations.follow("Bramble")
    told = KeptPlans(tmp_path).sheet(followed, situations, 1, partial(colony_sheet, order=1))
    (file,) = tmp_path.iterdir()
    file.write_text(damage, "utf-8")
    again = KeptPlans(tmp_path)
    assert again.sheet(followed, situations, 1, partial(colony_sheet, order=1)) == told
    assert again.made == 1


def test_a_folder_that_cannot_be_written_costs_no_answer(
    situations: Situations, tmp_path: Path
) -> None:
    (tmp_path / "a file").write_text("mine")
    kept = KeptPlans(tmp_path / "a file")
    followed = situations.follow("Bramble")
    assert kept.sheet(followed, situations, 1, partial(colony_sheet, order=1)).colony == "Bramble"


def test_only_what_is_new_is_made_again(situations: Situations) -> None:
    kept, made = KeptPlans(), list[str]()
    one, other = (situations.follow(name) for name in ("Bramble", situations.replay.colonies[1]))

    def make(followed: Followed, at: Situation) -> ColonySheet:
        made.append(at.colony)
        return colony_sheet(followed, at, 1)

    for each in (one, other, one, other):
        kept.sheet(each, situations, 1, make)
    assert len(made) == 2
    changed = one.belief.colonies.copy()
    changed["ripe"] += 1.0
    touched = replace(one, belief=replace(one.belief, colonies=changed))
    kept.sheet(touched, situations, 1, make)
    kept.sheet(other, situations, 1, make)
    assert len(made) == 3


def test_another_price_day_or_limit_is_another_plan(situations: Situations) -> None:
    followed = situations.follow("Bramble")
    at = situations.of(followed)
    keys = {
        rests_on(followed, each, situations)
        for each in (
            at,
            replace(at, prices=replace(at.prices, honey=1.0)),
            replace(at, days=at.days + 1),
            replace(at, limits=replace(at.limits, hunger=0.5)),
            replace(at, history=()),
        )
    }
    assert len(keys) == 5
