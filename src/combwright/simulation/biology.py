"""Every number of the colony model, by name; units, ranges and sources are in the data file.

The kernel takes them as one argument, so that a study can vary them without touching the code.
"""

import tomllib
from importlib.resources import files
from typing import Final, NamedTuple

import numpy as np

from combwright.terms.parameters import Parameter


class Biology(NamedTuple):
    """The values that a run uses, named as in ``data/biology.toml``."""

    egg_death: float
    larva_death: float
    sealed_death: float
    chill_death: float
    hunger_brood: float
    hunger_nest: float
    hunger_foragers: float
    bare_sugar: float
    lay_peak: float
    season_rise: float
    season_rise_days: float
    season_fall: float
    season_fall_day: float
    season_fall_days: float
    autumn_shift: float
    larvae_per_nurse: float
    winter_nurse: float
    bees_half: float
    food_half: float
    income_lift: float
    pollen_half: float
    nest_share: float
    search: float
    nest_c: float
    cluster_c: float
    mantle_w_per_k: float
    mantle_loose: float
    mantle_brood: float
    bee_g: float
    basal_cluster: float
    basal_loose: float
    basal_nest: float
    warm_in_cold: float
    sugar_j_per_g: float
    heat_most: float
    heater_w: float
    edge_frames: float
    empty_half: float
    draught: float
    contract: float
    larva_sugar: float
    nurse_sugar: float
    larva_pollen: float
    recruit: float
    inhibit: float
    recruit_hunger: float
    nest_death: float
    forager_death: float
    forager_death_home: float
    winter_death: float
    winter_ageing: float
    winter_made_day: float
    hurt_death: float
    nectar_per_hour: float
    nectar_half: float
    nectar_sugar: float
    pollen_per_hour: float
    pollen_foragers: float
    flight_sugar: float
    take_down: float
    take_cold: float
    take_warm: float
    fondant_rate: float
    sour_after: float
    sour_after_weeks: float
    keeps_weeks_from: float
    keeps_months_from: float
    unripe_fill: float
    kept_for_eggs: float
    unripe_near: float
    cell_ml: float
    evaporate: float
    ripen_most: float
    pollen_per_cell: float
    wax_sugar: float
    draw_rate: float
    invade_worker: float
    invade_drone: float
    leave_worker: float
    leave_drone: float
    mite_gross: float
    mite_death: float
    mite_death_winter: float
    swarm_hazard: float
    swarm_full: float
    swarm_share: float
    queen_loss: float
    mating_loss: float
    drone_share: float
    drone_death: float
    drone_sugar: float
    rob_hazard: float
    rob_share: float
    cast_chance: float
    swarm_honey: float
    daily_luck: float
    lay_luck: float
    mite_luck: float


def _read() -> dict[str, Parameter]:
    text = files("combwright.simulation").joinpath("data/biology.toml").read_text("utf-8")
    return {name: Parameter(**fields) for name, fields in tomllib.loads(text).items()}


PARAMETERS: Final = _read()
BIOLOGY: Final = Biology(**{name: parameter.value for name, parameter in PARAMETERS.items()})
RECORD: Final = np.dtype([(name, np.float64) for name in Biology._fields])


def as_record(biology: Biology) -> np.void:
    """Give the values in the form in which the compiled step reads them."""
    record: np.void = np.array([tuple(biology)], dtype=RECORD)[0]
    return record
