"""Lengths along the crank axis: typed, answered, drawn, kept, printed and shown to the customer."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases import forms
from tests.web.page import PATIENCE, make_share, open_lines, until, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

LENGTHS = {name: text for name, text in forms.DEPTH.items() if name.startswith("depth.")}


def type_job(page: Page, server: Server) -> None:
    """Readings of a good bore, and the lengths, key by key where one would type them."""
    page.goto(server.address)
    wait_for_python(page)
    for i, text in enumerate(["0", "-1", "-2", "-1"]):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)
    page.locator('[name="rounds.0.bore.closing.0"]').fill("0")
    page.locator("#lengths > summary").click()
    for name, text in LENGTHS.items():
        page.locator(f'[name="{name}"]').fill(text)
    until(page, "data-answer", "answer")


def test_a_shaft_that_bottoms_is_stopped_before_the_gearbox_goes_on(
    page: Page, server: Server
) -> None:
    type_job(page, server)
    expect(page.locator("#remarks")).to_contain_text(
        "It does not fit: tip to the bottom of the hole", timeout=PATIENCE
    )
    expect(page.locator("#verdict")).to_have_text("Bore within, depth does not fit")
    expect(page.locator("#steps")).to_contain_text("Don't fit the gearbox yet")
    section = page.locator("#section-depth")
    section.locator("summary").first.click()
    expect(section).to_contain_text("stroke left after release")
    expect(section).to_contain_text("\N{MINUS SIGN}0.050 in ± 0.017 in")
    page.locator("#views > summary").click()
    expect(page.locator("#depth-view svg")).to_be_visible()
    # The hole turns out to be deeper.
    page.locator('[name="depth.to_bottom"]').fill("1.5")
    expect(page.locator("#verdict")).to_have_text("Within the limit")
    expect(page.locator("#remarks")).not_to_contain_text("It does not fit")


def test_lengths_are_there_again_when_the_page_is_opened_anew(page: Page, server: Server) -> None:
    type_job(page, server)
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    page.reload()
    for name, text in LENGTHS.items():
        expect(page.locator(f'[name="{name}"]')).to_have_value(text)


def test_the_usual_doubt_of_a_length_follows_the_unit(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    for unit, engine, gearbox in (("metric", "0.25", "0.13"), ("inch", "0.01", "0.005")):
        page.locator(f'[name="units"][value="{unit}"]').check()
        expect(page.locator('[name="depth.engine_pm"]')).to_have_value(engine)
        expect(page.locator('[name="depth.gearbox_pm"]')).to_have_value(gearbox)


def test_a_length_that_is_none_is_told_at_its_field(page: Page, server: Server) -> None:
    type_job(page, server)
    page.locator('[name="depth.to_tip"]').fill("6.9x")
    until(page, "data-answer", "faults")
    expect(page.locator("#lengths")).to_contain_text("length of the shaft: enter a number")
    assert page.locator('[name="depth.to_tip"]').get_attribute("aria-invalid") == "true"


def test_the_customer_sees_that_it_is_not_finished_and_what_was_measured(
    page: Page, server: Server
) -> None:
    type_job(page, server)
    make_share(page)
    page.goto(page.locator("#share-link").input_value())
    until(page, "data-view", "agrees")
    expect(page.locator("#gist")).to_contain_text("Not finished")
    expect(page.locator("#remarks")).to_contain_text("It does not fit: tip to the bottom")
    expect(page.locator("#readings")).to_contain_text("release bearing to the fingers")
