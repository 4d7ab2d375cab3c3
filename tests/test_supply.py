"""The list of what it is made of says all that is locked, each with hash and licence."""

import json
import re
import subprocess
import sys
from pathlib import Path


def test_the_list_holds_every_locked_package(root: Path, tmp_path: Path) -> None:
    made = tmp_path / "sbom.cdx.json"
    subprocess.run([sys.executable, root / "docs" / "supply.py", made], check=True)
    told = json.loads(made.read_text("utf-8"))
    assert (told["bomFormat"], told["specVersion"]) == ("CycloneDX", "1.6")
    lock = (root / "requirements.lock").read_text("utf-8")
    locked = set(re.findall(r"^([a-z0-9._-]+==[^ ;\\]+)", lock, flags=re.MULTILINE))
    listed = {f"{each['name']}=={each['version']}" for each in told["components"]}
    assert listed == locked
    hashes = [one["content"] for each in told["components"] for one in each["hashes"]]
    assert len(hashes) == lock.count("--hash=sha256:")
    assert all(each["hashes"] for each in told["components"])
    assert all(each["licenses"][0]["license"]["name"] for each in told["components"])
