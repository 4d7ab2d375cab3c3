"""What the law asks a keeper to write down of medicines; check the text in force."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from combwright.terms.data_files import contents, rows
from combwright.terms.dated import in_days
from combwright.terms.dates import years_later
from combwright.terms.parameters import Verified

FIELD_WORDS: Mapping[str, str] = contents("science/medicine_law")["said"]


@dataclass(frozen=True, slots=True)
class Duty:
    """A country's duty to keep records of medicines given to bees; ``asks`` names the fields."""

    code: str
    country: str
    law: str
    valid_from: str
    checked_on: str
    years: int
    asks: tuple[str, ...]
    source: str
    verified: Verified

    @property
    def sentence(self) -> str:
        """The duty in one sentence."""
        asks = ", ".join(FIELD_WORDS[one] for one in self.asks)
        return in_days(
            f"{self.country}: {self.law} (valid from {self.valid_from}; looked up in copies "
            f"that may be old on {self.checked_on}): write down {asks}; keep "
            f"it at least {self.years} years. Check the current law of your country."
        )

    def keep_until(self, last: date) -> date:
        """Give the first day on which a record may go, from the last day that it tells of.

        Counted from the end of the treatment, the safe choice where the law does not say.

        Examples
        --------
        >>> str(DUTIES["IE"].keep_until(date(2026, 10, 8)))
        '2031-10-08'

        """
        return years_later(last, self.years)


DUTIES: Mapping[str, Duty] = {
    row["code"]: Duty(**row) for row in rows("science/medicine_law", "duty")
}
