"""The page: parse, call a service, show."""

import gc
from asyncio import create_task, sleep
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from typing import Final

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import ClientDisconnect
from starlette.staticfiles import StaticFiles

from combwright import __version__
from combwright.terms.errors import CombwrightError
from combwright.web import api, example, files, installing, login
from combwright.web import measures as measuring
from combwright.web.desk import Desk
from combwright.web.login import Door
from combwright.web.measures import Measures
from combwright.web.pages import ROUTERS
from combwright.web.refusing import gone, show_error, show_missing, show_unreadable
from combwright.web.request_log import RequestLog
from combwright.web.safe_headers import SafeHeaders
from combwright.web.same_origin import SameOriginOnly
from combwright.web.showing import STATIC, compile_templates
from combwright.web.size_limit import SizeLimit
from combwright.web.wait import NothingToPlan, StillWorking, show_nothing, show_wait

EVERY: Final = (
    *ROUTERS,
    api.router,
    files.router,
    installing.router,
    login.router,
    example.router,
    measuring.router,
)


def build(desk: Desk, measures: Measures | None = None) -> FastAPI:
    """Make the app on a desk."""

    @asynccontextmanager
    async def living(app: FastAPI) -> AsyncIterator[None]:
        await run_in_threadpool(make_ready, desk)
        nights = create_task(each_night(app))
        yield
        nights.cancel()
        app.state.desk.close_all()

    app = FastAPI(
        title="Combwright",
        version=__version__,
        summary="The book and the rounds planned from it.",
        docs_url=None,
        redoc_url=None,
        lifespan=living,
        middleware=[
            Middleware(RequestLog, measures=measures),
            Middleware(SafeHeaders),
            Middleware(SameOriginOnly),
            Middleware(SizeLimit),
            Middleware(Door),
            Middleware(GZipMiddleware, minimum_size=2000, compresslevel=5),
        ],
        exception_handlers={
            CombwrightError: show_error,
            StillWorking: show_wait,
            NothingToPlan: show_nothing,
            ClientDisconnect: gone,
            RequestValidationError: show_unreadable,
            HTTPException: show_missing,
        },
    )
    app.state.desk = desk
    app.state.measures = measures
    for router in EVERY:
        app.include_router(router)
    app.mount("/static", StaticFiles(directory=STATIC))
    return app


def make_ready(desk: Desk) -> None:
    """Do before the first request what ten at one moment would else all wait for."""
    compile_templates()
    with suppress(CombwrightError):  # a book that fails is told of on its pages
        _ = desk.book.now().standings
    gc.collect()
    # what stays for good is not looked through again: with 300 colonies 0.2 s each time
    gc.freeze()


async def each_night(app: FastAPI) -> None:
    """Have the keeper's own book looked after while nobody notes anything."""
    while True:
        at: Desk = app.state.desk
        nightly = (at.own or at).nightly
        await sleep(nightly.seconds_left)
        await run_in_threadpool(nightly.work)
