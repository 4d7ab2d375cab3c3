"""Findings in words: the same in the terminal and on the page."""

from collections import Counter
from collections.abc import Sequence
from math import floor, log10

from combwright.evidence.check_files import Check, Stands
from combwright.evidence.running import Finding

VERDICTS = {
    (True, False): "holds",
    (False, True): "explained",
    (False, False): "FAILS",
    (True, True): "holds after all",
}

DEPENDENT: dict[Stands, str] = {
    "tuned to": "were tuned to",
    "in sample": "are held against the tables that the weather was made from",
    "constant": "only show a number of our data files",
    "arithmetic": "are arithmetic that another program does as well",
}
YEARS = {
    "trial": "a trial",
    "first": "the first year after a spring put there",
    "later": "years 2 to 4, from its own winter",
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
    ...                tolerance=0.1, unit="kg", source="x", verified="read",
    ...                stands="independent"))
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


def standing(check: Check) -> str:
    """Say how the value was verified, how it stands to ours, and the year it was taken in."""
    known = [check.verified, check.stands]
    return ", ".join([*known, YEARS[check.year]] if check.year else known)


def verdict(finding: Finding) -> str:
    """Whether the check holds."""
    return VERDICTS[finding.passes, bool(finding.check.fails_because)]


def counts(findings: Sequence[Finding]) -> dict[str, int]:
    """Count the checks by what they carry; the first are those that say something new.

    ``independent`` are values that were read and by which nothing of ours was set; of these some
    were read in the source and some in a work that quotes it, some are held against simulated
    colonies, and some are missed.
    """
    carrying = [finding for finding in findings if finding.check.carries]
    by_stand = Counter(finding.check.stands for finding in findings)
    by_spread = Counter(finding.check.spread for finding in findings)
    return {
        "checks": len(findings),
        "independent": len(carrying),
        "read in the source": sum(one.check.verified == "read" for one in carrying),
        "read second-hand": sum(one.check.verified == "second-hand" for one in carrying),
        "on simulated colonies": sum(one.check.simulated for one in carrying),
        "independent and held": sum(one.passes for one in carrying),
        "independent but not read": by_stand["independent"] - len(carrying),
        **{stands: by_stand[stands] for stands in DEPENDENT},
        "wide by the source": by_spread["source"],
        "wide by judgement": by_spread["judgement"],
        "held": sum(finding.passes for finding in findings),
        "unexplained": sum(finding.unexplained for finding in findings),
    }


def summary(findings: Sequence[Finding]) -> str:
    """Say how many values carry something, how they were read, and what the others are."""
    n = counts(findings)
    missed = n["independent"] - n["independent and held"]
    others = ", ".join(f"{n[stands]} {words}" for stands, words in DEPENDENT.items())
    explained = n["checks"] - n["held"] - n["unexplained"]
    return (
        f"{n['independent']} independent values were read ({n['read in the source']} in the "
        f"source, {n['read second-hand']} in a work that quotes it), "
        f"{n['on simulated colonies']} of them on simulated colonies: "
        f"{n['independent and held']} hold, {missed} are missed. "
        f"{n['independent but not read']} more are independent but from memory, common practice "
        f"or judgement. The rest carry less: {others}. Of all {n['checks']} checks {n['held']} "
        f"hold, {explained} fail with the reason given, {n['unexplained']} fail unexplained. "
        f"Of the tolerances above a tenth of the value {n['wide by the source']} are the source's "
        f"own spread and {n['wide by judgement']} are judgement."
    )


def conflicts(findings: Sequence[Finding]) -> dict[str, list[Finding]]:
    """Group findings by the conflict of sources that they belong to."""
    groups: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.check.conflict:
            groups.setdefault(finding.check.conflict, []).append(finding)
    return groups
