"""Known holes of the locked packages, from a stored list: no network is asked.

``python docs/known_holes.py`` looks the locks up in ``known_holes.json`` and ends with 1 where
one is found. With ``--renew all.zip`` it makes the list anew first, from an export of the OSV
database (https://osv.dev, the archive of PyPI), for the packages that are locked.
"""

import json
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any
from zipfile import ZipFile

from packaging.utils import canonicalize_name
from packaging.version import Version
from supply import PINNED, ROOT  # type: ignore[import-not-found]  # beside this file

LIST = Path(__file__).with_name("known_holes.json")
LOCKS = ("requirements.lock", "requirements-test.lock", "requirements-build.lock")


@dataclass(frozen=True, order=True)
class Hole:
    """A locked version that an advisory is about."""

    package: str
    version: str
    advisory: str
    fixed: str


def locked(root: Path = ROOT) -> set[tuple[str, str]]:
    """Give every package that is locked, with its version."""
    texts = [(root / name).read_text("utf-8") for name in LOCKS]
    return {(canonicalize_name(one[1]), one[2]) for text in texts for one in PINNED.finditer(text)}


def holes(packages: Iterable[tuple[str, str]], stored: dict[str, Any]) -> list[Hole]:
    """Find the packages that a stored advisory is about."""
    found = set()
    for name, version in packages:
        for each in stored["advisories"]:
            if each["package"] == name and is_within(Version(version), each):
                found.add(Hole(name, version, each["id"], each.get("fixed", "")))
    return sorted(found)


def is_within(version: Version, advisory: dict[str, str]) -> bool:
    """Tell whether a version lies in the range of an advisory, by the rules of OSV.

    Examples
    --------
    >>> is_within(Version("1.2"), {"introduced": "1.0", "fixed": "1.3"})
    True
    >>> is_within(Version("1.3"), {"introduced": "0", "fixed": "1.3"})
    False
    >>> is_within(Version("9"), {"introduced": "0", "last": "9"})
    True

    """
    if version < Version(advisory["introduced"]):
        return False
    if "fixed" in advisory:
        return version < Version(advisory["fixed"])
    return "last" not in advisory or version <= Version(advisory["last"])


def renewed(archive: Path, names: set[str], today: date) -> dict[str, Any]:
    """Make the list from an export of OSV."""
    with ZipFile(archive) as file:
        told = (json.loads(file.read(name)) for name in sorted(file.namelist()))
        rows = [row for one in told if "withdrawn" not in one for row in rows_of(one, names)]
    return {
        "as_of": str(today),
        "source": "OSV, PyPI; advisories under CC BY 4.0 by their authors",
        "advisories": rows,
    }


def rows_of(told: dict[str, Any], names: set[str]) -> Iterator[dict[str, str]]:
    """Give the ranges of one advisory that are about packages of ours."""
    for affected in told.get("affected", []):
        name = canonicalize_name(affected.get("package", {}).get("name", ""))
        ranges = affected.get("ranges", []) if name in names else []
        for one in ranges:
            if one.get("type") == "ECOSYSTEM":
                yield from ({"id": told["id"], "package": name} | row for row in spans(one))


def spans(told: dict[str, Any]) -> Iterator[dict[str, str]]:
    """Put the events of a range together: from where, up to where."""
    begun = ""
    for event in told["events"]:
        if "introduced" in event:
            begun = event["introduced"]
        elif "fixed" in event:
            yield {"introduced": begun, "fixed": event["fixed"]}
            begun = ""
        elif "last_affected" in event:
            yield {"introduced": begun, "last": event["last_affected"]}
            begun = ""
    if begun:
        yield {"introduced": begun}


def main(words: list[str]) -> int:
    """Look, or renew the list; say how old it is."""
    if words[:1] == ["--renew"]:
        made = renewed(Path(words[1]), {name for name, _ in locked()}, date.today())  # noqa: DTZ011
        LIST.write_text(json.dumps(made, indent=1) + "\n", "utf-8")
    stored = json.loads(LIST.read_text("utf-8"))
    packages, count = locked(), len(stored["advisories"])
    found = holes(packages, stored)
    for one in found:
        sys.stdout.write(f"{one.package} {one.version}: {one.advisory}, fixed in {one.fixed}\n")
    sys.stdout.write(
        f"{len(packages)} locked versions, {count} stored advisories as of {stored['as_of']}: "
        f"{len(found)} known holes.\n"
    )
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
