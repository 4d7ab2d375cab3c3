"""Another world: the same hives and weather under other rules than the product's own.

It stands in for what the model may have wrong in its structure. Bees have no winter caste here:
each ages by the brood there is to rear, so that bees of a broodless autumn live until spring and
burn out in it. Laying follows the length of the day and the pollen, heat is a sum of degrees,
nectar is shared among the foragers, mites fall by their own rule. Its numbers are judgement, set
so that a cared-for colony has an ordinary year; nothing of the product was tuned on it.

It lives on the product's records (``simulation.columns``), so that the same hands work in it, and
keeps the ages of the bees beside them.
"""

from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.simulation import observe
from combwright.simulation.columns import CELL, LAYING, QUEENLESS, VIRGIN
from combwright.weather.conditions import (
    DAY,
    FLIGHT,
    MATING,
    MAX_C,
    MEAN_C,
    NECTAR,
    NIGHT_C,
    POLLEN,
)

Floats = NDArray[np.float64]
State = Any  # records of the simulation, typed by their dtype

AGES: Final = 46  # physiological days; older bees die
FORAGES_FROM: Final = 18  # physiological days
SUGAR_IN_CELL_UNRIPE: Final = 0.08  # g of sugar in a cell of fresh nectar
POLLEN_IN_CELL: Final = 0.15


