"""Takes the pictures that README shows: `python -m tests.web.pictures`, after a build.

`python -m tests.web.pictures FOLDER` takes every state at every width, by day and by night, into a
folder, to be looked at side by side.
"""

from __future__ import annotations

import io
import sys
from dataclasses import dataclass, field
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, Page, sync_playwright

from tests.cases import forms
from tests.web import browser as browsers
from tests.web.page import main_of, wait_for_python
from tests.web.server import Server

ROOT = Path(__file__).resolve().parents[2]
PICTURES = ROOT / "web" / "pictures"
FILL = """async ([main, form]) => {
    const { fillForm } = await import(main);
    fillForm(form);
    document.querySelector('#rounds input').dispatchEvent(new Event('input', { bubbles: true }));
}"""
SWEEP = "rounds.0.bore.sweeps.0"
# All invented. A bore of 5 thou at a limit of 5 can't be told from one that is a little less.
STATES: dict[str, forms.Form] = {
    "empty": {},
    "half": forms.sweep(SWEEP, "0", "-3"),
    "within": forms.sweep(SWEEP, "0", "-1", "-2", "-1") | {"rounds.0.bore.closing.0": "0"},
    "undecided": forms.sweep(SWEEP, "0", "-5", "-10", "-5") | {"rounds.0.bore.closing.0": "0"},
    "outside": forms.sweep(SWEEP, "0", "-6", "-20", "-14") | {"rounds.0.bore.closing.0": "0"},
    "wrong": forms.sweep(SWEEP, "0", "5..5", "-11", "-5.5"),
    "rounds": forms.THREE_ROUNDS,
}
WIDTHS = (320, 360, 412, 768)


@dataclass(frozen=True)
class Shot:
    """One picture: what is typed, how wide the window is, and what stands at its top."""

    name: str
    form: forms.Form
    top: str
    width: int = 360
    height: int = 740
    night: bool = False
    page: str = ""
    print: bool = False
    press: tuple[str, ...] = field(default=())


SHOTS = (
    Shot("readings", STATES["outside"], "body"),
    Shot("outside", STATES["outside"], "#answer"),
    Shot("undecided", STATES["undecided"], "#answer", width=320),
    Shot("within", STATES["within"], "#answer", night=True),
    Shot("drawing", STATES["outside"], "#drawing", width=412, night=True),
    Shot("wrong", STATES["wrong"], ".round .sweep", width=320),
    Shot("rounds", STATES["rounds"], "#answer", width=768, height=1000),
    Shot("print", STATES["rounds"], "#paper", width=794, height=1123, print=True),
    Shot("guide", forms.sweep(SWEEP, "0", "-6"), "dialog", press=(".lead",)),
    Shot("practice", {}, "#bench", page="practice.html"),
    Shot("spanish", STATES["outside"], "#answer", page="index.es.html"),
)


def open_page(browser: Browser, address: str, shot: Shot) -> Page:
    """Open a page with its form filled in, and wait until all is there."""
    page = browser.new_page(
        viewport={"width": shot.width, "height": shot.height},
        device_scale_factor=2,  # README shows them at half their size
        color_scheme="dark" if shot.night else "light",
        locale="es-ES" if ".es." in shot.page else "en-GB",
    )
    page.goto(address + shot.page)
    wait_for_python(page)
    if shot.form:
        page.evaluate(FILL, [main_of(page), shot.form])
    for selector in shot.press:
        page.locator(selector).first.click()
    page.wait_for_timeout(2000)  # what follows an answer: the link, the sheet
    return page


def take(browser: Browser, address: str, shot: Shot, folder: Path) -> None:
    """Take one picture."""
    page = open_page(browser, address, shot)
    if shot.print:
        page.emulate_media(media="print")
    page.locator(shot.top).first.evaluate(
        "e => window.scrollTo(0, e.getBoundingClientRect().top + scrollY - 12)"
    )
    with Image.open(io.BytesIO(page.screenshot())) as picture:
        # As few colours as a drawing has: a third of the bytes.
        picture.convert("P", palette=Image.Palette.ADAPTIVE, colors=64).save(
            folder / f"{shot.name}.png", optimize=True
        )
    page.close()


def every_state() -> list[Shot]:
    """Every state, at every width, by day and by night, from the top of what matters in it."""
    tops = {"empty": "body", "half": ".round .sweep", "wrong": ".round .sweep"}
    return [
        Shot(f"{name}-{width}-{light}", form, tops.get(name, "#answer"), width, 1400, night)
        for name, form in STATES.items()
        for width in WIDTHS
        for light, night in (("day", False), ("night", True))
    ]


def main() -> None:
    """Take them all."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else PICTURES
    folder.mkdir(exist_ok=True)
    with Server(ROOT / "dist") as server, sync_playwright() as playwright:
        browser = browsers.launch(playwright.chromium)
        for shot in every_state() if len(sys.argv) > 1 else SHOTS:
            take(browser, server.address, shot, folder)
        browser.close()


if __name__ == "__main__":
    main()
