"""One module a page."""

from combwright.web.pages import (
    adding_weather,
    beginning,
    bench,
    colony,
    finding,
    history,
    hive,
    hive_labels,
    importing,
    jarring,
    kit,
    mending,
    note,
    printing,
    reading,
    register,
    selling,
    settings,
    sheet,
    supply,
    written,
    yards,
)

ROUTERS = tuple(
    module.router
    for module in (
        sheet,
        beginning,
        printing,
        written,
        hive,
        note,
        colony,
        bench,
        yards,
        supply,
        register,
        history,
        hive_labels,
        importing,
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
