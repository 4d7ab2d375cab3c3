"""The demo's papers: honey in tanks and jars, bees handed over, medicines bought, as notes."""

from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

from combwright.terms.entries import ENTRY, AnyEntry

WELL: Final = {
    "inspected_by": "A. Keeper",
    "found": "nothing unusual",
    "no_treatment": True,
}
STRIPS, STRIPS_BATCH = "Example strips", "S27-041"
SUPPLY: Final = {"supplier": "Example Bee Supply", "supplier_address": "9 Main Street, Exampletown"}
# kind, day, what it says
NOTES: Final[tuple[tuple[str, str, dict[str, Any]], ...]] = (
    ("keeper", "2026-05-01",
     {"keeper": "A. Keeper", "address": "1 Main Street, Exampletown, A65 F4E2", "country": "IE",
      "registration": "IE 0000", "honey_name": "Irish Honey",
      "label_text": "From the hedges round Alder Bank.",
      "terms": "Tell me within three weeks of the hand-over if the queen fails or the bees are "
      "sick: I look at them with you and replace what was wrong. Not for bees that starved."}),
    ("bees sold", "2026-06-13",
     WELL | {"sale": "26-1", "what": "nuc", "buyer": "Ryan",
      "address": "3 Main Street, Exampletown", "contact": "+353 1 555 0100", "yard": "Mill Orchard",
      "queen_raised": "2025-06-20", "mark": "blue", "clipped": True, "box": "British National",
      "origin_note": "daughter of a queen of Alder Bank, mated there", "combs": 5,
      "combs_of_bees": 5, "combs_of_brood": 3, "combs_of_food": 1, "comb_age": "this year",
      "temper": "calm", "inspected": "2026-06-10", "standard": "FIBKA",
      "box_deposit": "box to come back, 25 paid"}),
    ("bees sold", "2026-07-04",
     WELL | {"sale": "26-2", "what": "colony", "buyer": "Sheehan",
      "address": "The Lodge, Examplebridge", "contact": "sheehan@example.org",
      "yard": "Quarry Field",
      "queen_raised": "2024-06-01", "mark": "green", "box": "British National, one box",
      "combs": 11, "combs_of_bees": 9, "combs_of_brood": 6, "combs_of_food": 2,
      "temper": "lively", "inspected": "2026-07-01", "defects": "two old combs at the wall"}),
    ("bees sold", "2026-08-01",
     WELL | {"sale": "26-3", "what": "queen", "count": 2, "buyer": "Quinn",
      "address": "14 Mill Lane, Exampleford", "contact": "+353 1 555 0123",
      "yard": "Mill Orchard", "queen_raised": "2026-07-05", "mark": "white", "clipped": False,
      "origin_note": "of the grafts of June, caged with eight workers on 31 July",
      "inspected": "2026-07-28"}),
    ("honey batch", "2026-08-03",
     {"honey": "Summer 2026", "kg": 61.0, "reading": 17.6, "reading_c": 24, "tank": "tank 1"}),
    ("honey source", "2026-07-30",
     {"honey": "Summer 2026", "colony": "Bramble", "supers": 2, "kg": 24.1}),
    ("honey source", "2026-07-30",
     {"honey": "Summer 2026", "colony": "Teasel", "supers": 1, "kg": 12.4}),
    ("honey source", "2026-07-31",
     {"honey": "Summer 2026", "colony": "Mallow", "supers": 1, "kg": 14.0}),
    ("honey source", "2026-07-31",
     {"honey": "Summer 2026", "colony": "Comfrey", "supers": 1, "kg": 11.6}),
    ("honey batch", "2026-09-14",
     {"honey": "Ivy and late 2026", "kg": 18.5, "reading": 18.9, "reading_c": 20,
      "tank": "buckets 4 and 5"}),
    ("honey source", "2026-09-12",
     {"honey": "Ivy and late 2026", "colony": "Burdock", "supers": 1, "kg": 10.2}),
    ("honey source", "2026-09-12",
     {"honey": "Ivy and late 2026", "colony": "Tansy", "supers": 1, "kg": 8.8}),
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
    ("product", "2027-03-06",
     {"product": "Example formic pads", "withdrawal_days": 0, "prescription": "none needed"}),
    ("purchase", "2027-03-06",
     SUPPLY | {"product": "Example formic pads", "quantity": 20, "unit": "sachets",
      "batch": "F26-118", "expiry": "2028-09-30", "no_prescription": True}),
    ("product", "2027-02-27",
     {"product": STRIPS, "withdrawal_days": 0, "authorisation": "Example 0000/001",
      "route": "POM", "prescription": "needed"}),
    ("purchase", "2027-02-27",
     SUPPLY | {"product": STRIPS, "quantity": 20, "unit": "strips", "batch": STRIPS_BATCH,
      "expiry": "2028-06-30", "proof": "INV-2231", "no_prescription": False,
      "prescriber": "A. Vet", "prescriber_contact": "4 Main Street, Exampletown",
      "prescription_code": "0000000000000042", "prescription_line": "0000000000000001"}),
    ("disposal", "2027-04-17",
     {"product": STRIPS, "quantity": 2, "unit": "strips", "batch": STRIPS_BATCH,
      "how": "foil torn; taken back by Example Bee Supply"}),
)  # fmt: skip


def demo_papers() -> list[AnyEntry]:
    """Give the notes; each has an id that follows from its place."""
    return [
        ENTRY.validate_python(
            {"id": uuid5(NAMESPACE_URL, f"demo paper {at}"), "kind": kind, "on": on, **told}
        )
        for at, (kind, on, told) in enumerate(NOTES)
    ]
