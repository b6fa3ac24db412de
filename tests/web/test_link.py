"""A job travels by link: readable at once, checked by the phone that opens it, safe to open."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import expect

import build
from sweepsheet.link.codec import SHORT, fragment_of
from tests.cases.jobs import EIGHTHS, QUARTERS, make_job
from tests.cases.links import doctored, link_of, ordinary_job, packed, unpacked
from tests.web.page import (
    decoded,
    make_share,
    open_lines,
    until,
    wait_for_offline,
    wait_for_python,
)

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.page import Guard
    from tests.web.server import Server

JOB = ordinary_job(EIGHTHS)
# Everything in the store of jobs; null where there is no store at all.
STORE = """async () => {
    const found = (await indexedDB.databases()).find(({ name }) => !name.includes('answers'));
    if (!found) return null;
    const opened = indexedDB.open(found.name);
    const db = await new Promise((done) => { opened.onsuccess = () => done(opened.result); });
    const all = [...db.objectStoreNames].map((name) => new Promise((done) => {
        const asked = db.transaction(name).objectStore(name).getAll();
        asked.onsuccess = () => done(asked.result);
    }));
    const texts = JSON.stringify(await Promise.all(all));
    db.close();
    return texts;
}"""
# From above, where link and readings do not agree.
PLACES = ("#check", "#gist", "#gist-recomputed", "#before", "#claimed", "#claimed-recomputed")
HARMFUL = {
    "vehicle": '<img src="x" onerror="document.title = 1">',
    "engine": "</script><script>document.title = 2</script>",
    "customer": "javascript:alert(1)",
    "notes": "\N{HEBREW LETTER ALEF} 5.0 <svg onload=alert(1)> https://elsewhere.example/x.png",
}


def address(server: Server, fragment: str) -> str:
    return f"{server.address}view.html#{fragment}"


def wait_for(page: Page, state: str) -> None:
    """Wait until the customer's view is in this state."""
    until(page, "data-view", state)


def wait_for_link(page: Page) -> str:
    """Wait until the link of what was typed is made; give it."""
    until(page, "data-share", "ready")
    return page.locator("#share-link").input_value()


def type_sweep(page: Page, *readings: str) -> None:
    for i, text in enumerate(readings):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)


def part(page: Page, name: str) -> Locator:
    return page.locator(f'#claimed [data-part="{name}"]')


def test_a_typed_job_is_read_by_the_customer_before_python_is_there(
    page: Page, context: BrowserContext, server: Server
) -> None:
    """First what the link claims; and only when Python has come, that it is checked."""
    page.goto(server.address)
    type_sweep(page, "0", "-5.5", "-11", "-5.5")
    open_lines(page)
    page.locator("#limit-source").fill("the maker's manual")
    link = wait_for_link(page)
    page.close()
    server.held.add("library.wasm")
    view = context.new_page()
    view.goto(link)
    wait_for(view, "claimed")
    expect(view.locator("#gist .verdict")).to_have_text("Out of line: over the limit")
    expect(view.locator("#gist")).to_contain_text(
        "6.2 thou off center. Allowed 5.0. No recheck on record."
    )
    expect(part(view, "found")).to_contain_text("Bore 6.2 thou (± ")
    expect(part(view, "found")).to_contain_text("Outside the limit")
    assert part(view, "done").is_hidden()
    expect(view.locator("#source")).to_have_text("These limits come from: the maker's manual")
    expect(view.locator("#check")).to_contain_text("Not checked yet")
    assert "matches" not in view.locator("body").inner_text()
    assert view.locator("#drawings").is_hidden()
    server.release()
    wait_for(view, "agrees")
    expect(view.locator("#check")).to_have_text(
        "Your phone recalculated this from the readings: it matches."
    )
    expect(view.locator("#before svg")).to_be_visible()


