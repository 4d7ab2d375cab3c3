"""Standards by which bees for sale are described, and what holds for moves inside the EU."""

from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.science.queens.mark_colour import mark_colour
from combwright.terms.data_files import contents

MONTHS: Final = 12
DATA: Final = contents("science/bees_for_sale")


@dataclass(frozen=True, slots=True)
class NucPoints:
    """What a nuc is held against: combs, and its queen."""

    combs: float | None
    of_bees: float | None
    queen_raised: date | None
    marked: bool | None
    clipped: bool | None


def standard_faults(standard: str, nuc: NucPoints, sold: date) -> tuple[str, ...]:
    """Say in what a nuc falls short of a standard; what is not told falls short of nothing.

    References
    ----------
    .. [1] Guidance of inspectorates and criteria of associations, by pages of associations; read,
       in part second-hand: see the data file.

    Examples
    --------
    >>> nuc = NucPoints(5, 5, date(2025, 6, 10), True, True)
    >>> standard_faults("FIBKA", nuc, date(2026, 4, 20))
    ()
    >>> standard_faults("FIBKA", nuc, date(2026, 7, 20))
    ('Its queen is more than 12 months old.',)

    """
    asks = DATA["standard"].get(standard)
    if asks is None:
        return ()
    told = []
    if nuc.combs is not None and not asks["fewest_combs"] <= nuc.combs <= asks["most_combs"]:
        told.append(
            f"It has {nuc.combs:g} combs: {asks['fewest_combs']} to {asks['most_combs']} are asked."
        )
    if nuc.of_bees is not None and nuc.of_bees < asks["fewest_of_bees"]:
        told.append(f"It covers {nuc.of_bees:g} combs: {asks['fewest_of_bees']} are asked for.")
    most = asks["queen_at_most_months"]
    if most and nuc.queen_raised is not None and _months(nuc.queen_raised, sold) > most:
        told.append(f"Its queen is more than {most} months old.")
    if asks["marked_and_clipped"] and False in (nuc.marked, nuc.clipped):
        told.append("Its queen is not marked and clipped.")
    return tuple(told)


def _months(since: date, until: date) -> float:
    """Count months, the begun one as a part."""
    whole = MONTHS * (until.year - since.year) + until.month - since.month
    return whole + (until.day - since.day) / 100.0


def colour_caution(year: int, mark: str) -> str:
    """Say that a mark is not of the colour of its year, or nothing; both are kept as told.

    Examples
    --------
    >>> colour_caution(2025, "white"), colour_caution(2026, "white")
    ('Queens of 2025 are marked blue, and she is white: check the year.', '')

    """
    if mark in {"none", mark_colour(year)}:
        return ""
    return f"Queens of {year} are marked {mark_colour(year)}, and she is {mark}: check the year."


def eu_move_faults(
    *, afb_km: float, afb_days: float, beetle_km: float, tropilaelaps_km: float
) -> tuple[str, ...]:
    """Say what stands against taking bees from one EU country to another.

    ``afb_km`` and ``afb_days``: how far and how long ago American foulbrood was last reported;
    ``beetle_km`` and ``tropilaelaps_km``: how far the nearest known place of each is. A certificate
    is needed besides.

    References
    ----------
    .. [1] Delegated Regulation (EU) 2020/688, article 48; read.

    Examples
    --------
    >>> far = {"beetle_km": 101.0, "tropilaelaps_km": 500.0}
    >>> eu_move_faults(afb_km=3.1, afb_days=1.0, **far)
    ()
    >>> eu_move_faults(afb_km=2.9, afb_days=29.0, **far)
    ('American foulbrood was reported within 3 km in the last 30 days.',)

    """
    rule, told = DATA["moving"], []
    if afb_km <= rule["afb_km"] and afb_days <= rule["afb_days"]:
        told.append(
            f"American foulbrood was reported within {rule['afb_km']:g} km in the last "
            f"{rule['afb_days']:g} days."
        )
    if beetle_km <= rule["beetle_km"]:
        told.append(f"Small hive beetle is known within {rule['beetle_km']:g} km.")
    if tropilaelaps_km <= rule["tropilaelaps_km"]:
        told.append(f"Tropilaelaps is known within {rule['tropilaelaps_km']:g} km.")
    return tuple(told)
