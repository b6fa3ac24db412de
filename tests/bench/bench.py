"""Times the built page in a real browser, between the usual way of starting Pyodide and the floor.

The usual way is the same core behind Pyodide's stock files, with micropip installing the wheel at
each start. The floor is a page without Python that computes the first harmonic in a few lines.
Everything is served from this machine, so the figures are what the browser and Python take, and not
what a network takes. Run it with `python3 build.py bench`; with `--quick` it takes two minutes in
place of ten: five starts each, in Chromium alone, without edits, links and memory.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import os
import platform
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles

import brotli
from playwright.sync_api import BrowserContext, BrowserType, Page, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[2] / "core"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from tests.bench.other_engines import rows
from tests.cases import forms
from tests.cases.jobs import EIGHTHS
from tests.cases.links import link_of, ordinary_job
from tests.web import browser as browsers
from tests.web import engines
from tests.web.page import main_of, wait_for_offline, wait_for_python, wait_for_snapshot
from tests.web.server import Server
from web.build.release import PYODIDE_FILES

STARTS, QUICK_STARTS = 11, 5
EDITS = 200
STOCK_PAGE = """<!doctype html><html lang="en"><title>Stock</title>
<script type="module">
const worker = new Worker('stock.mjs', { type: 'module' });
worker.onmessage = () => {
    performance.mark('first-answer');
    document.documentElement.dataset.python = 'ready';
};
</script></html>"""
# Ready for typing, or for reading: the first reading's field stands there, on our page and on the
# bare one alike, or the text of the customer's link, and a frame has been drawn with it. What is
# typed then is kept and answered, whether the page's script has run or not; tests/web/test_jobs.py
# holds that.
SHOWN = """new MutationObserver((_, watch) => {
    const wanted = '#rounds .reading input, form:not([id]) input, #job:not([hidden]) .verdict';
    if (!document.querySelector(wanted)) return;
    watch.disconnect();
    const drawn = new MessageChannel();
    drawn.port1.onmessage = () => performance.mark('shown');
    requestAnimationFrame(() => drawn.port2.postMessage(null));
}).observe(document, { attributes: true, childList: true, subtree: true });"""
MARKS = """async () => {
    const find = (name) => performance.getEntriesByName(name)[0]?.startTime;
    const wait = () => new Promise((next) => setTimeout(next, 20));
    while (find('first-answer') === undefined) await wait();
    // The bare page answers before it is painted; the stock one has nothing to be painted.
    for (let n = 0; n < 10 && find('first-contentful-paint') === undefined; n++) await wait();
    return ['first-contentful-paint', 'shown', 'form-ready', 'first-answer'].map(find);
}"""
# Before Python has come: the first paint, which shows what does not come from the link; the link's
# text drawn; and when it stood in the page.
READABLE = """async () => {
    const find = (name) => performance.getEntriesByName(name)[0]?.startTime;
    const wanted = ['first-contentful-paint', 'shown', 'readable'];
    while (!wanted.every(find)) await new Promise((next) => setTimeout(next, 5));
    return ['first-contentful-paint', 'shown', 'form-ready', 'readable'].map(find);
}"""
# What a link, the sheet on paper and a QR code cost, in the worker, from the first to the last.
SHARING = """async ([main, form, address]) => {
    const { startMessenger } = await import(main);
    const python = startMessenger({});
    await python.ask({ form });
    const times = [];
    for (let asked = 0; asked < 8; asked++) {
        const began = performance.now();
        const { fragment } = await python.askLater({ share: form });
        const shared = performance.now();
        await python.drawQr(address + fragment);
        times.push([shared - began, performance.now() - shared]);
    }
    python.stop();
    return times;
}"""
# One field changes each time, as when a person types; nothing can be remembered from before.
EDIT = """async ([main, forms, count]) => {
    const { startMessenger } = await import(main);
    const python = startMessenger({});
    await python.ask({ form: {} });
    const all = [];
    for (const form of forms) {
        const times = [];
        for (let asked = 0; asked < count; asked++) {
            const began = performance.now();
            const reading = String(-5 - (asked % 40) / 8);
            await python.ask({ form: { ...form, 'rounds.0.bore.sweeps.0.1': reading } });
            times.push([python.lastMs(), performance.now() - began]);
        }
        all.push(times);
    }
    python.stop();
    return all;
}"""


@dataclass
class Start:
    """One start of a page: milliseconds from opening; `None` where the page has no such thing."""

    paint: float | None
    shown: float | None
    script: float | None
    answer: float


def lay_out_stock(folder: Path) -> None:
    """Put the stock files, micropip and our wheel side by side."""
    package = build.NODE / "pyodide"
    names = (*PYODIDE_FILES, "python_stdlib.zip")
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


def lay_out_bare(folder: Path) -> None:
    """Put the page without Python."""
    shutil.copy(Path(__file__).parent / "bare.html", folder / "index.html")


@contextmanager
def fresh_browser(chromium: BrowserType) -> Iterator[BrowserContext]:
    """Give a browser that has never been anywhere, but keeps what it sees, as a phone's does."""
    with tempfile.TemporaryDirectory() as profile:
        context = chromium.launch_persistent_context(
            profile, executable_path=browsers.find(chromium, whole=True), args=browsers.flags()
        )
        context.add_init_script(SHOWN)
        yield context
        context.close()