@pytest.mark.later
def test_a_job_of_two_rounds_tells_what_was_found_done_and_left(page: Page, server: Server) -> None:
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")
    expect(page.locator("#gist .verdict")).to_have_text("In line: within the limit")
    expect(page.locator("#gist .headline")).to_have_text(
        "Found 8.6 thou off center. Now 1.9. Allowed 5.0."
    )
    expect(page.locator("#gist")).to_contain_text("Corrected with 7-thou offset dowels.")
    expect(part(page, "found")).to_contain_text("Outside the limit")
    expect(part(page, "done")).to_have_text("Both dowels with 7 thou offset, aimed at 10:40.")
    expect(part(page, "left")).to_contain_text("Within the limit")
    expect(page.locator("#about")).to_contain_text("A. Winter")
    expect(page.locator("#shop")).to_be_hidden()
    expect(page.locator("#after svg")).to_be_visible()
    page.locator("#more summary", has_text="Every reading").click()
    expect(page.locator("#taken li").first).to_contain_text("Dial: step 0.5 thou")
    expect(page.locator("#readings table")).to_have_count(2)
    expect(page.locator("#readings td", has_text="−11.5")).to_be_visible()


@pytest.mark.later
def test_changed_figures_are_told_in_large_type(page: Page, server: Server) -> None:
    _, figures = json.loads(unpacked(link_of(JOB)))
    figures[2] = figures[2].replace("1.9|3.8", "0.4|0.8")
    page.goto(address(server, doctored(link_of(JOB), figures=figures)))
    wait_for(page, "disagrees")
    said = page.locator("#check")
    expect(said).to_contain_text("The figures and the readings do not agree.")
    usual = page.locator("#source").evaluate("e => parseFloat(getComputedStyle(e).fontSize)")
    assert said.evaluate("e => parseFloat(getComputedStyle(e).fontSize)") > 1.7 * usual
    expect(part(page, "left")).to_contain_text("0.4 thou")
    expect(page.locator('#claimed-recomputed [data-part="left"]')).to_contain_text("1.9 thou")
    # It is above all of it, and the short of both is beside one another, with nothing folded.
    order = [name.bounding_box() for name in map(page.locator, PLACES)]
    tops = [box["y"] for box in order if box]
    assert tops == sorted(tops)
    assert len(tops) == len(PLACES)
    expect(page.locator("#gist .headline")).to_contain_text("Now 0.4.")
    expect(page.locator("#gist-recomputed .headline")).to_contain_text("Now 1.9.")


@pytest.mark.later
def test_changed_readings_are_told_too(page: Page, server: Server) -> None:
    job, _ = json.loads(unpacked(link_of(JOB)))
    job[SHORT["rounds"]][1][SHORT["bore"]][SHORT["sweeps"]][0][2] = 4
    page.goto(address(server, doctored(link_of(JOB), job=job)))
    wait_for(page, "disagrees")


@pytest.mark.later
@pytest.mark.parametrize(
    ("fragment", "said"),
    [
        ("", "There is none in the address"),
        (link_of(JOB)[:-20], "cut or damaged"),
        ("3" + link_of(JOB)[5:], "cut or damaged"),
        ("4" + link_of(JOB)[1:], "a newer Sweepsheet"),
        ("answer", "not a link that Sweepsheet made"),
        ("3" + "a" * 9000, "longer than any"),
        (packed(" " * 5_000_000), "cut or damaged"),
        (packed("[" * 60_000), "cut or damaged"),
        (packed("null"), "cut or damaged"),
        (packed('[{"a": {"e": "5\u202e0"}}, ["thou", "5"]]'), "cut or damaged"),
        (packed('[{"a": {"e": 5}}, ["thou", "5"]]'), "cut or damaged"),
        (packed('[{}, ["thou", "<b>5</b>"]]'), "cut or damaged"),
        (packed('[{}, ["thou", "5"]]'), "can't be read"),
        (packed('[{"version": 2, "d": []}, ["thou", "5"]]'), "newer release"),
    ],
    ids=["none", "cut", "damaged", "newer", "foreign", "long", "bomb", "deep", "null", "bidi",
         "number", "markup", "no job", "newer job"],
)  # fmt: skip
def test_a_link_that_is_no_good_is_told_in_a_sentence(
    page: Page, server: Server, fragment: str, said: str
) -> None:
    page.goto(address(server, fragment))
    wait_for(page, "refused")
    expect(page.locator("#trouble")).to_contain_text(said)
    assert page.locator("#job").is_hidden()
    assert page.locator("#adopt").is_hidden()


