"""Chromium, by Playwright."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from tests.web.drivers.base import Driver

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page


class Chromium(Driver):
    """A page of the browser that all other tests use, too."""

    def __init__(self, page: Page) -> None:
        """Take an empty page."""
        self._page = page

    def open(self, address: str) -> None:
        """Open a page."""
        self._page.goto(address)

    def reload(self) -> None:
        """Load the page again."""
        self._page.reload()

    def run(self, expression: str) -> Any:
        """Give the value of an expression."""
        return self._page.evaluate(f"async () => ({expression})")

    def keys(self, text: str) -> None:
        """Press keys."""
        self._page.keyboard.type(text)

    def take_picture(self, path: Path) -> None:
        """Keep what the window shows."""
        self._page.screenshot(path=path)
