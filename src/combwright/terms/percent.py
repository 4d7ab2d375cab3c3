"""Shares in percent, as they are written everywhere: with a space before the sign."""


def in_percent(share: float) -> str:
    """Write a share in whole percent.

    Examples
    --------
    >>> in_percent(0.127), in_percent(1.0)
    ('13 %', '100 %')

    """
    return f"{100.0 * share:.0f} %"
