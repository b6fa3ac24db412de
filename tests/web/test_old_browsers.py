"""Where a browser lacks something the page says what, and does the rest of its job.

What is missing is taken out of Chromium before the page is opened. That is not the same as an old
browser, but the page asks for nothing else.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.web.page import wait_for_offline, wait_for_python
from tests.web.test_page import type_worksheet

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.page import Guard
    from tests.web.server import Server

HEADLINE = "3.4 thou off, toward 4 o'clock (TIR 6.7 thou)"

# What is taken away, and what the page must then say in its start box.
CANNOT_START = {
    "no JavaScript of 2022": ("delete Object.hasOwn", "older than 2022"),
    "no WebAssembly": ("delete globalThis.WebAssembly", "WebAssembly is missing"),
    "no exceptions in WebAssembly": (
        "WebAssembly.validate = () => false",
        "its WebAssembly is too old",
    ),
    "no workers": ("delete globalThis.Worker", "no module workers"),
    "no module workers": (
        "globalThis.Worker = class extends Worker { constructor(address) { super(address); } }",
        "no module workers",
    ),
}


@pytest.mark.parametrize(("script", "words"), CANNOT_START.values(), ids=CANNOT_START)
def test_what_is_missing_is_said_in_the_start_box(
    page: Page, server: Server, guard: Guard, script: str, words: str
) -> None:
    guard.allow(
        "import statement outside a module|import.meta|module"
    )  # the worker as a classic script
    page.add_init_script(script)
    page.goto(server.address)
    wait_for_python(page, "failed")
    expect(page.locator("#status")).to_be_visible()
    expect(page.locator("#status")).to_contain_text(words)
    expect(page.locator("#progress")).to_be_hidden()


def test_a_browser_without_modules_is_told(page: Page, server: Server) -> None:
    """It passes over the scripts of a type it does not know, and knows no `nomodule`."""
    server.bodies["/shop/tools/"] = lambda body: body.replace(b'type="module"', b'type="unknown"')
    page.add_init_script("delete HTMLScriptElement.prototype.noModule")
    page.goto(server.address)
    expect(page.locator("#status")).to_contain_text("too old for this page: it can't load")
    expect(page.locator("#status")).to_contain_text("Update it")
    expect(page.locator("#progress")).to_be_hidden()


@pytest.mark.parametrize(("name", "place"), [("practice.html", "status"), ("view.html", "trouble")])
def test_the_other_pages_tell_it_too(page: Page, server: Server, name: str, place: str) -> None:
    server.bodies[name] = lambda body: body.replace(b'type="module"', b'type="unknown"')
    page.add_init_script("delete HTMLScriptElement.prototype.noModule")
    page.goto(f"{server.address}{name}")
    expect(page.locator(f"#{place}")).to_be_visible()
    expect(page.locator(f"#{place}")).to_contain_text("too old for this page: it can't load")


def test_a_script_that_cannot_be_read_is_told(page: Page, server: Server, guard: Guard) -> None:
    guard.allow("SyntaxError|Invalid or unexpected token")
    server.bodies["main.js"] = lambda body: b"@@" + body
    page.goto(server.address)
    wait_for_python(page, "failed")
    expect(page.locator("#status")).to_contain_text("can't start in this browser")


def test_a_release_that_is_gone_is_told(page: Page, server: Server, guard: Guard) -> None:
    """A stale copy of index.html names files that the host has no longer."""
    guard.allow("404")
    server.bodies["/shop/tools/"] = lambda body: body.replace(b'"r-', b'"r-gone-')
    page.goto(server.address)
    wait_for_python(page, "failed")
    expect(page.locator("#status")).to_have_text(
        "A part of this page did not arrive. Load the page again."
    )


def test_without_a_store_the_page_answers_and_says_that_nothing_is_kept(
    page: Page, server: Server
) -> None:
    page.add_init_script("delete globalThis.indexedDB")
    page.goto(server.address)
    wait_for_python(page)
    expect(page.locator("#kept")).to_contain_text("NOT SAVED")
    type_worksheet(page)
    expect(page.locator("#headline")).to_have_text(HEADLINE)
    expect(page.locator("#kept")).to_contain_text("Write the readings down")


def test_without_a_service_worker_the_page_answers_and_says_it_needs_a_signal(
    page: Page, server: Server
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page, "unsupported")
    expect(page.locator("#offline")).to_contain_text("this browser does not offer it")
    type_worksheet(page)
    expect(page.locator("#headline")).to_have_text(HEADLINE)
