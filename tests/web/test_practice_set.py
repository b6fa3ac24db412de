"""A teacher's set in the page: made, worked through, sent back and looked at."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.web import axe
from tests.web.page import wait_for_python
from tests.web.test_practice import open_exercise, reading, sweep

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = pytest.mark.later


def open_set(page: Page, server: Server, named: str = "set=1-417.4-12.2-5") -> None:
    page.goto(f"{server.address}practice.html#{named}")
    wait_for_python(page)
    expect(page.locator("#place")).to_contain_text("Exercise ")
    page.wait_for_function("() => !document.querySelector('main').inert")


def link_in(page: Page, field: str) -> str:
    expect(page.locator(field)).to_have_value(re.compile(r"practice\.html#"))
    return page.locator(field).input_value()


def make_set(page: Page) -> str:
    """The link of ten exercises of the first kind."""
    page.locator("#teacher > summary").click()
    for level in ("1", "2", "3"):
        page.locator(f"#kinds input[value='{level}']").uncheck()
    page.locator("#make-set").click()
    expect(page.locator("#no-kind")).to_be_visible()
    page.locator("#kinds input[value='1']").check()
    page.locator("#make-set").click()
    expect(page.locator("#no-kind")).to_be_hidden()
    return link_in(page, "#set-link")


def fresh(page: Page, address: str) -> None:
    """Opened anew: another part of the address alone would not do that."""
    page.goto("about:blank")
    page.goto(address)
    wait_for_python(page)


def test_a_set_from_the_teacher_to_the_pupil_and_back(page: Page, server: Server) -> None:
    open_exercise(page, server)
    address = make_set(page)
    assert re.search(r"#set=1-\d{1,6}(\.1-\d{1,6}){9}$", address)
    axe.check(page, "a set is made")

    fresh(page, address)
    expect(page.locator("#place")).to_have_text("Exercise 1 of 10")
    for hidden in ("#alone", "#truth-part", "#teacher"):
        expect(page.locator(hidden)).to_be_hidden()
    sweep(page)
    expect(page.locator("#headline")).to_contain_text("thou off")
    first = reading(page, "rounds.0.bore.sweeps.0.2").input_value()
    page.locator("#set-on").click()
    expect(page.locator("#place")).to_have_text("Exercise 2 of 10")
    expect(reading(page, "rounds.0.bore.sweeps.0.2")).to_have_value("")
    work_on_the_second(page)
    second = reading(page, "rounds.0.bore.sweeps.0.2").input_value()

    page.reload()
    wait_for_python(page)
    expect(page.locator("#place")).to_have_text("Exercise 2 of 10")
    expect(page.locator("#round")).to_have_text("Recheck 1: 7 thou dowels, aimed at 4:30")
    expect(reading(page, "rounds.1.bore.sweeps.0.1")).to_have_value("-3.5")
    expect(reading(page, "rounds.0.bore.sweeps.0.2")).to_have_value(second)
    page.locator("#set-back").click()
    expect(page.locator("#place")).to_have_text("Exercise 1 of 10")
    expect(reading(page, "rounds.0.bore.sweeps.0.2")).to_have_value(first)
    expect(page.locator("#headline")).to_contain_text("thou off")

    page.locator("#pupil").fill("Ana <b>")
    page.locator("#send").click()
    results = link_in(page, "#sent-link")
    assert len(results) < 1000
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    axe.check(page, "results are sent")
    look_at(page, results)


# Something is typed and asked, and the page is busy until it is answered, at the moment of a press.
BUSY = """() => {
    const busy = () => {
        const field = document.querySelector('[name="rounds.1.bore.sweeps.0.1"]');
        field.dispatchEvent(new Event('input', { bubbles: true }));
        for (const end = performance.now() + 1500; performance.now() < end;);
    };
    const back = document.getElementById('set-back');
    back.addEventListener('click', busy, { capture: true, once: true });
}"""


def test_an_answer_that_comes_late_does_not_go_to_the_other_exercise(
    page: Page, server: Server
) -> None:
    """Once the dowels of one exercise were in the work on the one that was gone back to."""
    open_set(page, server)
    sweep(page)
    expect(page.locator("#headline")).to_contain_text("thou off")
    page.locator("#set-on").click()
    expect(page.locator("#place")).to_have_text("Exercise 2 of 3")
    work_on_the_second(page)
    page.evaluate(BUSY)
    page.locator("#set-back").click()
    expect(page.locator("#place")).to_have_text("Exercise 1 of 3")
    expect(page.locator("main")).not_to_have_attribute("inert", "")
    expect(page.locator("#round")).not_to_contain_text("Recheck")
    assert page.locator('[name="rounds.1.bore.sweeps.0.1"]').count() == 0


def work_on_the_second(page: Page) -> None:
    """A sweep, a pair of dowels, and half a sweep."""
    sweep(page)
    page.locator("#fit-offset").select_option("7")
    page.locator("#fit-aim").fill("4:30")
    page.locator("#fit").click()
    expect(page.locator("#round")).to_have_text("Recheck 1: 7 thou dowels, aimed at 4:30")
    reading(page, "rounds.1.bore.sweeps.0.0").fill("0")
    reading(page, "rounds.1.bore.sweeps.0.1").fill("-3.5")


def look_at(page: Page, results: str) -> None:
    """As the teacher: the link opened, and then with others pasted under it."""
    fresh(page, results)
    rows = page.locator("#results-table tr")
    expect(rows).to_have_count(11)
    expect(rows.nth(1)).to_contain_text("Ana <b>")
    expect(rows.nth(1)).to_contain_text("no, not shown to be within")
    expect(rows.nth(2)).to_contain_text("no, not swept at the end")
    expect(rows.nth(3)).to_contain_text("not swept")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    axe.check(page, "results are opened")
    page.locator("#results").fill(f"{results}\n{results[:-9]}\nnonsense")
    page.locator("#open-results").click()
    expect(page.locator("#results-troubles li")).to_have_count(2)
    expect(page.locator("#results-troubles")).to_contain_text("Line 3: This is no link of results.")
    expect(rows).to_have_count(11)


def test_a_second_sweep_and_the_setup_come_back_too(page: Page, server: Server) -> None:
    open_set(page, server)
    page.locator("#set-up summary").click()
    page.locator("#plus-when").select_option("plunger_out")
    page.locator("#positions").select_option("6")
    sweep_six = (0, 60, 120, 180, 240, 300, 360)
    for degrees in sweep_six:
        page.locator("#crank").evaluate(
            "(s, d) => { s.value = d; s.dispatchEvent(new Event('input', { bubbles: true })); }",
            degrees,
        )
        page.locator("#note").click()
    page.locator("#once-more").click()
    reading(page, "rounds.0.bore.sweeps.1.5").fill("4.5")
    page.get_by_role("radio", name="on the face").check()
    reading(page, "rounds.0.face.sweeps.0.3").fill("1.5")
    page.reload()
    wait_for_python(page)
    expect(reading(page, "rounds.0.bore.sweeps.1.5")).to_have_value("4.5")
    expect(reading(page, "rounds.0.face.sweeps.0.3")).to_have_value("1.5")
    expect(page.locator("#plus-when")).to_have_value("plunger_out")
    expect(page.locator("#positions")).to_have_value("6")


def test_a_set_can_be_cleared(page: Page, server: Server) -> None:
    open_set(page, server)
    sweep(page)
    page.locator("#send").click()
    link_in(page, "#sent-link")
    page.on("dialog", lambda dialog: dialog.accept())
    page.locator("#forget").click()
    expect(reading(page, "rounds.0.bore.sweeps.0.1")).to_have_value("")
    page.reload()
    wait_for_python(page)
    expect(reading(page, "rounds.0.bore.sweeps.0.1")).to_have_value("")


@pytest.mark.parametrize("named", ["set=9-1", "set=<img src=x onerror=alert(1)>", "set=1-1&at=2"])
def test_a_set_that_is_none_is_told(page: Page, server: Server, named: str) -> None:
    page.goto(f"{server.address}practice.html#{named}")
    wait_for_python(page)
    expect(page.locator(".practice-fault").first).to_contain_text("This is no set of 1 to 10")
    assert page.locator("main img").count() == 0
    page.locator("#new").click()
    expect(page.locator("#crank-view svg")).to_be_visible()
    assert re.search(r"#seed=\d{1,6}&level=1$", page.url)


def test_forged_results_are_told(page: Page, server: Server) -> None:
    page.goto(f"{server.address}practice.html#results=P1<img src=x>")
    wait_for_python(page)
    expect(page.locator("#results-troubles")).to_contain_text("Line 1: This link of results is da")
    assert page.locator("main img").count() == 0
    expect(page.locator("#results-table")).to_be_hidden()
