"""Medicines as the book knows them: what their labels say, and what is left of each batch."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from combwright.terms.dated import dated
from combwright.terms.entries import Disposal, Noted, Product, Purchase, Treatment


@dataclass(frozen=True, slots=True)
class MedicineStock:
    """One batch of a medicine: bought, used and disposed of, each in its unit."""

    product: str
    batch: str
    unit: str = ""
    bought: float = 0.0
    used: float = 0.0
    disposed: float = 0.0
    expiry: date | None = None
    last_used: date | None = None

    @property
    def left(self) -> float:
        """What should be on the shelf; below nought where more was used than bought."""
        return self.bought - self.used - self.disposed

    @property
    def named(self) -> str:
        """The product and its batch."""
        return f"{self.product}, batch {self.batch or 'not noted'}"

    @property
    def troubles(self) -> tuple[str, ...]:
        """What does not add up, or should not have been."""
        told = []
        if self.bought and self.left < 0:
            told.append(f"{self.named}: {-self.left:g} {self.unit} more used than bought.")
        if self.last_used and self.expiry and self.used_after_expiry:
            told.append(
                f"{self.named}: used on {dated(self.last_used)}, "
                f"after it expired on {dated(self.expiry)}."
            )
        return tuple(told)

    @property
    def used_after_expiry(self) -> bool:
        """Tell whether it was used after the last day on its label."""
        return None not in (self.expiry, self.last_used) and self.last_used > self.expiry  # type: ignore[operator]


def known_products(entries: Iterable[Noted]) -> dict[str, Product]:
    """Give every medicine by name, as its label was last noted."""
    return {each.product: each for each in entries if isinstance(each, Product)}


def medicine_stocks(entries: Iterable[Noted]) -> dict[tuple[str, str], MedicineStock]:
    """Replay what was bought, used and disposed of, by product and batch."""
    found: dict[tuple[str, str], MedicineStock] = {}
    for each in entries:
        if not isinstance(each, Purchase | Disposal | Treatment) or not each.product:
            continue
        key = each.product, each.batch
        now = found.get(key, MedicineStock(*key))
        match each:
            case Purchase():
                now = replace(
                    now,
                    unit=each.unit,
                    bought=now.bought + each.quantity,
                    expiry=each.expiry or now.expiry,
                )
            case Disposal():
                now = replace(now, unit=each.unit, disposed=now.disposed + each.quantity)
            case Treatment():
                used = now.used + (each.quantity or 0.0)
                now = replace(now, used=used, last_used=each.on)
        found[key] = now
    return found


def bought_for(entries: Sequence[Noted], treatment: Treatment) -> Purchase | None:
    """Give the last purchase of what a treatment used, of its batch where that is noted."""
    fitting = [
        each
        for each in entries
        if isinstance(each, Purchase)
        and each.product == treatment.product
        and treatment.batch in ("", each.batch)
        and each.on <= treatment.on
    ]
    return fitting[-1] if fitting else None
