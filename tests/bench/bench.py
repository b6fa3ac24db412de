"""Times the built page in a real browser, between the usual way of starting Pyodide and the floor.

The usual way is the same core behind Pyodide's stock files, with micropip installing the wheel at
each start. The floor is a page without Python that computes the first harmonic in a few lines.
Everything is served from this machine, so the figures are what the browser and Python take, and not
what a network takes. Run it with `python3 build.py bench`; with `--quick` it takes two minutes in
place of ten: five starts each, in Chromium alone, without edits, links and memory. The whole of it
writes its table into ``web/start-up.md``. Beside a ratio of two medians stands where it lies in 95
of 100 draws of as many starts from those that were timed (bootstrap).
"""

from __future__ import annotations

import gzip
import hashlib
import json
import os
import platform
import random
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median, quantiles

import brotli
from playwright.sync_api import BrowserContext, BrowserType, Page, sync_playwright
from selenium.common.exceptions import WebDriverException

sys.path.insert(0, str(Path(__file__).parents[2] / "core"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from tests.bench.document import write_table
from tests.bench.other_engines import rows
from tests.cases import forms
from tests.cases.jobs import EIGHTHS
from tests.cases.links import link_of, ordinary_job
from tests.web import browser as browsers
from tests.web import engines
from tests.web.page import PATIENCE, main_of, wait_for_offline, wait_for_python, wait_for_snapshot
from tests.web.server import Server
from web.build.release import PYODIDE_FILES

STARTS, QUICK_STARTS = 11, 5
DRAWS = 2000
BEGIN, END = "<!-- made by python3 build.py bench -->\n", "<!-- end -->"
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
    const wanted = ['first-contentful-paint', 'shown', 'form-ready', 'first-answer', 'last-answer'];
    return wanted.map(find);
}"""
# Types a job, and waits until its answer is kept for the next time.
TYPE_JOB = """async ([main, form]) => {
    const { fillForm } = await import(main);
    fillForm(form);
    document.getElementById('form').dispatchEvent(new Event('input', { bubbles: true }));
    const root = document.documentElement;
    while (root.dataset.answer !== 'answer') await new Promise((next) => setTimeout(next, 20));
    await new Promise((next) => setTimeout(next, 2500));
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
    last: float | None = None


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


def start(page: Page, address: str, patience: float = PATIENCE) -> Start:
    """Open the page and wait for its first answer, so many milliseconds at most."""
    page.goto(address)
    wait_for_python(page, patience=patience)
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
    """Time later starts in turn: ours, ours without a signal, stock, bare, ours with a job."""
    with ExitStack() as stack, Server(ours.folder) as away:
        visitors = []
        for server in (ours, away, stock, bare, ours):
            page = stack.enter_context(fresh_browser(chromium)).new_page()
            settle = keep_all if server in (ours, away) else lambda _: None
            visitors.append(Visitor(page, server.address, settle))
            start(page, server.address)
            settle(page)
            visitors[-1].visit()  # this one compiles what the later ones find compiled
        visitors[1].page.context.set_offline(True)
        visitors[4].page.evaluate(TYPE_JOB, [main_of(visitors[4].page), forms.BORE])
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


def memory(chromium: BrowserType, address: str) -> tuple[float | None, float | None]:
    """Megabytes of the page's own process on a first visit, where Linux tells them.

    Once it has come to rest, and the most of it on the way there, looked at ten times a second.
    """
    if not Path("/proc/self/smaps_rollup").exists():
        return None, None
    browser = browsers.launch(chromium, whole=True)
    try:
        page = browser.new_page()
        session = browser.new_browser_cdp_session()

        def largest() -> float:
            told = session.send("SystemInfo.getProcessInfo")["processInfo"]
            # Beside the page's process there may be a spare one, which is small.
            return max(proportional_size(each["id"]) for each in told if each["type"] == "renderer")

        page.goto(address, wait_until="commit")
        most, until = 0.0, time.monotonic() + 45
        # Until what comes after the first answer is done, and its garbage collected.
        while time.monotonic() < until:
            page.wait_for_timeout(100)
            most = max(most, largest())
        return largest(), most
    finally:
        browser.close()


def proportional_size(process: int) -> float:
    """Megabytes of a process, with its share of what is shared; none of one that ended."""
    if not Path(f"/proc/{process}").exists():
        return 0.0
    lines = Path(f"/proc/{process}/smaps_rollup").read_text("ascii").splitlines()
    return next(int(line.split()[1]) / 1e3 for line in lines if line.startswith("Pss:"))


def sizes(folder: Path) -> list[float]:
    """Megabytes of all files: as they are, and as a host sends them with gzip or brotli."""
    files = [path.read_bytes() for path in folder.rglob("*") if path.is_file()]
    gzipped = sum(len(gzip.compress(data, 9, mtime=0)) for data in files)
    brotlied = sum(len(brotli.compress(data)) for data in files)
    return [sum(map(len, files)) / 1e6, gzipped / 1e6, brotlied / 1e6]


def times_of(starts: list[Start], name: str) -> list[float] | None:
    """Give one figure of each start."""
    figures = [getattr(each, name) for each in starts]
    return None if None in figures else [float(figure) for figure in figures]


def percentile_95(times: list[float]) -> float:
    """Give what 19 of 20 keep below."""
    return quantiles(times, n=20)[-1]


def spread(name: str, starts: list[Start]) -> str:
    """Tell between what the middle half of a page's own starts lay."""
    told = []
    for what, figure in {"first paint": "paint", "form": "shown", "answer": "answer"}.items():
        low, _, high = quantiles(times_of(starts, figure) or [], n=4)
        told.append(f"{what} {low:.0f} to {high:.0f}")
    return f"{name}, the middle half of its starts, ms: {', '.join(told)}."


Figure = float | list[float] | None


def middle(figure: Figure) -> float | None:
    """Give the median of several starts; one figure is its own."""
    return median(figure) if isinstance(figure, list) else figure


def ratio(ours: Figure, other: Figure) -> str:
    """Give the ratio of two medians; of several starts with the interval of 95 in 100 draws."""
    above, below = middle(ours), middle(other)
    if not above or not below:
        return ""
    if not isinstance(ours, list) or not isinstance(other, list):
        return f"{above / below:.2f}"
    rng = random.Random(len(ours))
    drawn = sorted(
        median(rng.choices(ours, k=len(ours))) / median(rng.choices(other, k=len(other)))
        for _ in range(DRAWS)
    )
    low, high = drawn[round(0.025 * DRAWS)], drawn[round(0.975 * DRAWS) - 1]
    return f"{above / below:.2f} ({low:.2f} to {high:.2f})"


@dataclass
class Report:
    """The table, printed as it grows, and kept for the document."""

    lines: list[str] = field(default_factory=list)

    def tell(self, line: str) -> None:
        """Add a line."""
        self.lines.append(line)
        print(line, flush=True)

    def row(self, name: str, *figures: Figure, unit: str = "ms") -> None:
        """Add ours, the stock route's and the bare page's."""
        ours, stock, bare = (*figures, None, None)[:3]
        medians = [middle(figure) for figure in (ours, stock, bare)]
        digits = 2 if unit == "MB" else 0 if (medians[0] or 0) >= 100 else 1
        cells = [f"{x:.{digits}f}" if x is not None else "" for x in medians]
        ratios = [ratio(ours, other) for other in (stock, bare)]
        self.tell(f"| {name}, {unit} | {' | '.join([*cells, *ratios])} |")

    def write(self) -> None:
        """Put it into the document in place of the last one."""
        write_table(BEGIN, "\n".join(self.lines), END)


def print_starts(
    report: Report, chromium: BrowserType, servers: tuple[Server, Server, Server], starts: int
) -> list[str]:
    """Time and print every kind of start; give what is to be said of the bare page's own spread."""
    ours, stock, bare = servers
    rounds = [
        [
            *(first_visit(chromium, each.address) for each in servers),
            view_visit(chromium, ours.address),
        ]
        for _ in range(starts)
    ]
    firsts, stocks, floor, views = (list(column) for column in zip(*rounds, strict=True))
    of = times_of
    report.row("First paint", of(firsts, "paint"), None, of(floor, "paint"))
    report.row("Form ready for typing", of(firsts, "shown"), None, of(floor, "shown"))
    report.row("The form's script at work", of(firsts, "script"), None, of(floor, "script"))
    answers = (of(column, "answer") for column in (firsts, stocks, floor))
    report.row("First answer, first visit", *answers)
    report.row("Customer's link: first paint", of(views, "paint"), None, of(floor, "paint"))
    report.row("Customer's link: readable", of(views, "shown"), None, of(floor, "shown"))

    later, offline, stocks, bares, known = later_visits(chromium, ours, stock, bare, starts)
    for name, visits in {"later visit": later, "later visit without a signal": offline}.items():
        report.row(
            f"First answer, {name}", *(of(each, "answer") for each in (visits, stocks, bares))
        )
        shown = (of(visits, "shown"), None, of(bares, "shown"))
        report.row(f"Form ready, {name}", *shown)
    # The bare page is given the time of its form and that of its answer.
    both = [each.answer + (each.shown or 0.0) for each in bares]
    report.row("Last answer of a job shown again, later visit", of(known, "last"), None, both)
    return [
        spread("The bare page, first visits", floor),
        spread("The bare page, later visits", bares),
    ]


def print_others(report: Report, ours: Server, stock: Server, bare: Server) -> None:
    """Time and print the starts in the other engines; tell which are not here."""
    for engine in engines.others():
        if engine.absence:
            report.tell(f"| NOT TRIED in {engine.spoken}: {engine.absence} | | | | | |")
            continue
        try:
            for name, figures in rows(engine, ours, stock, bare):
                report.row(f"{engine.spoken}: {name[0].lower()}{name[1:]}", *figures)
        except (AssertionError, WebDriverException) as error:
            # What was measured before is not lost for it.
            why = str(error).splitlines()[0]
            report.tell(f"| NOT MEASURED in {engine.spoken}: {why} | | | | | |")


def print_rest(
    report: Report, chromium: BrowserType, ours: Server, stock: Server, bare: Server
) -> None:
    """Time and print edits, links and memory."""
    for name, times in zip(("bore", "three rounds"), edits(chromium, ours), strict=True):
        worker, whole = ([pair[i] for pair in times] for i in (0, 1))
        report.row(f"One edit, {name}: in Python, median", median(worker))
        report.row(f"One edit, {name}: in Python, 95 of 100 below", percentile_95(worker))
        report.row(f"One edit, {name}: worker up, to the answer, median", median(whole))
    for name, (first, later) in zip(
        ("Link and sheet", "QR code"), sharing(chromium, ours), strict=True
    ):
        report.row(f"{name}, three rounds: the first", first)
        report.row(f"{name}, three rounds: each later one", later)
    memories = [memory(chromium, each.address) for each in (ours, stock, bare)]
    for name, *columns in zip(("at rest", "at its most, first visit"), *memories, strict=True):
        report.row(f"Memory of the page {name}", *columns, unit="MB")


def main(*, quick: bool) -> None:
    """Measure and print; the whole of it goes into the document, too."""
    starts, report = QUICK_STARTS if quick else STARTS, Report()
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
            where = f"{platform.machine()} with {os.cpu_count()} cores"
            report.tell(
                f"{time.strftime('%Y-%m-%d')}, {where}, Chromium; median of {starts} starts"
            )
            report.tell("each, from this machine itself.\n")
            report.tell("| | ours | stock | bare | of stock | of bare |\n|---|---|---|---|---|---|")
            told = print_starts(report, chromium, (ours, stock, bare), starts)
            if not quick:
                print_rest(report, chromium, ours, stock, bare)
            kinds = ("as it is", "gzip", "brotli")
            for kind, *columns in zip(kinds, *map(sizes, folders[:2]), strict=True):
                report.row(f"First visit, {kind}", *columns, unit="MB")
            if not quick:
                print_others(report, ours, stock, bare)
            for line in ("", *told):
                report.tell(line)
    if not quick:
        report.write()


if __name__ == "__main__":
    main(quick="--quick" in sys.argv[1:])
