"""What the law asks a keeper to write down of a treatment; check the text in force."""

from dataclasses import dataclass

from combwright.terms.parameters import Verified


@dataclass(frozen=True, slots=True)
class Duty:
    """A country's duty to keep records of medicines given to bees."""

    country: str
    law: str
    as_of: str
    years: int
    fields: tuple[str, ...]
    source: str
    verified: Verified

    @property
    def sentence(self) -> str:
        """The duty in one sentence."""
        return (
            f"{self.country}: {self.law} ({self.as_of}): write down {', '.join(self.fields)}; keep "
            f"it at least {self.years} years. Check the text in force."
        )


DUTIES = (
    Duty(
        "United Kingdom",
        "Veterinary Medicines Regulations 2013",
        "amended in Great Britain in 2024",
        5,
        (
            "product",
            "batch number",
            "date",
            "quantity",
            "withdrawal period",
            "colonies treated",
            "supplier with address and proof of purchase",
            "what was disposed of, when and how",
        ),
        "government and association pages",
        "read",
    ),
    Duty(
        "Ireland and EU",
        "Regulation (EU) 2019/6, Article 108; in Ireland S.I. 462/2024",
        "applied since 28 January 2022",
        5,
        (
            "date of first treatment",
            "product",
            "quantity",
            "supplier with address",
            "proof of acquisition",
            "colonies treated",
            "prescribing vet if any",
            "withdrawal period even if nil",
            "length of treatment",
        ),
        "Article 108 read in German; its date from memory",
        "read",
    ),
)
