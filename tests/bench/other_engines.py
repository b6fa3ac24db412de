"""The same starts in Firefox and WebKitGTK, where they are installed.

They tell when a page was first painted and when an answer came, but can't be made to tell when a
frame with the form was drawn. Each first visit is by a browser that has never been anywhere.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median

from tests.cases.jobs import EIGHTHS
from tests.cases.links import link_of, ordinary_job
from tests.web import engines
from tests.web.drivers.base import Driver
from tests.web.drivers.firefox import Firefox
from tests.web.drivers.webkit import webkit
from tests.web.page import SNAPSHOT
from tests.web.server import Server

STARTS = 5
# When the page was first painted, null for one that is blank as the stock route's, and when what is
# named was there: in milliseconds from opening.
AT = """(async () => {
    const find = (name) => performance.getEntriesByName(name)[0]?.startTime ?? null;
    const isBlank = document.body.innerText.trim() === '';
    const wanted = isBlank ? ['%(name)s'] : ['%(name)s', 'first-contentful-paint'];
    while (!wanted.every(find)) await new Promise((next) => setTimeout(next, 20));
    return [find('first-contentful-paint'), find('%(name)s')];
})()"""

Times = list[float | None]
Row = tuple[str, Times]


@contextmanager
def fresh(engine: engines.Engine) -> Iterator[Driver]:
    """Give a browser of this engine that has never been anywhere."""
    if engine.name == "webkit":
        with webkit(engine) as browser:
            yield browser
        return
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile,
        Firefox(engine.program("firefox"), Path(profile)) as firefox,
    ):
        yield firefox


def times(driver: Driver, name: str = "first-answer") -> Times:
    """Give when the page was first painted, and when what is named was there."""
    found: Times = driver.run(AT % {"name": name})
    return found


def first_visit(engine: engines.Engine, address: str, name: str = "first-answer") -> Times:
    """Time a start where nothing is kept."""
    with fresh(engine) as driver:
        driver.open(address)
        return times(driver, name)


def later_visits(engine: engines.Engine, server: Server, *, offline: bool) -> float:
    """Time the first answer where the page has been before; the middle one of several."""
    with fresh(engine) as driver:
        driver.open(server.address)
        driver.wait_for_python()
        if offline:
            driver.wait_for_offline()
            assert driver.run(f"({SNAPSHOT})()")
            server.stop()
        answers = []
        for _ in range(STARTS + 1):
            driver.reload()
            driver.wait_for_python()
            answers.append(times(driver)[1] or 0.0)
            if offline:
                driver.wait_for_offline()
    return float(median(answers[1:]))  # the first one compiles what the later ones find compiled


def middle(figures: tuple[float | None, ...]) -> float | None:
    """Give the median of one figure, None where a page has no such thing."""
    known = [figure for figure in figures if figure is not None]
    return float(median(known)) if len(known) == len(figures) else None


def rows(engine: engines.Engine, ours: Server, stock: Server, bare: Server) -> Iterator[Row]:
    """Time the starts of one engine: ours, the stock route's and the bare page's."""
    view = f"{ours.address}view.html#{link_of(ordinary_job(EIGHTHS))}"
    rounds = [
        [
            *(first_visit(engine, server.address) for server in (ours, stock, bare)),
            first_visit(engine, view, "readable"),
        ]
        for _ in range(STARTS)
    ]
    columns = [
        [middle(each) for each in zip(*starts, strict=True)] for starts in zip(*rounds, strict=True)
    ]
    (our_paint, our_answer), (_, stock_answer), (floor, _), (view_paint, _) = columns
    yield "First paint", [our_paint, None, floor]
    yield "Customer's link: first paint", [view_paint, None, floor]
    yield "First answer, first visit", [our_answer, stock_answer, None]
    with Server(ours.folder) as away:
        offline = later_visits(engine, away, offline=True)
    later = later_visits(engine, stock, offline=False)
    yield "First answer, later visit without a signal", [offline, later, None]
