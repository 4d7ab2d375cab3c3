"""Notes of medicines that cannot be true."""

from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.known_medicines import medicine_stocks
from combwright.terms.dated import dated
from combwright.terms.entries import Disposal, Noted, Product, Purchase, Treatment

CORRECT = (
    "Note the purchase that is missing, or correct the quantity, day or expiry that is wrong; if "
    "none is, ask your vet or inspector."
)


def medicines(stand: Iterable[Noted]) -> Iterator[Problem]:
    """Go through what a book says of medicines; what was given to bees is never refused."""
    told = list(stand)
    known = {each.product for each in told if isinstance(each, Product)}
    for each in told:
        if isinstance(each, Purchase | Disposal) and each.product not in known:
            near = get_close_matches(each.product, known, n=1)
            guess = f"Did you mean “{near[0]}”?" if near else "Note the medicine’s label first."
            yield wrong(each, "product", f"There is no medicine “{each.product}” here.", guess)
        if isinstance(each, Purchase) and each.expiry is not None and each.expiry < each.on:
            what = f"It expired on {dated(each.expiry)}, before it was bought."
            yield wrong(each, "expiry", what, "Look at the label again; do not use it if it is so.")
    yield from turned_round(told)
    yield from short(told)


def short(told: list[Noted]) -> Iterator[Problem]:
    """Find batches of which more was used than bought, and expired ones that were used."""
    last = {
        (each.product, each.batch): each
        for each in told
        if isinstance(each, Treatment | Disposal) and each.product
    }
    for key, stock in medicine_stocks(told).items():
        for trouble in stock.troubles:
            yield odd(last[key], trouble, CORRECT)


def turned_round(told: list[Noted]) -> Iterator[Problem]:
    """Find treatments that come out before they go in."""
    for each in told:
        if isinstance(each, Treatment) and each.until is not None and each.until < each.on:
            what = f"It came out on {dated(each.until)}, before it went in on {dated(each.on)}."
            yield odd(each, what, "Correct one of the two days.")
