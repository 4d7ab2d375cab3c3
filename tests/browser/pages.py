"""Every page of the program, by a short name; what the tests of looks and the screenshots show."""

from combwright.services.demo import ON

PAGES = {
    "round": f"/round/{ON}",
    "note": f"/round/{ON}/note/Bramble",
    "bench": f"/bench/{ON}",
    "colonies": "/yards",
    "colony": "/colony/Bramble",
    "colony-ahead": "/colony/Bramble/ahead",
    "colony-why": "/colony/Bramble/why",
    "what-if": "/colony/Bramble/what-if?feed_g=1000",
    "kit": "/kit",
    "settings": "/settings",
    "syrup": "/syrup",
    "evidence": "/evidence",
    "evidence-topic": "/evidence/mites",
    "numbers": "/numbers",
    "find": "/find?words=bramble",
    "register": "/register",
    "numbers-room": "/numbers/simulation.begin",
    "worth": "/worth",
    "why": "/why",
    "glossary": "/glossary",
    "more": "/more",
    "waiting": "/waiting",
    "without-signal": "/without-signal",
    "login": "/login",
    "enter": "/enter/split",
    "not-possible": "/colony/Nobody",
    "nothing-to-plan": "/round/2020-01-01",
}
