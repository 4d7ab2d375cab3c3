"""What makes the page an app on a phone: manifest, service worker, a page for no signal."""

import json

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.figures.bands import theme_css as chart_css
from combwright.figures.comb_fills import theme_css as comb_css
from combwright.terms.errors import CombwrightError
from combwright.web.desk import AtDesk
from combwright.web.showing import STATIC, edition, page, static_names

router = APIRouter(include_in_schema=False)

MANIFEST = {
    "name": "Combwright",
    "short_name": "Combwright",
    "description": "The round, at the hive and without signal.",
    "start_url": "/",
    "scope": "/",
    "display": "standalone",
    "background_color": "#ffffff",
    "theme_color": "#ffffff",
    "icons": [
        {"src": "/static/icon.svg", "sizes": "any", "type": "image/svg+xml"},
        {"src": "/static/icon-192.png", "sizes": "192x192", "type": "image/png"},
        {"src": "/static/icon-512.png", "sizes": "512x512", "type": "image/png"},
    ],
}


@router.get("/manifest.webmanifest")
def manifest() -> Response:
    """Describe the app to the phone."""
    return Response(json.dumps(MANIFEST), media_type="application/manifest+json")


@router.get("/figures.css")
def figures_css() -> Response:
    """Give the rules by which themes change the colours of drawings."""
    return Response(comb_css() + chart_css(), media_type="text/css")


@router.get("/sw.js")
def service_worker() -> Response:
    """Give the service worker, with the edition and the files that it keeps."""
    kept = [f"/static/{name}" for name in static_names()]
    kept += ["/figures.css", "/manifest.webmanifest", "/without-signal", "/waiting"]
    head = f"const EDITION = {json.dumps(edition())};\nconst FILES = {json.dumps(kept)};\n"
    return Response(head + (STATIC / "sw.js").read_text("utf-8"), media_type="text/javascript")


@router.get("/without-signal")
def without_signal(request: Request) -> Response:
    """Show what stands in for a page that the phone does not have."""
    return page(request, "without_signal.html")


@router.get("/waiting")
def waiting(request: Request) -> Response:
    """Show the notes that wait on this phone."""
    return page(request, "waiting.html")


@router.get("/health")
def health(at: AtDesk) -> Response:
    """Say whether the book can be read and written; nothing of what stands in it."""
    try:
        at.book.now()
        is_well = not at.book.trouble
    except CombwrightError:
        is_well = False
    told = {"status": "well" if is_well else "the book cannot be used"}
    return Response(json.dumps(told), 200 if is_well else 503, media_type="application/json")
