"""The limits on what the tests go through: of all of src, and of each module.

``make test MEASURED=1`` runs this on what its two runs of pytest have left.
"""

import json
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from coverage import Coverage

OF_ALL, OF_EACH = 92.0, 80.0  # per cent of lines and branches together


def measured() -> tuple[float, dict[str, float]]:
    """Per cent covered: of everything, and by module."""
    data = Coverage()
    data.load()
    with TemporaryDirectory() as room:
        told = Path(room) / "told.json"
        data.json_report(outfile=str(told))
        report = json.loads(told.read_text("utf-8"))
    each = {name: file["summary"]["percent_covered"] for name, file in report["files"].items()}
    return report["totals"]["percent_covered"], each


def main() -> int:
    """Say what is covered; 1 where it is too little."""
    of_all, each = measured()
    low = {name: share for name, share in sorted(each.items()) if share < OF_EACH}
    lines = [f"{share:5.1f} %  {name}" for name, share in low.items()]
    if lines:
        lines.insert(0, f"These modules are covered by less than {OF_EACH:.0f} %:")
    lines.append(f"Covered: {of_all:.1f} % of src ({OF_ALL:.0f} % asked for), {len(each)} modules.")
    print("\n".join(lines))  # noqa: T201
    return int(bool(low) or of_all < OF_ALL)


if __name__ == "__main__":
    sys.exit(main())
