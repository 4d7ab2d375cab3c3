"""Hostile inputs, each made again from its number: valid samples, bent until they may break it."""

import json
from pathlib import Path
from random import Random
from typing import Final
from uuid import UUID

NASTY: Final = (
    *(
        "",
        " ",
        "\0",
        "\r",
        "\n",
        "\t",
        "'",
        '"',
        "\\",
        "/",
        "..",
        "../../etc/passwd",
        "a/b",
        "%00",
        "%2F",
    ),
    *(
        "=1+1",
        "@x",
        "-1",
        "+1",
        "0",
        "-0",
        "1e309",
        "-1e309",
        "NaN",
        "Infinity",
        "1_000",
        "٣",
        "²",
        "½",
    ),
    *("9" * 400, "0x10", "1e-400", "true", "null", "None", "[]", "{}", "[" * 3000, '{"a":' * 800),
    *(
        "9999-12-31",
        "0001-01-01",
        "2026-02-30",
        "2026-13-01",
        "1066-10-14",
        "12026-01-01",
        "T",
        "24:00",
    ),
    *("\ud800", "\udcff", "\ufeff", "\u202e", "😀" * 50, "é́", "x" * 70, "x" * 5000, "﷽" * 200),
    *(
        "<script>alert(1)</script>",
        "{{7*7}}",
        "'; DROP TABLE entry; --",
        "${jndi}",
        "%s%n",
        "\x1b[2J",
    ),
)
ON: Final = "2027-04-24"
NAMES: Final = ("Bramble", "Sorrel", "Nobody", "..", "a/b", "x" * 60, "\u202eelbmarB", "=1+1")
ENTRY: Final = {"id": str(UUID(int=77)), "kind": "visit", "on": ON, "colony": "Bramble"}
KINDS: Final = (
    *(
        "visit",
        "colony",
        "yard",
        "feed",
        "stack",
        "change",
        "split",
        "unite",
        "move",
        "end",
        "queen",
    ),
    *(
        "harvest",
        "treatment",
        "wash count",
        "tray count",
        "kit",
        "limit",
        "price",
        "aim",
        "correction",
    ),
    *("order", "batch", "own queen", "product", "purchase", "disposal", "counting", "nothing"),
)
FIELDS: Final = (
    *(
        "frames_of_bees",
        "frames_of_brood",
        "stores_kg",
        "eggs",
        "queen_cells",
        "remark",
        "grams",
        "feed",
    ),
    *(
        "frames",
        "dummy_boards",
        "supers",
        "hive",
        "yard",
        "climate",
        "district",
        "latitude",
        "longitude",
    ),
    *(
        "new_colony",
        "into",
        "reason",
        "count",
        "part",
        "item",
        "percent",
        "harm",
        "of",
        "amount",
        "mites",
    ),
    *(
        "bees",
        "days",
        "corrects",
        "replacement",
        "queen_year",
        "event",
        "product",
        "batch",
        "quantity",
    ),
)
HEADINGS: Final = (
    *(
        "date",
        "yard",
        "colony",
        "hive",
        "queen year",
        "climate",
        "frames of bees",
        "frames of brood",
    ),
    *(
        "eggs",
        "stores kg",
        "queen cells",
        "supers",
        "remark",
        "split to",
        "split hive",
        "moved to",
        "ended",
    ),
)


def dice(seed: int, way: str, number: int) -> Random:
    """Give the luck of one input: the same number makes the same input again."""
    return Random(f"{seed} {way} {number}")  # noqa: S311  (repeatable on purpose)


def value(luck: Random) -> object:
    """Give any value that JSON can carry, and some that it cannot."""
    made = (
        lambda: luck.choice(NASTY),
        lambda: luck.choice([True, False, None]),
        lambda: luck.randint(-(10 ** luck.randint(0, 25)), 10 ** luck.randint(0, 25)),
        lambda: luck.choice(
            [float("nan"), float("inf"), -0.0, 1e308, 5e-324, luck.uniform(-99, 99)]
        ),
        lambda: [value(luck) for _ in range(luck.randint(0, 3))],
        lambda: {luck.choice(FIELDS): value(luck)},
        lambda: luck.choice(NAMES),
    )
    return luck.choice(made)()


def entry(luck: Random) -> object:
    """Give an entry, or something instead of one."""
    if luck.random() < 0.05:
        return value(luck)
    made: dict[str, object] = {**ENTRY, "id": str(UUID(int=luck.getrandbits(128)))}
    made["kind"], made["colony"] = luck.choice(KINDS), luck.choice(NAMES)
    made |= {luck.choice(FIELDS): value(luck) for _ in range(luck.randint(0, 5))}
    if luck.random() < 0.3:
        made[luck.choice(list(made))] = value(luck)
    if luck.random() < 0.2:
        made.pop(luck.choice(list(made)))
    return made


def as_json(luck: Random) -> bytes:
    """Give a list of entries as JSON, sometimes bent."""
    text = json.dumps([entry(luck) for _ in range(luck.randint(0, 3))])
    return bent(text.encode(), luck) if luck.random() < 0.4 else text.encode()


def notebook(luck: Random) -> bytes:
    """Give a notebook, sometimes bent."""
    headings = luck.sample(HEADINGS, luck.randint(1, len(HEADINGS)))
    lines = [",".join(headings)]
    for _ in range(luck.randint(0, 4)):
        cells = [cell(one, luck) for one in headings]
        lines.append(",".join(cells))
    content = "\n".join(lines).encode("utf-8", "surrogatepass")
    return bent(content, luck) if luck.random() < 0.4 else content


def cell(heading: str, luck: Random) -> str:
    """Give what may stand under a heading."""
    likely = {
        "date": ON,
        "yard": "Alder Bank",
        "colony": luck.choice(NAMES),
        "hive": "national timber",
    }
    if luck.random() < 0.6:
        return likely.get(heading, luck.choice(["", "", "5", "yes", "7.5"]))
    return luck.choice(NASTY)


def weather(samples: list[Path], luck: Random) -> tuple[str, bytes]:
    """Give a file of weather with a bent content, and now and then another's name."""
    content = luck.choice(samples).read_bytes()[: luck.choice([400, 3000, 20000])]
    return luck.choice(samples).name, bent(content, luck)


def bent(content: bytes, luck: Random) -> bytes:
    """Bend some bytes: cut, doubled, turned, or with something nasty in between."""
    for _ in range(luck.randint(1, 4)):
        at, until = sorted(luck.randint(0, len(content)) for _ in range(2))
        nasty = luck.choice(NASTY).encode("utf-8", "surrogatepass")
        content = luck.choice(
            [
                content[:at],
                content[:at] + content[until:],
                content[:until] + content[at:until] + content[until:],
                content[:at] + nasty + content[at:],
                content[:at] + luck.randbytes(min(20, until - at)) + content[until:],
            ]
        )[:200_000]
    return content


def words(commands: list[str], options: dict[str, list[str]], luck: Random) -> list[str]:
    """Give a command with options that it knows, and values that it does not expect."""
    command = luck.choice(commands)
    typed = command.split()
    for _ in range(luck.randint(0, 4)):
        if options[command] and luck.random() < 0.8:
            typed.append(luck.choice(options[command]))
        if luck.random() < 0.8:
            typed.append(luck.choice((*NASTY, *NAMES, ON, "5", "-5", "0")))
    return typed
