"""The round sheet as data: what terminal, page, paper and JSON all show.

The JSON Schema in ``docs/round.schema.json`` is generated from these classes.
"""

from datetime import date

from pydantic import BaseModel, ConfigDict, Field

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import LeaveShut
from combwright.advice.words.wording import day_words, many
from combwright.terms.combs import StackView


class Shown(BaseModel):
    """A part of the sheet; frozen, and closed to unknown fields."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Band(Shown):
    """A quantity and how sure we are of it: its 5, 50 and 95 % quantiles."""

    low: float
    mid: float
    high: float


class Expected(Shown):
    """What should be found at the colony when it is opened."""

    frames_of_bees: Band
    frames_of_brood: Band
    stores_kg: Band
    room_cells: Band
    mites: Band


class Portion(Shown):
    """Feed for the days until the next visit; all zero when none is given."""

    syrup_g: int
    per_day_g: int
    days: int
    sugar_fraction: float
    feed: str = "syrup"
    litres: float = 0.0


class SetUpShown(Shown):
    """How the stack should stand until the next visit."""

    brood_boxes: int
    frames: int
    foundation: int
    dummy_boards: int
    supers: int
    excluder: bool
    entrance_mm: int
    tray_open_mm: int
    cover: str


class Branch(Shown):
    """What to do instead if the colony turns out different."""

    code: str = Field(description="What is found, for a program; in words: found")
    quantity: str | None = Field(default=None, description="What is seen or hefted: the amount of")
    amount: float | None = None
    chance: float | None = Field(default=None, description="That it is so here, 0 to 1")
    found: str
    actions: list[Action] = Field(description="What is done, for a program; in words: do")
    do: list[str]
    because: str
    portion: Portion | None = None


class DecisionShown(Shown):
    """One decision: what it asks for, why, the figures it quotes, and what came second."""

    topic: str
    actions: list[Action]
    jobs: list[str]
    because: list[str]
    inputs: dict[str, float]
    runner_up: str


class ForSale(Shown):
    """A nuc held against the written standard for a sale."""

    missing: list[str]
    by: date | None = Field(description="The day by which all that grows is there")
    chance: float = Field(description="Of that, or of the best week if there is no such day")
    job: str


class ColonySheet(Shown):
    """One colony's part of the sheet."""

    colony: str
    yard: str
    hive: str
    order: int
    last_visit: date | None
    next_visit: date = Field(
        description="The earliest day that an action asks for, or that pays best"
    )
    planned_until: date = Field(description="The day to which food and room are planned")
    expected: Expected
    portion: Portion
    set_up_now: SetUpShown
    set_up: SetUpShown
    actions: list[Action] = Field(description="What is done, for a program; in words: jobs")
    jobs: list[str]
    because: list[str]
    for_sale: ForSale | None = Field(default=None, description="Of a nuc while nucs are sold")
    branches: list[Branch] = Field(description="Its own; see also at_any_colony")
    questions: list[str] = Field(description="What the keeper is asked, because notes clash")
    chances: dict[str, float] = Field(description="Chance of each harm under the advice, 0 to 1")
    inputs: dict[str, float] = Field(description="The figures that the reasons quote")
    decisions: list[DecisionShown] = Field(default_factory=list)
    before: StackView
    after: StackView

    @property
    def after_the_feed(self) -> str:
        """Say what holds from the day to which the feed is reckoned to a later next visit.

        The visit is put off only as far as hunger stays within its limit under this very portion;
        a colony left shut for its virgin's sake is seen when she should lay, whatever is fed.
        """
        is_later = self.next_visit > self.planned_until and not of_kind(self.actions, LeaveShut)
        if not self.portion.syrup_g or not is_later:
            return ""
        until, seen = day_words(self.planned_until), day_words(self.next_visit)
        return f"Reckoned to {until}; hunger stays within your limit to {seen}."


class Short(Shown):
    """What the round needs and the shelf, as counted in the book, does not hold."""

    what: str
    needed: float
    on_shelf: float

    @property
    def said(self) -> str:
        """Say by how much it is short."""
        by = round(self.needed - self.on_shelf, 1)
        return (
            f"Short by {by:g}: {self.what}, {self.needed:g} needed, {self.on_shelf:g} on the shelf."
        )


