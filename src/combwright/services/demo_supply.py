"""Orders, batches of cells and named queens of the demo's keeper, as notes."""

from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

from combwright.terms.entries import ENTRY, AnyEntry

# kind, day, what it says
NOTES: Final[tuple[tuple[str, str, dict[str, Any]], ...]] = (
    ("order", "2027-03-08",
     {"order": "No 1", "customer": "Byrne", "wanted_by": "2027-06-12", "price": 210.0,
      "deposit": 50.0}),
    ("order", "2027-03-10",
     {"order": "No 2", "customer": "Kelly", "count": 2, "wanted_by": "2027-06-26"}),
    ("order news", "2027-03-12",
     {"order": "No 2", "event": "promised", "week": "2027-06-28", "percent": 90.0}),
    ("order", "2027-03-20",
     {"order": "No 3", "customer": "Nolan", "wanted_by": "2027-07-03"}),
    ("order", "2027-03-27",
     {"order": "No 4", "customer": "Daly", "count": 3, "wanted_by": "2027-06-05"}),
    ("order", "2027-04-03",
     {"order": "No 5", "customer": "Walsh", "count": 2, "wanted_by": "2027-07-17"}),
    ("order", "2027-04-10",
     {"order": "No 6", "customer": "Farrell", "what": "mated queen", "count": 2,
      "wanted_by": "2027-07-03"}),
    ("own queen", "2027-03-13",
     {"queen": "White 7", "year": 2026, "mark": "white", "clipped": True, "colony": "Bramble"}),
    ("own queen news", "2027-04-17", {"queen": "White 7", "event": "laying", "pattern": "solid"}),
    ("batch", "2027-04-17",
     {"batch": "First graft", "method": "graft", "day_0": "2027-04-17", "begun": 20,
      "mother": "White 7", "colony": "Bramble"}),
    ("batch counts", "2027-04-18", {"batch": "First graft", "accepted": 15}),
    ("batch counts", "2027-04-22", {"batch": "First graft", "sealed": 13}),
    ("batch", "2027-04-20",
     {"batch": "Second graft", "method": "upper box", "day_0": "2027-05-08", "begun": 24,
      "mother": "White 7", "remark": "planned"}),
)  # fmt: skip


def demo_supply() -> list[AnyEntry]:
    """Give the notes; each has an id that follows from its place."""
    return [
        ENTRY.validate_python(
            {"id": uuid5(NAMESPACE_URL, f"demo supply {at}"), "kind": kind, "on": on, **told}
        )
        for at, (kind, on, told) in enumerate(NOTES)
    ]
