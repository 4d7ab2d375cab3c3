"""The register of medicines as the law of a country asks for it, and what is missing in it."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from itertools import groupby

from combwright.records.replay.colonies import standings
from combwright.records.replay.known_medicines import (
    MedicineStock,
    bought_for,
    known_products,
    medicine_stocks,
)
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.science.mites.medicine_law import DUTIES, FIELD_WORDS, Duty
from combwright.services.book.checking import seal_words
from combwright.terms.entries import (
    Colony,
    Disposal,
    End,
    Move,
    Product,
    Purchase,
    Split,
    Treatment,
    Unite,
)
from combwright.terms.errors import NotFoundError

NO_MEDICINE = "drone brood removed"
PRESCRIBED = ("vet_name", "vet_contact", "prescription_copy")
WHEREABOUTS = Colony | Split | Move | Unite | End


@dataclass(frozen=True, slots=True)
class TreatedColonies:
    """One treatment: the colonies of one yard that were given the same from the same day on."""

    first_day: date
    last_day: date | None
    days: int | None
    product: str
    authorisation: str
    batch: str
    quantity: float | None
    unit: str
    yard: str
    colonies: tuple[str, ...]
    supplier: str
    proof: str
    prescriber: str
    withdrawal_days: float | None
    honey_from: date | None
    keep_until: date
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Register:
    """All that a country's law asks for in some years, with what is missing first."""

    country: str
    law: str
    years: tuple[int, ...]
    missing: tuple[str, ...]
    treatments: tuple[TreatedColonies, ...]
    purchases: tuple[Purchase, ...]
    disposals: tuple[Disposal, ...]
    stock: tuple[MedicineStock, ...]
    seal: str


def register(book: Book, country: str, years: Sequence[int]) -> Register:
    """Write the register of some years; ``country`` is IE, GB or NI."""
    if country not in DUTIES:
        raise NotFoundError(
            f"The law of “{country}” is not known here.",
            remedy=f"Choose one of {', '.join(DUTIES)}.",
        )
    duty, now = DUTIES[country], book.now()
    treated = tuple(_treated(now, duty, years))
    stocks = tuple(medicine_stocks(now.entries).values())
    return Register(
        duty.country,
        duty.sentence,
        tuple(sorted(years)),
        tuple(dict.fromkeys(_missing(treated, stocks, now, duty))),
        treated,
        tuple(e for e in now.entries if isinstance(e, Purchase) and e.on.year in years),
        tuple(e for e in now.entries if isinstance(e, Disposal) and e.on.year in years),
        tuple(each for each in stocks if each.bought),
        seal_words(book),
    )


def _treated(now: Contents, duty: Duty, years: Collection[int]) -> Iterable[TreatedColonies]:
    """Put treatments of some years together that are one: the same medicine, days and yard."""
    whereabouts = [each for each in now.entries if isinstance(each, WHEREABOUTS)]

    @cache
    def yards(on: date) -> dict[str, str]:
        return {name: each.yard for name, each in standings(whereabouts, now.kit, on).items()}

    def alike(each: Treatment) -> tuple[date, str, str, str, str]:
        until = str(each.until or "")
        yard = yards(each.on).get(each.colony, "")
        return each.on, each.product or each.substance, each.batch, until, yard

    given = (e for e in now.entries if isinstance(e, Treatment) and e.on.year in years)
    medicines = [each for each in given if each.substance != NO_MEDICINE]
    cards = known_products(now.entries)
    for (*_, yard), same in groupby(sorted(medicines, key=alike), key=alike):
        some = list(same)
        yield _row(some, yard, cards.get(some[0].product), bought_for(now.entries, some[0]), duty)


def _row(
    some: list[Treatment], yard: str, card: Product | None, bought: Purchase | None, duty: Duty
) -> TreatedColonies:
    first = some[0]
    days = (first.until - first.on).days if first.until else None
    amounts = [each.quantity for each in some if each.quantity is not None]
    whole = sum(amounts) if len(amounts) == len(some) else None
    withdrawal = card.withdrawal_days if card else None
    last = first.until or first.on
    ready = None if withdrawal is None else last + timedelta(days=withdrawal)
    found = {
        "product": first.product,
        "batch": first.batch or (bought.batch if bought else ""),
        "quantity": whole,
        "supplier": bought and bought.supplier and bought.supplier_address,
        "proof": bought and bought.proof,
        "withdrawal": withdrawal is not None,
        "duration": days is not None,
        **of_prescription(bought),
    }
    return TreatedColonies(
        first.on,
        first.until,
        days,
        first.product or first.substance,
        card.authorisation if card else "",
        str(found["batch"]),
        whole,
        bought.unit if bought else "",
        yard,
        tuple(sorted(each.colony for each in some)),
        supplied(bought) if bought else "",
        bought.proof if bought else "",
        prescribed(bought) if bought else "",
        withdrawal,
        ready,
        duty.keep_until(last),
        tuple(FIELD_WORDS[one] for one in _asked(duty, bought) if not found.get(one, True)),
    )


def _asked(duty: Duty, bought: Purchase | None) -> Iterator[str]:
    """Name the fields that are asked for; of a prescription those that it must tell."""
    for one in duty.asks:
        if one == "prescriber" and bought and is_prescribed(bought):
            yield from PRESCRIBED
        else:
            yield one


def is_prescribed(bought: Purchase) -> bool:
    """Tell a medicine that was prescribed, by what is noted of its prescription."""
    told = bought.prescriber, prescription(bought), bought.prescription_copy
    return bought.no_prescription is False or any(told)


def of_prescription(bought: Purchase | None) -> dict[str, str | bool]:
    """Give what is told of a prescription, or that there was none."""
    if bought is None:
        return {"prescriber": False}
    return {
        "prescriber": bool(bought.no_prescription),
        "vet_name": bought.prescriber,
        "vet_contact": bought.prescriber_contact,
        "prescription_copy": bought.prescription_copy or bought.prescription_code,
    }


def supplied(bought: Purchase) -> str:
    """Say from whom a medicine was got."""
    return f"{bought.supplier}, {bought.supplier_address}".strip(", ")


def prescribed(bought: Purchase) -> str:
    """Say who prescribed a medicine, or that nobody had to."""
    told = ", ".join(one for one in (bought.prescriber, bought.prescriber_contact) if one)
    return told or ("no prescription" if bought.no_prescription else "")


def prescription(bought: Purchase) -> str:
    """Give the numbers of a prescription."""
    return f"{bought.prescription_code} {bought.prescription_line}".strip()


def _missing(
    treated: Iterable[TreatedColonies],
    stocks: Iterable[MedicineStock],
    now: Contents,
    duty: Duty,
) -> Iterable[str]:
    """Say what is missing, treatment by treatment, and what does not add up."""
    for each in treated:
        if each.missing:
            yield f"{each.first_day}, {each.product}, {each.yard}: {', '.join(each.missing)}."
    for stock in stocks:
        yield from stock.troubles
    for bought in now.entries:
        if isinstance(bought, Purchase) and (lacking := _lacking(bought, duty)):
            yield f"{bought.on}, purchase of {bought.product}: {', '.join(lacking)}."


def _lacking(bought: Purchase, duty: Duty) -> list[str]:
    """Say what a purchase does not tell."""
    told = {
        "batch": bought.batch,
        "supplier": bought.supplier and bought.supplier_address,
        "proof": bought.proof,
    }
    return [FIELD_WORDS[one] for one in duty.asks if not told.get(one, True)]
