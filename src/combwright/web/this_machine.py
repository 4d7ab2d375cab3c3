"""Whether a request comes from the machine that the page runs on."""

from ipaddress import ip_address
from typing import Final
from urllib.parse import urlsplit

from fastapi import Request

FORWARDED: Final = ("forwarded", "x-forwarded-for", "x-forwarded-host", "x-real-ip", "via")
LOCAL_NAMES: Final = {"localhost", "localhost.localdomain"}


def is_from_this_machine(request: Request) -> bool:
    """Tell whether a request comes from here: not through a proxy, and not by a foreign name."""
    if any(name in request.headers for name in FORWARDED):
        return False
    name = urlsplit(f"//{request.headers.get('host', '')}").hostname or ""
    return is_loopback(name) and (request.client is None or is_loopback(request.client.host))


def is_loopback(name: str) -> bool:
    """Tell whether a host's name or address is this machine itself."""
    if name in LOCAL_NAMES:
        return True
    try:
        return ip_address(name).is_loopback
    except ValueError:
        return False
