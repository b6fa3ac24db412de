"""Each page comes in the language of the browser, or the one chosen by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases.jobs import EIGHTHS
from tests.cases.links import link_of, ordinary_job
from tests.web import axe
from tests.web.page import (
    Guard,
    lose_signal,
    make_share,
    new_profile,
    until,
    wait_for_offline,
    wait_for_python,
)
from web.build.languages import languages

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, BrowserContext, Page

    from tests.web.server import Server

ENGLISH, SPANISH = (words.sentences for words in languages()[:2])
REFUSES = """Object.defineProperty(globalThis, 'localStorage', {
    get() { throw new DOMException('no', 'SecurityError'); },
})"""


@pytest.fixture
def spaniard(
    chromium: Browser, server: Server, request: pytest.FixtureRequest
) -> Iterator[BrowserContext]:
    """A phone whose browser speaks Spanish."""
    phone = new_profile(
        chromium,
        kept=request.node.get_closest_marker("kept") is not None,
        viewport={"width": 360, "height": 740}, is_mobile=True, has_touch=True, locale="es-ES",
    )  # fmt: skip
    watching = Guard(phone, server.address)
    yield phone
    phone.close()
    watching.check()


def is_in(page: Page, code: str) -> None:
    expect(page.locator("html")).to_have_attribute("lang", code)
    expect(page.locator("html")).not_to_have_attribute("data-leaving", "")


def type_sweep(page: Page, *readings: str) -> None:
    for i, text in enumerate(readings):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)


def test_the_browser_chooses(spaniard: BrowserContext, page: Page, server: Server) -> None:
    """Spanish for the one, English for the other; the answers, too."""
    for phone, code, words in ((spaniard.new_page(), "es", SPANISH), (page, "en", ENGLISH)):
        phone.goto(server.address)
        is_in(phone, code)
        expect(phone.locator("#answer-title")).to_have_text(words["result.heading"])
        expect(phone.locator("#rounds .sweep h4").first).to_contain_text(words["what.bore"])
        wait_for_python(phone)
        type_sweep(phone, "0", "-20", "-40", "-20")
        expect(phone.locator("#verdict-text")).to_have_text(words["answer.verdict.outside"])
        expect(phone.locator("#figures")).to_contain_text(words["answer.pm"].partition("{pm}")[2])


@pytest.mark.parametrize("name", ["practice.html", "how.html", "view.html"])
def test_every_page_has_its_own_in_the_other_language(
    spaniard: BrowserContext, server: Server, name: str
) -> None:
    """Found by the browser's language, with what stands behind the #, and left by hand."""
    page = spaniard.new_page()
    fragment = f"#{link_of(ordinary_job(EIGHTHS))}" if name == "view.html" else "#seed=7&level=2"
    page.goto(f"{server.address}{name}{fragment}")
    is_in(page, "es")
    assert page.url == f"{server.address}{name.replace('.', '.es.')}{fragment}"
    page.locator("a.language").click()
    is_in(page, "en")
    assert page.url == f"{server.address}{name}?language=en{fragment}"


@pytest.mark.kept
def test_what_was_chosen_by_hand_holds(spaniard: BrowserContext, server: Server) -> None:
    """On the next visit, on the next page, and without a signal."""
    page = spaniard.new_page()
    page.goto(server.address)
    is_in(page, "es")
    wait_for_offline(page)
    page.locator("a.language").click()
    is_in(page, "en")
    page.close()
    lose_signal(spaniard, server)
    page = spaniard.new_page()
    for name in ("", "index.es.html", "practice.html", "how.es.html"):
        page.goto(f"{server.address}{name}")
        is_in(page, "en")
    page.goto(server.address)
    wait_for_python(page)
    page.locator("a.language").click()
    is_in(page, "es")
    wait_for_python(page)
    page.goto(server.address)
    is_in(page, "es")


def test_where_nothing_can_be_kept_a_choice_holds_from_page_to_page(
    spaniard: BrowserContext, server: Server
) -> None:
    spaniard.add_init_script(REFUSES)
    page = spaniard.new_page()
    page.goto(server.address)
    is_in(page, "es")
    page.locator("a.language").click()
    is_in(page, "en")
    page.locator(".ways a").first.click()
    page.wait_for_url("**/practice.html*")
    is_in(page, "en")
    page.goto(server.address)
    is_in(page, "es")


