"""How times grow with what is typed: positions, sweeps, rounds, jobs.

Answers and links are timed in this Python, the list of jobs and a save in the built page in a real
browser, each as a multiple of the smallest; between the last two sizes stands the power of the size
with which it grows. Run it with `python -m tests.bench.growth`; it writes its table into
``web/start-up.md``.
"""

from __future__ import annotations

import json
import math
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median

from playwright.sync_api import Page, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[2] / "core"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import build
from sweepsheet.form.from_job import form_of
from sweepsheet.page import handle_request
from tests.bench.document import write_table
from tests.cases.jobs import TWO_HOLES, Data, make_job, readings_of, then, with_dowels
from tests.web import browser as browsers
from tests.web.page import wait_for_python
from tests.web.server import Server

BEGIN, END = "<!-- made by python -m tests.bench.growth -->\n", "<!-- growth ends -->"
TIMES = 7
POSITIONS, SWEEPS, ROUNDS, JOBS = (3, 9, 24, 72), (1, 4, 10, 20), (1, 4, 10, 20), (2, 30, 300, 1000)

# Of the list at most 100 stand in the page.
# Jobs of four readings each, put straight into the store that the page keeps them in.
SEED = """async ([count, form]) => {
    const isOurs = ({ name }) => name.startsWith('sweepsheet http');
    const { name } = (await indexedDB.databases()).find(isOurs);
    const db = await new Promise((done) => {
        const asked = indexedDB.open(name);
        asked.onsuccess = () => done(asked.result);
    });
    const write = db.transaction(['jobs', 'fields'], 'readwrite');
    const fields = write.objectStore('fields');
    for (let n = 0; n < count; n++) {
        const id = `seed-${n}`;
        write.objectStore('jobs').put({ id });
        const own = { '.name': `job ${n}`, '.stage': 'within', '.changed': String(n) };
        for (const [key, text] of Object.entries({ ...form, ...own })) fields.put(text, [id, key]);
    }
    await new Promise((done) => { write.oncomplete = done; });
    db.close();
}"""
LIST = """async (count) => {
    const jobs = document.getElementById('jobs');
    const rows = () => document.getElementById('job-list').childElementCount;
    jobs.open = false;
    document.getElementById('job-list').replaceChildren();
    const began = performance.now();
    jobs.open = true;
    while (rows() < Math.min(count, 100)) await new Promise((next) => setTimeout(next, 1));
    return performance.now() - began;
}"""
SAVE = """async (text) => {
    const field = document.querySelector('[name="rounds.0.bore.sweeps.0.0"]');
    const kept = document.getElementById('kept');
    kept.dataset.kept = '';
    const began = performance.now();
    field.value = text;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    while (kept.dataset.kept !== 'yes') await new Promise((next) => setTimeout(next, 1));
    return performance.now() - began;
}"""


def job_of(positions: int = 4, sweeps: int = 1, rounds: int = 1) -> Data:
    """A job of such a size, its dowel holes measured; every round after the first on dowels."""
    at = tuple(360.0 * i / positions for i in range(positions))
    rows = [readings_of(3.0 + 0.01 * i, -6.0, at) for i in range(sweeps)]
    job = make_job(*rows, positions=at, housing={"dowel_holes": TWO_HOLES})
    later = [with_dowels(make_job(*rows, positions=at), (7.0, 15.0 * i)) for i in range(1, rounds)]
    return then(job, *later)


def seconds(action: Callable[[], object]) -> float:
    """The median time of an action on this processor, after one that isn't counted."""
    action()
    found = []
    for _ in range(TIMES):
        began = time.process_time()
        action()
        found.append(time.process_time() - began)
    return median(found)


def asked(question: str, value: object) -> Callable[[], object]:
    """A request to the core."""
    request = json.dumps({question: value})
    return lambda: handle_request(request)


def row(what: str, sizes: Sequence[int], times: Sequence[float]) -> str:
    """Multiples of the smallest, and the power between the last two sizes."""
    power = math.log(times[-1] / times[-2]) / math.log(sizes[-1] / sizes[-2])
    shown = ", ".join(f"{n}: {t / times[0]:.2f}" for n, t in zip(sizes, times, strict=True))
    return f"| {what} | {1000.0 * times[0]:.1f} | {shown} | {power:.2f} |"


def in_python() -> list[str]:
    """Answers, links and files, by the processor's time."""
    rows = []
    for of, sizes in (("positions", POSITIONS), ("sweeps", SWEEPS), ("rounds", ROUNDS)):
        forms = [form_of(job_of(**{of: n})) for n in sizes]
        for what, question in (("An answer", "form"), ("Link and sheet", "share")):
            rows.append(row(f"{what}, {of}", sizes, [seconds(asked(question, f)) for f in forms]))
    form = form_of(job_of())
    few = (1, 10, 100)
    times = [seconds(asked("export", {"forms": [form] * n, "pictures": []})) for n in few]
    rows.append(row("A file of jobs", few, times))
    others = [{**form, "about.housing": "cast"} for _ in range(200)]
    counts = (1, 20, 200)
    here = {**form, "about.housing": "cast"}
    asks = [asked("memory", {"here": here, "others": others[:n]}) for n in counts]
    rows.append(row("Other jobs compared", counts, [seconds(each) for each in asks]))
    return rows


def in_the_page(page: Page, address: str) -> list[str]:
    """The list of jobs and a save, by the clock."""
    lists, saves, form = [], [], form_of(job_of())
    for count in JOBS:
        page.goto(address)
        wait_for_python(page)
        page.evaluate(SEED, [count, form])
        page.reload()
        wait_for_python(page)
        # One of them is the open one.
        lists.append(median(page.evaluate(LIST, count - 1) for _ in range(TIMES)) / 1000.0)
        saves.append(median(page.evaluate(SAVE, str(n)) for n in range(TIMES)) / 1000.0)
    return [row("The list of jobs", JOBS, lists), row("A key press kept", JOBS, saves)]


def main() -> None:
    """Measure, print, and write the table."""
    rows = in_python()
    with sync_playwright() as playwright, Server(build.DIST) as server:
        browser = browsers.launch(playwright.chromium)
        rows += in_the_page(browser.new_page(), server.address)
        browser.close()
    head = "| | smallest, ms | as a multiple of it | power |\n|---|---|---|---|\n"
    table = head + "\n".join(rows)
    print(table)
    write_table(BEGIN, table, END)


if __name__ == "__main__":
    main()
