"""A simulated keeper: colonies whose truth is known, and the notes that the keeper would write.

The truth is drawn from the belief's own prior given what the keeper wrote on the first day, lives
through the same days, suffers unseen troubles with the same chances, and is seen through the same
errors. Calibration is a property of a method together with such a world; the studies of a wrong
model change the world and leave the belief alone.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any
from uuid import UUID

import numpy as np
from numpy.typing import NDArray

from combwright.belief.following.acting import act
from combwright.belief.following.causes import CAUSES
from combwright.belief.following.entering import see_through
from combwright.belief.following.noted import notes_of_colonies
from combwright.belief.following.replay import Followed, Replay
from combwright.belief.scoring import surprise
from combwright.belief.sharing.pooling import NOTHING, Pooled
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.observation import (
    CELLS_SEEN,
    CLUMPED,
    EYE,
    SEEN_BY_TRAY,
    cells_state,
    chance_of_eggs_found,
    looked_at,
)
from combwright.belief.weighing.otherwise import gone_otherwise
from combwright.belief.worlds import WORLDS
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.services.weather.surroundings import DISTRICT, yard_conditions
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.entries import Change, Colony, Feed, Noted, Stack, TrayCount, Visit
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
State = Any  # records of the simulation, typed by their dtype
Write = Callable[..., Any]
PLACE = climate("Dublin Airport")
HIVE = "national timber"
FAR = 3.5  # standard deviations beyond which a value is a slip of the pen


@dataclass(frozen=True)
class Habits:
    """How the keeper notes, and how the world differs from what the belief takes for granted."""

    every_days: int = 7
    missing: float = 0.0
    visits: int = 12
    first_day: int = 90
    counts_mites: bool = True
    sees_queen_signs: bool = True
    rounds_to_halves: bool = False
    troubles: bool = True
    biology: Biology = BIOLOGY
    traits: Mapping[str, float] = field(default_factory=dict)  # set as they are, not drawn
    flow: float = 0.0  # of the district this year beyond weather and calendar, as a logarithm
    eyes: Mapping[str, float] = field(default_factory=dict)  # of the keeper, as logarithms
    nectar: Callable[[Floats], Floats] | None = None  # of the flow of the true year, [day]
    trouble_at: Mapping[int, Callable[[Any, np.random.Generator], None]] = field(
        default_factory=dict
    )


@dataclass
class Truth:
    """One simulated colony and its keeper's notes."""

    name: str
    seed: int
    habits: Habits
    weather: DailyWeather
    table: Floats  # [1, day, column]
    entries: list[Noted] = field(default_factory=list)
    states: list[tuple[date, Any]] = field(default_factory=list)  # mornings after each visit
    seen: list[tuple[date, Any]] = field(default_factory=list)  # as each visit found it
    troubled: list[tuple[int, str]] = field(default_factory=list)
    slipped: set[int] = field(default_factory=set)  # visits with a value far from the truth

    @property
    def first(self) -> date:
        return self.weather.first

    def onward(self, state: State, on: date, days: int) -> State:
        """Give the truth some days later, without further troubles."""
        later = state.copy()
        start = (on - self.first).days
        part = self.table[:, start : start + days]
        run(
            later,
            part,
            luck(self.seed, "truth " + self.name, on, days, 1),
            worlds=(self.habits.biology,),
        )
        return later


def live(name: str, seed: int, habits: Habits) -> Truth:
    """Let a colony live through a season under a keeper who writes notes."""
    first = date(2025, 1, 1) + timedelta(days=habits.first_day - 1)
    days = habits.every_days * habits.visits + 40
    weather = generate(PLACE, first, days, 1, seed + 1)
    nectar, pollen = forage_index(calendar(DISTRICT), weather, PLACE, seed=seed + 2)
    if habits.nectar is not None:
        nectar = habits.nectar(nectar)
    table = conditions(weather, nectar, pollen, latitude_deg=PLACE.latitude_deg)
    truth = Truth(name, seed, habits, weather, table)
    _keep(truth)
    return truth