class Bench(Shown):
    """What to prepare indoors."""

    sugar_kg: float
    water_kg: float
    syrup_l: float
    sugar_fraction: float
    crystallises_below_c: float | None = Field(description="None: not above freezing")
    frames_drawn: int
    frames_foundation: int
    dummy_boards: int
    supers: int
    boxes: int
    short: list[Short] = Field(
        default_factory=list, description="What is counted in the book and is not enough"
    )
    steps: list[str]


class Stop(Shown):
    """What to load for one yard."""

    yard: str
    colonies: int
    syrup_l: float
    fondant_kg: float
    frames_drawn: int
    frames_foundation: int
    dummy_boards: int
    supers: int
    excluders: int
    items: list[str]


class Handed(Shown):
    """What one colony gives to another on the round."""

    what: str
    count: int
    giver: str
    giver_yard: str
    taker: str
    taker_yard: str

    @property
    def counted(self) -> str:
        """Say how many of what."""
        return many(self.count, self.what)

    @property
    def to_giver(self) -> str:
        """Say it at the hive that gives; a spare queen has none."""
        if self.what == "colony":
            return f"Unite it with {self.taker}, through newspaper."
        return f"{self.counted[0].upper()}{self.counted[1:]} for {self.taker}{self._place}."

    @property
    def to_taker(self) -> str:
        """Say it at the hive that takes."""
        if self.what == "colony":
            return f"{self.giver} is united with it, through newspaper."
        if self.what == "mated queen":
            return f"The spare queen {self.giver} is for it, in a cage."
        takes = f"Takes {self.counted} from {self.giver}, the bees shaken off and the frame marked"
        return f"{takes}: so much less to feed." if self.what == "comb of stores" else f"{takes}."

    @property
    def said(self) -> str:
        """Say it of both.

        Examples
        --------
        >>> Handed(what="comb of stores", count=2, giver="Ash", giver_yard="Alder Bank",
        ...        taker="Birch", taker_yard="Mill Orchard").said
        '2 combs of stores from Ash to Birch at Mill Orchard'

        """
        if self.what == "mated queen":
            return f"the spare queen {self.giver} to {self.taker}{self._place}"
        return f"{self.counted} from {self.giver} to {self.taker}{self._place}"

    @property
    def to_load(self) -> str:
        """Say what is carried in the van."""
        if self.what == "mated queen":
            return f"the spare queen {self.giver}, caged, for {self.taker}"
        return f"a closed box for {self.said}"

    @property
    def _place(self) -> str:
        return f" at {self.taker_yard}" if self.taker_yard != self.giver_yard else ""


def gained(sheet: ColonySheet) -> float:
    """Sum up what the work at a hive is worth more than leaving it, as far as it was weighed."""
    return sum(
        max(0.0, each.inputs.get(name, 0.0))
        for each in sheet.decisions
        if each.actions
        for name in ("worth_more", "super_worth_more")
    )


class LeftOut(Shown):
    """A colony for which a short day has no time, and what leaving it costs."""

    colony: str
    yard: str
    minutes: float
    costs: float = Field(description="In the keeper's money, as far as its work was weighed in it")
    cannot_wait: bool

    @property
    def said(self) -> str:
        """Say what is left and at what cost."""
        pressing = "cannot wait: find the time" if self.cannot_wait else f"costs {self.costs:.0f}"
        return f"{self.colony} ({self.yard}), {self.minutes:g} minutes: {pressing}"


class RoundSheet(Shown):
    """The sheet for one round."""

    on: date
    version: str
    seed: int
    weather: str
    yards: list[str]
    colonies: list[ColonySheet]
    bench: Bench
    load: list[Stop]
    at_any_colony: list[Branch] = Field(
        default_factory=list, description="Branches that are the same at every colony"
    )
    handed: list[Handed] = Field(
        default_factory=list, description="Which frame or colony goes from which hive to which"
    )
    left_out: list[LeftOut] = Field(
        default_factory=list, description="What does not fit into the minutes that were given"
    )
    on_shelf: dict[str, float] = Field(
        default_factory=dict, description="Kit that should be left, of what is counted in the book"
    )
    notices: list[str]
