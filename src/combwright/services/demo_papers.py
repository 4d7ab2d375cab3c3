"""The demo's papers of the year before: honey in tanks and jars, bees handed over, as notes."""

from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

from combwright.terms.entries import ENTRY, AnyEntry

WELL: Final = {
    "address": "3 Main Street, Exampletown",
    "contact": "+353 1 555 0100",
    "inspected_by": "A. Keeper",
    "found": "nothing unusual",
    "no_treatment": True,
}
# kind, day, what it says
NOTES: Final[tuple[tuple[str, str, dict[str, Any]], ...]] = (
    ("keeper", "2026-05-01",
     {"keeper": "A. Keeper", "address": "1 Main Street, Exampletown, A65 F4E2", "country": "IE",
      "registration": "IE 0000", "honey_name": "Irish Honey",
      "label_text": "From the hedges round Alder Bank.",
      "terms": "Tell me within three weeks of the hand-over if the queen fails or the bees are "
      "sick: I look at them with you and replace what was wrong. Not for bees that starved."}),
    ("bees sold", "2026-06-13",
     WELL | {"sale": "26-1", "what": "nuc", "buyer": "Ryan", "yard": "Mill Orchard",
      "queen_raised": "2025-06-20", "mark": "blue", "clipped": True, "box": "British National",
      "origin_note": "daughter of a queen of Alder Bank, mated there", "combs": 5,
      "combs_of_bees": 5, "combs_of_brood": 3, "combs_of_food": 1, "comb_age": "this year",
      "temper": "calm", "inspected": "2026-06-10", "standard": "FIBKA",
      "box_deposit": "box to come back, 25 paid"}),
    ("bees sold", "2026-07-04",
     WELL | {"sale": "26-2", "what": "colony", "buyer": "Sheehan", "yard": "Quarry Field",
      "queen_raised": "2024-06-01", "mark": "green", "box": "British National, one box",
      "combs": 11, "combs_of_bees": 9, "combs_of_brood": 6, "combs_of_food": 2,
      "temper": "lively", "inspected": "2026-07-01", "defects": "two old combs at the wall"}),
    ("bees sold", "2026-08-01",
     WELL | {"sale": "26-3", "what": "queen", "count": 2, "buyer": "Quinn",
      "yard": "Mill Orchard", "queen_raised": "2026-07-05", "mark": "white", "clipped": False,
      "origin_note": "of the grafts of June, caged with eight workers on 31 July",
      "inspected": "2026-07-28"}),
    ("honey batch", "2026-08-03",
     {"honey": "Summer 2026", "kg": 61.0, "reading": 17.6, "reading_c": 24, "tank": "tank 1"}),
    ("honey source", "2026-07-31",
     {"honey": "Summer 2026", "yard": "Alder Bank", "first_day": "2026-07-30", "supers": 3,
      "kg": 36.5}),
    ("honey source", "2026-07-31",
     {"honey": "Summer 2026", "yard": "Mill Orchard", "supers": 2, "kg": 25.6}),
    ("honey batch", "2026-09-14",
     {"honey": "Ivy and late 2026", "kg": 18.5, "reading": 18.9, "reading_c": 20,
      "tank": "buckets 4 and 5"}),
    ("honey source", "2026-09-12",
     {"honey": "Ivy and late 2026", "yard": "Quarry Field", "supers": 2, "kg": 19.0}),
    ("jar run", "2026-08-20",
     {"lot": "L26232-1", "honey": "Summer 2026", "jars": 120, "jar_g": 340, "lost_kg": 0.4,
      "best_before": "2028-12-31", "shows": "year"}),
    ("jar weights", "2026-08-20",
     {"lot": "L26232-1", "weights": "341 342 340.5 341 343 340 342", "scales": "kitchen scales 2"}),
    ("jar run", "2026-08-20",
     {"lot": "L26232-2", "honey": "Summer 2026", "jars": 40, "jar_g": 454,
      "best_before": "2028-12-31", "shows": "year"}),
    ("jar run", "2026-10-02",
     {"lot": "L26275-1", "honey": "Ivy and late 2026", "jars": 50, "jar_g": 340, "lost_kg": 0.3,
      "best_before": "2028-10-31", "shows": "month"}),
    ("honey sale", "2026-08-29",
     {"lot": "L26232-1", "jars": 48, "buyer": "Example Stores", "address": "12 Main Street"}),
    ("honey sale", "2026-09-19", {"lot": "L26232-1", "jars": 20}),
    ("honey sale", "2026-11-21",
     {"lot": "L26275-1", "jars": 24, "buyer": "Example Café", "address": "2 Mill Lane"}),
)  # fmt: skip


def demo_papers() -> list[AnyEntry]:
    """Give the notes; each has an id that follows from its place."""
    return [
        ENTRY.validate_python(
            {"id": uuid5(NAMESPACE_URL, f"demo paper {at}"), "kind": kind, "on": on, **told}
        )
        for at, (kind, on, told) in enumerate(NOTES)
    ]
