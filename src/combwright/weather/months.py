"""From values by month to values by day, without moving the monthly means."""

from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

LENGTHS = np.array([31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
_LEAP = np.array([31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
CALENDAR_DAYS = 366  # 29 February has its own place in every table


def calendar_days(first: date, days: int) -> NDArray[np.int_]:
    """Give the place of each day in a table of 366 days, 1 January = 0, [day].

    Examples
    --------
    >>> calendar_days(date(2025, 2, 28), 3).tolist()
    [58, 60, 61]

    """
    day = np.datetime64(first) + np.arange(days)
    month = day.astype("datetime64[M]")
    of_month = (day - month.astype("datetime64[D]")).astype(int)
    starts = np.concatenate([[0], np.cumsum(_LEAP)[:-1]])
    return np.asarray(starts[month.astype(int) % 12] + of_month)


def months_of(first: date, days: int) -> NDArray[np.int_]:
    """Give the month of each day, January = 0, [day].

    Examples
    --------
    >>> months_of(date(2025, 1, 31), 2).tolist()
    [0, 1]

    """
    day = np.datetime64(first) + np.arange(days)
    return np.asarray(day.astype("datetime64[M]").astype(int) % 12)


def smooth(by_month: Floats) -> Floats:
    """Give values by day that change without steps and have the given monthly means, [..., 366].

    Straight lines between mid-months, whose corners are moved until each month has its mean.

    Examples
    --------
    >>> by_day = smooth(np.array([5, 5, 6, 8, 11, 14, 16, 16, 13, 10, 7, 5.0]))
    >>> float(by_day[:31].mean().round(6)), by_day.shape
    (5.0, (366,))

    """
    return np.asarray(np.asarray(by_month) @ _weights())


@cache
def _weights() -> Floats:
    month = np.repeat(np.arange(12), _LEAP)
    ends = np.cumsum(_LEAP)
    middles = ends - _LEAP / 2
    days = np.arange(CALENDAR_DAYS) + 0.5
    around = np.concatenate([[middles[-1] - CALENDAR_DAYS], middles, [middles[0] + CALENDAR_DAYS]])
    corners = np.eye(12)[[11, *range(12), 0]]
    lines = np.array([np.interp(days, around, corner) for corner in corners.T])
    means = np.array([lines[:, month == m].mean(axis=1) for m in range(12)]).T
    return np.asarray(np.linalg.solve(means, lines))