def test_a_language_that_there_is_not_changes_nothing(
    spaniard: BrowserContext, server: Server
) -> None:
    page = spaniard.new_page()
    page.goto(f"{server.address}?language=tlh")
    is_in(page, "es")
    page.evaluate("localStorage.setItem('sweepsheet language', 'tlh')")
    page.goto(server.address)
    is_in(page, "en")  # what was kept is none of ours: the page stays as it was asked for
    page.goto(f"{server.address}index.es.html")
    is_in(page, "es")


def test_the_language_waits_for_no_script(spaniard: BrowserContext, server: Server) -> None:
    """It is chosen before anything is drawn, so nothing typed can be lost to it."""
    page = spaniard.new_page()
    server.held.add("main.js")
    page.goto(server.address, wait_until="commit")
    page.wait_for_url("**/index.es.html", wait_until="commit")
    type_sweep(page, "3")
    is_in(page, "es")
    server.release()
    wait_for_python(page)
    is_in(page, "es")
    expect(page.locator('[name="rounds.0.bore.sweeps.0.0"]')).to_have_value("3")


def test_jobs_are_the_same_in_both(spaniard: BrowserContext, server: Server) -> None:
    """What was typed and what was found go along; the latter in the other's words."""
    page = spaniard.new_page()
    page.goto(server.address)
    type_sweep(page, "0", "-20", "-40", "-20")
    expect(page.locator("#verdict-text")).to_have_text(SPANISH["answer.verdict.outside"])
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    page.locator("a.language").click()
    is_in(page, "en")
    expect(page.locator('[name="rounds.0.bore.sweeps.0.2"]')).to_have_value("-40")
    expect(page.locator("#verdict-text")).to_have_text(ENGLISH["answer.verdict.outside"])
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-new").click()
    expect(page.locator("#job-list button")).to_contain_text(ENGLISH["answer.verdict.outside"])


@pytest.mark.parametrize(("maker", "reader"), [("en", "es"), ("es", "en")])
def test_a_link_made_in_one_language_is_read_in_the_other(
    spaniard: BrowserContext, page: Page, server: Server, maker: str, reader: str
) -> None:
    """It names no language, and its figures agree with what the other's Python finds."""
    phones = {"en": page, "es": spaniard.new_page()}
    by, to = phones[maker], phones[reader]
    by.goto(server.address)
    by.locator("#example").click()
    make_share(by)
    link = by.locator("#share-link").input_value()
    assert link.startswith(f"{server.address}view.html#")
    to.goto(link)
    is_in(to, reader)
    until(to, "data-view", "agrees")
    said = (SPANISH if reader == "es" else ENGLISH)["view.agrees"]
    expect(to.locator("#check")).to_have_text(said)
    assert to.evaluate("[localStorage.length, sessionStorage.length]") == [0, 0]


def test_a_link_is_opened_as_a_job_in_the_language_of_the_view(
    spaniard: BrowserContext, server: Server
) -> None:
    page = spaniard.new_page()
    page.goto(f"{server.address}view.html#{link_of(ordinary_job(EIGHTHS))}")
    is_in(page, "es")
    page.locator("a.language").click()
    is_in(page, "en")
    assert page.evaluate("localStorage.length") == 0
    page.locator("#adopt").click()
    page.wait_for_url(f"{server.address}?language=en")
    is_in(page, "en")


@pytest.mark.slow
def test_the_spanish_pages_can_be_used_by_all(spaniard: BrowserContext, server: Server) -> None:
    """Checked by axe-core, in large text and on a narrow screen, with every part open."""
    page = spaniard.new_page()
    fragment = link_of(ordinary_job(EIGHTHS))
    for name in ("", "practice.html", "how.html", f"view.html#{fragment}"):
        page.goto(f"{server.address}{name}")
        is_in(page, "es")
        if name == "":
            page.locator("#example").click()
            make_share(page)
        elif name.startswith("view"):
            until(page, "data-view", "agrees")
        elif name != "how.html":
            wait_for_python(page)
        page.locator("details").evaluate_all("all => all.forEach((d) => { d.open = true })")
        axe.check(page, f"Spanish, {name}")
        axe.check_large_text(page, f"Spanish, {name}")
        axe.check_large_text(page, f"Spanish, {name}", width=320, times=1)
