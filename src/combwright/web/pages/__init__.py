"""One module a page."""

from combwright.web.pages import bench, colony, kit, note, reading, settings, sheet, yards

ROUTERS = tuple(
    module.router for module in (sheet, note, colony, bench, yards, kit, settings, reading)
)
