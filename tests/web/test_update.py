"""A newer release: taken whole or not at all, never under an open job unless it is asked for."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.web.page import (
    CACHES,
    EMPTY_FORM,
    ask,
    lose_signal,
    open_and_keep,
    release_of,
    wait_for_offline,
    wait_for_python,
    wait_while,
)
from tests.web.server import Server, spoil

if TYPE_CHECKING:
    from playwright.sync_api import Locator

pytestmark = pytest.mark.kept

HALF_A_JOB = ["0", "-5.5", "-11"]

# Fails every write to the store, as a browser does whose disk is full.
FULL_DISK = """() => {
    IDBObjectStore.prototype.put = () => {
        throw new DOMException('The disk is full', 'QuotaExceededError');
    };
}"""


def newest(dist: Path) -> str:
    return next(dist.glob("r-*")).name


def reading(page: Page, index: int) -> Locator:
    return page.locator(f'[name="rounds.0.bore.sweeps.0.{index}"]')


def type_half_a_job(page: Page) -> None:
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-name").fill("Half a job")
    for i, text in enumerate(HALF_A_JOB):
        reading(page, i).fill(text)


def half_a_job(page: Page) -> list[str]:
    expect(reading(page, 2)).not_to_have_value("")
    return [reading(page, i).input_value() for i in range(len(HALF_A_JOB))]


def let_it_come(page: Page) -> None:
    """Have the browser look for a newer release now, and see it there."""
    page.evaluate("async () => { await (await navigator.serviceWorker.ready).update() }")
    wait_for_offline(page, "update-waiting")


def wait_for_release(page: Page, release: str) -> None:
    """Wait until the page has been loaded anew, by this release."""
    script = page.locator("script[type=module]").first
    expect(script).to_have_attribute("src", re.compile(re.escape(release)))
    wait_for_python(page)


def open_when_the_old_pages_are_gone(page: Page, server: Server, release: str) -> None:
    """Open the page anew until a release runs it: a browser takes its time to end closed pages."""
    for _ in range(10):
        page.goto("about:blank")
        page.wait_for_timeout(1000)
        page.goto(server.address)
        wait_for_python(page)
        if release_of(page) == release:
            return
    assert release_of(page) == release


def works_without_a_signal(page: Page, context: BrowserContext, server: Server) -> None:
    """The page and a new tab open, calculate, and are of one release."""
    release = release_of(page)
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    other = context.new_page()
    other.goto(server.address)
    wait_for_python(other)
    assert ask(other, EMPTY_FORM)["state"] == "waiting"
    assert release_of(page) == release_of(other) == release


def test_an_old_release_goes_on_until_its_pages_are_closed(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    old_caches = page.evaluate(CACHES)
    server.folder = next_dist
    page.reload()
    wait_for_python(page)
    wait_for_offline(page, "update-waiting")
    assert release_of(page) == old
    second = context.new_page()
    second.goto(server.address)
    wait_for_python(second)
    assert release_of(second) == old
    assert ask(second, EMPTY_FORM)["state"] == "waiting"
    second.close()
    open_when_the_old_pages_are_gone(page, server, newest(next_dist))
    wait_for_offline(page)
    new_caches = page.evaluate(CACHES)
    assert len(new_caches) == 1
    assert new_caches != old_caches
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    assert release_of(page) != old


def test_a_server_that_breaks_off_in_the_middle_of_an_update_leaves_the_old_release(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old, kept = release_of(page), page.evaluate(CACHES)
    server.folder = next_dist
    server.cut.add(f"{newest(next_dist)}/python/pyodide.asm.wasm")
    type_half_a_job(page)
    before = len(server.asked)
    # Both ends are in the middle of it: half the file has come, the rest never will.
    with page.expect_event("console", lambda message: message.text == "half has come"):
        page.evaluate(
            """async () => {
                const { installing } = await (await navigator.serviceWorker.ready).update();
                console.log(installing ? 'half has come' : 'none');
            }"""
        )
    wait_while(
        page,
        lambda: not any(path.endswith("pyodide.asm.wasm") for path in server.asked[before:]),
        "The newer release's Python was never asked for.",
    )
    page.wait_for_timeout(500)
    lose_signal(context, server)
    wait_for_offline(page, "update-failed")
    expect(page.locator("#offline")).to_contain_text("this one stays")
    assert half_a_job(page) == HALF_A_JOB
    works_without_a_signal(page, context, server)
    assert release_of(page) == old
    assert kept[0] in page.evaluate(CACHES)
    assert half_a_job(page) == HALF_A_JOB


@pytest.mark.parametrize("name", ["index.html", "sw.js", "main.js", "python/library.wasm"])
def test_one_wrong_byte_in_a_newer_release_leaves_the_old_one(
    page: Page, context: BrowserContext, server: Server, next_dist: Path, name: str
) -> None:
    """Whichever file it is in. A service worker with a wrong first byte is no program at all."""
    open_and_keep(page, server.address)
    old = release_of(page)
    server.folder = next_dist
    end = name if (next_dist / name).is_file() else f"{newest(next_dist)}/{name}"
    server.bodies["/" if name == "index.html" else end] = spoil
    page.evaluate(
        "async () => { await (await navigator.serviceWorker.ready).update().catch(() => 0) }"
    )
    if name != "sw.js":
        wait_for_offline(page, "update-failed")
        expect(page.locator("#offline")).to_contain_text(f"{name} did not arrive whole")
    works_without_a_signal(page, context, server)
    assert release_of(page) == old


def test_a_store_that_is_full_during_an_update_leaves_the_old_release(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    used = page.evaluate("async () => (await navigator.storage.estimate()).usage")
    assert used > 5e6
    devtools = context.new_cdp_session(page)
    origin = page.evaluate("location.origin")
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": used + 2e6})
    server.folder = next_dist
    page.evaluate("async () => { await (await navigator.serviceWorker.ready).update() }")
    wait_for_offline(page, "update-failed")
    works_without_a_signal(page, context, server)
    assert release_of(page) == old


def test_a_newer_release_is_taken_when_asked_with_half_a_job_typed(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    server.folder = next_dist
    take = page.locator("#update-take")
    expect(take).to_be_hidden()
    let_it_come(page)
    type_half_a_job(page)
    assert release_of(page) == old
    box = take.bounding_box()
    assert box
    assert box["height"] >= 48
    take.click()
    wait_for_release(page, newest(next_dist))
    assert half_a_job(page) == HALF_A_JOB
    expect(page.locator("#job-title")).to_have_text("Half a job")
    wait_for_offline(page)
    expect(take).to_be_hidden()
    page.wait_for_function("async () => (await caches.keys()).length === 1")
    works_without_a_signal(page, context, server)
    assert half_a_job(page) == HALF_A_JOB
    assert release_of(page) != old


def test_the_last_key_before_the_button_is_kept(
    page: Page, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    server.folder = next_dist
    let_it_come(page)
    page.evaluate(
        """() => {
            const field = document.getElementsByName('rounds.0.bore.sweeps.0.2')[0];
            field.value = '-11';
            field.dispatchEvent(new Event('input', { bubbles: true }));
            document.getElementById('update-take').click();
        }"""
    )
    wait_for_release(page, newest(next_dist))
    expect(reading(page, 2)).to_have_value("-11")


def test_a_release_taken_on_one_page_is_told_on_the_other_which_works_on(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    type_half_a_job(page)
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    other = context.new_page()
    open_and_keep(other, server.address)
    assert half_a_job(other) == HALF_A_JOB
    server.folder = next_dist
    let_it_come(page)
    wait_for_offline(other, "update-waiting")
    page.locator("#update-take").click()
    wait_for_release(page, newest(next_dist))
    wait_for_offline(page)
    wait_for_offline(other, "update-taken")
    expect(other.locator("#offline")).to_contain_text("keeps the older")
    # The other has all its files still, to start Python anew, though host and signal are gone.
    lose_signal(context, server)
    assert release_of(other) == old
    assert ask(other, EMPTY_FORM)["state"] == "waiting"
    assert other.evaluate(
        "async path => (await fetch(path)).headers.get('Content-Security-Policy')",
        f"{old}/worker.js",
    )
    reading(other, 3).fill("-5.5")
    expect(other.locator("#headline")).to_contain_text("6.2 thou off")
    expect(reading(page, 3)).to_have_value("-5.5")
    other.locator("#update-take").click()
    wait_for_release(other, newest(next_dist))
    assert half_a_job(other) == HALF_A_JOB
    wait_for_offline(other)
    page.wait_for_function("async () => (await caches.keys()).length === 1")
    assert old not in page.evaluate(CACHES)[0]


def test_no_newer_release_is_taken_where_what_is_typed_is_not_kept(
    page: Page, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    server.folder = next_dist
    let_it_come(page)
    page.evaluate(FULL_DISK)
    type_half_a_job(page)
    take = page.locator("#update-take")
    take.click()
    expect(page.locator("#offline")).to_contain_text("was not taken")
    expect(page.locator("#offline")).to_contain_text("The disk is full")
    expect(take).to_be_enabled()
    assert release_of(page) == old
    assert half_a_job(page) == HALF_A_JOB
