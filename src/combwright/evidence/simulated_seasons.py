"""Seasons near Dublin from a spring put there, under a keeper who goes by rules of thumb."""

from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from combwright.evidence.simulated_yards import SimulatedYard
from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.hands import actions
from combwright.simulation.hands.dividing import split
from combwright.simulation.hands.keeper import Keeping, Kept, keep
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp
from combwright.weather.sampled import sampled_conditions

Floats = NDArray[np.float64]
START, SEED, COLONIES, DAYS = date(2026, 3, 20), 20260320, 200, 453
HIVE = "national timber"
DEAD = 1500.0  # bees below which a colony is as good as dead
ALL_BUT_FULL = 10.5  # frames of bees in a box of eleven
STRONG = 12.0  # frames of bees
FORTNIGHT = 14


def day(month: int, of_month: int, year: int = 2026) -> int:
    """Place of a date in the season's days."""
    return (date(year, month, of_month) - START).days


@cache
def _dublin(days: int) -> Floats:
    return sampled_conditions("Dublin", START, days, COLONIES, SEED)


@cache
def _luck(days: int) -> Floats:
    return luck(SEED, "season", START, days, COLONIES)


def season(
    *,
    keeping: Keeping | None = None,
    days: int = DAYS,
    mites: float = 40.0,
    biology: Biology = BIOLOGY,
    number: int = COLONIES,
) -> tuple[NDArray[np.void], Kept]:
    """Let six and a half frames of bees on 20 March live on near Dublin, each in its own year."""
    hive, set_up = catalogue().hive(HIVE), SetUp(frames=11)
    described = Described(
        frames_of_bees=6.5, frames_of_brood=2.0, stores_kg=8.0, mites=mites, queen_year=2025
    )
    made = begin(hive, set_up, described, on=START, members=number, seed=SEED, colony="season")
    kept = keep(
        made,
        hive,
        set_up,
        _dublin(days)[:number],
        _luck(days)[:number],
        first=START,
        keeping=keeping or Keeping(),
        seed=SEED,
        worlds=(biology,),
    )
    return made, kept


@cache
def usual() -> tuple[NDArray[np.void], Kept]:
    """Fourteen months under the usual keeper."""
    return season()


@cache
def untreated() -> tuple[NDArray[np.void], Kept]:
    """Three and a half years without any treatment."""
    return season(keeping=Keeping(treating="none"), days=1280)


def _middle(values: Floats) -> float:
    return float(np.median(values))


def _frames(kept: Kept) -> Floats:
    at_home = kept.trace["adults"] - observe.AWAY_AT_NOON * kept.trace["foragers"]
    return np.asarray(at_home / catalogue().hive(HIVE).frame.bees_full_cover)


def the_year() -> dict[str, float]:
    """Bees, brood and dates of the year: medians over colonies."""
    _, kept = usual()
    adults, frames = kept.trace["adults"], _frames(kept)
    spring = frames[: day(7, 20)] > ALL_BUT_FULL
    full = np.where(spring.any(axis=0), spring.argmax(axis=0), day(7, 20))
    low = adults[day(11, 1) : day(6, 1, 2027)].argmin(axis=0) + day(11, 1)
    march = adults[day(3, 11, 2027)]
    later = np.arange(len(adults))[:, None] > low[None, :]
    back = (later & (adults >= march[None, :])).argmax(axis=0)
    return {
        "full_box_day": float(np.median(full)) + START.timetuple().tm_yday,
        "peak": _middle(adults.max(axis=0)),
        "peak_brood": _middle(kept.trace["brood"].max(axis=0)),
        "into_winter": _middle(adults[day(11, 1)]),
        "out_of_winter": _middle(adults[day(3, 11, 2027)]),
        "low_day": float(np.median(low)) - day(1, 1, 2027) + 1,
        "recovered_days": float(np.median(np.maximum(back - low, 0))),
        "winter_bees_left": _middle(usual()[0]["winter"]),
    }


def budgets() -> dict[str, float]:
    """Honey and pollen used in a year, honey a day in midwinter, syrup sugar given: medians."""
    made, kept = usual()
    used = kept.trace["used_g"]
    winter = used[day(12, 1) : day(2, 1, 2027)].mean(axis=0) / observe.SUGAR_IN_HONEY
    return {
        "honey_kg": _middle(used[:365].sum(axis=0)) / 1000.0 / observe.SUGAR_IN_HONEY,
        "pollen_kg": _middle(made["pollen_total"]) / 1000.0 * 365.0 / DAYS,
        "winter_g_a_day": _middle(winter),
        "given_kg": float(kept.sugar_given_kg[-1].mean()),
    }


def mite_year() -> dict[str, float]:
    """Growth in the brood season, and the year's fold without treatment, re-invasion counted."""
    _, kept = untreated()
    mites = kept.trace["mites"]
    growth = np.log(mites[day(8, 15)] / mites[day(5, 1)]) / (day(8, 15) - day(5, 1))
    lost = 1.0 - mites[day(3, 31, 2027)] / mites[day(11, 1)]
    return {
        "growth": _middle(growth),
        "fold": _middle(mites[365] / mites[0]),
        "lost_over_winter": _middle(lost),
        "august": _middle(mites[day(8, 15)]),
    }


