"""The comb strip in words, for those who do not see it."""

from itertools import groupby

from combwright.terms.combs import Box, Place, StackView


def describe(stack: StackView) -> str:
    """Say in words what a comb strip of the stack shows.

    Each box from the bottom up, its contents in whole combs and its places from the left;
    then what lies over and under the boxes.

    Examples
    --------
    >>> box = Box("brood", (Place("dummy board"), Place("comb", brood=0.5, bees=1.0)))
    >>> print(describe(StackView((box,), False, True, 30, 0, "crown board")))
    Brood box with 2 places: bees on 1.0, brood 0.5, stores 0.0, pollen 0.0, empty 0.5. \
From the left: 1 dummy board, 1 brood. Feeder on top. Cover: crown board. \
Entrance 30 mm, tray shut.

    """
    parts = [_box(box) for box in stack.boxes]
    if stack.excluder:
        parts.append("Queen excluder over the brood.")
    if stack.feeder_over:
        parts.append("Feeder on top.")
    parts.append(f"Cover: {stack.cover}.")
    parts.append(f"{entrance_words(stack)}, {tray_words(stack)}.".capitalize())
    return " ".join(parts)


def entrance_words(stack: StackView) -> str:
    """Say how wide the entrance is; its unit is that of the tray where that is open."""
    unit = "" if stack.tray_open_mm >= 1 else " mm"
    return f"entrance {stack.entrance_mm:.0f}{unit}" if stack.entrance_mm >= 1 else "entrance shut"


def tray_words(stack: StackView) -> str:
    """Say how far the tray is drawn out."""
    return f"tray {stack.tray_open_mm:.0f} mm" if stack.tray_open_mm >= 1 else "tray shut"


def _box(box: Box) -> str:
    name = "Brood box" if box.kind == "brood" else "Super"
    if not box.places:
        return f"{name}, nothing in it."
    combs = [place for place in box.places if place.holds == "comb"]
    bees = sum(place.bees for place in box.places)
    brood, stores, pollen = (
        sum(place.brood for place in combs),
        sum(place.stores for place in combs),
        sum(place.pollen for place in combs),
    )
    empty = max(0.0, len(combs) - brood - stores - pollen)
    places = "1 place" if len(box.places) == 1 else f"{len(box.places)} places"
    runs = [(len(list(run)), words) for words, run in groupby(box.places, key=_mostly)]
    from_the_left = ", ".join(f"{count} {words}" for count, words in runs)
    return (
        f"{name} with {places}: bees on {bees:.1f}, brood {brood:.1f}, stores {stores:.1f}, "
        f"pollen {pollen:.1f}, empty {empty:.1f}. From the left: {from_the_left}."
    )


def _mostly(place: Place) -> str:
    """Name a place by what it holds most of."""
    words: str = place.holds
    if place.holds == "comb":
        shares = {"brood": place.brood, "stores": place.stores, "pollen": place.pollen}
        shares["empty comb"] = 1 - sum(shares.values())
        words = max(shares, key=lambda name: shares[name])
    return f"{words} (put in)" if place.is_new else words
