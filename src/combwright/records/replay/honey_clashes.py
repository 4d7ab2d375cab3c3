"""Notes of honey that cannot be true: lots printed twice, more out than in, honey that waits."""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from typing import Final
from uuid import UUID

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.known_honey import (
    GRAM,
    KnownHoney,
    colonies_of,
    known_honey,
    known_lots,
)
from combwright.records.replay.withheld import Withheld, withheld
from combwright.science.honey.jars import full_jars
from combwright.terms.dated import dated
from combwright.terms.entries import (
    AnyEntry,
    Correction,
    Harvest,
    HoneyBatch,
    HoneySale,
    HoneySource,
    JarRun,
    JarWeights,
    Noted,
)

MOST_LOST: Final = 5.0  # percent from box to tank, beyond which a second look is due; judgement
HONEY: Final = HoneyBatch | HoneySource | JarRun | JarWeights | HoneySale


def honey_clashes(stand: Sequence[Noted], written: Iterable[AnyEntry]) -> Iterator[Problem]:
    """Go through what a book says of honey; ``written`` tells what was noted before what."""
    told = [each for each in stand if isinstance(each, Harvest | HONEY)]
    yield from _waiting(told, stand, written)
    if not any(isinstance(each, HONEY) for each in told):
        return
    batches, lots = known_honey(told), known_lots(told)
    yield from _twice(told)
    for each in told:
        yield from _names(each, batches, lots)
        if isinstance(each, HoneySource):
            yield from _source(each)
    yield from _tanks(told, batches)
    for lot in lots.values():
        if lot.left < 0:
            what = f"{lot.sold} jars of lot {lot.run.lot} went out, but {lot.run.jars} were filled."
            yield wrong(lot.sales[-1], "jars", what, "Correct the number, or name the right lot.")


def _twice(told: Iterable[Noted]) -> Iterator[Problem]:
    """Find lots that were printed twice, and batches of one name."""
    seen: Counter[tuple[str, str]] = Counter()
    for each in told:
        if isinstance(each, JarRun):
            field, name, remedy = "lot", each.lot, "Give this run the next number of its day."
        elif isinstance(each, HoneyBatch):
            field, name, remedy = "honey", each.honey, "Give the new one another name."
        else:
            continue
        if seen[field, name]:
            word = "lot" if field == "lot" else "batch of honey"
            yield wrong(each, field, f"There is a {word} “{name}” already.", remedy)
        seen[field, name] += 1


def _names(each: Noted, batches: Collection[str], lots: Collection[str]) -> Iterator[Problem]:
    """Find batches and lots that the book does not know."""
    for field, word, known in (
        ("honey", "batch of honey", batches),
        ("from_honey", "batch of honey", batches),
        ("lot", "lot", lots),
    ):
        name = getattr(each, field, None)
        if name is not None and name not in known:
            near = get_close_matches(name, known, n=1)
            guess = f"Did you mean “{near[0]}”?" if near else f"Note the {word} first."
            yield wrong(each, field, f"There is no {word} “{name}” here.", guess)


def _source(each: HoneySource) -> Iterator[Problem]:
    """Find sources that name nothing, or too much, or a batch without its weight."""
    named = [one for one in (each.colony, each.yard, each.from_honey, each.supplier) if one]
    if len(named) != 1:
        what = "It must come from a colony, a yard, another batch, or somebody who sold it."
        yield wrong(each, "colony", what, "Name one of the four; note more of them one by one.")
    if each.from_honey and each.kg is None:
        what = "What is run over from another tank must be weighed."
        yield wrong(each, "kg", what, "Weigh it, so that both tanks add up.")
    if each.from_honey == each.honey:
        yield wrong(each, "from_honey", "A batch cannot come from itself.", "Name the other.")
    if each.supplier and not each.country:
        what = "The country of bought honey is missing."
        yield wrong(each, "country", what, "Look on its papers: the label must say it.")


