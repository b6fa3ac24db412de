"""Times the built page in a real browser, beside the usual way of starting Pyodide.

Everything is served from this machine, so the figures are what the browser and Python take, and not
what a network takes. Run it with `python3 build.py bench`.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median

from playwright.sync_api import BrowserContext, BrowserType, Page, expect, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from tests.web import browser as browsers
from tests.web.page import release_of, wait_for_offline, wait_for_python
from tests.web.server import Server

STARTS = 7
ANSWERS = 200
STOCK_PAGE = """<!doctype html><html lang="en"><title>Stock</title>
<script type="module">
const worker = new Worker('stock.mjs', { type: 'module' });
worker.onmessage = () => {
    performance.mark('first-answer');
    document.documentElement.dataset.python = 'ready';
};
</script></html>"""
FIRST_ANSWER = """() => new Promise((resolve) => {
    new PerformanceObserver((list) => resolve(list.getEntries()[0].startTime))
        .observe({ type: 'mark', buffered: true });
})"""
ASK_MANY = """async ([main, count]) => {
    const { startPython } = await import(new URL('messenger.js', main).href);
    const { readForm } = await import(new URL('form.js', main).href);
    const python = startPython({});
    const times = [];
    for (let asked = 0; asked < count; asked++) {
        await python.ask({ form: readForm() });
        times.push(python.lastMs());
    }
    python.stop();
    return times;
}"""


def lay_out_stock(folder: Path) -> None:
    """Put the stock files, micropip and our wheel side by side."""
    package = build.NODE / "pyodide"
    names = (*build.PYODIDE_FILES, "python_stdlib.zip")
    for name in names:
        shutil.copy(package / name, folder)
    (wheel,) = build.WORK.glob("*.whl")
    (micropip,) = (build.VENV / "pyodide").glob("micropip-*.whl")
    for path in (wheel, micropip):
        shutil.copy(path, folder)
    # The registry's micropip has another hash than the one that Pyodide's list knows.
    lock = json.loads((package / "pyodide-lock.json").read_text("utf-8"))
    lock["packages"]["micropip"]["sha256"] = hashlib.sha256(micropip.read_bytes()).hexdigest()
    (folder / "pyodide-lock.json").write_text(json.dumps(lock), "utf-8")
    script = (Path(__file__).parent / "stock.mjs").read_text("utf-8")
    (folder / "stock.mjs").write_text(script.replace("{{wheel}}", wheel.name), "utf-8")
    (folder / "index.html").write_text(STOCK_PAGE, "utf-8")


@contextmanager
def fresh_browser(chromium: BrowserType) -> Iterator[BrowserContext]:
    """Give a browser that has never been anywhere, but keeps what it sees, as a phone's does."""
    with tempfile.TemporaryDirectory() as profile:
        context = chromium.launch_persistent_context(
            profile, executable_path=browsers.find(chromium), args=browsers.flags()
        )
        yield context
        context.close()


def start(page: Page, address: str) -> float:
    """Open the page; give the milliseconds from there to Python's first answer."""
    page.goto(address)
    wait_for_python(page)
    return float(page.evaluate(FIRST_ANSWER))


def first_visit(chromium: BrowserType, address: str) -> float:
    """Time a start where nothing is kept yet."""
    with fresh_browser(chromium) as context:
        return start(context.new_page(), address)


def revisits(chromium: BrowserType, server: Server, settle: Callable[[Page], None]) -> list[float]:
    """Time starts where the browser has the files; each page is let settle before the next."""
    with fresh_browser(chromium) as context:
        page = context.new_page()
        start(page, server.address)
        settle(page)
        times = []
        for _ in range(STARTS + 1):
            page.goto("about:blank")
            times.append(start(page, server.address))
            settle(page)
        return times[1:]  # the first one compiles what the later ones find compiled


def answer_times(chromium: BrowserType, server: Server) -> list[float]:
    """Time in Python for the example job, in a running page."""
    with fresh_browser(chromium) as context:
        page = context.new_page()
        start(page, server.address)
        page.locator("#example").click()
        expect(page.locator("#answer")).not_to_be_empty()
        release = release_of(page)
        times: list[float] = page.evaluate(
            ASK_MANY, [f"{server.address}{release}/main.js", ANSWERS]
        )
        return times


def print_sizes(name: str, folder: Path) -> None:
    """Tell what a host stores, and what it sends when it compresses."""
    files = [path.read_bytes() for path in folder.rglob("*") if path.is_file()]
    raw = sum(map(len, files)) / 1e6
    packed = sum(len(gzip.compress(data, 9, mtime=0)) for data in files) / 1e6
    print(f"{name:<44}{raw:>9.2f} MB{packed:>9.2f} MB gzip")


def print_row(name: str, ours: list[float], stock: list[float] | None = None) -> None:
    """Print the medians, and how many times faster ours is."""
    row = f"{name:<44}{median(ours):>9.1f} ms"
    if stock:
        row += f"{median(stock):>9.1f} ms{median(stock) / median(ours):>9.2f}"
    print(row, flush=True)


def main() -> None:
    """Measure and print."""
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        chromium = playwright.chromium
        lay_out_stock(Path(folder))
        with Server(build.DIST) as ours, Server(Path(folder)) as stock:
            stock.cache_control = "max-age=86400"  # the stock route's best case on a later visit
            print(f"Median of {STARTS} starts each, from this machine itself\n")
            print(f"{'From opening to the first answer':<44}{'ours':>12}{'stock':>12}{'ratio':>9}")
            firsts = [
                (first_visit(chromium, ours.address), first_visit(chromium, stock.address))
                for _ in range(STARTS)
            ]
            print_row("First visit", [a for a, _ in firsts], [b for _, b in firsts])
            stock_later = revisits(chromium, stock, lambda _: None)
            print_row("Later visit", revisits(chromium, ours, wait_for_offline), stock_later)
            ask = answer_times(chromium, ours)

            def lose_signal(page: Page) -> None:
                wait_for_offline(page)
                page.context.set_offline(True)
                ours.stop()  # the first time; then it is gone already

            print_row(
                "Later visit, no signal, server stopped", revisits(chromium, ours, lose_signal)
            )
            print_row(f"One answer of the example job, {ANSWERS} times", ask)
            print()
            print_sizes("dist/", build.DIST)
            print_sizes("Stock", Path(folder))


if __name__ == "__main__":
    main()
