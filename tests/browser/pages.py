"""Every page of the program, by a short name; what the tests of looks and the screenshots show."""

from hashlib import sha256
from pathlib import Path

from combwright.services.demo import ON
from combwright.web.showing import STATIC

PAGES = {
    "round": f"/round/{ON}",
    "hive": f"/round/{ON}/hive/Yarrow",
    "found": f"/round/{ON}/found",
    "key": "/key",
    "written": f"/round/{ON}/written",
    "papers": f"/round/{ON}/papers",
    "note": f"/round/{ON}/note/Bramble",
    "bench": f"/bench/{ON}",
    "colonies": "/yards",
    "colony": "/colony/Bramble",
    "colony-ahead": "/colony/Bramble/ahead",
    "colony-why": "/colony/Bramble/why",
    "what-if": "/colony/Bramble/what-if?feed_g=1000",
    "begin": "/begin",
    "kit": "/kit",
    "settings": "/settings",
    "people": "/people",
    "own-login": "/own-login",
    "syrup": "/syrup",
    "evidence": "/evidence",
    "evidence-topic": "/evidence/mites",
    "numbers": "/numbers",
    "find": "/find?words=bramble",
    "register": "/register",
    "honey": "/honey",
    "history": "/history?colony=Bramble",
    "import": "/import",
    "bees": "/bees",
    "buyers": "/buyers",
    "sales-register": "/bees/register",
    "trace": "/honey/trace?of=Bramble",
    "numbers-room": "/numbers/simulation.begin",
    "worth": "/worth",
    "why": "/why",
    "glossary": "/glossary",
    "more": "/more",
    "waiting": "/waiting",
    "without-signal": "/without-signal",
    "login": "/login",
    "enter": "/enter/split",
    "supply": "/supply",
    "not-possible": "/colony/Nobody",
    "nothing-to-plan": "/round/2020-01-01",
}

SCREENS = Path(__file__).parents[2] / "docs" / "screens"
# The templates of the pictures that README and docs/look.md show, beside the style of all.
PICTURED = (
    *("base", "parts", "round", "hive", "note", "bench", "key", "written", "begin"),
    *("colony_ahead", "what_if"),
)


def made_from() -> str:
    """Tell one state of what the pictures show from another."""
    templates = STATIC.parent / "templates"
    read = [STATIC / "page.css", *(templates / f"{name}.html" for name in PICTURED)]
    return sha256(b"".join(path.read_bytes() for path in read)).hexdigest()[:16]
