"""One module a page."""

from combwright.web.pages import bench, colony, kit, note, reading, settings, sheet, weather, yards

ROUTERS = tuple(
    module.router for module in (sheet, note, colony, bench, yards, kit, settings, weather, reading)
)
