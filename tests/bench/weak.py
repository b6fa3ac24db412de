"""Starts and edits on a weak phone with a weak signal: ``python -m tests.bench.weak``.

All threads of the page's process are stopped for five sixths of the time (the browser's own
throttle slows the page alone, and not the worker in which Python is). The server sends 1.6 Mbit
each second in all, each answer 300 ms late, and what hosts compress compressed with gzip. The
usual way and ours are timed in turn, on first visits; beside a ratio of two medians stands where it
lies in 95 of 100 draws. It writes its table into ``web/start-up.md``.
"""

from __future__ import annotations

import gzip
import os
import signal
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from statistics import median

from playwright.sync_api import Browser, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[2] / "core"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from tests.bench.bench import (
    EDIT,
    SHOWN,
    Report,
    Start,
    lay_out_bare,
    lay_out_stock,
    percentile_95,
    start,
    times_of,
)
from tests.bench.document import write_table
from tests.cases import forms
from tests.web import browser as browsers
from tests.web.page import main_of
from tests.web.server import Server
from web.build.serve import Handler

SLOWER = 6
RUN_S = 0.005
BYTES_A_SECOND, LATE_S = 1_600_000 // 8, 0.3
PIECE = 4096
STARTS, EDITS = 7, 60
PATIENCE = 300_000  # milliseconds: the usual way takes a minute and more
COMPRESSED = (".html", ".js", ".mjs", ".json", ".css", ".wasm", ".webmanifest", ".txt", "/")
BEGIN, END = "<!-- made by python -m tests.bench.weak -->\n", "<!-- weak ends -->"


@cache
def squeezed(body: bytes) -> bytes:
    """As a host sends it."""
    return gzip.compress(body, 9, mtime=0)


class WeakServer(Server):
    """A server behind a weak signal; all answers share it."""

    def __init__(self, folder: Path) -> None:
        """Start serving."""
        self._line = threading.Lock()
        super().__init__(folder)

    def _send(self, request: Handler, path: str, body: bytes, kind: str) -> None:
        time.sleep(LATE_S)
        is_squeezed = path.endswith(COMPRESSED) and "gzip" in request.headers["Accept-Encoding"]
        sent = squeezed(body) if is_squeezed else body
        request.send_response(200)
        request.send_header("Content-Type", kind)
        request.send_header("Content-Length", str(len(sent)))
        if is_squeezed:
            request.send_header("Content-Encoding", "gzip")
        request.end_headers()
        for begin in range(0, len(sent), PIECE):
            piece = sent[begin : begin + PIECE]
            with self._line:
                time.sleep(len(piece) / BYTES_A_SECOND)
            request.wfile.write(piece)


@contextmanager
def slowed(browser: Browser) -> Iterator[None]:
    """Let the pages' processes run for a sixth of the time."""
    devtools = browser.new_browser_cdp_session()
    told = devtools.send("SystemInfo.getProcessInfo")["processInfo"]
    pages = [each["id"] for each in told if each["type"] == "renderer"]
    is_over = threading.Event()

    def beat() -> None:
        while not is_over.is_set():
            for signal_sent, pause in (
                (signal.SIGSTOP, RUN_S * (SLOWER - 1)),
                (signal.SIGCONT, RUN_S),
            ):
                for process in pages:
                    os.kill(process, signal_sent)
                time.sleep(pause)

    thread = threading.Thread(target=beat)
    thread.start()
    try:
        yield
    finally:
        is_over.set()
        thread.join()
        devtools.detach()


def first_visit(browser: Browser, address: str) -> Start:
    """Time a start where nothing is kept yet."""
    context = browser.new_context()
    context.add_init_script(SHOWN)
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    with slowed(browser):
        started = start(page, address, PATIENCE)
    context.close()
    return started


def edits(browser: Browser, address: str) -> list[list[list[float]]]:
    """Time edits, of the bore alone and with three rounds."""
    page = browser.new_page()
    page.set_default_timeout(PATIENCE)
    start(page, address)
    with slowed(browser):
        asked = [main_of(page), [forms.BORE, forms.BORE | forms.HOUSING, forms.THREE_ROUNDS], EDITS]
        times: list[list[list[float]]] = page.evaluate(EDIT, asked)
    page.close()
    return times


def main() -> None:
    """Measure, print, and write the table."""
    report = Report()
    with (
        sync_playwright() as playwright,
        tempfile.TemporaryDirectory() as stock_folder,
        tempfile.TemporaryDirectory() as bare_folder,
    ):
        lay_out_stock(Path(stock_folder))
        lay_out_bare(Path(bare_folder))
        report.tell("| | ours | stock | bare | of stock | of bare |\n|---|---|---|---|---|---|")
        chromium = browsers.launch(playwright.chromium, whole=True)
        folders = (build.DIST, Path(stock_folder), Path(bare_folder))
        servers = [WeakServer(folder) for folder in folders]
        rounds = [[first_visit(chromium, each.address) for each in servers] for _ in range(STARTS)]
        ours, stock, bare = (list(column) for column in zip(*rounds, strict=True))
        for what, name in (("Form ready", "shown"), ("First answer", "answer")):
            theirs = None if name == "shown" else times_of(stock, name)
            report.row(f"{what}, first visit", times_of(ours, name), theirs, times_of(bare, name))
        for each in servers:
            each.stop()
        with Server(build.DIST) as near:
            jobs = ("bore", "bore and two dowel holes", "three rounds")
            for name, times in zip(jobs, edits(chromium, near.address), strict=True):
                whole = [pair[1] for pair in times]
                report.row(f"One edit, {name}, median", median(whole))
                report.row(f"One edit, {name}, 95 of 100 below", percentile_95(whole))
        chromium.close()
    write_table(BEGIN, "\n".join(report.lines), END)


if __name__ == "__main__":
    main()
