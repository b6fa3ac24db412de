"""A real Chromium, the size of a phone, and a server that can be taken away."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

import build
from tests.web import browser as browsers
from tests.web import engines
from tests.web.drivers.base import Driver
from tests.web.drivers.chromium import Chromium
from tests.web.drivers.firefox import Firefox
from tests.web.drivers.webkit import webkit
from tests.web.page import Guard, new_profile
from tests.web.server import Server

# Python's WebAssembly is compiled once, and not again for speed that no test asks for.
QUICK = ["--js-flags=--liftoff-only"]
# What takes a blink takes seconds on a machine that runs several browsers at once.
expect.set_options(timeout=20_000)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """The browser, started once."""
    with sync_playwright() as playwright:
        browser = browsers.launch(playwright.chromium, QUICK)
        yield browser
        browser.close()


@pytest.fixture
def server(dist: Path) -> Iterator[Server]:
    """Serves the built folder from a sub-folder, as a host with many pages would."""
    with Server(dist, "/shop/tools/") as running:
        yield running


@pytest.fixture
def context(chromium: Browser, request: pytest.FixtureRequest) -> Iterator[BrowserContext]:
    """A new browser profile on a phone.

    Most tests type and read, and need nothing kept: without it they are done in half the time.
    """
    phone = new_profile(
        chromium,
        kept=request.node.get_closest_marker("kept") is not None,
        viewport={"width": 360, "height": 740},
        device_scale_factor=2,
        is_mobile=True,
        has_touch=True,
    )
    yield phone
    phone.close()


@pytest.fixture
def guard(context: BrowserContext, server: Server) -> Iterator[Guard]:
    """Fails the test on a console error or a foreign request that it did not announce."""
    watching = Guard(context, server.address)
    yield watching
    watching.check()


@pytest.fixture
def page(context: BrowserContext, guard: Guard) -> Page:
    """An empty, guarded page."""
    assert guard.seen == []
    return context.new_page()


@pytest.fixture(scope="session")
def next_dist(library: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A newer release, built once; not to be changed."""
    tmp_path = tmp_path_factory.mktemp("newer")
    web = shutil.copytree(build.WEB, tmp_path / "web")
    with (web / "notices.txt").open("a", encoding="utf-8") as notices:
        notices.write("A newer release.\n")
    build.assemble(library, tmp_path / "next", web)
    return tmp_path / "next"


@pytest.fixture(params=["chromium", "firefox", "webkit"])
def driver(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Driver]:
    """A browser of each engine in turn, with nothing kept from before."""
    if request.param == "chromium":
        yield Chromium(request.getfixturevalue("page"))
        return
    engine = engines.firefox() if request.param == "firefox" else engines.webkit()
    if engine.absence:
        pytest.skip(engine.absence)
    if request.param == "firefox":
        with Firefox(engine.program("firefox"), tmp_path) as firefox:
            yield firefox
    else:
        with webkit(engine) as browser:
            yield browser


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Tell at the end which engine was not run."""
    for engine in engines.others():
        if engine.absence:
            terminalreporter.write_line(f"NOT TRIED in {engine.spoken}: {engine.absence}")
