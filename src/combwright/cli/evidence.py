"""``combwright evidence``: each formula beside the published value it reproduces."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption, print_json

if TYPE_CHECKING:
    from collections.abc import Sequence

    from rich.console import Console

    from combwright.evidence.running import Finding

EXAMPLE = "Example: `combwright evidence syrup`"


def evidence(
    topic: Annotated[str, typer.Argument(help="One topic, such as syrup; all without it.")] = "",
    as_json: JsonOption = False,
) -> None:
    """Show what was published, what we get, who says so, and what that is worth.

    Ends with exit code 1 if a check fails and nobody has said why.
    """
    from combwright.evidence.check_files import read_checks
    from combwright.evidence.running import run_all

    tell(run_all(read_checks(topic)), as_json=as_json)


def tell(findings: "Sequence[Finding]", *, as_json: bool) -> None:
    """Print the findings, and end with exit code 1 if one fails unexplained."""
    if as_json:
        from combwright.evidence import wording

        told = [finding.as_json() for finding in findings]
        print_json({"counts": wording.counts(findings), "checks": told})
    else:
        _show(findings)
    if any(finding.unexplained for finding in findings):
        raise typer.Exit(1)


def _show(findings: "Sequence[Finding]") -> None:
    from itertools import groupby

    from rich.console import Console

    from combwright.evidence import wording

    console = Console(highlight=False, markup=False)
    console.print(wording.summary(findings))
    for topic, group in groupby(findings, key=lambda finding: finding.check.topic):
        _table(console, topic, list(group))
    for name, members in wording.conflicts(findings).items():
        console.print(f"Sources disagree: {name}", style="bold")
        for finding in members:
            says = f"{wording.expected(finding.check)} ({finding.check.source})"
            console.print(f"  {says}; we get {wording.got(finding)}, {wording.verdict(finding)}")


def _table(console: "Console", topic: str, findings: "Sequence[Finding]") -> None:
    from rich import box
    from rich.table import Table
    from rich.text import Text

    from combwright.evidence import wording

    table = Table(title=topic, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD)
    table.add_column("check, and who says so", overflow="fold")
    for heading in ("published", "we get", ""):
        table.add_column(heading, overflow="fold", max_width=24)
    for finding in findings:
        check = finding.check
        told = Text(check.says)
        for more in (check.fails_because, f"{check.source} ({wording.standing(check)})"):
            told.append(f"\n{more}" if more else "", style="dim")
        cells = (wording.expected(check), wording.got(finding), wording.verdict(finding))
        style = "bold reverse" if finding.unexplained else ""
        table.add_row(told, *map(Text, cells), style=style)
    console.print(table)
