"""How the tests speak to the page, in one place."""

from __future__ import annotations

import io
import re
import time
from collections.abc import Callable
from typing import Any
from urllib.parse import urlsplit

import zxingcpp
from PIL import Image
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Locator,
    Page,
    Request,
    WebError,
    expect,
)
from playwright.sync_api import TimeoutError as TooLateError

from tests.web.server import Server

EMPTY_FORM: dict[str, Any] = {"form": {}}  # a question that Python answers by saying what is wanted
PATIENCE = 60_000  # milliseconds; generous, for busy machines

# Starts a Python of its own beside the page's, through the page's own modules.
ASK = """async ([main, request]) => {
    const { startMessenger } = await import(main);
    const python = startMessenger({});
    try {
        return await python.ask(request);
    } finally {
        python.stop();
    }
}"""

CACHES = "() => caches.keys()"

# The size of the snapshot that is kept; 0 after a minute without one.
SNAPSHOT = """async (tries) => {
    for (let n = 0; n < (tries ?? 600); n++) {
        for (const name of await caches.keys()) {
            const cache = await caches.open(name);
            const kept = (await cache.keys()).find(({ url }) => url.endsWith('/python/snapshot'));
            if (kept) return (await (await cache.match(kept)).blob()).size;
        }
        await new Promise((next) => setTimeout(next, 100));
    }
    return 0;
}"""


# A phone on which nothing is kept for use without a signal: what most tests need.
KEEPS_NOTHING = "delete Navigator.prototype.serviceWorker"


def new_profile(chromium: Browser, *, kept: bool = False, **settings: Any) -> BrowserContext:
    """A new browser profile; ``kept``: the page keeps itself for use without a signal."""
    profile = chromium.new_context(**settings)
    profile.set_default_timeout(PATIENCE)
    if not kept:
        profile.add_init_script(KEEPS_NOTHING)
    return profile


class Guard:
    """Collects what must not happen in a page."""

    def __init__(self, context: BrowserContext, address: str) -> None:
        """Watch every page of a context that is served from this address."""
        self.seen: list[str] = []
        self.allowed: list[str] = []
        self._origin = urlsplit(address).netloc
        self._context = context
        context.on("console", self._hear)
        context.on("weberror", self._fail)
        context.on("request", self._note)

    def leave(self) -> None:
        """Watch no more."""
        self._context.remove_listener("console", self._hear)
        self._context.remove_listener("weberror", self._fail)
        self._context.remove_listener("request", self._note)

    def allow(self, pattern: str) -> None:
        """Announce an error that the test brings about."""
        self.allowed.append(pattern)

    def check(self) -> None:
        """Fail if there was anything else."""
        unexpected = [
            text for text in self.seen if not any(re.search(known, text) for known in self.allowed)
        ]
        assert unexpected == []

    def _hear(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self.seen.append(f"{message.text} {message.location['url']}")

    def _fail(self, error: WebError) -> None:
        self.seen.append(str(error.error))

    def _note(self, request: Request) -> None:
        parts = urlsplit(request.url)
        if parts.scheme not in ("data", "blob") and parts.netloc != self._origin:
            self.seen.append(f"foreign request: {request.url}")


def until(page: Page, name: str, state: str, patience: float = PATIENCE) -> None:
    """Wait until the page's root says this; seen at once, where ``expect`` looks once a second."""
    try:
        page.locator(f'html[{name}="{state}"]').wait_for(state="attached", timeout=patience)
    except TooLateError:  # tell what it says instead
        expect(page.locator("html")).to_have_attribute(name, state, timeout=1)


def wait_while(page: Page, is_so: Callable[[], bool], what: str) -> None:
    """Wait as long as something is so outside the page; fail after a minute, saying what it was."""
    end = time.monotonic() + PATIENCE / 1000
    while is_so():
        assert time.monotonic() < end, what
        page.wait_for_timeout(50)


def wait_for_python(page: Page, state: str = "ready", patience: float = PATIENCE) -> None:
    """Wait until Python in the page is in this state."""
    until(page, "data-python", state, patience)


def wait_for_offline(page: Page, state: str = "ready") -> None:
    """Wait until the page says this of its use without a signal."""
    until(page, "data-offline", state)


def release_of(page: Page) -> str:
    """Give the name of the release that the page runs."""
    source = page.locator("script[type=module]").first.get_attribute("src")
    assert source
    return source.split("/")[0]


def wait_for_snapshot(page: Page) -> int:
    """Wait until Python's memory is kept for the next start; give the size."""
    size: int = page.evaluate(SNAPSHOT)
    assert size
    return size


def make_share(page: Page) -> None:
    """Have link, code and sheet made at once, by the key that prints them.

    They come by themselves too, once the typing has stopped for a while.
    """
    page.locator("#share:not([hidden])").wait_for(state="attached", timeout=PATIENCE)
    page.evaluate("() => { globalThis.print = () => undefined }")
    page.locator("#share-print").dispatch_event("click")
    until(page, "data-share", "ready")


def open_lines(page: Page) -> None:
    """Open what stands in one line each: the job, the cautions, the set-up, the limit."""
    page.evaluate("for (const line of document.querySelectorAll('.line')) line.open = true")


def main_of(page: Page) -> str:
    """Give the address of the page's main module."""
    address: str = page.locator("script[type=module]").first.evaluate("script => script.src")
    return address


def ask(page: Page, request: dict[str, Any]) -> Any:
    """Ask Python in the page, whatever the page's form looks like."""
    return page.evaluate(ASK, [main_of(page), request])


def open_and_keep(page: Page, address: str) -> None:
    """Open the page and wait until it needs no signal any more."""
    page.goto(address)
    wait_for_python(page)
    wait_for_offline(page)


def lose_signal(context: BrowserContext, server: Server) -> None:
    """Take the network away, and the server too."""
    context.set_offline(True)
    server.stop()


def decoded(place: Locator) -> str:
    """Read the one QR code in a picture of a place, by a reader that is not ours."""
    (found,) = zxingcpp.read_barcodes(Image.open(io.BytesIO(place.screenshot())))
    assert found.format == zxingcpp.BarcodeFormat.QRCode
    return str(found.text)
