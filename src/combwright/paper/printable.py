"""Text as paper can print it.

The sheet is set in the fonts that come with Typst, so that it is the same on every machine. What
these fonts cannot show would stop an accessible PDF, or worse (right-to-left letters without a
glyph crash Typst 0.15 on breaking a line), so such signs are put into words here.
"""

import unicodedata

# Blocks that Libertinus Serif or DejaVu Sans Mono cover in full; a test prints every one.
COVERED: tuple[tuple[int, int], ...] = (
    (0x20, 0x7E),
    (0xA1, 0x377),
    (0x38E, 0x3A1),
    (0x3A3, 0x4FF),
    (0x531, 0x556),
    (0x5D0, 0x5EA),
    (0x621, 0x63A),
    (0x640, 0x64A),
    (0x660, 0x669),
    (0x10D0, 0x10F0),
    (0x1E00, 0x1EF9),
    (0x2010, 0x2027),
    (0x2030, 0x2040),
    (0x20A0, 0x20BF),
    (0x2100, 0x211E),
    (0x2153, 0x2184),
    (0x2190, 0x22FF),
    (0x25A0, 0x25FF),
    (0x2639, 0x266F),
)
UNKNOWN = "\N{WHITE SQUARE}"
COMMON_SIGNS = range(0x1F000, 0x20000)


def printable(text: str) -> str:
    """Return text with every sign that the sheet's fonts lack put into words, or as a square.

    Control signs and turns of writing direction are left out.

    Examples
    --------
    >>> printable("Queen 🐝 #4")
    'Queen [honeybee] #4'
    >>> printable("蜂 1")
    '□ 1'

    """
    signs = (_shown(sign) for sign in unicodedata.normalize("NFC", text))
    return " ".join("".join(signs).split())


def _shown(sign: str) -> str:
    if sign.isspace():
        return " "
    if unicodedata.category(sign) in ("Mn", "Me", "Cf", "Cc", "Co"):
        return ""
    plain = unicodedata.normalize("NFKC", sign)
    for form in (sign, plain):
        if all(_is_covered(part) for part in form):
            return form
    if ord(sign) in COMMON_SIGNS:
        return f"[{unicodedata.name(sign, 'sign').lower()}]"
    return UNKNOWN


def _is_covered(sign: str) -> bool:
    return any(first <= ord(sign) <= last for first, last in COVERED)
