"""A register as tables of words: for the page, for paper, for a spreadsheet."""

from datetime import date

from combwright.services.register.medicines import (
    Register,
    TreatedColonies,
    prescribed,
    prescription,
    supplied,
)
from combwright.services.register.record import Record, WordTable
from combwright.terms.entries import Disposal, Purchase


def as_record(found: Register) -> Record:
    """Give a register as a record to print."""
    years = ", ".join(str(year) for year in found.years)
    return Record(
        f"Register of medicines for bees, {found.country}, {years}",
        date(max(found.years), 12, 31),
        found.law,
        found.missing,
        tables(found),
        seal=found.seal,
    )


def tables(found: Register) -> tuple[WordTable, ...]:
    """Give the tables of a register."""
    return (
        WordTable("Treatments", TREATED, tuple(_treated(each) for each in found.treatments)),
        WordTable("Bought", BOUGHT, tuple(_bought(each) for each in found.purchases)),
        WordTable("Disposed of", DISPOSED, tuple(_disposed(each) for each in found.disposals)),
        WordTable(
            "What should be left",
            ("product", "batch", "bought", "used", "disposed of", "left", "expires"),
            tuple(
                (
                    each.product,
                    each.batch,
                    *(f"{n:g} {each.unit}" for n in (each.bought, each.used, each.disposed)),
                    f"{each.left:g} {each.unit}",
                    str(each.expiry or ""),
                )
                for each in found.stock
            ),
        ),
    )


TREATED = (
    *("first day", "last day", "days", "product", "authorisation", "batch", "quantity"),
    *("yard", "colonies", "supplier", "proof", "prescriber", "withdrawal", "honey from"),
    *("keep until", "missing"),
)
BOUGHT = (
    *("day", "product", "batch", "expires", "quantity", "supplier", "proof", "prescriber"),
    "prescription",
)
DISPOSED = ("day", "product", "batch", "quantity", "how and where")


def _treated(each: TreatedColonies) -> tuple[str, ...]:
    quantity = "" if each.quantity is None else f"{each.quantity:g} {each.unit}".strip()
    withdrawal = "" if each.withdrawal_days is None else f"{each.withdrawal_days:g} days"
    dates = (str(each.first_day), str(each.last_day or ""))
    return (
        *dates,
        "" if each.days is None else str(each.days),
        *(each.product, each.authorisation, each.batch, quantity),
        *(each.yard, ", ".join(each.colonies), each.supplier, each.proof, each.prescriber),
        *(withdrawal, str(each.honey_from or ""), str(each.keep_until), "; ".join(each.missing)),
    )


def _bought(each: Purchase) -> tuple[str, ...]:
    return (
        *(str(each.on), each.product, each.batch, str(each.expiry or "")),
        *(f"{each.quantity:g} {each.unit}", supplied(each), each.proof),
        *(prescribed(each), prescription(each)),
    )


def _disposed(each: Disposal) -> tuple[str, ...]:
    return (
        *(str(each.on), each.product, each.batch),
        *(f"{each.quantity:g} {each.unit}", each.how),
    )
