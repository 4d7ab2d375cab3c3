"""The forecast of a place, fetched from an open service and kept for when it cannot be had."""

import json
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from email.utils import parsedate_to_datetime
from pathlib import Path
from typing import Self

import httpx

from combwright.sources.days import Read
from combwright.sources.met_norway import ATTRIBUTION, read_met_norway
from combwright.terms.errors import SourceError
from combwright.terms.ranges import within

# chosen because its licence allows any use, also that of a keeper who sells
ADDRESS = "https://api.met.no/weatherapi/locationforecast/2.0/compact"
SERVICE = "MET Norway"
TIMEOUT_S = 10.0
NEW_FOR = timedelta(hours=1)  # when the service does not say until when an answer holds
OLDEST = timedelta(days=4)  # an older forecast says no more than the climate
DEPRECATED, UNCHANGED, TOO_MANY = 203, 304, 429
REMEDY = "Use a file of weather, or go on with the climate of the place."


@dataclass(frozen=True, slots=True)
class Forecast:
    """A forecast, its age, and why it is not newer, if it might be."""

    read: Read
    fetched: datetime
    age: timedelta
    note: str = ""
    attribution: str = ATTRIBUTION


@dataclass(frozen=True, slots=True)
class _Kept:
    """An answer of the service as it came."""

    address: str
    fetched: datetime
    expires: datetime
    last_modified: str
    body: str

    def as_text(self) -> str:
        return json.dumps(
            {
                "address": self.address,
                "fetched": self.fetched.isoformat(),
                "expires": self.expires.isoformat(),
                "last_modified": self.last_modified,
                "body": self.body,
            }
        )

    @classmethod
    def from_text(cls, text: str) -> Self:
        data = json.loads(text)
        fetched, expires = (datetime.fromisoformat(data[key]) for key in ("fetched", "expires"))
        return cls(data["address"], fetched, expires, data["last_modified"], data["body"])


class _NoAnswerError(Exception):
    """The service gave nothing that can be used; the sentence says why."""


def forecast(
    latitude_deg: float,
    longitude_deg: float,
    *,
    contact: str,
    cache: Path,
    now: datetime,
    address: str = ADDRESS,
    timeout_s: float = TIMEOUT_S,
) -> Forecast:
    """Fetch the forecast of a place, or give the last one that was kept, with its age.

    The service is asked no sooner than it wishes, and told who asks.

    Two decimals of the place are sent, about a kilometre: a forecast is no finer, and where exactly
    the hives stand is nobody’s business. ``contact`` is an address at which the service can reach
    the person who runs this; ``cache`` keeps the last answer. It is an error when the
    service gives nothing and no answer younger than four days is kept.
    """
    latitude = float(within(latitude_deg, -90, 90, "The latitude", "°"))
    longitude = float(within(longitude_deg, -180, 180, "The longitude", "°"))
    if not contact.strip():
        raise SourceError(
            "The service wants to know who asks.", remedy="Give an e-mail address as contact."
        )
    asked = f"{address}?lat={latitude:.2f}&lon={longitude:.2f}"
    kept = _kept(cache, asked)
    if kept is not None and now < kept.expires:
        return _told(kept, now)
    try:
        answer = _fetch(asked, contact, kept, now, timeout_s)
        read_met_norway(answer.body, SERVICE)
    except (_NoAnswerError, SourceError) as error:
        return _fallen_back(kept, now, str(error))
    _keep(cache, answer)
    return _told(answer, now)


def _fetch(asked: str, contact: str, kept: _Kept | None, now: datetime, timeout_s: float) -> _Kept:
    headers = {"User-Agent": f"combwright/0.1 {contact.strip()}"}
    if kept is not None and kept.last_modified:
        headers["If-Modified-Since"] = kept.last_modified
    try:
        answer = httpx.get(asked, headers=headers, timeout=timeout_s)
    except httpx.TimeoutException as error:
        raise _NoAnswerError(f"{SERVICE} did not answer within {timeout_s:g} s.") from error
    except httpx.HTTPError as error:
        raise _NoAnswerError(f"{SERVICE} cannot be reached: {error}.") from error
    expires = _expires(answer.headers.get("Expires", ""), now)
    if answer.status_code == UNCHANGED and kept is not None:
        return _Kept(asked, now, expires, kept.last_modified, kept.body)
    if answer.status_code == TOO_MANY:
        raise _NoAnswerError(f"{SERVICE} asks to be left alone for a while (429).")
    if answer.status_code not in {httpx.codes.OK, DEPRECATED}:
        raise _NoAnswerError(f"{SERVICE} answers with the error {answer.status_code}.")
    return _Kept(asked, now, expires, answer.headers.get("Last-Modified", ""), answer.text)


def _expires(said: str, now: datetime) -> datetime:
    try:
        expires = parsedate_to_datetime(said)
    except ValueError:
        return now + NEW_FOR
    return expires if expires.tzinfo else expires.replace(tzinfo=UTC)


def _told(kept: _Kept, now: datetime, note: str = "") -> Forecast:
    read = read_met_norway(kept.body, SERVICE)
    return Forecast(read, kept.fetched, now - kept.fetched, note)


def _fallen_back(kept: _Kept | None, now: datetime, why: str) -> Forecast:
    if kept is None:
        raise SourceError(f"{why} No forecast is kept for this place.", remedy=REMEDY)
    age = now - kept.fetched
    hours = age.total_seconds() / 3600
    if age > OLDEST:
        raise SourceError(f"{why} The forecast kept is {hours / 24:.0f} days old.", remedy=REMEDY)
    return _told(kept, now, f"{why} This forecast is {hours:.0f} hours old.")


def _kept(cache: Path, asked: str) -> _Kept | None:
    """Give the answer that is kept for a place, if one is and can be read."""
    try:
        kept = _Kept.from_text(cache.read_text("utf-8"))
        read_met_norway(kept.body, SERVICE)
    except (OSError, ValueError, KeyError, TypeError, SourceError):
        return None  # a damaged copy is as good as none
    return kept if kept.address == asked else None


def _keep(cache: Path, answer: _Kept) -> None:
    """Write the copy whole or not at all; without it the forecast is used all the same."""
    whole = cache.with_suffix(f"{cache.suffix}.new")
    with suppress(OSError):
        cache.parent.mkdir(parents=True, exist_ok=True)
        whole.write_text(answer.as_text(), "utf-8")
        whole.replace(cache)