def _keep(truth: Truth) -> None:
    habits, name = truth.habits, truth.name
    rng = stream(truth.seed, name, "keeper")
    hive = catalogue().hive(HIVE)
    frames = int(rng.integers(7, 12))
    set_up = SetUp(hive=HIVE, frames=frames, dummy_boards=int(frames < 11))
    standing = Standing(hive, set_up)
    bees = float(rng.uniform(0.45, 0.9) * frames)
    described = Described(
        frames_of_bees=_half(bees),
        frames_of_brood=_half(bees * rng.uniform(0.3, 0.7)),
        stores_kg=_half(rng.uniform(3.0, 10.0)),
        queen_year=2024,
        has_queen=True,
    )
    colonies = begin(
        hive, set_up, described, on=truth.first, members=1, seed=truth.seed, colony="truth " + name
    )
    shared = draw_shared(1, 1, rng)
    for eye, value in habits.eyes.items():
        shared[eye] = value
    see_through(colonies, shared, described)
    colonies["forage_success"] *= np.exp(habits.flow)
    for trait, value in habits.traits.items():
        colonies[trait] = value
    on = truth.first
    write = _writer(truth, on)
    write(Colony, yard="Home", hive=HIVE, queen_year=2024)
    write(Stack, frames=frames, dummy_boards=set_up.dummy_boards, supers=0)
    write(
        Visit,
        frames_of_bees=described.frames_of_bees,
        frames_of_brood=described.frames_of_brood,
        stores_kg=described.stores_kg,
        eggs=True,
    )
    for number in range(1, habits.visits):
        truth.states.append((on, colonies.copy()))
        colonies = truth.onward(colonies, on, habits.every_days)
        on += timedelta(days=habits.every_days)
        _suffer(truth, colonies, number, on, rng)
        truth.seen.append((on, colonies.copy()))
        standing = _visit(truth, colonies, shared, standing, number=number)
    truth.states.append((on, colonies.copy()))


def _suffer(truth: Truth, colonies: State, number: int, on: date, rng: np.random.Generator) -> None:
    habits, days = truth.habits, float(truth.habits.every_days)
    if number in habits.trouble_at:
        habits.trouble_at[number](colonies, rng)
    if not habits.troubles:
        return
    draw, reached = rng.random(), 0.0
    for cause in CAUSES:
        chance = cause.within(on.timetuple().tm_yday, days)
        if reached <= draw < reached + chance:
            cause.happen(colonies, days, rng)
            truth.troubled.append((number, cause.name))
        reached += chance


def _visit(
    truth: Truth, colonies: State, shared: State, standing: Standing, *, number: int
) -> Standing:
    on = truth.seen[-1][0]
    rng = stream(truth.seed, truth.name, "visit", number)
    habits = truth.habits
    write = _writer(truth, on)
    seen: dict[str, Any] = {}
    expected = looked_at(colonies, shared, empty_kg=0.0)
    for name in ("frames_of_bees", "frames_of_brood", "stores_kg"):
        value = float(EYE[name].draw(expected[name], rng)[0])
        sd = np.hypot(EYE[name].relative * expected[name][0], EYE[name].absolute)
        if abs(value - expected[name][0]) > FAR * sd:
            truth.slipped.add(number)
        seen[name] = _half(value) if habits.rounds_to_halves else value
    seen["frames_of_brood"] = min(seen["frames_of_brood"], 36.0)
    seen["frames_of_bees"] = min(seen["frames_of_bees"], 40.0)
    if habits.sees_queen_signs:
        seen["eggs"] = bool(rng.random() < chance_of_eggs_found(colonies)[0])
        table = CELLS_SEEN[cells_state(colonies)[0]]
        seen["queen_cells"] = str(rng.choice(list(table), p=list(table.values())))
    kept = {name: value for name, value in seen.items() if rng.random() >= habits.missing}
    write(Visit, **kept)
    if habits.counts_mites and number % 3 == 0:
        mean = max(1e-3, SEEN_BY_TRAY.value * 3.0 * float(colonies["fallen"][0]))
        size = CLUMPED.value
        count = int(rng.negative_binomial(size, size / (size + mean)))
        write(TrayCount, mites=min(count, 50000), days=3.0)
    return _do(truth, colonies, standing, expected, rng)


