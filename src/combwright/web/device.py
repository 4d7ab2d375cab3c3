"""What a browser says it is, in words by which its owner knows it again."""

from typing import Final

# in this order: later ones also call themselves by the names of others
BROWSERS: Final = {"Firefox": "Firefox", "Edg": "Edge", "Chrome": "Chrome", "Safari": "Safari"}
SYSTEMS: Final = {
    "Android": "Android",
    "iPhone": "iPhone",
    "iPad": "iPad",
    "Windows": "Windows",
    "Mac OS": "Mac",
    "Linux": "Linux",
}


def device_of(agent: str) -> str:
    """Name a device by its browser and system; nothing else of what it says is kept.

    Examples
    --------
    >>> device_of("Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0")
    'Firefox on Android'
    >>> device_of("curl/8.9")
    'a program'

    """
    browser = next((words for sign, words in BROWSERS.items() if sign in agent), "a program")
    system = next((words for sign, words in SYSTEMS.items() if sign in agent), "")
    return f"{browser} on {system}" if system else browser