def start(page: Page, address: str) -> Start:
    """Open the page and wait for its first answer."""
    page.goto(address)
    wait_for_python(page)
    return Start(*page.evaluate(MARKS))


def first_visit(chromium: BrowserType, address: str) -> Start:
    """Time a start where nothing is kept yet."""
    with fresh_browser(chromium) as context:
        return start(context.new_page(), address)


def view_visit(chromium: BrowserType, address: str) -> Start:
    """Time the customer's view of a link, where nothing is kept yet."""
    with fresh_browser(chromium) as context:
        page = context.new_page()
        page.goto(f"{address}view.html#{link_of(ordinary_job(EIGHTHS))}")
        return Start(*page.evaluate(READABLE))


def sharing(chromium: BrowserType, server: Server) -> list[list[float]]:
    """Time links and QR codes of a job with three rounds: the first, and the median of the rest."""
    with fresh_browser(chromium) as context:
        page = context.new_page()
        start(page, server.address)
        address = "https://shop.example/view.html#"
        times = page.evaluate(SHARING, [main_of(page), forms.THREE_ROUNDS, address])
        return [[first, median(rest)] for first, *rest in zip(*times, strict=True)]


@dataclass
class Visitor:
    """A browser that has been on a page before, and what lets that settle between two visits."""

    page: Page
    address: str
    settle: Callable[[Page], None]

    def visit(self) -> Start:
        """Time one start."""
        self.page.goto("about:blank")
        started = start(self.page, self.address)
        self.settle(self.page)
        return started


def keep_all(page: Page) -> None:
    """Wait until all is kept for the next start."""
    wait_for_offline(page)
    wait_for_snapshot(page)


def later_visits(
    chromium: BrowserType, ours: Server, stock: Server, bare: Server, starts: int
) -> list[list[Start]]:
    """Time later starts in turn: ours, ours without a signal, stock, bare."""
    with ExitStack() as stack, Server(ours.folder) as away:
        visitors = []
        for server in (ours, away, stock, bare):
            page = stack.enter_context(fresh_browser(chromium)).new_page()
            settle = keep_all if server in (ours, away) else lambda _: None
            visitors.append(Visitor(page, server.address, settle))
            start(page, server.address)
            settle(page)
            visitors[-1].visit()  # this one compiles what the later ones find compiled
        visitors[1].page.context.set_offline(True)
        away.stop()
        rounds = [[visitor.visit() for visitor in visitors] for _ in range(starts)]
        return [list(column) for column in zip(*rounds, strict=True)]


def edits(chromium: BrowserType, server: Server) -> list[list[list[float]]]:
    """Time edits of the bore job and of the job with three rounds: in the worker, and in all."""
    with fresh_browser(chromium) as context:
        page = context.new_page()
        start(page, server.address)
        jobs = [forms.BORE, forms.THREE_ROUNDS]
        times: list[list[list[float]]] = page.evaluate(EDIT, [main_of(page), jobs, EDITS])
        return times


def memory(chromium: BrowserType, address: str) -> float | None:
    """Megabytes of the page's own process once it has come to rest, where Linux tells them."""
    if not Path("/proc/self/smaps_rollup").exists():
        return None
    browser = browsers.launch(chromium, whole=True)
    try:
        page = browser.new_page()
        start(page, address)
        time.sleep(45)  # until what comes after the first answer is done, and its garbage collected
        told = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")
        processes = [each["id"] for each in told["processInfo"] if each["type"] == "renderer"]
        # Beside the page's process there may be a spare one, which is small.
        return max(map(proportional_size, processes))
    finally:
        browser.close()


def proportional_size(process: int) -> float:
    """Megabytes of a process, with its share of what it shares with others."""
    lines = Path(f"/proc/{process}/smaps_rollup").read_text("ascii").splitlines()
    return next(int(line.split()[1]) / 1e3 for line in lines if line.startswith("Pss:"))


def sizes(folder: Path) -> list[float]:
    """Megabytes of all files: as they are, and as a host sends them with gzip or brotli."""
    files = [path.read_bytes() for path in folder.rglob("*") if path.is_file()]
    gzipped = sum(len(gzip.compress(data, 9, mtime=0)) for data in files)
    brotlied = sum(len(brotli.compress(data)) for data in files)
    return [sum(map(len, files)) / 1e6, gzipped / 1e6, brotlied / 1e6]


def mid(starts: list[Start], name: str) -> float | None:
    """Give the median of one figure."""
    figures = [getattr(each, name) for each in starts]
    return None if None in figures else float(median(figures))


