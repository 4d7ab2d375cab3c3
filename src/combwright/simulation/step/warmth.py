"""Space against warmth: what the nest loses, what that costs, and how many frames stay warm."""

from typing import Any

from combwright.science.heat import cluster
from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.shapes import between, spread, sum_of

mantle_w_per_k = inlined(cluster.mantle_w_per_k)

SECONDS_A_DAY = 86400.0
SIDES = 2.0  # of the nest that can face empty space
NOTHING = 1e-9  # keeps a quotient from having no denominator


@inlined
def adults_of(s: Any) -> float:
    """Count adult workers."""
    return s.nest + s.foragers + s.winter


@inlined
def brood_of(s: Any) -> float:
    """Count worker brood cells of all ages."""
    return sum_of(s.eggs) + sum_of(s.larvae) + sum_of(s.sealed)


@inlined
def food_of(s: Any) -> float:
    """Sugar in ripe and unripe stores and in supers. [g]."""
    return s.ripe + s.unripe + s.super_ripe


@inlined
def winter_reserve(s: Any) -> float:
    """Share of winter bees, which rear the first brood from protein in their own bodies."""
    bees = adults_of(s)
    return s.winter / bees if bees > 0.0 else 0.0


@inlined
def rearing_share(brood: float, bio: Any) -> float:
    """How far the nest is from a cluster, 0, to a brood nest, 1."""
    return brood / (brood + bio.core_half)


@inlined
def drawn_together(night_c: float, bio: Any) -> float:
    """Share of the frames that bees cover in warmth on which the cold of a night leaves them."""
    cold = 1.0 - spread(night_c, bio.contract_full_c, bio.contract_none_c)
    return 1.0 - (1.0 - bio.contract) * cold


@inlined
def frames_covered(s: Any, today: Any) -> float:
    """Frames that the bees cover: fewer when cold draws them together."""
    return min(adults_of(s) / s.bees_per_frame * today.drawn_together, s.frames)


@inlined
def conductance(s: Any, frames: float, looseness: float, bio: Any) -> float:
    """Heat loss of the nest per kelvin: the bees' mantle and the enclosure in series."""
    grams = adults_of(s) * bio.bee_g + 1.0
    mantle = mantle_w_per_k(grams, bio.mantle_w_per_k, bio.mantle_exponent) * looseness
    enclosure = s.heat_loss * (s.loss_base + s.loss_per_frame * frames)
    return mantle * enclosure / (mantle + enclosure)


@inlined
def loosened(mean_c: float, bio: Any) -> float:
    """By what factor a cluster loses more heat than a tight one, in the weather of a day."""
    return between(1.0, bio.mantle_loose, spread(mean_c, bio.tight_c, bio.loose_c))


@inlined
def edge_lost(night_c: float, bio: Any) -> float:
    """Tell how much of the nest's edge a cold night takes, 0 to 1."""
    return 1.0 - spread(night_c, bio.edge_full_c, bio.edge_none_c)


@inlined
def warmth(s: Any, brood: float, today: Any, bio: Any) -> tuple[float, float, float, float]:
    """Work out the frames kept warm, the heat lost, its sugar, and the bees tied up.

    Gives the frames that can hold brood; heat lost by the nest [W]; sugar burnt for heat beyond
    what living costs anyway [g/day]; bees tied up in heating.

    References
    ----------
    .. [1] E. E. Southwick, J. Comp. Physiol. B 156, 143-149, 1985, doi 10.1007/BF00692937.
    .. [2] J. R. Harbo, J. Econ. Entomol. 76, 1983 (winter use by colony size).

    """
    bees = adults_of(s)
    rearing = rearing_share(brood, bio)
    covered = frames_covered(s, today)
    empty = max(0.0, s.frames - covered)
    beside = empty / (empty + bio.empty_half)
    looseness = between(today.loosened, bio.mantle_brood, rearing)
    looseness *= 1.0 + bio.draught * rearing * beside
    core_c = between(bio.cluster_c, bio.nest_c, rearing)
    loss = conductance(s, covered, looseness, bio)
    heat_w = loss * max(0.0, core_c - today.mean_c)
    living_w = bees * basal(rearing, today, bio) * bio.sugar_j_per_g / SECONDS_A_DAY
    extra_w = max(0.0, heat_w - living_w)
    extra_w = min(extra_w, bees * bio.heat_most)

    edge = bio.edge_frames * SIDES * beside * today.edge_lost
    night_w = loss * max(0.0, bio.nest_c - today.night_c)
    share = min(1.0, (living_w + bees * bio.heat_most) / max(night_w, NOTHING))
    warm = max(bio.warm_least * covered, covered - edge) * share
    tied = extra_w / bio.heater_w + edge * s.bees_per_frame
    return warm, heat_w, extra_w * SECONDS_A_DAY / bio.sugar_j_per_g, tied


@inlined
def basal_clustered(mean_c: float, bio: Any) -> float:
    """Sugar that a bee of a cluster uses to live: little in a tight cold one."""
    loose = spread(mean_c, bio.tight_c, bio.loose_c)
    return between(bio.basal_cluster, bio.basal_loose, loose)


@inlined
def on_brood(mean_c: float, bio: Any) -> float:
    """Share of a brood nest's bees that are as warm as it is; in cold the rest sit cooler."""
    warm = spread(mean_c, bio.warm_in_cold_c, bio.warm_all_c)
    return between(bio.warm_in_cold, 1.0, warm)


@inlined
def basal(rearing: float, today: Any, bio: Any) -> float:
    """Sugar that a bee uses to live: little in a tight cold cluster, most at brood's warmth."""
    return between(today.basal_clustered, bio.basal_nest, rearing * today.on_brood)
