"""A round of our own invention: three yards, sixteen colonies, names that try the paper."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest

from combwright.planning.sheet import (
    Band,
    Bench,
    Branch,
    ColonySheet,
    Expected,
    Portion,
    RoundSheet,
    SetUpShown,
    Stop,
)
from combwright.terms.combs import Box, Place, StackView

ON = date(2026, 4, 14)
YARDS = ("Withy Lane", "Old Quarry", "Parsonage")
NAMES = (
    "W1 Alder",
    "W2 Bracken",
    "W3 Clover",
    "W4 Dogrose",
    "W5 nuc a",
    "W6 nuc b",
    "Q1 Elder",
    "Q2 Furze",
    "Q3 Gorse",
    "Q4 Hazel",
    "Q5 nuc c",
    "P1 Ivy",
    "P2 Juniper",
    "P3 Kale",
    "P4 Linden",
    "P5 nuc d",
)


def stack(strength: float, *, frames: int, feeder: bool = False, supers: int = 0) -> StackView:
    """Return a stack with bees and brood heaped around its middle comb."""
    middle = (frames - 1) / 2
    places = []
    for i in range(frames):
        nearness = max(0.0, 1 - abs(i - middle) / (frames * strength / 2 + 0.5))
        brood = round(0.8 * nearness, 2)
        stores = round(min(0.9 - brood, 0.15 + 0.7 * (1 - nearness)), 2)
        places.append(
            Place(
                "comb", brood, stores, round(0.08 + 0.1 * (brood > 0), 2), min(1.0, nearness * 1.3)
            )
        )
    places += [Place("dummy board")] + [Place("gap")] * max(
        0, (6 if frames < 6 else 11) - frames - 1
    )
    boxes = [Box("brood", tuple(places))]
    boxes += [Box("super", tuple(Place("comb", 0, 0.1 * (i % 4)) for i in range(10)))] * supers
    return StackView(
        tuple(boxes), supers > 0, feeder, 60, 100, "cushion" if frames < 6 else "crown board"
    )


def with_frame(view: StackView) -> StackView:
    """Return the stack with a new frame in the place of its first gap or board, and more air."""
    box = view.boxes[0]
    first = next(i for i, place in enumerate(box.places) if place.holds != "comb")
    places = (*box.places[:first], Place("foundation", is_new=True), *box.places[first : first + 1])
    places += box.places[first + 2 :]
    return replace(view, boxes=(replace(box, places=places), *view.boxes[1:]), entrance_mm=100)


def band(mid: float) -> Band:
    return Band(low=mid * 0.7, mid=mid, high=mid * 1.35)


def colony_sheet(order: int, name: str, yard: str) -> ColonySheet:
    """Return one colony's part of the sheet; each third gets a frame, each fifth a super."""
    is_nuc = "nuc" in name
    frames = 4 if is_nuc else 7 + order % 3
    strength = 0.5 + 0.05 * (order % 9)
    gets_frame, gets_super = order % 3 == 0, order % 5 == 0 and not is_nuc
    before = stack(strength, frames=frames)
    after = stack(strength, frames=frames, feeder=not gets_super, supers=int(gets_super))
    after = with_frame(after) if gets_frame else after
    per_day = 0 if gets_super else 180 if is_nuc else 300 + 35 * (order % 9)
    portion = Portion(
        syrup_g=3 * per_day,
        per_day_g=per_day,
        days=3,
        sugar_fraction=0.6,
        litres=3 * per_day / 1290,
    )
    now = SetUpShown(
        brood_boxes=1,
        frames=frames,
        foundation=0,
        dummy_boards=1,
        supers=0,
        excluder=False,
        entrance_mm=60,
        tray_open_mm=100,
        cover=before.cover,
    )
    then = now.model_copy(
        update={
            "frames": frames + gets_frame,
            "foundation": int(gets_frame),
            "supers": int(gets_super),
            "excluder": gets_super,
            "entrance_mm": 100 if gets_frame else 60,
        }
    )
    jobs = ["put in one frame of foundation beside the brood"] if gets_frame else []
    jobs += ["add a super over a queen excluder"] if gets_super else []
    jobs += ["look for eggs"] if order % 4 == 0 else []
    return ColonySheet(
        colony=name,
        yard=yard,
        hive="poly nuc" if is_nuc else "national timber",
        order=order,
        last_visit=None if order == 11 else ON - timedelta(days=3 + order % 3),
        next_visit=ON + timedelta(days=3),
        planned_until=ON + timedelta(days=3),
        expected=Expected(
            frames_of_bees=band(frames * strength),
            frames_of_brood=band(frames * strength * 0.6),
            stores_kg=band(1.1 + 0.3 * frames),
            room_cells=band(620 * frames * strength),
            mites=band(12 * order),
        ),
        portion=portion,
        set_up_now=now,
        set_up=then,
        actions=[],
        jobs=jobs,
        because=[
            f"it uses about {per_day or 420} g of syrup a day; three days to the next visit",
            f"{620 * frames * strength:,.0f} warm empty cells are enough for 4 days at 900 a day",
        ],
        branches=[
            Branch(
                code="at most",
                actions=[],
                found=f"bees on fewer than {frames * strength * 0.7:.0f} frames",
                do=["take the outer frame away", "set the dummy board close to the bees"],
                because="fewer bees cannot keep the brood warm",
                portion=portion.model_copy(
                    update={
                        "syrup_g": 3 * (per_day // 2),
                        "per_day_g": per_day // 2,
                        "litres": per_day / 860,
                    }
                ),
            ),
            Branch(
                code="charged cells",
                actions=[],
                found="charged queen cells",
                do=["do not feed", "split it today or within four days"],
                because="it will swarm when the first cell is sealed",
            ),
        ],
        questions=["the notes say 4 and 9 frames of bees on the same day: which is right?"]
        if order == 7
        else [],
        chances={"running out of food": 0.004, "queen short of room": 0.06, "swarm": 0.02 * order},
        inputs={"per_day_g": float(per_day)},
        before=before,
        after=after,
    )


def round_sheet(names: tuple[str, ...] = NAMES, yards: tuple[str, ...] = YARDS) -> RoundSheet:
    """Return a whole round; the names are shared out over the yards in order."""
    share = -(-len(names) // len(yards))
    colonies = [colony_sheet(i + 1, name, yards[i // share]) for i, name in enumerate(names)]
    litres = sum(colony.portion.litres for colony in colonies)
    return RoundSheet(
        on=ON,
        version="0.1.0",
        seed=7,
        weather="10 to 17 h: 12 to 15 °C, 3 h of sun, wind 4 m/s, dry; rain from 18 h",
        yards=list(yards),
        colonies=colonies,
        bench=Bench(
            sugar_kg=round(litres * 0.774, 1),
            water_kg=round(litres * 0.516, 1),
            syrup_l=round(litres, 1),
            sugar_fraction=0.6,
            crystallises_below_c=-5.0,
            frames_drawn=2,
            frames_foundation=6,
            dummy_boards=1,
            supers=3,
            boxes=0,
            steps=["warm the water to 45 °C, then stir in the sugar", "fill into 5 L cans"],
        ),
        load=[
            Stop(
                yard=yard,
                colonies=share,
                syrup_l=round(litres / len(yards), 1),
                fondant_kg=0.0,
                frames_drawn=0,
                frames_foundation=2,
                dummy_boards=i % 2,
                supers=1,
                excluders=1,
                items=["smoker, fuel, water", "hive tool", "spare veil"],
            )
            for i, yard in enumerate(yards)
        ],
        notices=["Disease seen: stop, close up, report to the authority, move nothing."],
    )


@pytest.fixture
def make_round() -> Callable[..., RoundSheet]:
    return round_sheet


@pytest.fixture
def sheet() -> RoundSheet:
    return round_sheet()
