"""Findings in words: the same in the terminal and on the page."""

from collections import Counter
from collections.abc import Sequence
from math import floor, log10

from combwright.evidence.check_files import Check
from combwright.evidence.running import Finding

VERDICTS = {
    (True, False): "holds",
    (False, True): "explained",
    (False, False): "FAILS",
    (True, True): "holds after all",
}


def decimals(check: Check) -> int:
    """Count the decimals worth showing: those of the tolerance or of the source."""
    given = repr(check.expected)
    written = len(given.partition(".")[2]) if "." in given and "e" not in given else 0
    return max(written, -floor(log10(check.tolerance)) if check.tolerance else 0)


def expected(check: Check) -> str:
    """Write the published value with tolerance and unit.

    Examples
    --------
    >>> expected(Check(topic="a", id="a-b", says="s", function="a.b", expected=1.5,
    ...                tolerance=0.1, unit="kg", source="x", verified="read"))
    '1.5 ± 0.1 kg'

    """
    if not check.is_number:
        return _word(check.expected)
    spread = f" ± {check.tolerance:g}" if check.tolerance else ""
    value = check.expected
    shown = f"{value:.{decimals(check)}f}" if isinstance(value, float) else str(value)
    return f"{shown}{spread} {check.unit}".rstrip()


def _word(value: object) -> str:
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)


def got(finding: Finding) -> str:
    """Write what we get, to the digits that matter, or the error."""
    if finding.error:
        return finding.error
    if isinstance(finding.got, float) and finding.check.is_number:
        return f"{finding.got:.{min(decimals(finding.check) + 1, 8)}f}"
    return _word(finding.got)


def verdict(finding: Finding) -> str:
    """Whether the check holds."""
    return VERDICTS[finding.passes, bool(finding.check.fails_because)]


def summary(findings: Sequence[Finding]) -> str:
    """Count by how the values were verified, and how many hold."""
    by_kind = Counter(finding.check.verified for finding in findings)
    kinds = ", ".join(f"{count} {kind}" for kind, count in by_kind.most_common())
    holding = sum(finding.passes for finding in findings)
    unexplained = sum(finding.unexplained for finding in findings)
    explained = len(findings) - holding - unexplained
    return (
        f"{len(findings)} checks: {holding} hold, {explained} fail with the reason given, "
        f"{unexplained} fail unexplained. How the published values were verified: {kinds}."
    )


def conflicts(findings: Sequence[Finding]) -> dict[str, list[Finding]]:
    """Group findings by the conflict of sources that they belong to."""
    groups: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.check.conflict:
            groups.setdefault(finding.check.conflict, []).append(finding)
    return groups