def lost_without_treatment() -> dict[str, float]:
    """Share of untreated colonies with fewer than 1500 bees after one, two and three winters."""
    _, kept = untreated()
    adults = kept.trace["adults"]
    return {str(year): float(np.mean(adults[day(5, 1, 2026 + year)] < DEAD)) for year in (1, 2, 3)}


@cache
def boards_in_a_cold_april(hive: str = HIVE) -> dict[str, float]:
    """Half a box of bees on seven frames between boards against the same bees on eleven.

    The coldest third of Aprils near Dublin; frames are added behind the boards as bees cover them.
    """
    first, days = date(2026, 4, 1), 40
    years = sampled_conditions("Dublin", first, days, 240, SEED)
    cold = years[np.argsort(years[:, :30, 1].mean(axis=1))[:80]]
    box, members = catalogue().hive(hive), 240
    chance = luck(SEED, "april", first, days, members)
    described = Described(frames_of_bees=5.5, frames_of_brood=2.5, stores_kg=5.0, queen_year=2025)
    full = SetUp(hive=hive, frames=11)
    found = []
    for stand in (SetUp(hive=hive, frames=7, dummy_boards=2), full):
        made = begin(box, full, described, on=first, members=members, seed=SEED, colony="april")
        actions.arrange(made, box, stand)
        keeping = Keeping(supers=False, adds_frames=stand.dummy_boards > 0)
        kept = keep(made, box, stand, cold, chance, first=first, keeping=keeping, seed=SEED)
        brood = kept.trace["brood"]
        found.append((brood[20], kept.trace["adults"][39], kept.trace["used_g"][:30].sum(axis=0)))
    (brood, bees, used), (brood_full, bees_full, used_full) = found
    return {
        "more_brood": _middle(brood) / _middle(brood_full) - 1.0,
        "more_bees": _middle(bees) / _middle(bees_full) - 1.0,
        "saved_g": _middle(used_full - used),
    }


@cache
def over_feeding() -> dict[str, float]:
    """Brood of an average colony after two weeks of a full feeder, and two weeks later.

    Against the same colonies with a portion a week; both have portions afterwards.
    """
    first, members = date(2026, 4, 25), 200
    hive, set_up = catalogue().hive(HIVE), SetUp(frames=9, dummy_boards=1)
    described = Described(
        frames_of_bees=7.0, frames_of_brood=4.5, stores_kg=6.0, queen_year=2025, has_queen=True
    )
    days = sampled_conditions("Dublin", first, 29, members, SEED)
    chance = luck(SEED, "feeding", first, 29, members)
    brood: dict[str, Floats] = {}
    room: dict[str, Floats] = {}
    for way in ("portions", "full feeder"):
        made = begin(hive, set_up, described, on=first, members=members, seed=SEED, colony="fed")
        made["swarm_readiness"] = 0.0
        for now in range(2 * FORTNIGHT):
            if way == "portions" or now >= FORTNIGHT:
                if now == FORTNIGHT:
                    actions.empty_feeder(made)
                if now % 7 == 0:
                    actions.feed(made, 2450.0, 0.6)
            else:
                actions.empty_feeder(made)
                actions.feed(made, 5000.0, 0.6)
            run(made, days[:, now : now + 1], chance[:, now : now + 1])
            if now == FORTNIGHT - 1:
                brood[f"{way} then"], room[way] = observe.brood(made), made["room"].copy()
        brood[way] = observe.brood(made)
    return {
        "less_then": 1.0 - _middle(brood["full feeder then"]) / _middle(brood["portions then"]),
        "less_later": 1.0 - _middle(brood["full feeder"]) / _middle(brood["portions"]),
        "room_then": _middle(room["full feeder"]) / _middle(room["portions"]),
    }


def best_fortnight() -> dict[str, float]:
    """Honey that strong colonies put into supers in their best fortnight. [kg]."""
    _, kept = usual()
    above = kept.trace["super_sugar_g"][: day(8, 14)] / 1000.0 / observe.SUGAR_IN_HONEY
    gain = above[FORTNIGHT:] - above[:-FORTNIGHT]
    best = gain.max(axis=0)
    frames = _frames(kept)[gain.argmax(axis=0), np.arange(COLONIES)]
    strong = best[frames > STRONG]
    return {"middle": _middle(strong), "good_year": float(np.quantile(strong, 0.75))}


def june_split() -> dict[str, float]:
    """Frames of bees at the end of August of a five-frame split of 5 June with a mated queen."""
    yard = SimulatedYard("split", "Dublin", date(2026, 6, 5), days=87, colonies=120, seed=SEED)
    described = Described(frames_of_bees=11.0, frames_of_brood=8.0, stores_kg=10.0, has_queen=True)
    parent = yard.begin(described)
    new = split(
        parent,
        catalogue().hive(HIVE),
        SetUp(frames=11),
        frames_of_bees=5.0,
        frames_of_brood=3.0,
        frames_of_stores=1.5,
        goes_with="mated queen",
    )
    kept = yard.keep(new, Keeping(supers=False))
    return {"frames": _middle(_frames(kept)[-20:].max(axis=0))}