class OtherWorld:
    """Colonies that live by other rules; one object for the records it was made for."""

    def __init__(self, colonies: State, day_of_year: int) -> None:
        self.ages = np.zeros((len(colonies), AGES))
        young = 22 if 110 < day_of_year < 260 else 12
        self.ages[:, :young] = 1.0
        if 110 < day_of_year < 260:
            self.ages[:, young : young + 12] = 0.6
        self._follow(colonies)
        self._write(colonies)

    def run(self, colonies: State, conditions: Floats, luck: Floats) -> None:
        """Live through days in place; conditions and luck are as for ``simulation.run``."""
        self._follow(colonies)
        for day in range(conditions.shape[1]):
            weather = np.broadcast_to(conditions[:, day], (len(colonies), conditions.shape[2]))
            self._day(colonies, weather, luck[:, day])

    def _follow(self, colonies: State) -> None:
        """Take over what hands did to the number of bees."""
        total = self.ages.sum(axis=1)
        self.ages *= (observe.adults(colonies) / np.maximum(total, 1e-9))[:, None]

    def _write(self, colonies: State) -> None:
        """Write the bees into the records: who is of foraging age, who is not."""
        old = self.ages[:, FORAGES_FROM:].sum(axis=1)
        foragers = np.minimum(old, 0.4 * self.ages.sum(axis=1))
        colonies["foragers"] = foragers
        colonies["nest"] = self.ages.sum(axis=1) - foragers
        colonies["winter"] = 0.0

    def _day(self, s: State, w: Floats, luck: Floats) -> None:
        alive = self.ages.sum(axis=1) > 300.0
        self.ages[~alive] = 0.0
        bees = self.ages.sum(axis=1)
        foragers = np.minimum(self.ages[:, FORAGES_FROM:].sum(axis=1), 0.4 * bees)
        at_home = bees - foragers
        open_brood = s["eggs"].sum(axis=1) + s["larvae"].sum(axis=1)
        emerging = self._brood(s, w, luck, at_home, bees)
        unmet = self._food(s, w, luck, foragers, bees)
        self._adults(s, w, emerging, open_brood, unmet)
        self._mites(s, w, luck)
        self._queen(s, w, luck)
        self._write(s)
        for column in ("eggs", "larvae", "sealed"):
            s[column] *= alive[:, None]
        s["queen"] = np.where(alive, s["queen"], QUEENLESS)

    def _brood(self, s: State, w: Floats, luck: Floats, at_home: Floats, bees: Floats) -> Floats:
        """Lay, age and lose brood in place; give the bees that emerge."""
        light = 4.6 * np.sin(2.0 * np.pi * (w[:, DAY] - 80.0) / 365.0)  # hours beyond twelve
        turning = np.cos(2.0 * np.pi * (w[:, DAY] - 80.0) / 365.0)
        season = np.clip((light + 3.2) / 6.4, 0.0, 1.0) ** 1.3 * (
            1.0 + 0.85 * np.minimum(turning, 0.0)
        )
        season *= np.clip((w[:, MAX_C] + 1.0) / 12.0, 0.15, 1.0)
        years = s["queen_age"] / 365.0
        vigour = np.clip(1.08 - 0.1 * years, 0.3, 1.0) * np.minimum(
            1.0, s["queen_age"] / 10.0 + 0.3
        )
        pollen = np.clip(0.35 + s["pollen"] / 180.0, 0.0, 1.0)
        food = np.clip((s["ripe"] + s["super_ripe"] + s["unripe"]) / 1500.0, 0.0, 1.0)
        wanted = 1800.0 * season * s["queen_potential"] * vigour * pollen * food
        wanted *= np.where(s["swarm_clock"] > 6.0, 0.5, 1.0) * (1.0 - s["lay_brake"])
        nursed = 0.14 * at_home * np.clip(1.20 - 0.03 * (20.0 - w[:, NIGHT_C]), 0.45, 1.1)
        held = (s["ripe"] / s["sugar_per_cell"]) + s["unripe"] * (
            s["supers"] < 1
        ) / SUGAR_IN_CELL_UNRIPE
        held = held + s["pollen"] / POLLEN_IN_CELL
        needed = 1000.0 + 40.0 * np.maximum(0.0, 18.0 - w[:, NIGHT_C]) * s["heat_loss"]
        warm = np.minimum(bees / needed, s["frames"]) * s["cells_per_frame"] * 0.8
        room = np.maximum(0.0, np.minimum(warm, s["drawn"] - held) - observe.brood(s))
        eggs = np.where(
            s["queen"] == LAYING, np.minimum(np.minimum(wanted, nursed), 0.6 * room), 0.0
        )
        eggs *= np.exp(0.1 * luck[:, 0])
        cold = np.clip(1.0 - warm / np.maximum(observe.brood(s), 1.0), 0.0, 1.0)
        dies = s["brood_mortality"]
        egg, larva, capped = 0.035 * dies, 0.012 * dies + 0.1 * cold, 0.002 * dies + 0.05 * cold
        larva = np.minimum(0.9, larva + 0.5 * s["unmet"] + 0.05 * (s["pollen"] < 20.0))
        emerging = s["sealed"][:, 11] * (1.0 - capped)
        sealing = s["larvae"][:, 5] * (1.0 - larva)
        s["sealed"][:, 1:] = s["sealed"][:, :-1] * (1.0 - capped)[:, None]
        s["sealed"][:, 0] = sealing
        s["larvae"][:, 1:] = s["larvae"][:, :-1] * (1.0 - larva)[:, None]
        s["larvae"][:, 0] = s["eggs"][:, 2] * (1.0 - egg)
        s["eggs"][:, 1:] = s["eggs"][:, :-1] * (1.0 - egg)[:, None]
        s["eggs"][:, 0] = eggs
        s["chilled"] += 0.08 * cold * observe.brood(s)
        s["wanted"], s["laid"], s["room"], s["warm_frames"] = (
            wanted,
            eggs,
            room,
            warm / s["cells_per_frame"],
        )
        short = (s["queen"] == LAYING) & (wanted > 50.0) & (room < 0.5 * wanted)
        s["short_of_room_days"] = np.where(short, s["short_of_room_days"] + 1.0, 0.0)
        s["short_of_room_most"] = np.maximum(s["short_of_room_most"], s["short_of_room_days"])
        return np.asarray(emerging)

    def _food(self, s: State, w: Floats, luck: Floats, foragers: Floats, bees: Floats) -> Floats:
        """Gather, take down, ripen and eat in place; give the share of the need that was unmet."""
        effort = foragers * w[:, FLIGHT] * s["forage_success"]
        share = effort / (1.0 + effort / 90000.0)  # the nearest flowers empty first
        nectar = 0.038 * share * w[:, NECTAR] ** 0.75 * np.exp(0.4 * luck[:, 1] - 0.08)
        space = s["drawn"] + s["super_drawn"] - observe.cells_held(s)
        nectar = np.minimum(nectar, np.maximum(0.0, space) * SUGAR_IN_CELL_UNRIPE)
        s["pollen"] += np.minimum(
            0.013 * effort * w[:, POLLEN], 0.16 * np.maximum(0.0, 1500.0 - s["pollen"])
        )
        feed = s["feeder"] + s["feeder_water"]
        speed = 0.09 * bees * np.clip((w[:, MAX_C] - 7.0) / 7.0, 0.0, 1.0)
        speed = np.where(s["feeder"] > 0.78 * feed, 0.025 * bees, speed)
        taken = np.minimum(np.minimum(feed, speed), np.maximum(0.0, space) * 0.12)
        part = np.divide(taken, feed, out=np.zeros(len(feed)), where=feed > 0.0)
        fed = part * s["feeder"]
        s["unripe"] += nectar + fed
        s["water"] += 1.2 * nectar + part * s["feeder_water"]
        s["feeder"] -= fed
        s["feeder_water"] *= 1.0 - part
        s["taken_down"] += taken
        open_brood = s["eggs"].sum(axis=1) + s["larvae"].sum(axis=1)
        busy = np.clip(open_brood / np.maximum(0.3 * bees, 1.0), 0.0, 1.0)
        degrees = np.maximum(0.0, 17.0 - w[:, MEAN_C])
        heat = (0.45 + 1.3 * busy) * degrees * s["heat_loss"] ** 0.5 * (bees / 10000.0) ** 0.6
        need = (
            bees * (0.0034 + 0.0022 * busy) + 0.017 * open_brood + 0.0011 * foragers * w[:, FLIGHT]
        )
        need = s["consumption"] * (need + heat)
        have = s["unripe"] + s["ripe"] + s["super_ripe"]
        eaten = np.minimum(need, have)
        left = eaten
        for column in ("unripe", "ripe", "super_ripe"):
            bite = np.minimum(s[column], left)
            before = s[column].copy()
            s[column] -= bite
            left = left - bite
            if column == "unripe":
                s["water"] *= np.divide(
                    s[column], before, out=np.zeros(len(bite)), where=before > 0
                )
        ripe = 0.3 * s["unripe"]
        up = np.where(
            s["supers"] > 0,
            np.clip(s["ripe"] / s["sugar_per_cell"] / (0.2 * s["drawn"] + 1.0), 0.0, 0.9),
            0.0,
        )
        above = np.minimum(
            up * ripe, np.maximum(0.0, s["super_drawn"] * s["sugar_per_cell"] - s["super_ripe"])
        )
        s["super_ripe"] += above
        s["ripe"] += ripe - above
        s["unripe"] -= ripe
        s["water"] *= 0.7
        s["pollen"] = np.maximum(
            0.0,
            s["pollen"]
            - 0.017 * s["larvae"].sum(axis=1)
            - 0.0006 * bees * (0.2 + 0.8 * (open_brood > 500.0)),
        )
        growing = 0.03 * bees * np.clip(nectar / 150.0, 0.0, 1.0)
        for sheet, comb in (("foundation", "drawn"), ("super_foundation", "super_drawn")):
            made = np.minimum(s[sheet], growing)
            s[sheet] -= made
            s[comb] += made
        unmet = np.where(need > 0.0, 1.0 - eaten / np.maximum(need, 1e-9), 0.0)
        s["unmet"], s["used"], s["intake"], s["gathered"] = unmet, eaten, nectar + fed, nectar
        s["hungry_days"] += unmet > 0.05
        s["used_total"] += eaten
        s["gathered_total"] += nectar
        return np.asarray(unmet)

    def _adults(
        self, s: State, w: Floats, emerging: Floats, open_brood: Floats, unmet: Floats
    ) -> None:
        """Let bees grow older by the brood they rear, fly, starve and die."""
        bees = np.maximum(self.ages.sum(axis=1), 1.0)
        load = np.clip(open_brood / (0.42 * bees), 0.0, 1.0)
        pace = 0.07 + 0.62 * load + 0.025 * w[:, FLIGHT]
        hurt = np.clip(observe.mites(s) / (bees + s["sealed"].sum(axis=1)) / 0.12, 0.0, 1.0)
        pace = np.minimum(1.0, pace * (1.0 + 1.2 * hurt))
        moved = self.ages * pace[:, None]
        self.ages -= moved
        self.ages[:, 1:] += moved[:, :-1]
        age = np.arange(AGES)
        worn = 0.0026 + 0.25 * np.clip((age - 30.0) / 15.0, 0.0, 1.0) ** 2
        old = np.maximum(self.ages[:, FORAGES_FROM:].sum(axis=1), 1.0)
        flown = s["forager_mortality"] * w[:, FLIGHT] * np.minimum(1.0, 0.4 * bees / old)
        hazard = worn[None, :] + 0.0115 * (age >= FORAGES_FROM) * flown[:, None]
        self.ages *= np.exp(-hazard * (1.0 + hurt)[:, None])
        self.ages *= (1.0 - 0.4 * np.clip((unmet - 0.25) / 0.75, 0.0, 1.0))[:, None]
        self.ages[:, 0] += emerging * (1.0 - 0.3 * hurt)

    def _mites(self, s: State, w: Floats, luck: Floats) -> None:
        """Let mites enter cells, breed, leave and fall in place."""
        sealing = s["sealed"][:, 0]
        bees = np.maximum(self.ages.sum(axis=1), 1.0)
        enter = s["mites"] * (1.0 - np.exp(-4.2 * sealing / bees)) * np.exp(0.1 * luck[:, 8])
        leave = s["mites_worker"][:, 11] * 1.5 * s["mite_growth"] * np.exp(-s["kill_cells"])
        s["mites_worker"][:, 1:] = s["mites_worker"][:, :-1] * np.exp(-s["kill_cells"])[:, None]
        s["mites_worker"][:, 0] = enter
        killed = s["mites"] * (1.0 - np.exp(-s["kill_bees"]))
        natural = s["mites"] * np.where(sealing > 50.0, 0.011, 0.0035)
        fallen = 0.6 * natural + 0.35 * leave + killed  # more of the fall comes with emerging bees
        s["mites"] = np.maximum(0.0, s["mites"] - enter - killed - natural + leave)
        late = (w[:, DAY] > 205) & (w[:, DAY] < 300)
        s["mites"] += np.where(late, s["invaders"] * 1.3 * np.exp(0.5 * luck[:, 7]), 0.0)
        s["fallen"] = fallen
        s["fallen_total"] += fallen
        s["treated_days"] = np.maximum(0.0, s["treated_days"] - 1.0)
        over = s["treated_days"] <= 0.0
        for column in ("kill_bees", "kill_cells", "lay_brake"):
            s[column] = np.where(over, 0.0, s[column])

    def _queen(self, s: State, w: Floats, luck: Floats) -> None:
        """Let swarms be prepared and leave, virgins mate, queens fail, in place."""
        bees = self.ages.sum(axis=1)
        laying = s["queen"] == LAYING
        s["queen_age"] += laying
        s["queen_clock"] += 1.0
        places = s["bees_per_frame"] * (s["frames"] + 4.0 * s["supers"])
        pressed = np.clip((bees / np.maximum(places, 1.0) - 0.75) / 0.4, 0.0, 1.0)
        filled = np.clip(
            (observe.cells_held(s) / np.maximum(s["drawn"] + s["super_drawn"], 1.0) - 0.6) / 0.3,
            0,
            1,
        )
        in_season = (w[:, DAY] > 112) & (w[:, DAY] < 212)
        old = 0.35 + 0.65 * np.clip(s["queen_age"] / 365.0, 0.0, 1.5)
        hazard = 0.09 * pressed * filled * old * s["swarm_readiness"] * in_season
        begins = laying & (s["swarm_clock"] == 0.0) & (luck[:, 2] < hazard)
        s["swarm_clock"] = np.where(
            begins, 1.0, np.where(s["swarm_clock"] > 0.0, s["swarm_clock"] + 1.0, 0.0)
        )
        goes = laying & (s["swarm_clock"] > 9.0) & (w[:, FLIGHT] > 2.5) & (luck[:, 3] < 0.5)
        self.ages *= np.where(goes, 0.4, 1.0)[:, None]
        s["mites"] *= np.where(goes, 0.4, 1.0)
        s["ripe"] = np.where(goes, np.maximum(0.0, s["ripe"] - 400.0), s["ripe"])
        s["swarmed"] += goes
        lost = laying & (luck[:, 4] < 0.0003) & ~goes
        raise_one = (s["queen"] == QUEENLESS) & (s["larvae"][:, 0] > 30.0)
        state, clock = s["queen"].copy(), s["queen_clock"].copy()
        state, clock = np.where(goes, CELL, state), np.where(goes, s["swarm_clock"], clock)
        state, clock = np.where(lost, QUEENLESS, state), np.where(lost, 0.0, clock)
        state, clock = np.where(raise_one, CELL, state), np.where(raise_one, 4.0, clock)
        out = (state == CELL) & (clock >= 16.0)
        state, clock = np.where(out, VIRGIN, state), np.where(out, 0.0, clock)
        s["mating_flights"] = np.where(out, 0.0, s["mating_flights"])
        flies = (state == VIRGIN) & (clock >= 5.0)
        s["mating_flights"] += flies * w[:, MATING]
        mated = flies & (s["mating_flights"] >= 1.2) & (clock >= 9.0)
        fails = mated & (luck[:, 5] < 0.14)
        state = np.where(mated, np.where(fails, QUEENLESS, LAYING), state)
        state = np.where((state == VIRGIN) & (clock > 30.0), QUEENLESS, state)
        s["queen_age"] = np.where(mated, 0.0, s["queen_age"])
        s["swarm_clock"] = np.where(goes | lost | (s["swarm_clock"] > 20.0), 0.0, s["swarm_clock"])
        s["queen"], s["queen_clock"] = state, clock
