"""What all kinds of entry share: an id, a day, a remark, and how names and texts are written."""

from collections.abc import Mapping
from datetime import date
from typing import Annotated, Any, ClassVar
from uuid import UUID

from pydantic import BaseModel, ConfigDict, Field

from combwright.terms.entries.about import About, Variant

# one line of text without control characters, and no blanks at its ends
NAME = Field(
    min_length=1,
    max_length=60,
    pattern=r"^[^\s\x00-\x1f\x7f]([^\x00-\x1f\x7f]*[^\s\x00-\x1f\x7f])?$",
)
Name = Annotated[str, NAME]
# free text: new lines and tabs are welcome, other control characters are damage
Text = Annotated[str, Field(pattern=r"^[^\x00-\x08\x0b-\x1f\x7f]*$")]
OfColony = Annotated[Name, About("Colony", "the colony it is about", chosen_from="colony")]
YEARS = Field(ge=1990, le=2100)


class Entry(BaseModel):
    """What every entry has: an id made where it was written, and its day.

    ``TITLE`` is that of the kind's form at the desk, ``AT_HIVE`` what the form at the hive fixes,
    ``VARIANTS`` the parts of a notebook's line that become entries of this kind, if not one.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)
    TITLE: ClassVar[str] = ""
    AT_HIVE: ClassVar[Mapping[str, Any]] = {}
    VARIANTS: ClassVar[Mapping[str, Variant]] = {}

    id: UUID
    on: Annotated[date, About("Day", "the day of the visit; always needed", "date")]
    remark: Annotated[Text, About("Remark", "anything else"), Field(max_length=2000)] = ""