@pytest.mark.later
def test_another_link_in_the_same_tab_is_opened(page: Page, server: Server) -> None:
    page.goto(address(server, "answer"))
    wait_for(page, "refused")
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")


@pytest.mark.later
def test_hostile_texts_stay_texts(page: Page, server: Server) -> None:
    """Nothing of them becomes markup or is fetched: the guard fails on any request elsewhere."""
    job = JOB | {"about": HARMFUL, "limits": {"source": "<b>bold</b><img src=//x.example>"}}
    page.goto(address(server, link_of(job)))
    wait_for(page, "agrees")
    for text in HARMFUL.values():
        expect(page.locator("#about dd", has_text=text[:12])).to_have_text(text)
    expect(page.locator("#source")).to_contain_text("<b>bold</b>")
    assert page.evaluate("document.images.length") == 0
    scripts = page.evaluate(
        "Array.from(document.scripts, (each) => each.getAttribute('src') ?? each.type)"
    )
    assert [name.rpartition("/")[2] for name in scripts] == ["", "json", "module"]
    assert page.title() == "What was measured: Sweepsheet"
    assert page.locator("#about dd").first.get_attribute("dir") == "auto"


def test_without_python_it_is_said_that_nothing_was_checked(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow("404")
    server.missing.add("pyodide.asm.wasm")
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "unchecked")
    expect(page.locator("#check")).to_contain_text("were not checked against the readings")
    expect(part(page, "left")).to_contain_text("1.9 thou")
    assert page.locator("#adopt").is_hidden()


def test_a_script_that_does_not_come_leaves_what_the_link_says(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow("404")
    server.missing.add("verify-link.js")
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "unchecked")
    expect(page.locator("#check")).to_contain_text("were not checked against the readings")
    expect(part(page, "left")).to_contain_text("1.9 thou")


def test_a_browser_that_cannot_unpack_waits_for_python(page: Page, server: Server) -> None:
    page.add_init_script("delete globalThis.DecompressionStream")
    server.held.add("library.wasm")
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "waits")
    assert page.locator("#job").is_hidden()
    server.release()
    wait_for(page, "agrees")
    expect(part(page, "left")).to_contain_text("1.9 thou")
    expect(page.locator("#about")).to_contain_text("A. Winter")


# On this phone ------------------------------------------------------------------------------


@pytest.mark.kept
def test_opening_a_link_stores_nothing(page: Page, server: Server) -> None:
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")
    assert page.evaluate(STORE) is None
    assert page.evaluate("[localStorage.length, sessionStorage.length]") == [0, 0]
    assert page.evaluate("caches.keys()") == []
    assert (
        page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0
    )


@pytest.mark.later
def test_opening_a_link_touches_no_job_on_this_phone(
    page: Page, context: BrowserContext, server: Server
) -> None:
    page.goto(server.address)
    type_sweep(page, "0", "1")
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    before = page.evaluate(STORE)
    view = context.new_page()
    view.goto(address(server, link_of(JOB)))
    wait_for(view, "agrees")
    assert view.evaluate(STORE) == before


