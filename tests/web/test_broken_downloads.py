"""A download that breaks off goes on where it stopped: for the page, and for what is kept of it."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.web.page import (
    EMPTY_FORM,
    Guard,
    ask,
    lose_signal,
    wait_for_offline,
    wait_for_python,
)
from tests.web.server import Server

CODE, LIBRARY = "python/pyodide.asm.wasm", "python/library.wasm"
BROKEN = "CONTENT_LENGTH_MISMATCH|INCOMPLETE_CHUNKED|ERR_|Failed to load resource"


def size_of(server: Server, name: str) -> int:
    (path,) = (p for p in Path(server.folder).glob("r-*/python/*") if str(p).endswith(name))
    return path.stat().st_size


def reading(page: Page, index: int) -> Locator:
    """The field of one reading of the first sweep."""
    return page.locator(f'[name="rounds.0.bore.sweeps.0.{index}"]')


def parts_of(server: Server, name: str) -> list[str]:
    """The parts of a file that were asked for."""
    return [part for path, part in server.parts if path.endswith(name)]


@pytest.mark.parametrize("name", [CODE, LIBRARY])
@pytest.mark.parametrize("at", ["first byte", "middle", "last byte", "end not told"])
def test_the_page_goes_on_where_the_download_broke_off(
    page: Page, server: Server, guard: Guard, name: str, at: str
) -> None:
    guard.allow(BROKEN)
    size = size_of(server, name)
    sent = {"first byte": 1, "middle": size // 2, "last byte": size - 1, "end not told": size}[at]
    server.breaks[name] = [sent]
    page.goto(server.address)
    wait_for_python(page)
    assert ask(page, EMPTY_FORM)["state"] == "waiting"
    asked = [f"bytes={sent}-"]
    assert parts_of(server, name) == asked if sent < size else parts_of(server, name) in ([], asked)


def test_a_host_that_knows_no_parts_sends_all_again(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow(BROKEN)
    server.ranges = False
    server.breaks[LIBRARY] = [size_of(server, LIBRARY) // 3]
    page.goto(server.address)
    wait_for_python(page)
    assert parts_of(server, LIBRARY)
    assert ask(page, EMPTY_FORM)["state"] == "waiting"


def test_without_a_signal_it_waits_says_so_and_loses_no_key(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow(BROKEN)
    server.breaks[CODE] = [size_of(server, CODE) // 2, 0, 0]
    page.goto(server.address)
    status = page.locator("#status")
    expect(status).to_contain_text("The download broke off.")
    reading(page, 0).fill("0")
    reading(page, 1).fill("-5")
    wait_for_python(page)
    expect(status).to_have_text("Ready.")
    assert len(parts_of(server, CODE)) == 3
    expect(reading(page, 1)).to_have_value("-5")
    for i, text in ((2, "-10"), (3, "-5")):
        reading(page, i).fill(text)
    expect(page.locator("#headline")).to_contain_text("thou off, toward 6 o'clock")


@pytest.mark.kept
def test_what_is_kept_for_later_goes_on_as_well(
    page: Page, context: BrowserContext, server: Server, guard: Guard
) -> None:
    guard.allow(BROKEN)
    page.goto(server.address)
    size = size_of(server, "python/qr.zip")
    server.breaks["python/qr.zip"] = [size // 2]
    wait_for_offline(page)
    assert parts_of(server, "python/qr.zip")
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    assert ask(page, EMPTY_FORM)["state"] == "waiting"


@pytest.mark.kept
def test_what_has_come_whole_is_not_fetched_again(page: Page, server: Server, guard: Guard) -> None:
    guard.allow("404")
    server.missing.add("icon-512.png")
    page.goto(server.address)
    wait_for_offline(page, "failed")
    server.missing.clear()
    server.cache_control = "no-store"
    before = len(server.asked)
    page.evaluate("async () => void (await navigator.serviceWorker.register('sw.js'))")
    page.wait_for_function("async () => (await navigator.serviceWorker.ready).active !== null")
    assert server.asked[before:].count("/shop/tools/icons/icon-512.png") == 1
    assert not [path for path in server.asked[before:] if path.endswith((".wasm", ".zip"))]


@pytest.mark.kept
def test_a_part_of_another_file_is_refused(page: Page, server: Server, guard: Guard) -> None:
    """The sum tells; nothing that is not of the release is kept."""
    guard.allow(BROKEN)
    page.goto(server.address)
    name = "python/qr.zip"
    size = size_of(server, name)
    server.breaks[name] = [size // 2, size, size // 2, size]
    original = (next(Path(server.folder).glob("r-*")) / name).read_bytes()
    half = size // 2
    server.bodies[name] = lambda body: body[:half] + bytes(len(original) - half)
    wait_for_offline(page, "failed")
    expect(page.locator("#offline")).to_contain_text("qr.zip did not arrive whole")
