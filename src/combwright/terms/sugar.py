"""How much of feed is sugar where nobody says, by mass."""

from typing import Final

from combwright.terms.parameters import Parameter

SYRUP_SUGAR: Final = 0.6  # kg/kg, three of sugar to two of water; common practice
# Part of the ids of fondant notes: with another value, adding an old file again would double them.
FONDANT_SUGAR: Final = Parameter(
    0.88,
    "kg/kg",
    0.77,
    0.92,
    "bakers' fondant of 8 to 12 % water; an association leaflet counts a 12.5 kg block as 12 kg of "
    "honey, which is 0.79",
    "common practice",
)
