"""Takes the pictures that README shows: `python -m tests.web.pictures`, after a build."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.web import browser as browsers
from tests.web.page import wait_for_python
from tests.web.server import Server

ROOT = Path(__file__).resolve().parents[2]
PICTURES = ROOT / "web" / "pictures"
# Name, colour scheme, and what stands at the top of the picture.
SHOTS = (
    ("readings", "light", ".round .sweep"),
    ("answer", "light", "#answer"),
    ("drawing", "dark", "#drawing"),
)


def take(browser: Browser, address: str, name: str, scheme: str, top: str) -> None:
    """One picture of the example on a phone."""
    page = browser.new_page(
        viewport={"width": 360, "height": 740},
        color_scheme="dark" if scheme == "dark" else "light",
    )
    page.goto(address)
    wait_for_python(page)
    page.locator("#example").click()
    page.locator("#drawing svg").wait_for()
    page.locator(top).first.evaluate(
        "e => window.scrollTo(0, e.getBoundingClientRect().top + scrollY - 12)"
    )
    page.screenshot(path=PICTURES / f"{name}.png")
    page.close()


def main() -> None:
    """Take them all."""
    PICTURES.mkdir(exist_ok=True)
    with Server(ROOT / "dist") as server, sync_playwright() as playwright:
        browser = browsers.launch(playwright.chromium)
        for name, scheme, top in SHOTS:
            take(browser, server.address, name, scheme, top)
        browser.close()


if __name__ == "__main__":
    main()
