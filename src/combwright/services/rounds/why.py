"""Why the sheet says what it says: the chain of decisions for one colony, with their figures."""

from dataclasses import dataclass
from datetime import date

from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.rounds.situations import AskedRound, situations_of


@dataclass(frozen=True)
class Told:
    """One colony's part of the sheet, which carries its decisions."""

    sheet: ColonySheet
    notes: dict[str, tuple[tuple[date, float], ...]]


# What a beginner asks at each decision, and the trade's answer in a sentence.
LESSONS = {
    "disease": "With signs of disease nothing is moved: frames, tools and bees carry it on.",
    "look": "Eggs, stores, room and signs of disease: four looks say how a colony stands.",
    "swarm": (
        "A queen cell is sealed eight days after its egg, and the swarm leaves about then: a look "
        "every seven days leaves at most one missed cell."
    ),
    "queen": (
        "Eggs stand for three days: eggs seen mean that a queen was there within the last three."
    ),
    "honey": "Honey under 20 % water keeps; sealed cells are the bees' own sign that it is ripe.",
    "room and warmth": (
        "The queen can lay only in drawn, empty, warm cells that bees cover. Too little room and "
        "they swarm; too much, and heat goes into empty space."
    ),
    "mites": (
        "Mites breed under the cappings: they grow while there is brood, and hurt the bees that "
        "must live through winter. So they are brought down in August, before those are reared."
    ),
    "food": (
        "Syrup that is not eaten fills three times the cells of the honey it becomes, and those "
        "are the queen's. So the portion is what they use until the next visit, not more."
    ),
    "winter": "What counts on 1 October is bees, stores, few mites and a laying queen.",
    "nucs": "Sealed brood given away is bees lost here: only a surplus is given.",
    "next visit": "Seen again as late as pays, and as food, room and the swarm clock allow.",
}


def why(
    book: Book, colony: str, on: date, *, days: int = 7, members: int = 200, seed: int = 1
) -> Told:
    """Plan for one colony and tell the chain of its decisions."""
    situations = situations_of(book, AskedRound(on, None, days, members, seed))
    followed = situations.follow(colony)
    sheet = colony_sheet(followed, situations.of(followed), 1)
    return Told(sheet, dict(followed.notes))
