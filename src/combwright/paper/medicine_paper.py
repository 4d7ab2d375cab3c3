"""The register of medicines as PDF, for an inspector and for the drawer."""

import json
from importlib.resources import files

import typst

from combwright.paper.printable import printable
from combwright.services.register.medicines import Register
from combwright.services.register.tables import tables


def register_pdf(found: Register) -> bytes:
    """Print a register as PDF/A-2a, which is also accessible (PDF/UA-1)."""
    content = {
        "country": printable(found.country),
        "years": ", ".join(str(year) for year in found.years),
        "law": printable(found.law),
        "missing": [printable(one) for one in found.missing],
        "year": max(found.years),
        "tables": [
            {
                "title": table.title,
                "headings": table.headings,
                "rows": [[printable(cell) for cell in row] for row in table.rows],
            }
            for table in tables(found)
        ],
    }
    return bytes(
        typst.compile(
            files("combwright.paper").joinpath("medicine_paper.typ").read_bytes(),
            sys_inputs={"register": json.dumps(content, ensure_ascii=False)},
            ignore_system_fonts=True,
            pdf_standards=["a-2a", "ua-1"],
        )
    )
