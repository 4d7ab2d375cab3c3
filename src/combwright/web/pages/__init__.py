"""One module a page."""

from combwright.web.pages import (
    adding_weather,
    bench,
    colony,
    finding,
    kit,
    mending,
    note,
    reading,
    register,
    settings,
    sheet,
    supply,
    yards,
)

ROUTERS = tuple(
    module.router
    for module in (
        sheet,
        note,
        colony,
        bench,
        yards,
        supply,
        register,
        mending,
        finding,
        kit,
        settings,
        adding_weather,
        reading,
    )
)
