"""What if: the keeper's own idea beside the plan and nothing done, under the same luck."""

from datetime import date

import pytest
from tests.services.rounds.test_why import one_colony

from combwright.records.store.book_handle import Book
from combwright.services.rounds.whatif import Compared, Idea, whatif
from combwright.terms.errors import ClashError

ON = date(2027, 4, 17)
PLAN, IDEA, NOTHING = 0, 1, 2


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return one_colony(tmp_path_factory.mktemp("what if"))


def compared(book: Book, idea: Idea) -> Compared:
    return whatif(book, "Oak", ON, idea, members=60)


def test_no_idea_at_all_is_the_plan(book: Book) -> None:
    found = compared(book, Idea()).outcomes
    assert found[IDEA].expected == found[PLAN].expected
    assert found[IDEA].chances == found[PLAN].chances


def test_what_is_not_said_is_kept_of_the_plan(book: Book) -> None:
    found = compared(book, Idea(feed_g=1200)).outcomes
    assert found[IDEA].set_up == found[PLAN].set_up
    assert (found[IDEA].feed_g, found[NOTHING].feed_g) == (1200, 0)


def test_more_feed_leaves_more_stores(book: Book) -> None:
    little, much = (compared(book, Idea(feed_g=grams)).outcomes[IDEA] for grams in (0, 4000))
    assert much.expected["stores kg"][1] > little.expected["stores kg"][1] + 0.5


def test_a_super_comes_with_its_excluder(book: Book) -> None:
    wished = compared(book, Idea(frames=10, supers=1)).outcomes[IDEA].set_up
    assert (wished.frames, wished.supers, wished.excluder) == (10, 1, True)


def test_what_does_not_go_into_the_hive_is_refused(book: Book) -> None:
    with pytest.raises(ClashError, match="foundation"):
        compared(book, Idea(frames=6, foundation=9))


def test_the_courses_end_where_the_outcomes_are(book: Book) -> None:
    """Day by day under the same weather and luck the colonies come out as in one go."""
    found = whatif(book, "Oak", ON, Idea(feed_g=2000), members=60, with_courses=True)
    assert found.days[0] == ON
    for quantity in ("frames_of_bees", "frames_of_brood", "stores_kg"):
        for way, name in ((PLAN, "the plan"), (IDEA, "your idea")):
            course = found.courses[quantity][name]
            low, mid, high = found.outcomes[way].expected[quantity.replace("_", " ")]
            assert len(course.mid) == len(found.days)
            assert (course.low[-1], course.mid[-1], course.high[-1]) == pytest.approx(
                (low, mid, high), abs=0.051
            )
    assert compared(book, Idea()).courses == {}
