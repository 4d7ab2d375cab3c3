"""From a template and what it shows to a PDF: the one place that knows the typesetter."""

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any, Final, Literal

import typst

Standard = Literal["a-2a", "ua-1"]
READ_ALOUD: Final[tuple[Standard, ...]] = ("ua-1",)  # PDF/UA-1
KEPT_FOR_YEARS: Final[tuple[Standard, ...]] = ("a-2a", "ua-1")  # PDF/A-2a too
TypesettingError = typst.TypstError


def typeset(
    template: str, content: Mapping[str, Any], standards: tuple[Standard, ...] = KEPT_FOR_YEARS
) -> bytes:
    """Set what a template shows, in the fonts that come with the typesetter."""
    return bytes(
        typst.compile(
            files("combwright.paper").joinpath(f"{template}.typ").read_bytes(),
            sys_inputs={"content": json.dumps(content, ensure_ascii=False)},
            ignore_system_fonts=True,
            pdf_standards=list(standards),
        )
    )