def _tanks(told: Iterable[Noted], batches: Mapping[str, KnownHoney]) -> Iterator[Problem]:
    """Find tanks out of which more went than was in them, or into which more than came."""
    last: dict[str, JarRun | HoneySource] = {}
    for each in told:
        if isinstance(each, JarRun):
            last[each.honey] = each
        elif isinstance(each, HoneySource) and each.from_honey:
            last[each.from_honey] = each
    for name, now in batches.items():
        if now.left_kg < 0.0 and name in last:
            yield _too_much(last[name], now)
        if now.in_kg is not None and now.lost_percent is not None:
            if now.in_kg + GRAM < now.batch.kg:
                what = f"{now.batch.kg:g} kg in the tank, but only {now.in_kg:g} kg came in."
                yield wrong(now.sources[-1], "kg", what, "Correct one of the weights.")
            elif now.lost_percent > MOST_LOST:
                what = f"{now.lost_percent:.0f} % of “{name}” was lost on the way to the tank."
                yield odd(now.sources[-1], what, "Check the weights of boxes and tank.")


def _too_much(each: JarRun | HoneySource, now: KnownHoney) -> Problem:
    """Say that more went out of a tank than was in it, and how much there was for the last."""
    if isinstance(each, HoneySource):
        what = f"“{each.from_honey}” holds {-now.left_kg:.1f} kg less than is run over from it."
        return wrong(each, "kg", what, "Correct the weight.")
    before = now.left_kg + each.jars * each.jar_g / 1000.0
    most = int(full_jars(max(0.0, before), each.jar_g))
    what = (
        f"{each.jars} jars of {each.jar_g:g} g take {-now.left_kg:.2f} kg more than there is: the "
        f"tank of “{each.honey}” held {max(0.0, before):.2f} kg for them."
    )
    return wrong(each, "jars", what, f"It fills {most} at most: correct the number or the tank.")


def _waiting(
    told: Iterable[Noted], stand: Sequence[Noted], written: Iterable[AnyEntry]
) -> Iterator[Problem]:
    """Find honey that was taken before it might be.

    Refused when the honey is what is noted last. A treatment or a label noted after it is never
    refused, for it happened: then it is said, for jars may have to come back.
    """
    waits = withheld(stand)
    if not waits:
        return
    at = _places(written)
    for each in told:
        for one in _waiting_for(each, stand, waits):
            what = (
                f"Honey of “{one.colony}” waits until {dated(one.free)}: {one.product} was given "
                f"on {dated(one.since)}."
            )
            if at.get(each.id, 0) > max(at.get(one.treatment, 0), at.get(one.label, 0)):
                field = "honey_kg" if isinstance(each, Harvest) else "colony"
                yield wrong(each, field, what, REMEDY)
            else:
                yield odd(each, what, "Keep it apart; trace its batch and ask your vet.")


def _waiting_for(
    each: Noted, stand: Sequence[Noted], waits: Mapping[str, Sequence[Withheld]]
) -> Iterator[Withheld]:
    """Give what the honey that a note takes had to wait for."""
    colonies: Iterable[str] = ()
    if isinstance(each, Harvest):
        colonies = (each.colony,)
    elif isinstance(each, HoneySource):
        colonies = colonies_of(each, stand)
    since = (isinstance(each, HoneySource) and each.first_day) or each.on
    for colony in colonies:
        some = (one for one in waits.get(colony, ()) if one.holds(since) or one.holds(each.on))
        yield from list(some)[-1:]


REMEDY: Final = (
    "Take it after that day. Combs kept for the bees are supers taken off, not honey taken; if a "
    "day or the label’s period is wrong, put that note right first."
)


def _places(written: Iterable[AnyEntry]) -> dict[UUID, int]:
    """Give the place in which each entry was written, replacements where they were."""
    found: dict[UUID, int] = {}
    for at, each in enumerate(written):
        found.setdefault(each.id, at)
        if isinstance(each, Correction) and each.replacement is not None:
            found.setdefault(each.replacement.id, at)
    return found