def percentile_95(times: list[float]) -> float:
    """Give what 19 of 20 keep below."""
    return quantiles(times, n=20)[-1]


def print_row(name: str, *figures: float | None, unit: str = "ms") -> None:
    """Print ours, the stock route's and the bare page's, in the form that README takes."""
    ours, stock, bare = (*figures, None, None)[:3]
    digits = 2 if unit == "MB" else 0 if (ours or 0) >= 100 else 1
    cells = [f"{x:.{digits}f}" if x is not None else "" for x in (ours, stock, bare)]
    ratios = [f"{ours / x:.2f}" if ours and x else "" for x in (stock, bare)]
    print(f"| {name}, {unit} | {' | '.join([*cells, *ratios])} |", flush=True)


def print_starts(
    chromium: BrowserType, ours: Server, stock: Server, bare: Server, starts: int
) -> None:
    """Time and print every kind of start."""
    rounds = [
        [
            *(first_visit(chromium, each.address) for each in (ours, stock, bare)),
            view_visit(chromium, ours.address),
        ]
        for _ in range(starts)
    ]
    firsts, stocks, floor, views = (list(column) for column in zip(*rounds, strict=True))
    print_row("First paint", mid(firsts, "paint"), None, mid(floor, "paint"))
    print_row("Form ready for typing", mid(firsts, "shown"), None, mid(floor, "shown"))
    print_row("The form's script at work", mid(firsts, "script"), None, mid(floor, "script"))
    answers = (mid(column, "answer") for column in (firsts, stocks, floor))
    print_row("First answer, first visit", *answers)
    print_row("Customer's link: first paint", mid(views, "paint"), None, mid(floor, "paint"))
    print_row("Customer's link: readable", mid(views, "shown"), None, mid(floor, "shown"))

    later, offline, stocks, floor = later_visits(chromium, ours, stock, bare, starts)
    for name, visits in {"later visit": later, "later visit without a signal": offline}.items():
        answers = (mid(column, "answer") for column in (visits, stocks, floor))
        print_row(f"First answer, {name}", *answers)
        shown = (mid(visits, "shown"), None, mid(floor, "shown"))
        print_row(f"Form ready, {name}", *shown)


def print_others(ours: Server, stock: Server, bare: Server) -> None:
    """Time and print the starts in the other engines; tell which are not here."""
    for engine in engines.others():
        if engine.absence:
            print(f"| NOT TRIED in {engine.spoken}: {engine.absence} | | | | | |")
            continue
        for name, figures in rows(engine, ours, stock, bare):
            print_row(f"{engine.spoken}: {name[0].lower()}{name[1:]}", *figures)


def print_rest(chromium: BrowserType, ours: Server, stock: Server, bare: Server) -> None:
    """Time and print edits, links and memory."""
    for name, times in zip(("bore", "three rounds"), edits(chromium, ours), strict=True):
        worker, whole = ([pair[i] for pair in times] for i in (0, 1))
        print_row(f"One edit, {name}: in Python, median", median(worker))
        print_row(f"One edit, {name}: in Python, 95 of 100 below", percentile_95(worker))
        print_row(f"One edit, {name}: worker up, to the answer, median", median(whole))
    for name, (first, later) in zip(
        ("Link and sheet", "QR code"), sharing(chromium, ours), strict=True
    ):
        print_row(f"{name}, three rounds: the first", first)
        print_row(f"{name}, three rounds: each later one", later)
    memories = [memory(chromium, each.address) for each in (ours, stock, bare)]
    print_row("Memory of the page at rest", *memories, unit="MB")


def main(*, quick: bool) -> None:
    """Measure and print."""
    starts = QUICK_STARTS if quick else STARTS
    with (
        sync_playwright() as playwright,
        tempfile.TemporaryDirectory() as stock_folder,
        tempfile.TemporaryDirectory() as bare_folder,
    ):
        chromium = playwright.chromium
        folders = (build.DIST, Path(stock_folder), Path(bare_folder))
        lay_out_stock(folders[1])
        lay_out_bare(folders[2])
        with Server(folders[0]) as ours, Server(folders[1]) as stock, Server(folders[2]) as bare:
            stock.cache_control = "max-age=86400"  # the stock route's best case on a later visit
            print(f"{time.strftime('%Y-%m-%d')}, {platform.machine()} with {os.cpu_count()} cores,")
            print(f"Chromium; median of {starts} starts each, from this machine itself.\n")
            print("| | ours | stock | bare | of stock | of bare |\n|---|---|---|---|---|---|")
            print_starts(chromium, ours, stock, bare, starts)
            if not quick:
                print_rest(chromium, ours, stock, bare)
            kinds = ("as it is", "gzip", "brotli")
            for kind, *columns in zip(kinds, *map(sizes, folders), strict=True):
                print_row(f"First visit, {kind}", *columns, unit="MB")
            if not quick:
                print_others(ours, stock, bare)


if __name__ == "__main__":
    main(quick="--quick" in sys.argv[1:])
