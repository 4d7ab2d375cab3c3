"""One module a page."""

from combwright.web.pages import (
    adding_weather,
    beginning,
    bench,
    colony,
    finding,
    jarring,
    kit,
    mending,
    note,
    reading,
    register,
    selling,
    settings,
    sheet,
    supply,
    yards,
)

ROUTERS = tuple(
    module.router
    for module in (
        sheet,
        beginning,
        note,
        colony,
        bench,
        yards,
        supply,
        register,
        jarring,
        selling,
        mending,
        finding,
        kit,
        settings,
        adding_weather,
        reading,
    )
)
