"""What a mite count means, and what to do by when."""

from dataclasses import dataclass
from datetime import date, timedelta

from combwright.science.mites import count_sources, counts, samples, season_ahead
from combwright.science.mites.counts import BroodState
from combwright.science.mites.intervals import Estimate
from combwright.science.mites.levels import Level, Verdict, levels_for, verdict
from combwright.science.mites.medicine_law import DUTIES
from combwright.science.mites.treatments import LABEL, Option, options
from combwright.science.mites.usual_colony import usual_bees
from combwright.services.calculators import mite_sentences
from combwright.terms.dated import dated
from combwright.terms.errors import OutOfRangeError
from combwright.terms.parameters import Parameter, Verified
from combwright.terms.ranges import within

COUNTED_BEES_RANGE = 0.15
DAYS_AHEAD = (30, 60, 90)
FEW_BEES = 200

MOST_PER_100 = 1000.0  # ten mites on every bee; bees are long dead by then


@dataclass(frozen=True, slots=True)
class MiteCount:
    """A count on one colony: mites on a tray over days, or mites of a sample of bees."""

    mites: int
    on: date
    days: float | None = None
    bees: int | None = None
    method: samples.Method = "wash"
    day_given: bool = True


@dataclass(frozen=True, slots=True)
class Circumstances:
    """What is known of the colony besides the count; ``None`` where nothing is."""

    brood: BroodState = "not known"
    supers: int | None = None
    bees_in_colony: float | None = None
    temperature_c: float | None = None


@dataclass(frozen=True, slots=True)
class SourceEstimate:
    """What one source makes of the count."""

    name: str
    estimate: float
    note: str
    verified: Verified


@dataclass(frozen=True, slots=True)
class Reached:
    """A level and whether the count reaches it."""

    level: Level
    reached: bool


@dataclass(frozen=True, slots=True)
class ExpectedMites:
    """Mites on a later day without treatment."""

    on: date
    mites: Estimate


@dataclass(frozen=True, slots=True)
class MiteReport:
    """What a count means."""

    count: MiteCount
    circumstances: Circumstances
    mites: Estimate
    per_100_bees: Estimate
    sources: list[SourceEstimate]
    level: Verdict
    levels: list[Reached]
    expected: list[ExpectedMites]
    advice: list[str]
    options: list[Option]
    warnings: list[str]


def assess(count: MiteCount, known: Circumstances) -> MiteReport:
    """Tell what a count means, how sources disagree, and what to do by when."""
    month, bees = count.on.month, _bees(count.on.month, known.bees_in_colony)
    brood = _brood(known.brood, month)
    on_tray = count.days is not None
    mites = _mites(count, known, bees, with_brood=brood)
    per_100 = _per_100(count, mites, bees, with_brood=brood)
    fall = count.mites / count.days if count.days else None
    # a count that cannot be true says no more than the worst level
    level = verdict(month, mites.mid, min(per_100.mid, MOST_PER_100), fall, mites.high)
    ways = options(month, known.brood, known.supers, known.temperature_c)
    return MiteReport(
        count=count,
        circumstances=known,
        mites=mites,
        per_100_bees=per_100,
        sources=_of_tray(count, known) if on_tray else _of_sample(count, bees.value, brood),
        level=level,
        levels=[
            _reached(each, mites.mid, per_100.mid, fall)
            for each in levels_for(month)
            if fall is not None or each.measure != "fall per day"
        ],
        expected=[
            ExpectedMites(
                count.on + timedelta(days=ahead),
                season_ahead.expected(mites, count.on, ahead, known.brood),
            )
            for ahead in DAYS_AHEAD
        ],
        advice=[
            *mite_sentences.what_it_means(mites, level, month, fall),
            *mite_sentences.what_to_do(level, count.on, ways, known.supers),
            LABEL,
            mite_sentences.follow_up(count.on),
            *(duty.sentence for duty in DUTIES.values()),
        ],
        options=ways,
        warnings=_warnings(count, known, bees),
    )


def _bees(month: int, counted: float | None) -> Parameter:
    usual = usual_bees(month)
    if counted is None:
        return usual
    bees = float(
        within(
            counted, 500, 100_000, "Bees in the colony", "bees",
            remedy="Give bees, not frames: a full National frame holds about 2000.",
        )
    )  # fmt: skip
    low, high = bees * (1 - COUNTED_BEES_RANGE), bees * (1 + COUNTED_BEES_RANGE)
    return Parameter(bees, "bees", low, high, "the keeper's estimate", "judgement")


