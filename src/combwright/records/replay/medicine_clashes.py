"""Notes of medicines that cannot be true."""

from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.known_medicines import medicine_stocks
from combwright.terms.entries import Disposal, Noted, Product, Purchase, Treatment


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
            what = f"It expired on {each.expiry}, before it was bought."
            yield wrong(each, "expiry", what, "Look at the label again; do not use it if it is so.")
    yield from short(told)


def short(told: list[Noted]) -> Iterator[Problem]:
    """Find batches of which more was used than bought, and expired ones that were used."""
    last = {
        (each.product, each.batch): each
        for each in told
        if isinstance(each, Treatment | Disposal) and each.product
    }
    for key, stock in medicine_stocks(told).items():
        named = f"{stock.product}, batch {stock.batch}" if stock.batch else stock.product
        if stock.bought and stock.left < 0:
            yield odd(
                last[key],
                f"More of {named} was used than bought: {-stock.left:g} {stock.unit} too many.",
                "Note the purchase that is missing, or correct a quantity.",
            )
        if stock.used_after_expiry:
            yield odd(
                last[key],
                f"{named} was used after it expired on {stock.expiry}.",
                "Correct the day or the expiry if one is wrong; if not, ask your vet or inspector.",
            )
