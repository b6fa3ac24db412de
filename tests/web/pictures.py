"""Takes the pictures that README shows: `python -m tests.web.pictures`, after a build.

`python -m tests.web.pictures FOLDER` takes every state in every look (widths, night, contrast,
large text, paper, Spanish), and lays the looks of a state side by side in one picture.
"""

from __future__ import annotations

import io
import sys
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

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
CLOSED = {"rounds.0.bore.closing.0": "0"}
# All invented. A bore of 5 thou at a limit of 5 can't be told from one that is a little less.
STATES: dict[str, forms.Form] = {
    "empty": {},
    "half": forms.sweep(SWEEP, "0", "-3"),
    "within": forms.sweep(SWEEP, "0", "-1", "-2", "-1") | CLOSED,
    "undecided": forms.sweep(SWEEP, "0", "-5", "-10", "-5") | CLOSED,
    "outside": forms.sweep(SWEEP, "0", "-6", "-20", "-14") | CLOSED,
    "wrong": forms.sweep(SWEEP, "0", "5..5", "-11", "-5.5"),
    "stop": forms.sweep(SWEEP, "0", "-6", "-20", "-14") | {"rounds.0.bore.closing.0": "5"},
    "rounds": forms.THREE_ROUNDS,
}


@dataclass(frozen=True)
class Shot:
    """One picture: what is typed, how the window is, and what stands at its top."""

    name: str
    form: forms.Form
    top: str = "body"
    width: int = 360
    height: int = 740
    night: bool = False
    page: str = ""
    print: bool = False
    large: bool = False
    media: dict[str, Any] = field(default_factory=dict)
    press: tuple[str, ...] = ()


SHOTS = (
    Shot("readings", STATES["half"]),
    Shot("outside", STATES["outside"], "#answer"),
    Shot("within", STATES["within"], "#answer", night=True),
    Shot("guide", forms.sweep(SWEEP, "0", "-6"), "dialog", press=(".lead",)),
    Shot("rounds", STATES["rounds"], "#answer", width=768, height=1000),
    Shot("print", STATES["rounds"], "#paper", width=794, height=1123, print=True),
)


def looks(name: str, form: forms.Form) -> list[Shot]:
    """A state in every look; each is as long as the page."""
    shot = Shot(name, form, height=0)
    return [
        *(replace(shot, width=width) for width in (320, 360, 390, 412, 768, 1280)),
        replace(shot, night=True),
        replace(shot, media={"contrast": "more"}),
        replace(shot, media={"forced_colors": "active"}),
        replace(shot, large=True),
        replace(shot, page="index.es.html"),
        replace(shot, page="index.es.html", width=320, night=True),
        replace(shot, width=794, print=True),
    ]


def open_page(browser: Browser, address: str, shot: Shot) -> Page:
    """Open a page with its form filled in, and wait until all is there."""
    page = browser.new_page(
        viewport={"width": shot.width, "height": shot.height or 740},
        device_scale_factor=2 if shot.height else 1,  # README shows them at half their size
        color_scheme="dark" if shot.night else "light",
        locale="es-ES" if ".es." in shot.page else "en-GB",
        **shot.media,
    )
    page.goto(address + shot.page)
    if shot.large:
        page.evaluate("document.documentElement.style.fontSize = '200%'")
    wait_for_python(page)
    if shot.form:
        page.evaluate(FILL, [main_of(page), shot.form])
    for selector in shot.press:
        page.locator(selector).first.click()
    page.wait_for_timeout(2000)  # what follows an answer: the link, the sheet
    return page


def take(browser: Browser, address: str, shot: Shot) -> Image.Image:
    """Take one picture; of the whole page where it has no height."""
    page = open_page(browser, address, shot)
    if shot.print:
        page.emulate_media(media="print")
    page.locator(shot.top).first.evaluate(
        "e => window.scrollTo(0, e.getBoundingClientRect().top + scrollY - 12)"
    )
    picture = Image.open(io.BytesIO(page.screenshot(full_page=not shot.height)))
    page.close()
    return picture


def side_by_side(pictures: list[Image.Image]) -> Image.Image:
    """The pictures in one row, each at its own size."""
    sheet = Image.new(
        "RGB", (sum(p.width + 16 for p in pictures), max(p.height for p in pictures)), "#888"
    )
    x = 0
    for picture in pictures:
        sheet.paste(picture, (x, 0))
        x += picture.width + 16
    return sheet


def main() -> None:
    """Take them all."""
    with Server(ROOT / "dist") as server, sync_playwright() as playwright:
        browser = browsers.launch(playwright.chromium)
        if len(sys.argv) > 1:
            folder = Path(sys.argv[1])
            folder.mkdir(exist_ok=True)
            for name, form in STATES.items():
                row = [take(browser, server.address, shot) for shot in looks(name, form)]
                side_by_side(row).save(folder / f"{name}.png")
        else:
            for shot in SHOTS:
                # As few colours as a drawing has: a third of the bytes.
                picture = take(browser, server.address, shot)
                picture.convert("P", palette=Image.Palette.ADAPTIVE, colors=64).save(
                    PICTURES / f"{shot.name}.png", optimize=True
                )
        browser.close()


if __name__ == "__main__":
    main()
