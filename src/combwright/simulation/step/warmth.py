"""Space against warmth: what the nest loses, what that costs, and how many frames stay warm."""

from typing import Any

import numpy as np

from combwright.simulation.step.compiled import compiled

BROOD_THAT_WARMS_THE_CORE = 2000.0  # cells at which the core is half-way to brood warmth; judgement
BASAL_EXPONENT = 0.521  # 1 - 0.479 of Southwick 1985


@compiled
def adults_of(s: Any) -> float:
    """Count adult workers."""
    return s.nest + s.foragers + s.winter


@compiled
def brood_of(s: Any) -> float:
    """Count worker brood cells of all ages."""
    return s.eggs.sum() + s.larvae.sum() + s.sealed.sum()


@compiled
def winter_reserve(s: Any) -> float:
    """Share of winter bees, which rear the first brood from protein in their own bodies."""
    bees = adults_of(s)
    return s.winter / bees if bees > 0.0 else 0.0


@compiled
def spread(value: float, low: float, high: float) -> float:
    """Place a value between two others, 0 to 1."""
    return min(1.0, max(0.0, (value - low) / (high - low)))


@compiled
def frames_covered(s: Any, air_c: float, bio: Any) -> float:
    """Frames that the bees cover: fewer when cold draws them together."""
    drawn_together = 1.0 - (1.0 - bio.contract) * (1.0 - spread(air_c, -5.0, 15.0))
    return min(adults_of(s) / s.bees_per_frame * drawn_together, s.frames)


@compiled
def conductance(s: Any, frames: float, looseness: float, bio: Any) -> float:
    """Heat loss of the nest per kelvin: the bees' mantle and the enclosure in series."""
    mantle = bio.mantle_w_per_k * (adults_of(s) * bio.bee_g + 1.0) ** BASAL_EXPONENT * looseness
    enclosure = s.heat_loss * (s.loss_base + s.loss_per_frame * frames)
    return mantle * enclosure / (mantle + enclosure)


@compiled
def warmth(s: Any, mean_c: float, night_c: float, bio: Any) -> tuple[float, float, float, float]:
    """Work out the frames kept warm, the heat lost, its sugar, and the bees tied up.

    Returns
    -------
    tuple
        Frames that can hold brood; heat lost by the nest [W]; sugar burnt for heat beyond what
        living costs anyway [g/day]; bees tied up in heating.

    References
    ----------
    .. [1] E. E. Southwick, J. Comp. Physiol. B 156, 143-149, 1985, doi 10.1007/BF00692937.
    .. [2] J. R. Harbo, J. Econ. Entomol. 76, 1983 (winter use by colony size).

    """
    bees = adults_of(s)
    brood = brood_of(s)
    rearing = brood / (brood + BROOD_THAT_WARMS_THE_CORE)
    covered = frames_covered(s, night_c, bio)
    loose_cluster = 1.0 + (bio.mantle_loose - 1.0) * spread(mean_c, -5.0, 10.0)
    empty = max(0.0, s.frames - covered)
    beside = empty / (empty + bio.empty_half)
    looseness = loose_cluster + (bio.mantle_brood - loose_cluster) * rearing
    looseness *= 1.0 + bio.draught * rearing * beside
    core_c = bio.cluster_c + (bio.nest_c - bio.cluster_c) * rearing
    loss = conductance(s, covered, looseness, bio)
    heat_w = loss * max(0.0, core_c - mean_c)
    living_w = bees * basal(rearing, mean_c, bio) * bio.sugar_j_per_g / 86400.0
    extra_w = max(0.0, heat_w - living_w)
    extra_w = min(extra_w, bees * bio.heat_most)

    edge = bio.edge_frames * 2.0 * beside * (1.0 - spread(night_c, 3.0, 18.0))
    night_w = loss * max(0.0, bio.nest_c - night_c)
    share = min(1.0, (living_w + bees * bio.heat_most) / max(night_w, 1e-9))
    warm = max(0.6 * covered, covered - edge) * share
    tied = extra_w / bio.heater_w + edge * s.bees_per_frame
    return warm, heat_w, extra_w * 86400.0 / bio.sugar_j_per_g, tied


@compiled
def basal(rearing: float, mean_c: float, bio: Any) -> float:
    """Sugar that a bee uses to live: little in a tight cold cluster, most at brood's warmth.

    In cold weather only those on the brood are as warm as it is; the rest sit in a cooler mantle.
    """
    clustered = bio.basal_cluster + (bio.basal_loose - bio.basal_cluster) * spread(
        mean_c, -5.0, 10.0
    )
    on_brood = rearing * (bio.warm_in_cold + (1.0 - bio.warm_in_cold) * spread(mean_c, -5.0, 18.0))
    return clustered + (bio.basal_nest - clustered) * on_brood


@compiled
def season(day_of_year: float, bio: Any) -> float:
    """Seasonal share of the peak laying rate, 0 to 1.

    References
    ----------
    .. [1] T. Schmickl and K. Crailsheim, Ecological Modelling 204, 219-245, 2007,
       doi 10.1016/j.ecolmodel.2007.01.001 (constants read in program source).

    """
    rise = 1.0 - 1.0 / (1.0 + bio.season_rise * np.exp(-2.0 * day_of_year / bio.season_rise_days))
    lateness = day_of_year - bio.season_fall_day - bio.autumn_shift
    fall = 1.0 / (1.0 + bio.season_fall * np.exp(-2.0 * lateness / bio.season_fall_days))
    return 1.0 - max(rise, fall)