@pytest.mark.later
def test_a_link_is_opened_as_a_job_of_ones_own(
    page: Page, context: BrowserContext, server: Server
) -> None:
    """As a new one beside those that are there, and with the same answer."""
    page.goto(server.address)
    type_sweep(page, "7", "7", "7", "7")
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    page.close()
    view = context.new_page()
    view.goto(address(server, link_of(JOB)))
    wait_for(view, "agrees")
    view.locator("#adopt").click()
    view.wait_for_url(server.address)
    wait_for_python(view)
    expect(view.locator("#headline")).to_have_text("1.9 thou off, toward 5 o'clock (TIR 3.8 thou)")
    link = wait_for_link(view)
    again = link.partition("#")[2]
    assert json.loads(unpacked(again))[1] == json.loads(unpacked(link_of(JOB)))[1]
    view.locator("#jobs").evaluate("details => { details.open = true }")
    expect(view.locator("#job-list button")).to_have_count(1)
    view.locator("#job-list button").click()
    expect(view.locator('[name="rounds.0.bore.sweeps.0.0"]')).to_have_value("7")


@pytest.mark.kept
def test_the_view_works_without_a_signal_where_the_page_is_kept(
    page: Page, context: BrowserContext, server: Server
) -> None:
    page.goto(server.address)
    wait_for_offline(page)
    context.set_offline(True)
    server.stop()
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")


@pytest.mark.kept
def test_a_host_that_sends_on_to_shorter_addresses_can_be_used(
    page: Page, context: BrowserContext, server: Server
) -> None:
    """As some do with every name that ends in .html."""
    server.moved.add("view.html")
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")
    page.goto(server.address)
    wait_for_offline(page)
    context.set_offline(True)
    server.stop()
    page.goto(address(server, link_of(JOB)))
    wait_for(page, "agrees")


# Handing it over ----------------------------------------------------------------------------


def open_with_answer(page: Page, server: Server) -> str:
    page.goto(server.address)
    type_sweep(page, "0", "-5.5", "-11", "-5.5")
    make_share(page)
    return wait_for_link(page)


@pytest.mark.later
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_qr_code_on_the_screen_is_the_link(page: Page, server: Server, scheme: Any) -> None:
    page.emulate_media(color_scheme=scheme)
    link = open_with_answer(page, server)
    page.locator("#share-qr").click()
    assert decoded(page.locator("#qr-code")) == link


@pytest.mark.later
def test_a_long_link_has_a_qr_code_too(page: Page, server: Server) -> None:
    """The longest that one can hold: ISO/IEC 18004, table 7, version 40-L, 2953 bytes."""
    open_with_answer(page, server)
    drawn = """async ([main, text]) => {
        const { startMessenger } = await import(main);
        const python = startMessenger({});
        const started = python.ask({ form: {} });
        await started;
        const code = await python.drawQr(text);
        python.stop();
        return code;
    }"""
    main = page.locator("script[type=module]").first.evaluate("script => script.src")
    assert page.evaluate(drawn, [main, "a" * 2953])["state"] == "qr"
    assert page.evaluate(drawn, [main, "a" * 2954]) == {"state": "too_long"}


MANY = """([fragment, trouble, code]) => {
    const paper = { title: '', shop: '', about: [], verdict: '', verdict_text: '', headline: '',
        figures: [], limits: [], dial: [], steps: [], results: { title: '', head: [], rows: [] },
        readings: [], sections: [], remarks: [], done: [], open: [], drawing: '', words: {} };
    return import(document.querySelector('script[src$="/main.js"]').src)
        .then(({ Share }) => {
            const core = {
                share: async () => ({ state: 'share', fragment, trouble, paper }),
                drawQr: async () => code,
            };
            new Share(core, () => ({})).renew(true);
        });
}"""


