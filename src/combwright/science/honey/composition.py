"""Whether a laboratory's figures of a honey keep to the law of its composition."""

from dataclasses import dataclass
from typing import Final

from combwright.terms.data_files import contents

DATA: Final = contents("science/composition")
LIMITS: Final = DATA["limits"]
PLANTS: Final = DATA["plants"]


@dataclass(frozen=True, slots=True)
class HoneyFigures:
    """What a laboratory measured; ``None`` where it did not. ``plant``: mainly from it.

    ``hmf`` [mg/kg], ``diastase`` [Schade], ``conductivity`` [mS/cm], ``sucrose`` [g/100 g],
    ``free_acid`` [meq/kg].
    """

    plant: str = ""
    hmf: float | None = None
    diastase: float | None = None
    conductivity: float | None = None
    sucrose: float | None = None
    free_acid: float | None = None


def composition_faults(found: HoneyFigures) -> tuple[str, ...]:
    """Say where figures of a honey do not keep to the law; a limit itself is kept.

    References
    ----------
    .. [1] Directive 2001/110/EC, annex II; read.

    Examples
    --------
    >>> composition_faults(HoneyFigures(hmf=40)), composition_faults(HoneyFigures(hmf=41))
    ((), ('HMF is 41 mg/kg: at most 40.',))

    """
    told = []
    if found.hmf is not None and found.hmf > LIMITS["hmf_most"]:
        told.append(f"HMF is {found.hmf:g} mg/kg: at most {LIMITS['hmf_most']:g}.")
    if found.free_acid is not None and found.free_acid > LIMITS["free_acid_most"]:
        told.append(
            f"Free acid is {found.free_acid:g} meq/kg: at most {LIMITS['free_acid_most']:g}."
        )
    return (*told, *_diastase(found), *_conductivity(found), *_sucrose(found))


def _diastase(found: HoneyFigures) -> tuple[str, ...]:
    if found.diastase is None or found.diastase >= LIMITS["diastase_least"]:
        return ()
    is_low = found.plant in PLANTS["low_enzyme"] and found.hmf is not None
    if is_low and found.hmf is not None and found.hmf <= LIMITS["hmf_most_if_low"]:
        least = LIMITS["diastase_least_if_low"]
        return () if found.diastase >= least else (_less(found.diastase, least),)
    return (_less(found.diastase, LIMITS["diastase_least"]),)


def _less(diastase: float, least: float) -> str:
    return f"Diastase is {diastase:g}: at least {least:g}."


def _conductivity(found: HoneyFigures) -> tuple[str, ...]:
    limit: float = LIMITS["conductivity"]
    if found.conductivity is None or found.plant in PLANTS["no_conductivity"]:
        return ()
    if found.plant in PLANTS["high_conductivity"]:
        told, is_wrong = "at least", found.conductivity < limit
    else:
        told, is_wrong = "at most", found.conductivity > limit
    return (f"Conductivity is {found.conductivity:g} mS/cm: {told} {limit:g}.",) if is_wrong else ()


def _sucrose(found: HoneyFigures) -> tuple[str, ...]:
    most = LIMITS["sucrose_most"]
    if found.plant in PLANTS["sucrose_higher"]:
        most = LIMITS["sucrose_most_higher"]
    elif found.plant in PLANTS["sucrose_highest"]:
        most = LIMITS["sucrose_most_highest"]
    if found.sucrose is None or found.sucrose <= most:
        return ()
    return (f"Sucrose is {found.sucrose:g} g/100 g: at most {most:g}.",)