def _brood(brood: BroodState, month: int) -> bool:
    """Whether to reckon with brood; where it is not known the season decides."""
    if brood == "not known":
        return month not in counts.WINTER_MONTHS
    return brood == "brood"


def _mites(
    count: MiteCount, known: Circumstances, bees: Parameter, *, with_brood: bool
) -> Estimate:
    if count.days is not None:
        return counts.mites_from_fall(count.mites, count.days, count.on.month, known.brood)
    if count.bees is None:
        raise OutOfRangeError(
            "A count needs the days of the tray or the bees of the sample.",
            remedy="Give --tray and --days, or --washed (or --sugar) and --bees.",
        )
    return samples.mites_from_sample(
        count.mites, count.bees, bees, brood=with_brood, method=count.method
    )


def _per_100(count: MiteCount, mites: Estimate, bees: Parameter, *, with_brood: bool) -> Estimate:
    """Mites per 100 adult bees: as counted in a sample, as worked out from a tray."""
    if count.bees is not None:
        return samples.infestation(count.mites, count.bees)
    share = 100 / samples.SAMPLE_TO_COLONY[with_brood].value / bees.value
    return Estimate(mites.low * share, mites.mid * share, mites.high * share)


def _of_tray(count: MiteCount, known: Circumstances) -> list[SourceEstimate]:
    days = count.days or 1.0
    found = []
    for name in count_sources.fall_sources(count.on.month, known.brood):
        factor = count_sources.FALL[name]
        times = (
            f"{factor.low:g}" if factor.low == factor.high else f"{factor.low:g}-{factor.high:g}"
        )
        note = f"fall a day times {times}: {factor.source}"
        estimate = count_sources.fall_estimate(name, count.mites, days)
        found.append(SourceEstimate(name, estimate, note, factor.verified))
    return found


def _of_sample(count: MiteCount, bees: float, brood: bool) -> list[SourceEstimate]:
    sample = count.bees or 1
    recovery = samples.RECOVERY[count.method]
    if not brood:
        on_bees = count.mites / sample * bees / recovery.value
        note = "without brood all mites sit on bees"
        return [SourceEstimate("mites on bees", on_bees, note, "computed")]
    found = []
    for name, factor in count_sources.SAMPLE.items():
        estimate = count_sources.sample_estimate(name, count.mites, sample, bees) / recovery.value
        note = f"mites on bees times {factor.value:g}: {factor.source}"
        found.append(SourceEstimate(name, estimate, note, factor.verified))
    if count.method == "sugar":
        low = count_sources.sample_estimate("Lee 2010", count.mites, sample, bees) / recovery.low
        note = f"if sugar frees only {100 * recovery.low:.0f} % of the mites: a trade page"
        found.append(SourceEstimate("low recovery", low, note, "read"))
    return found


def _reached(level: Level, mites: float, per_100: float, fall: float | None) -> Reached:
    values = {"mites": mites, "mites per 100 bees": per_100, "fall per day": fall or 0.0}
    return Reached(level, values[level.measure] >= level.value)


def _warnings(count: MiteCount, known: Circumstances, bees: Parameter) -> list[str]:
    said = []
    if not count.day_given:
        said.append(f"Only the month is given: the count is taken as of {dated(count.on)}.")
    if known.bees_in_colony is None:
        said.append(
            f"The bees in the colony are not given: {bees.value:,.0f} are assumed, as usual for "
            f"the month ({bees.low:,.0f} to {bees.high:,.0f})."
        )
    if known.brood == "not known":
        said.append("Whether there is brood is not given: it changes the estimate several times.")
    if count.bees is not None and count.bees < FEW_BEES:
        said.append(f"{count.bees} bees are few: take about 300 from a brood frame, not the queen.")
    if count.mites == 0:
        said.append("No mites found is not the same as no mites: see the upper end of the range.")
    if count.days is not None:
        said.append(
            "A tray count holds only for a colony that is not collapsing, not being treated, with "
            "a clean tray that ants cannot reach; count over several days."
        )
    return [*said, "Mites are clumped, so the true range is wider than the range of the count."]
