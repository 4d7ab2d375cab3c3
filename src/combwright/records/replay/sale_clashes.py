"""Notes of bees sold that cannot be true, or that a buyer could hold against the keeper."""

from collections import Counter
from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.standstill import outgoing_clashes
from combwright.science.health.bees_for_sale import NucPoints, colour_caution, standard_faults
from combwright.terms.dated import dated
from combwright.terms.entries import BeesSold, Movement, Noted, Order, OwnQueen, Yard

CHECK = "Nothing to do if it is so and the buyer knows; otherwise correct it."


def sales(stand: Sequence[Noted]) -> Iterator[Problem]:
    """Go through what a book says of bees sold and things moved."""
    yield from outgoing_clashes(stand)
    told = [each for each in stand if isinstance(each, BeesSold | Movement)]
    if not told:
        return
    yards = {each.yard for each in stand if isinstance(each, Yard)}
    known = {
        "order": {each.order for each in stand if isinstance(each, Order)},
        "queen": {each.queen for each in stand if isinstance(each, OwnQueen)},
        "yard": yards,
        "from_yard": yards,
    }
    seen: Counter[str] = Counter()
    for each in told:
        for field, names in known.items():
            name = getattr(each, field, None)
            if name is not None and name not in names:
                yield _unknown(each, field, name, names)
        if isinstance(each, BeesSold):
            yield from _sale(each)
            if seen[each.sale]:
                what = f"There is a sale “{each.sale}” already."
                yield wrong(each, "sale", what, "Give the new one another number.")
            seen[each.sale] += 1
        elif bool(each.yard) == bool(each.to):
            what = "It must have gone to a yard, or to somebody."
            yield wrong(each, "yard", what, "Name one of the two.")


def _unknown(each: Noted, field: str, name: str, names: set[str]) -> Problem:
    word = field.removeprefix("from_")
    near = get_close_matches(name, names, n=1)
    guess = f"Did you mean “{near[0]}”?" if near else f"Note the {word} first, or leave it open."
    return wrong(each, field, f"There is no {word} “{name}” here.", guess)


def _sale(each: BeesSold) -> Iterator[Problem]:
    if each.colony is None and each.yard is None and each.what != "swarm":
        what = "Where it stood is not told, and an inspector asks for it."
        yield wrong(each, "yard", what, "Name the colony or the yard.")
    if each.inspected is not None and each.inspected > each.on:
        inspected, sold = dated(each.inspected), dated(each.on)
        what = f"It was inspected on {inspected}, after it was handed over on {sold}."
        yield wrong(each, "inspected", what, "Correct one of the two days.")
    if each.what == "nuc":
        marked = None if each.mark is None else each.mark != "none"
        points = NucPoints(each.combs, each.combs_of_bees, each.queen_raised, marked, each.clipped)
        for fault in standard_faults(each.standard, points, each.on):
            yield odd(each, fault, CHECK)
    if each.queen_raised is not None and each.mark is not None:
        caution = colour_caution(each.queen_raised.year, each.mark)
        if caution:
            yield odd(each, caution, CHECK)