def _do(
    truth: Truth,
    colonies: State,
    standing: Standing,
    expected: Mapping[str, Floats],
    rng: np.random.Generator,
) -> Standing:
    on = truth.seen[-1][0]
    write = _writer(truth, on)
    done: list[Noted] = []
    frames = standing.set_up.frames
    if expected["frames_of_bees"][0] > frames - 1.5:
        part = "drawn frame" if frames < 11 else "super"
        if part == "drawn frame" or standing.set_up.supers < 2:
            done.append(write(Change, part=part, count=1))
    if expected["stores_kg"][0] < 3.0:
        done.append(write(Feed, grams=1500.0, sugar_fraction=0.6))
    for entry in done:
        standing = act(entry, colonies, standing, catalogue(), rng)
    return standing


def _writer(truth: Truth, on: date) -> Write:
    def write(kind: Callable[..., Noted], **fields: object) -> Noted:
        key = UUID(int=(truth.seed << 64) | len(truth.entries))
        entry = kind(id=key, on=on, colony=truth.name, **fields)
        truth.entries.append(entry)
        return entry

    return write


def _half(value: float) -> float:
    return max(0.0, round(2.0 * value) / 2.0)


class Years:
    """What the belief is told of the days: the weather to a day, and versions of all the rest."""

    def __init__(self, truth: Truth, known_to: date, members: int, seed: int) -> None:
        self.first = truth.first
        days = (known_to - truth.first).days
        series = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")
        known = DailyWeather(truth.first, *(getattr(truth.weather, n)[:, :days] for n in series))
        until = known_to + timedelta(days=25)
        self.table = yard_conditions(PLACE, known, truth.first, until, members=members, seed=seed)

    def __call__(self, yard: str, first: date, until: date) -> Floats:
        del yard
        return self.table[:, (first - self.first).days : (until - self.first).days]


class InMemory:
    """States on the way, so that a season is followed once."""

    def __init__(self) -> None:
        self.found: dict[str, Followed] = {}

    def get(self, colony: str, key: str) -> Followed | None:
        del colony
        return self.found.get(key)

    def put(self, colony: str, key: str, followed: Followed, *, number: int, of: int) -> None:
        del colony, number, of
        self.found[key] = followed


def believed(
    truth: Truth,
    known_to: date,
    *,
    members: int = 200,
    seed: int = 77,
    pooled: Pooled = NOTHING,
) -> tuple[Replay, Years]:
    """Follow a colony by its notes, knowing the weather up to a day."""
    years = Years(truth, known_to, members, seed)
    kept = InMemory()
    lessons = {"Home": pooled}
    book = Replay(
        notes_of_colonies(truth.entries),
        years,
        catalogue(),
        members=members,
        seed=seed,
        kept=kept,
        pooled=lessons,
    )
    return book, years


def ahead(replay: Replay, years: Years, name: str, on: date, *, days: int, seed: int = 77) -> State:
    """Let the members of a belief live some days further under sampled weather."""
    followed = replay.follow(name, on)
    assert followed is not None
    colonies = followed.belief.colonies.copy()
    part = years("Home", on, on + timedelta(days=days))[followed.belief.shared["year"]]
    run(colonies, part, luck(seed, name, on, days, len(colonies)), worlds=WORLDS)
    rng = stream(seed, name, "otherwise", on.toordinal())
    return gone_otherwise(colonies, float(days), rng, wider=surprise(followed.scored))
