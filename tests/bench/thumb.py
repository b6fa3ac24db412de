"""Compare the two places of the readings under a thumb: ``python -m tests.bench.thumb``.

The same four readings are typed into the column and into the clock face, at the size of a phone
with its number pad up. Told are the touches, the way of the thumb between them, and how many
touches would go wrong. A finger's touches scatter round what it aims at as a normal distribution,
of which 95 % lie within a circle of 9 mm (an assumption: the breadth of a fingertip); 360 CSS
pixels are taken for 65 mm.
"""

from __future__ import annotations

import math
import random
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "core")]

from playwright.sync_api import Page, sync_playwright

from tests.web import browser as browsers
from tests.web.page import new_profile, wait_for_python
from tests.web.server import Server

MM = 65.0 / 360.0
FINGER_MM, TRIES = 9.0, 400
# 95 % of a two-dimensional normal distribution lie within 2.45 standard deviations.
SCATTER_PX = FINGER_MM / 2.0 / 2.4477 / MM
WIDTH, HEIGHT, PAD = 360, 740, 290
READINGS = ("0", "-5.5", "-11", "-5")
KEY = {"column": '[name="{name}"] ~ .sign', "clock": "#hand .hand-row button:first-child"}
MIDDLE = (
    "e => { const b = e.getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; }"
)
HIT = """([selector, points]) => {
    const aim = document.querySelector(selector);
    const live = 'input, button, select, a, summary';
    return points.map(([x, y]) => {
        const live_at = document.elementFromPoint(x, y)?.closest(`${live}, label`);
        const got = live_at instanceof HTMLLabelElement ? live_at.control : live_at;
        return got === aim ? 'right' : got ? 'wrong' : 'none';
    });
}"""


def touches(layout: str, *, by_next: bool) -> list[str]:
    """What the thumb touches on the page, in order; the number pad between counts as one place."""
    aims = []
    for i, text in enumerate(READINGS):
        name = f"rounds.0.bore.sweeps.0.{i}"
        if i == 0 or not by_next:
            aims.append(f'[name="{name}"]')
        aims.append("pad")
        if text.startswith("-"):
            aims.append(KEY[layout].format(name=name))
        if by_next and i < len(READINGS) - 1:
            aims.append("#hand .hand-row button:last-child")
    return aims


def measure(page: Page, layout: str, *, by_next: bool) -> tuple[int, float, float, float]:
    """Touches on the page, millimetres of way, and percent that hit another control or none."""
    scatter = random.Random(9)
    page.evaluate("layout => { document.documentElement.dataset.layout = layout; }", layout)
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').tap()
    at, way, counts = (WIDTH / 2, HEIGHT - PAD / 2), 0.0, {"right": 0, "wrong": 0, "none": 0}
    aims = touches(layout, by_next=by_next)
    for aim in aims:
        place = (WIDTH / 2, HEIGHT - PAD / 2)
        if aim != "pad":
            page.locator(aim).scroll_into_view_if_needed()
            x, y = page.locator(aim).evaluate(MIDDLE)
            place = (x, y)
            points = [
                [scatter.gauss(x, SCATTER_PX), scatter.gauss(y, SCATTER_PX)] for _ in range(TRIES)
            ]
            for got in page.evaluate(HIT, [aim, points]):
                counts[got] += 1
        way += math.dist(at, place)
        at = place
    all_of_them = sum(counts.values())
    share = (100.0 * counts[kind] / all_of_them for kind in ("wrong", "none"))
    wrong, none = share
    return len([aim for aim in aims if aim != "pad"]), way * MM, wrong, none


def main() -> None:
    """Print a row for each place of the readings and each way of going on."""
    print("| readings | on to the next by | touches | way, mm | another key, % | none, % |")
    print("|---|---|--:|--:|--:|--:|")
    with sync_playwright() as playwright, Server(ROOT / "dist") as server:
        browser = browsers.launch(playwright.chromium)
        size = {"width": WIDTH, "height": HEIGHT - PAD}
        for layout in ("column", "clock"):
            for by_next in (False, True):
                phone = new_profile(browser, viewport=size, is_mobile=True, has_touch=True)
                page = phone.new_page()
                page.goto(server.address)
                wait_for_python(page)
                count, way, wrong, none = measure(page, layout, by_next=by_next)
                how = "its key" if by_next else "the field"
                print(f"| {layout} | {how} | {count} | {way:.0f} | {wrong:.1f} | {none:.1f} |")
                phone.close()
        browser.close()


if __name__ == "__main__":
    main()
