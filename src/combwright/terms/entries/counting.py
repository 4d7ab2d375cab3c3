"""How a keeper counts: asked once, and what the notes then mean."""

from typing import Annotated, ClassVar, Literal

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry

BroodWay = Literal["frames filled", "combs with brood"]
BeesWay = Literal["frames covered", "seams"]


class HowCounted(Entry):
    """How the keeper counts brood and bees from this day on; the first one holds before it too.

    A number under “frames of brood” alone, from who counts combs with brood, is then read as such.
    """

    TITLE: ClassVar[str] = "How you count"

    kind: Literal["counting"] = "counting"
    brood: Annotated[
        BroodWay,
        About(
            "Brood",
            "frames filled with brood on both sides, or combs with any brood in them",
            "brood counted in",
            said="brood in",
        ),
    ]
    bees: Annotated[
        BeesWay,
        About(
            "Bees",
            "frames covered on both sides, or seams between combs with bees in them",
            "bees counted in",
            said="bees in",
        ),
    ]
