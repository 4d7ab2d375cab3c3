"""The page of evidence: ``python -m combwright.evidence.page docs/evidence.md`` renews it."""

import sys
from collections.abc import Sequence
from itertools import groupby
from pathlib import Path

from combwright.evidence import wording
from combwright.evidence.check_files import read_checks
from combwright.evidence.running import Finding, run_all

HEAD = """# Evidence

{summary}

Every formula that Combwright rests on, beside the published values it must reproduce.
This page is generated from `src/combwright/evidence/checks/*.toml`; renew it with
`python -m combwright.evidence.page docs/evidence.md`. The same table comes from
`combwright evidence [TOPIC]`, and the tests run every line of it.

*How verified*: **read** = the value was read in the source, mostly in its abstract;
**second-hand** = read in a work that quotes it; **from memory** = known but not read again;
**computed** = worked out with another program; **common practice** = what the trade does;
**judgement** = ours.

*How it stands to ours*: **independent** = nothing of ours was set by it; **tuned to** = numbers of
the model were fitted to it; **in sample** = the weather was made from the same tables;
**constant** = what we get is a number of our own data files; **arithmetic** = a sum that another
program or a pencil gives as well. Only what was read and is independent tells how good the science
is. A check on simulated colonies says in which year of their life it was taken. A tolerance is
absolute; one above a tenth of the value says whether it is the source's own spread or our
judgement.
"""
COLUMNS = (
    "| | Check | Published | We get | Who says so | How verified, how it stands |\n"
    "|---|---|---|---|---|---|\n"
)


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")


def _row(finding: Finding) -> str:
    check = finding.check
    says = "<br>".join(
        part
        for part in (check.says, check.note, check.fails_because and f"*{check.fails_because}*")
        if part
    )
    cells = (
        wording.verdict(finding),
        f"{says}<br>`{check.id}`",
        f"{wording.expected(check)}{' (judgement)' if check.spread == 'judgement' else ''}",
        wording.got(finding),
        check.source,
        wording.standing(check),
    )
    return f"| {' | '.join(map(_cell, cells))} |\n"


def _conflict(name: str, group: Sequence[Finding]) -> str:
    lines = "".join(
        f"- {wording.expected(f.check)}: {f.check.source}; we get {wording.got(f)}, "
        f"{wording.verdict(f)} (`{f.check.id}`)\n"
        for f in group
    )
    return f"\n### {name}\n\n{lines}"


def markdown(findings: Sequence[Finding]) -> str:
    """Write the whole page."""
    parts = [HEAD.format(summary=wording.summary(findings))]
    for topic, group in groupby(findings, key=lambda finding: finding.check.topic):
        parts += [f"\n## {topic.capitalize()}\n\n", COLUMNS, *map(_row, group)]
    groups = wording.conflicts(findings)
    if groups:
        parts.append("\n## Where sources disagree\n")
        parts += [_conflict(name, group) for name, group in groups.items()]
    return "".join(parts)


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(markdown(run_all(read_checks())), encoding="utf-8")
