"""Marks round the crank: any first mark, flywheel bolts, a degree wheel; nothing typed is lost."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import Page, expect

from tests.web.page import open_lines, wait_for_python

if TYPE_CHECKING:
    from tests.web.server import Server

pytestmark = pytest.mark.later

ROW = '[name="rounds.0.bore.sweeps.0.{i}"]'


@pytest.fixture
def form(page: Page, server: Server) -> Page:
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    return page


def named(form: Page, *labels: str) -> None:
    """Wait until the rows are called so."""
    expect(form.locator(".bore-readings .rows label")).to_have_text(list(labels))


def typed(form: Page) -> list[str]:
    rows = form.locator(".bore-readings .rows input")
    return [rows.nth(i).input_value() for i in range(rows.count())]


def test_readings_go_along_when_the_first_mark_is_moved_and_come_back(form: Page) -> None:
    for i, text in enumerate(["0", "-5.5", "-11", "-5.5"]):
        form.locator(ROW.format(i=i)).fill(text)
    form.locator('[name="rounds.0.bore.closing.0"]').fill("0")
    expect(form.locator("#headline")).to_contain_text("6 o'clock")
    form.locator("#marks-first").fill("1:30")
    named(form, "1:30", "10:30", "7:30", "4:30")
    assert typed(form) == ["0", "-5.5", "-11", "-5.5"]
    expect(form.locator("#set-up-line")).to_contain_text("4 positions from 1:30")
    expect(form.locator("#headline")).to_contain_text("7:")
    expect(form.get_by_label("Plus or minus: 1:30, bore, sweep 1")).to_be_visible()
    form.locator(ROW.format(i=1)).fill("-6")
    expect(form.locator("#kept")).to_have_attribute("data-kept", "yes")
    form.reload()
    wait_for_python(form)
    named(form, "1:30", "10:30", "7:30", "4:30")
    assert typed(form) == ["0", "-6", "-11", "-5.5"]
    open_lines(form)
    form.locator("#marks-first").fill("12")
    named(form, "12 o'clock", "9 o'clock", "6 o'clock", "3 o'clock")
    assert typed(form) == ["0", "-6", "-11", "-5.5"]


def test_flywheel_bolts_and_a_degree_wheel(form: Page) -> None:
    form.locator(ROW.format(i=0)).fill("3")
    form.locator("#positions-choice").select_option("bolts")
    form.locator("#marks-count").fill("6")
    bolts = ["12 o'clock", "10 o'clock", "8 o'clock", "6 o'clock", "4 o'clock", "2 o'clock"]
    named(form, *(f"bolt {i + 1}: {at}" for i, at in enumerate(bolts)))
    assert typed(form) == [""] * 6
    form.locator("#positions-choice").select_option("wheel")
    named(form, *(f"{60 * i}°: {at}" for i, at in enumerate(bolts)))
    form.locator(".lead").first.tap()
    form.locator(".guide-next").tap()
    form.locator(".guide-next").tap()
    expect(form.locator(".guide-position")).to_have_text("60°: 10 o'clock")
    form.keyboard.press("Escape")
    # As before, what was typed for the quarters is there.
    form.locator("#positions-choice").select_option("12 3 6 9")
    assert typed(form) == ["3", "", "", ""]


def test_what_is_no_mark_is_told_at_its_field(form: Page) -> None:
    for i in range(4):
        form.locator(ROW.format(i=i)).fill("0")
    form.locator("#marks-first").fill("<img src=x onerror=alert(1)>")
    expect(form.locator("#marks-first-field .fault")).to_contain_text("<img")
    assert typed(form) == ["0"] * 4
    form.locator("#undo").click()
    expect(form.locator("#marks-first-field .fault")).to_be_empty()
    form.locator("#positions-choice").select_option("bolts")
    form.locator("#marks-count").fill("99")
    expect(form.locator("#marks-count-field .fault")).to_contain_text("from 3 to 72")
    assert len(typed(form)) == 8