@pytest.mark.later
@pytest.mark.parametrize(
    ("fragment", "trouble", "code", "said", "disabled"),
    [
        ("1abc", "", {"state": "too_long"}, "too long for a QR code", ["share-qr"]),
        ("", "It is too long.", None, "It is too long.", ["share-copy", "share-qr"]),
    ],
    ids=["no code", "no link"],
)
def test_what_cannot_be_made_is_said(
    page: Page,
    server: Server,
    fragment: str,
    trouble: str,
    code: Any,
    said: str,
    disabled: list[str],
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    page.evaluate(MANY, [fragment, trouble, code])
    expect(page.locator("#share-status")).to_contain_text(said)
    for button in ("share-copy", "share-qr", "share-print"):
        there = page.locator(f"#{button}")
        (expect(there).to_be_disabled if button in disabled else expect(there).to_be_enabled)()


@pytest.mark.later
def test_the_link_goes_to_the_share_sheet(page: Page, server: Server) -> None:
    page.add_init_script("navigator.share = async (what) => { globalThis.handed = what; }")
    link = open_with_answer(page, server)
    page.locator("#share-send").click()
    assert page.evaluate("handed.url") == link


def test_the_link_is_copied(page: Page, context: BrowserContext, server: Server) -> None:
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    link = open_with_answer(page, server)
    page.locator("#share-copy").click()
    expect(page.locator("#share-status")).to_have_text("The link is copied.")
    assert page.evaluate("navigator.clipboard.readText()") == link


@pytest.mark.later
def test_where_copying_is_not_allowed_the_link_is_marked(page: Page, server: Server) -> None:
    page.add_init_script("navigator.clipboard.writeText = () => Promise.reject(new Error('no'))")
    link = open_with_answer(page, server)
    page.locator("#share-copy").click()
    expect(page.locator("#share-status")).to_contain_text("copy it by hand")
    assert page.evaluate("getSelection().toString()") in (link, "")
    marked = "e => e.value.slice(e.selectionStart, e.selectionEnd)"
    assert page.locator("#share-link").evaluate(marked) == link


@pytest.mark.later
def test_a_link_that_opens_on_this_machine_only_says_so(page: Page, server: Server) -> None:
    assert open_with_answer(page, server).startswith(f"{server.address}view.html#3")
    expect(page.locator("#share-status")).to_contain_text("The link opens here only")


@pytest.mark.parametrize(
    ("host", "said"),
    [("https://shop.example/tools/", ""), ("http://192.168.1.20:8000/", "this network only")],
)
def test_links_lead_to_the_public_address_that_the_build_was_told(
    page: Page, server: Server, library: Path, tmp_path: Path, host: str, said: str
) -> None:
    build.assemble(library, tmp_path / "dist", address=host)
    server.folder = tmp_path / "dist"
    assert open_with_answer(page, server).startswith(f"{host}view.html#3")
    expect(page.locator("#share-status")).to_contain_text(said)
    if not said:
        expect(page.locator("#share-status")).to_have_text("")


@pytest.mark.later
def test_there_is_nothing_to_show_without_an_answer(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    type_sweep(page, "0", "1")
    expect(page.locator("#share")).to_be_hidden()
    type_sweep(page, "0", "1", "2", "1")
    wait_for_link(page)
    expect(page.locator("#share")).to_be_visible()
    type_sweep(page, "0", "1", "x")
    expect(page.locator("#share")).to_be_hidden()
    until(page, "data-share", "none")


@pytest.mark.later
def test_a_change_makes_a_new_link(page: Page, server: Server) -> None:
    first = open_with_answer(page, server)
    type_sweep(page, "0", "-6")
    expect(page.locator("html")).not_to_have_attribute("data-share", "ready")
    assert wait_for_link(page) != first


@pytest.mark.later
def test_a_link_made_with_plain_tools_is_read(page: Page, server: Server) -> None:
    """By nothing but the description of its layout."""
    job = make_job([0, -5, -11, -5], positions=QUARTERS)
    fragment = packed(
        json.dumps([{"d": [{"!": {"5": [[0, -5, -11, -5]], "6": [0]}}]}, ["thou", "9"]])
    )
    assert fragment != fragment_of(job, ("thou", "9"))
    page.goto(address(server, fragment))
    wait_for(page, "disagrees")
    expect(page.locator('#claimed-recomputed [data-part="found"]')).to_contain_text("6.2 thou")
