"""The last answer is there with the form, before Python is, and is never taken for another's."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.web.page import until, wait_for_python

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page

    from tests.web.page import Guard
    from tests.web.server import Server

SWEEP = ("0", "-6", "-20", "-14")
# What is kept of the answer of the one job there is; null where there is nothing.
KEPT = """async (change) => {
    const all = await indexedDB.databases();
    const opened = indexedDB.open(all.find(({ name }) => name.includes('answers')).name);
    const db = await new Promise((done) => { opened.onsuccess = () => done(opened.result); });
    const answers = db.transaction('answers', 'readwrite').objectStore('answers');
    const result = (asked) => new Promise((done) => (asked.onsuccess = () => done(asked.result)));
    const [job] = await result(answers.getAllKeys());
    const kept = job ? await result(answers.get(job)) : null;
    if (change) {
        kept.answer.sheet.headline = change;
        await result(answers.put(kept, job));
    }
    db.close();
    return kept?.answer.sheet.headline ?? null;
}"""


def reading(n: int) -> str:
    return f'[name="rounds.0.bore.sweeps.0.{n}"]'


def wait_for_kept(page: Page, headline: str | None) -> None:
    for _ in range(100):
        if page.evaluate(KEPT) == headline:
            return
        page.wait_for_timeout(100)
    assert page.evaluate(KEPT) == headline


def answered(page: Page, server: Server) -> str:
    """Type a sweep, and wait until its answer is kept; the answer's headline."""
    page.goto(server.address)
    wait_for_python(page)
    for n, text in enumerate(SWEEP):
        page.fill(reading(n), text)
    expect(page.locator("#headline")).to_contain_text("5:20")
    headline = page.locator("#headline").inner_text()
    wait_for_kept(page, headline)
    return headline


def come_back(page: Page, server: Server, where: str = "") -> None:
    """Open the page again, and hold Python back."""
    server.held.add("pyodide.asm.wasm")
    page.goto("about:blank")
    page.goto(server.address + where)
    expect(page.locator(reading(3))).to_have_value(SWEEP[3])


def is_marked(page: Page) -> None:
    expect(page.locator("#known")).to_have_text("From last time. Being checked.")


def is_not_there(page: Page) -> None:
    until(page, "data-python", "starting")
    expect(page.locator("#shown")).to_be_hidden()
    expect(page.locator("#known")).to_be_hidden()
    expect(page.locator("#strip-verdict")).to_be_empty()


def test_the_last_answer_is_shown_until_python_says_the_same(page: Page, server: Server) -> None:
    headline = answered(page, server)
    come_back(page, server)
    expect(page.locator("#headline")).to_have_text(headline)
    expect(page.locator("#drawing svg")).to_be_visible()
    expect(page.locator("#strip-headline")).to_have_text(headline)
    is_marked(page)
    until(page, "data-share", "stale")  # no link, no sheet of it
    server.release()
    wait_for_python(page)
    expect(page.locator("#known")).to_be_hidden()
    expect(page.locator("#headline")).to_have_text(headline)
    expect(page.locator("#shown.stale, #strip.stale")).to_have_count(0)


def test_an_answer_that_python_does_not_give_is_replaced(page: Page, server: Server) -> None:
    headline = answered(page, server)
    page.goto(f"{server.address}how.html")
    page.evaluate(KEPT, "Nothing is wrong")
    come_back(page, server)
    expect(page.locator("#headline")).to_have_text("Nothing is wrong")
    is_marked(page)
    server.release()
    expect(page.locator("#headline")).to_have_text(headline)
    expect(page.locator("#known")).to_be_hidden()


def test_it_goes_when_a_reading_is_changed_and_comes_back_with_it(
    page: Page, server: Server
) -> None:
    headline = answered(page, server)
    come_back(page, server)
    is_marked(page)
    page.fill(reading(3), "-13")
    is_not_there(page)
    page.fill(reading(3), SWEEP[3])
    expect(page.locator("#headline")).to_have_text(headline)
    is_marked(page)


def test_it_is_for_one_language(page: Page, server: Server) -> None:
    answered(page, server)
    come_back(page, server, "index.es.html?language=es")
    is_not_there(page)


def test_it_is_by_one_release(page: Page, server: Server, next_dist: Path) -> None:
    answered(page, server)
    server.folder = next_dist
    come_back(page, server)
    is_not_there(page)


def test_another_job_has_none_of_it(page: Page, server: Server) -> None:
    answered(page, server)
    come_back(page, server)
    is_marked(page)
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.click("#job-new")
    is_not_there(page)


def test_where_python_does_not_come_it_is_not_called_checked(
    page: Page, server: Server, guard: Guard
) -> None:
    headline = answered(page, server)
    guard.allow("pyodide.asm.wasm")
    server.missing.add("pyodide.asm.wasm")
    page.reload()
    wait_for_python(page, "failed")
    expect(page.locator("#known")).to_have_text("From last time, not checked.")
    expect(page.locator("#headline")).to_have_text(headline)


@pytest.mark.later
def test_a_job_that_is_deleted_takes_its_answer_along(page: Page, server: Server) -> None:
    answered(page, server)
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.click("#job-delete")
    expect(page.locator(reading(0))).to_have_value("")
    page.reload()
    wait_for_python(page)
    expect(page.locator("#kept")).to_be_attached()
    wait_for_kept(page, None)
