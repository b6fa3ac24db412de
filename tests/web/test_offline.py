"""The page without a signal: kept whole, checked, and told where it is not."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.web.page import (
    CACHES,
    EMPTY_FORM,
    Guard,
    ask,
    lose_signal,
    open_and_keep,
    release_of,
    wait_for_offline,
    wait_for_python,
)
from tests.web.server import Server, spoil

pytestmark = pytest.mark.kept


# Whether the page is kept here; what came whole may wait for the next try.
KEEPER = (
    """async () => (await navigator.serviceWorker.getRegistration())?.active?.state ?? 'none'"""
)


def once(alter: Callable[[bytes], bytes]) -> Callable[[bytes], bytes]:
    """Alter the first answer only."""
    left = [alter]
    return lambda body: left.pop()(body) if left else body


def test_python_answers_without_a_signal_and_without_the_server(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_and_keep(page, server.address)
    online = ask(page, EMPTY_FORM)
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    wait_for_offline(page)
    assert ask(page, EMPTY_FORM) == online
    for name in ("notices.txt", "manifest.webmanifest", "icons/icon-192.png"):
        assert page.evaluate("async name => (await fetch(name)).ok", name)


def test_a_new_tab_opens_without_a_signal(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_and_keep(page, server.address)
    lose_signal(context, server)
    page.close()
    other = context.new_page()
    other.goto(f"{server.address}?from=home#anywhere")
    wait_for_python(other)


def test_the_worker_gets_the_page_s_security_policy(page: Page, server: Server) -> None:
    open_and_keep(page, server.address)
    page.reload()
    wait_for_python(page)
    meta = page.locator("meta[http-equiv=Content-Security-Policy]").get_attribute("content")
    header = page.evaluate(
        "async path => (await fetch(path)).headers.get('Content-Security-Policy')",
        f"{release_of(page)}/worker.js",
    )
    assert meta
    assert header == meta


def test_a_file_with_one_wrong_byte_is_refused_and_the_page_still_works(
    page: Page, server: Server
) -> None:
    server.bodies["notices.txt"] = spoil
    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page, "failed")
    expect(page.locator("#offline")).to_contain_text("notices.txt")
    assert server.asked.count("/shop/tools/notices.txt") == 2
    assert page.evaluate(KEEPER) == "none"
    page.reload()
    wait_for_python(page)
    assert ask(page, EMPTY_FORM)["state"] == "waiting"


def test_a_stale_copy_on_the_way_is_fetched_again(page: Page, server: Server) -> None:
    server.bodies["notices.txt"] = once(spoil)
    open_and_keep(page, server.address)
    assert server.asked.count("/shop/tools/notices.txt") == 2


def test_a_missing_file_is_refused(page: Page, server: Server, guard: Guard) -> None:
    guard.allow("404")
    server.missing.add("icon-512.png")
    page.goto(server.address)
    wait_for_offline(page, "failed")
    expect(page.locator("#offline")).to_contain_text("icon-512.png")
    assert page.evaluate(KEEPER) == "none"


LOSE_A_FILE = """async () => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    await cache.delete(new URL('notices.txt', location).href);
    await cache.put('manifest.webmanifest', new Response('{}'));
    // The snapshot of Python's memory, which is made later, is no file of the release.
    return (await cache.keys()).filter(({ url }) => !url.endsWith('/snapshot')).length;
}"""


def test_files_that_the_browser_lost_are_fetched_again(page: Page, server: Server) -> None:
    open_and_keep(page, server.address)
    left = page.evaluate(LOSE_A_FILE)
    page.reload()
    wait_for_offline(page)
    kept = page.evaluate(
        """async () => {
            const cache = await caches.open((await caches.keys())[0]);
            const manifest = await cache.match('manifest.webmanifest');
            const files = (await cache.keys()).filter(({ url }) => !url.endsWith('/snapshot'));
            return [files.length, (await manifest.text()).length > 2];
        }"""
    )
    assert kept == [left + 1, True]


def test_lost_files_that_cannot_be_had_are_told(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_and_keep(page, server.address)
    page.evaluate(LOSE_A_FILE)
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    wait_for_offline(page, "failed")


def test_two_copies_on_one_host_leave_each_other_alone(
    context: BrowserContext, dist: Path, next_dist: Path, tmp_path: Path
) -> None:
    both = tmp_path / "both"
    shutil.copytree(dist, both)
    shutil.copytree(next_dist, both / "newer")
    with Server(both, "/shop/") as server:
        outer, inner = context.new_page(), context.new_page()
        open_and_keep(outer, server.address)
        open_and_keep(inner, f"{server.address}newer/")
        assert release_of(outer) != release_of(inner)
        assert len(outer.evaluate(CACHES)) == 2
        lose_signal(context, server)
        for tab in (outer, inner):
            release = release_of(tab)
            tab.reload()
            wait_for_python(tab)
            assert release_of(tab) == release


def test_a_plain_http_address_says_that_nothing_can_be_kept(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow("foreign request: http://shop.test:")
    page.goto(server.address.replace("127.0.0.1", "shop.test"))
    wait_for_python(page)
    wait_for_offline(page, "unsupported")
    expect(page.locator("#offline")).to_contain_text("https")
