"""What a scale under a hive showed on a day."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, OfColony


class ScaleReading(Entry):
    """The hive on its scale in the evening of a day: no visit, and nothing was opened.

    It is told day by day and not weighed as a sight: readings of one scale share its error.
    """

    TITLE: ClassVar[str] = "A reading of the scale"

    kind: Literal["scale reading"] = "scale reading"
    colony: OfColony
    weight_kg: Annotated[
        float,
        About(
            "Weight",
            "what the scale under the hive showed in the evening",
            "scale kg",
            "kg",
            hint="in the evening, the whole hive",
            said="",
        ),
        Field(ge=2, le=400),
    ]
