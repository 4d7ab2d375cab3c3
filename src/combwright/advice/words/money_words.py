"""How the advice writes money: whole units of the keeper's own, with what stands behind them."""

from typing import Final

from combwright.advice.words.wording import many

HONEY_TOLD: Final = 0.1


def money_words(amount: float) -> str:
    """Write about how much of the keeper's own money; under one it is called that.

    Examples
    --------
    >>> money_words(31.4), money_words(0.3), money_words(212.0)
    ('about 31', 'under 1', 'about 210')

    """
    if abs(amount) < 1.0:
        return "under 1"
    return f"about {float(f'{amount:.2g}'):,.0f}"


def worth_words(what: str, money: float, honey_kg: float, minutes: float) -> str:
    """Say what something is worth by the end of the season, and what it takes.

    Examples
    --------
    >>> worth_words("A super now", 31.4, 3.9, 4.0)
    'A super now: about 31 more by October (3.9 kg of honey), 4 minutes.'

    """
    honey = f" ({honey_kg:.1f} kg of honey)" if honey_kg >= HONEY_TOLD else ""
    takes = f", {many(round(minutes), 'minute')}" if minutes >= 1.0 else ""
    return f"{what}: {money_words(money)} more by October{honey}{takes}."


def less_words(money: float) -> str:
    """Say by how much a second choice lost.

    Examples
    --------
    >>> less_words(3.2), less_words(0.2)
    ('about 3 less', 'as good, within 1')

    """
    return f"{money_words(money)} less" if money >= 1.0 else "as good, within 1"
