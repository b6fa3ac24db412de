"""A real Chromium, the size of a phone, and a server that can be taken away."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

import build
from tests.web import browser as browsers
from tests.web import engines
from tests.web.drivers.base import Driver
from tests.web.drivers.chromium import Chromium
from tests.web.drivers.firefox import Firefox
from tests.web.drivers.webkit import webkit
from tests.web.page import Guard, new_profile, open_and_keep, wait_for_snapshot
from tests.web.server import Server

# Python's WebAssembly is compiled once, and not again for speed that no test asks for.
QUICK = ["--js-flags=--liftoff-only"]
# What takes a blink takes seconds on a machine that runs several browsers at once.
expect.set_options(timeout=20_000)


FOLDER = "/shop/tools/"
PHONE: dict[str, Any] = {
    "viewport": {"width": 360, "height": 740},
    "device_scale_factor": 2,
    "is_mobile": True,
    "has_touch": True,
}


def way_of(request: pytest.FixtureRequest) -> str:
    """How a test wants its phone: what its nearest mark says, itself before its module."""
    for mark in request.node.iter_markers():
        if mark.name in ("kept", "later", "new"):
            return str(mark.name)
    return "new"


class UsedPhone:
    """A profile in which the page and a copy of Python's memory are kept; what is typed is not."""

    def __init__(self, profile: BrowserContext, server: Server) -> None:
        """Open the page once, and wait until all is kept."""
        self.server = server
        self._profile = profile
        page = profile.new_page()
        open_and_keep(page, server.address)
        wait_for_snapshot(page)
        page.goto(f"{server.address}how.html")  # of the same origin, and keeps nothing itself
        self._aside = profile.new_cdp_session(page)
        self._origin = server.address.removesuffix(FOLDER)

    @contextmanager
    def emptied(self) -> Iterator[BrowserContext]:
        """The profile without what was typed before; a test's pages are closed after it."""
        typed = {"origin": self._origin, "storageTypes": "indexeddb,local_storage"}
        self._aside.send("Storage.clearDataForOrigin", typed)
        own, *others = self._profile.pages
        assert not others
        yield self._profile
        for page in self._profile.pages:
            if page != own:
                page.close()
        assert self._copies(), "Python's memory is kept no more: mark this test new or kept."

    def _copies(self) -> int:
        (cache,) = self._ask("requestCacheNames", securityOrigin=self._origin)["caches"]
        path = "/python/snapshot"
        found = self._ask("requestEntries", cacheId=cache["cacheId"], pathFilter=path)
        return int(found["returnCount"])

    def _ask(self, method: str, **words: str) -> Any:
        return self._aside.send(f"CacheStorage.{method}", words)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """The browser, started once."""
    with sync_playwright() as playwright:
        browser = browsers.launch(playwright.chromium, QUICK)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def used_phone(chromium: Browser, dist: Path) -> Iterator[UsedPhone]:
    """A phone on which the page was opened before, with the host that it came from."""
    with Server(dist, FOLDER) as server, new_profile(chromium, kept=True, **PHONE) as profile:
        yield UsedPhone(profile, server)


@pytest.fixture
def server(dist: Path, request: pytest.FixtureRequest) -> Iterator[Server]:
    """Serves the built folder from a sub-folder, as a host with many pages would."""
    if way_of(request) == "later":
        yield request.getfixturevalue("used_phone").server
        return
    with Server(dist, FOLDER) as running:
        yield running


@pytest.fixture
def context(chromium: Browser, request: pytest.FixtureRequest) -> Iterator[BrowserContext]:
    """A browser profile on a phone, in which nothing was typed yet.

    ``kept``: a new one, in which the page keeps itself for use without a signal. ``later``: one in
    which it has, with Python's memory: for tests that type and read. Else a new one that keeps
    nothing, for tests of the host, of the start and of what may go wrong there.
    """
    way = way_of(request)
    if way == "later":
        used = request.getfixturevalue("used_phone")
        with used.emptied() as profile:
            yield profile
        return
    with new_profile(chromium, kept=way == "kept", **PHONE) as profile:
        yield profile


@pytest.fixture
def guard(context: BrowserContext, server: Server) -> Iterator[Guard]:
    """Fails the test on a console error or a foreign request that it did not announce."""
    watching = Guard(context, server.address)
    yield watching
    watching.leave()
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
