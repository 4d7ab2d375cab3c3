"""Measures of the page in the open text format (OpenMetrics), when asked for, of nobody's data.

Of an address only its pattern is told, and of the book only its size and whether it is well.
Without a key they are given to this machine alone.
"""

from hmac import compare_digest
from typing import Final

from fastapi import APIRouter, Request
from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram
from prometheus_client.exposition import choose_encoder
from starlette.responses import Response

from combwright.terms.errors import NotFoundError
from combwright.web.desk import AtDesk
from combwright.web.this_machine import is_from_this_machine

METHODS: Final = {"GET", "HEAD", "POST"}  # any word may be sent as a method
BOUNDS_S: Final = (0.025, 0.05, 0.1, 0.15, 0.25, 0.5, 1, 2.5, 10)
router = APIRouter(include_in_schema=False)


class Measures:
    """What is counted while the page runs."""

    def __init__(self, key: str = "") -> None:
        self._key = key
        self.kept = CollectorRegistry()
        labels = ("method", "route")
        self._answers = Counter(
            "combwright_answers", "Requests answered.", (*labels, "status"), registry=self.kept
        )
        self._took = Histogram(
            "combwright_answer_seconds",
            "Time to an answer.",
            labels,
            buckets=BOUNDS_S,
            registry=self.kept,
        )
        self.entries = Gauge("combwright_entries", "Entries in the book.", registry=self.kept)
        self.well = Gauge("combwright_book_well", "1 if it is whole.", registry=self.kept)
        self.rounds = Gauge("combwright_rounds", "Rounds at hand or in work.", registry=self.kept)

    def answered(self, method: str, route: str, status: int, seconds: float) -> None:
        """Count a request that was answered."""
        plain = method if method in METHODS else "other"
        self._answers.labels(plain, route, str(status)).inc()
        self._took.labels(plain, route).observe(seconds)

    def are_for(self, request: Request) -> bool:
        """Tell whether who asks may have them."""
        if not self._key:
            return is_from_this_machine(request)
        told = request.headers.get("authorization", "")
        return compare_digest(told.encode(), f"Bearer {self._key}".encode())


@router.get("/measures")
def tell(at: AtDesk, request: Request) -> Response:
    """Give the measures to who may have them; to others there are none."""
    measures: Measures | None = request.app.state.measures
    if measures is None or not measures.are_for(request):
        raise NotFoundError("There is no such page.", remedy="Go back to the round.")
    measures.entries.set(at.book.now().last)
    measures.well.set(not at.book.trouble)
    measures.rounds.set(len(at.rounds))
    encode, media = choose_encoder(request.headers.get("accept", ""))
    return Response(encode(measures.kept), headers={"Content-Type": media})
