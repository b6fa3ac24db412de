"""The page without a signal: kept whole, checked, and never two releases mixed."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

import build
from tests.web.page import EMPTY_FORM, Guard, ask, release_of, wait_for_offline, wait_for_python
from tests.web.server import Server

CACHES = "() => caches.keys()"
UPDATE_AND_SEE_IT_FAIL = """async () => {
    const registration = await navigator.serviceWorker.ready;
    const refused = new Promise((resolve) => {
        registration.addEventListener('updatefound', () => {
            const { installing } = registration;
            installing.addEventListener('statechange', () => {
                if (installing.state === 'redundant') resolve();
            });
        });
    });
    await registration.update();
    await refused;
}"""


def spoil(body: bytes) -> bytes:
    """Change one byte."""
    return bytes([body[0] ^ 1]) + body[1:]


def once(alter: Callable[[bytes], bytes]) -> Callable[[bytes], bytes]:
    """Alter the first answer only."""
    left = [alter]
    return lambda body: left.pop()(body) if left else body


@pytest.fixture
def next_dist(library: Path, tmp_path: Path) -> Path:
    """A newer release."""
    web = shutil.copytree(build.WEB, tmp_path / "web")
    with (web / "notices.txt").open("a", encoding="utf-8") as notices:
        notices.write("A newer release.\n")
    build.assemble(library, tmp_path / "next", web)
    return tmp_path / "next"


def open_and_keep(page: Page, address: str) -> None:
    page.goto(address)
    wait_for_python(page)
    wait_for_offline(page)


def lose_signal(context: BrowserContext, server: Server) -> None:
    context.set_offline(True)
    server.stop()


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
    assert page.evaluate(CACHES) == []
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
    assert page.evaluate(CACHES) == []


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
    page.goto("about:blank")

    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page)
    assert release_of(page) == next(next_dist.glob("r-*")).name
    new_caches = page.evaluate(CACHES)
    assert len(new_caches) == 1
    assert new_caches != old_caches
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    assert release_of(page) != old


def test_a_newer_release_that_does_not_come_whole_leaves_the_old_one(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    open_and_keep(page, server.address)
    old = release_of(page)
    kept = page.evaluate(CACHES)
    server.folder = next_dist
    server.bodies["notices.txt"] = spoil
    page.reload()
    wait_for_offline(page)
    page.evaluate(UPDATE_AND_SEE_IT_FAIL)
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    assert release_of(page) == old
    assert kept[0] in page.evaluate(CACHES)


def half_a_job(page: Page) -> None:
    page.locator("#job-name").evaluate("field => { field.closest('details').open = true }")
    page.locator("#job-name").fill("Blue tractor")
    for i, text in enumerate(("0", "-3", "4 or 5")):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)


def see_half_a_job(page: Page) -> None:
    for i, text in enumerate(("0", "-3", "4 or 5")):
        expect(page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]')).to_have_value(text)
    expect(page.locator("#job-title")).to_have_text("Blue tractor")


def test_a_newer_release_is_taken_when_it_is_asked_for(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    """With half a job typed, of which nothing is lost; the other window is told, and goes on."""
    open_and_keep(page, server.address)
    other = context.new_page()
    open_and_keep(other, server.address)
    old = release_of(page)
    server.folder = next_dist
    page.reload()
    wait_for_offline(page, "update-waiting")
    assert release_of(page) == old
    half_a_job(page)
    page.locator("#update-take").click()
    page.wait_for_function("old => !document.querySelector(`script[src^='${old}']`)", arg=old)
    wait_for_python(page)
    wait_for_offline(page)
    see_half_a_job(page)
    assert release_of(page) == next(next_dist.glob("r-*")).name
    expect(page.locator("#update")).to_be_hidden()

    wait_for_offline(other, "update-taken")
    assert release_of(other) == old
    other.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("7")
    expect(other.locator("#waiting")).to_contain_text("Still wanted")
    other.close()

    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    see_half_a_job(page)
    assert release_of(page) != old
    assert len(page.evaluate(CACHES)) == 1


def test_a_newer_release_is_not_taken_where_typing_can_t_be_kept(
    page: Page, server: Server, next_dist: Path
) -> None:
    page.add_init_script(
        """
        const { put } = IDBObjectStore.prototype;
        IDBObjectStore.prototype.put = function (value, key) {
            if (globalThis.isFull) throw new DOMException('Full', 'QuotaExceededError');
            return put.call(this, value, key);
        };
        """
    )
    open_and_keep(page, server.address)
    old = release_of(page)
    server.folder = next_dist
    page.reload()
    wait_for_offline(page, "update-waiting")
    page.evaluate("globalThis.isFull = true")
    half_a_job(page)
    page.locator("#update-take").click()
    expect(page.locator("#offline")).to_contain_text("was not taken")
    assert release_of(page) == old
    expect(page.locator('[name="rounds.0.bore.sweeps.0.1"]')).to_have_value("-3")


def see_the_old_one_work(page: Page, context: BrowserContext, server: Server, old: str) -> None:
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    wait_for_offline(page)
    assert release_of(page) == old
    assert ask(page, EMPTY_FORM)["state"] == "waiting"


def test_a_server_that_breaks_off_in_the_middle_of_an_update_leaves_the_old_one(
    page: Page, context: BrowserContext, server: Server, next_dist: Path, guard: Guard
) -> None:
    """Half of its files have come, and then nothing more."""
    guard.allow("ERR_")
    open_and_keep(page, server.address)
    old = release_of(page)
    server.folder = next_dist
    server.held.add("notices.txt")
    page.evaluate("() => { navigator.serviceWorker.ready.then(r => r.update()) }")
    page.wait_for_function("async () => (await caches.keys()).length === 2")
    see_the_old_one_work(page, context, server, old)


@pytest.mark.parametrize("file", ["index.html", "library.zip", "main.js", "icon-192.png"])
def test_one_byte_of_any_file_changed_refuses_the_newer_release(
    page: Page, context: BrowserContext, server: Server, next_dist: Path, file: str
) -> None:
    open_and_keep(page, server.address)
    old, kept = release_of(page), page.evaluate(CACHES)
    server.folder = next_dist
    (found,) = next_dist.rglob(file)
    found.write_bytes(spoil(found.read_bytes()))
    page.evaluate(UPDATE_AND_SEE_IT_FAIL)
    assert page.evaluate(CACHES) == kept
    see_the_old_one_work(page, context, server, old)


def test_a_full_store_during_an_update_leaves_the_old_one(
    page: Page, context: BrowserContext, server: Server, next_dist: Path
) -> None:
    """The browser's own quota, set just above what is used already."""
    open_and_keep(page, server.address)
    old, kept = release_of(page), page.evaluate(CACHES)
    used = page.evaluate("async () => (await navigator.storage.estimate()).usage")
    tools = context.new_cdp_session(page)
    origin = page.evaluate("location.origin")
    quota = {"origin": origin, "quotaSize": used + 200_000}
    tools.send("Storage.overrideQuotaForOrigin", quota)
    server.folder = next_dist
    page.evaluate(UPDATE_AND_SEE_IT_FAIL)
    assert page.evaluate(CACHES) == kept
    see_the_old_one_work(page, context, server, old)


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
