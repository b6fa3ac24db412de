"""How long a dial is read off a photo: ``python -m tests.bench.photo``.

In the page, in Chromium, from the kept picture to the answer; then the same with all threads of the
page's process stopped for five sixths of the time. Photos of the family of drawn dials that the
reader was not tuned on; the first one is read beforehand, and does not count.
"""

from __future__ import annotations

import base64
import io
import sys
from pathlib import Path
from statistics import median
from typing import Any

from PIL import Image
from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).parents[2] / "core"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from tests.bench.bench import percentile_95
from tests.bench.weak import PATIENCE, slowed
from tests.cases.dial_pictures import SIDE, any_case
from tests.web import browser as browsers
from tests.web.page import main_of, wait_for_python
from tests.web.server import Server

PHOTOS = 41
KEPT = (1024, 768)  # pixels; as the page keeps what a phone took
LOOK = """async ([main, photos, pictures]) => {
    const [{ startMessenger }, { asAsked, greyOf }] =
        await Promise.all([import(main), import(photos)]);
    const python = startMessenger({});
    const all = [];
    for (const [jpeg, divisions] of pictures) {
        const bytes = Uint8Array.from(atob(jpeg), (character) => character.charCodeAt(0));
        const began = performance.now();
        const grey = await greyOf(bytes);
        const drawn = performance.now();
        const picture = asAsked(grey);
        const scale = { divisions, step: 1, clockwise: true };
        const { state } = await python.ask({ dial: { scale, picture } });
        all.push([performance.now() - began, drawn - began, python.lastMs(), state]);
    }
    python.stop();
    return all;
}"""


def pictures() -> list[tuple[str, int]]:
    """Photos as they are kept, in Base64, and the divisions of their dials."""
    found = []
    for seed in range(1, PHOTOS + 1):
        case = any_case("held-out", seed)
        grey = Image.frombytes("L", (SIDE, SIDE), case.photo)
        kept = io.BytesIO()
        picture = Image.new("RGB", KEPT, (90, 80, 70))
        square = grey.resize((KEPT[1], KEPT[1]), Image.Resampling.BICUBIC)
        picture.paste(square, ((KEPT[0] - KEPT[1]) // 2, 0))
        picture.save(kept, "JPEG", quality=70)
        found.append((base64.b64encode(kept.getvalue()).decode(), case.style.divisions))
    return found


def main() -> None:
    """Measure and print."""
    with sync_playwright() as playwright, Server(build.DIST) as server:
        chromium = browsers.launch(playwright.chromium, whole=True)
        page = chromium.new_page()
        page.set_default_timeout(PATIENCE)
        page.goto(server.address)
        wait_for_python(page)
        main = main_of(page)
        asked = [main, main.replace("main.js", "photos.js"), pictures()]
        plain: list[list[Any]] = page.evaluate(LOOK, asked)
        with slowed(chromium):
            slow: list[list[Any]] = page.evaluate(LOOK, asked)
        chromium.close()
    for what, times in (("as it is", plain[1:]), ("slowed six times", slow[1:])):
        whole, drawn, core = ([each[i] for each in times] for i in range(3))
        refused = sum(each[3] == "refused" for each in times)
        print(
            f"{what}: {len(times)} photos, {refused} refused; median {median(whole):.0f} ms,",
            f"95 in 100 below {percentile_95(whole):.0f}, longest {max(whole):.0f};",
            f"made grey {median(drawn):.0f}, in Python {median(core):.0f}",
        )


if __name__ == "__main__":
    main()
