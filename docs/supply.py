"""What Combwright is made of: the locked packages as a CycloneDX list and as a page of licences.

``python docs/supply.py FILE`` writes the list, by the form of https://cyclonedx.org/docs/1.6/json.
"""

import json
import re
import sys
from dataclasses import dataclass
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent
LOCK = ROOT / "requirements.lock"
PINNED = re.compile(r"^([a-z0-9._-]+)==([^ ;\\]+)(?: ; ([^\\]+))?", re.MULTILINE)
HASH = re.compile(r"--hash=sha256:([0-9a-f]{64})")
LONGEST = 60  # signs; a longer field holds the whole text of a licence


@dataclass(frozen=True)
class Package:
    """One locked package."""

    name: str
    version: str
    hashes: tuple[str, ...]
    licence: str

    @property
    def purl(self) -> str:
        """Its name by the rules of https://github.com/package-url/purl-spec."""
        return f"pkg:pypi/{self.name}@{self.version}"


def packages(lock: Path = LOCK) -> list[Package]:
    """Read the lock, with the licences of what is installed."""
    text = lock.read_text("utf-8")
    found = list(PINNED.finditer(text))
    ends = [one.start() for one in found[1:]] + [len(text)]
    return [
        Package(one[1], one[2], tuple(HASH.findall(text[one.start() : end])), licence(one[1]))
        for one, end in zip(found, ends, strict=True)
    ]


def licence(name: str) -> str:
    """Give the licence that a package states: its expression, its field, or its classifiers."""
    try:
        told: Any = metadata(name)
    except PackageNotFoundError:
        return "of another system, not installed here"
    fields = [told.get("License-Expression"), told.get("License")]
    short = next((one.strip() for one in fields if one and len(one.strip()) <= LONGEST), "")
    classes = [each for each in told.get_all("Classifier", []) if each.startswith("License ::")]
    return short or ", ".join(each.split(" :: ")[-1] for each in classes) or "in its files"


def bill() -> dict[str, Any]:
    """Lay out the list; the same lock gives the same one."""
    return {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {"component": {"type": "application", "name": "combwright"}},
        "components": [
            {
                "type": "library",
                "bom-ref": each.purl,
                "name": each.name,
                "version": each.version,
                "purl": each.purl,
                "hashes": [{"alg": "SHA-256", "content": one} for one in each.hashes],
                "licenses": [{"license": {"name": each.licence}}],
            }
            for each in packages()
        ],
    }


def licences() -> str:
    """Write the page of licences."""
    rows = "".join(f"| {each.name} | {each.version} | {each.licence} |\n" for each in packages())
    return (
        "# Licences\n\nCombwright is under the [Apache License 2.0](../LICENSE). It runs on these "
        "packages, each under the\nlicence that it states itself. Written by `make docs`.\n\n"
        f"| package | version | licence |\n|---|---|---|\n{rows}"
    )


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(json.dumps(bill(), indent=1) + "\n", "utf-8")
