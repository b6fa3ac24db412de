"""What is done between two rounds of an exercise, in the page."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from sweepsheet.drawing.depth_measures import LETTERS
from tests.web import axe
from tests.web.page import wait_for_python
from tests.web.test_practice import open_exercise, reading, set_crank, sweep

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = pytest.mark.later


def offered(page: Page) -> list[str]:
    return page.locator("#act option").all_inner_texts()


def test_a_housing_that_is_loosened_and_torqued_again(page: Page, server: Server) -> None:
    open_exercise(page, server, "#seed=12&level=4")
    assert offered(page) == ["Fit dowels", "Loosen and torque again", "Clean and mend the joint"]
    expect(page.locator("#fit-aim")).to_be_visible()
    page.locator("#act").select_option("reseated")
    expect(page.locator("#fit-aim")).to_be_hidden()
    page.locator("#fit").click()
    expect(page.locator("#fitting .practice-fault")).to_have_text(
        "Sweep the bore first, at every position."
    )
    sweep(page)
    for n in (1, 2):
        page.locator("#fit").click()
        expect(page.locator("#round")).to_have_text(f"Recheck {n}: seated again")
        expect(page.locator("#old-answer")).to_be_visible()
        sweep(page)
        expect(page.locator("#old-answer")).to_be_hidden()
    expect(page.locator("#section-seating")).to_contain_text("Seated again, times: 2.")
    page.locator("#tell").click()
    expect(page.locator("#truth-lines")).to_contain_text("Seated as found, it lands within")
    axe.check(page, "a housing seated again")


def test_a_plate_that_is_turned_half_a_turn(page: Page, server: Server) -> None:
    open_exercise(page, server, "#seed=12&level=5")
    assert offered(page) == ["Fit dowels", "Turn the plate half a turn"]
    sweep(page)
    expect(page.locator("#to-do")).to_contain_text("Turn the plate half a turn on its pins")
    page.locator("#act").select_option("plate_turned")
    page.locator("#fit").click()
    expect(page.locator("#round")).to_have_text("Recheck 1: plate turned")
    sweep(page)
    expect(page.locator("#section-plate")).to_contain_text("Its bore is")
    page.locator("#tell").click()
    expect(page.locator("#truth-lines")).to_contain_text("The plate's bore is")


def test_a_face_that_is_squared(page: Page, server: Server) -> None:
    """A sweep of the face, the joint cleaned, swept again; squared as the result says."""
    open_exercise(page, server, "#seed=12&level=6")

    def sweep_both() -> None:
        sweep(page)
        page.get_by_role("radio", name="on the face").check()
        sweep(page)

    sweep_both()
    page.locator("#act").select_option("cleaned")
    page.locator("#fit").click()
    expect(page.locator("#round")).to_have_text("Recheck 1: joint cleaned")
    sweep_both()
    runout = page.locator("#section-face")
    expect(runout).to_contain_text("Runout (TIR)")
    told = re.search(r"Runout \(TIR\)\D+([\d.]+)", runout.text_content() or "")
    deepest = re.search(
        r"deepest toward ([\d:]+)", page.locator("#section-squaring").text_content() or ""
    )
    assert told
    assert deepest
    page.locator("#act").select_option("squared")
    page.locator("#square-at").fill("25")
    page.locator("#fit").click()
    expect(page.locator("[data-act=squared] .practice-fault")).to_have_count(2)
    page.locator("#square-runout").fill(told[1])
    page.locator("#square-at").fill(deepest[1])
    page.locator("#fit").click()
    expect(page.locator("#round")).to_have_text("Recheck 2: face squared")
    sweep_both()
    page.locator("#tell").click()
    expect(page.locator("#truth-lines")).to_contain_text(
        "The face is now really within the limit of 5.0 thou."
    )
    expect(page.locator("#truth-table")).to_contain_text("Face, recheck 2")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_the_acts_are_worded_in_spanish(page: Page, server: Server) -> None:
    page.goto(f"{server.address}practice.es.html?language=es#seed=12&level=5")
    wait_for_python(page)
    expect(page.locator("#act option").last).to_have_text("Girar la placa media vuelta")
    set_crank(page, 0)
    page.locator("#act").select_option("plate_turned")
    page.locator("#fit").click()
    expect(page.locator("#fitting .practice-fault")).to_contain_text("Haga antes el barrido")
    expect(reading(page, "rounds.0.bore.sweeps.0.0")).to_be_visible()


def type_lengths(page: Page, *, all_of_them: bool = True) -> None:
    """What the gauge shows of each length, read off its picture."""
    for name in list(LETTERS)[: None if all_of_them else 3]:
        field = page.locator(f'[name="depth.{name}"]')
        field.focus()
        expect(page.locator("#length-name")).to_contain_text(f"{LETTERS[name]}: ")
        shown = page.locator("#length-view svg text").filter(has_text=" in").text_content()
        assert shown
        field.fill(shown.removesuffix(" in"))


def test_a_gearbox_that_is_put_right_by_a_spacer(page: Page, server: Server) -> None:
    open_exercise(page, server, "#seed=2&level=7")
    sweep(page)
    type_lengths(page)
    expect(page.locator("#verdict")).to_have_text("Bore within, depth does not fit")
    expect(page.locator("#remarks")).to_contain_text("tip to the bottom of the hole")
    page.locator('[name="depth.added"]').fill("0.2")
    expect(page.locator("#verdict")).to_have_text("Within the limit")
    page.locator("#tell").click()
    expect(page.locator("#truth-lines")).to_contain_text("the gearbox really fits")
    expect(page.locator("#truth-table")).to_contain_text("shaft in the pilot bearing")
    axe.check(page, "lengths are typed")
    # By the keys beside the picture, too.
    page.locator('[name="depth.to_face"]').focus()
    page.locator("#length-on").click()
    expect(page.locator('[name="depth.to_pilot"]')).to_be_focused()
    page.locator("#length-back").click()
    expect(page.locator("#length-name")).to_contain_text("A: ")


def test_lengths_of_another_exercise_are_gone(page: Page, server: Server) -> None:
    open_exercise(page, server, "#seed=2&level=7")
    type_lengths(page, all_of_them=False)
    page.locator("#new").click()
    expect(page.locator('[name="depth.to_face"]')).to_have_value("")
    page.locator("#level").select_option("2")
    expect(page.locator("#lengths-bench")).to_be_hidden()


def test_lengths_of_a_set_are_kept_and_sent(page: Page, server: Server) -> None:
    page.goto(f"{server.address}practice.html#set=2-417.7-2&at=2")
    wait_for_python(page)
    expect(page.locator("#lengths-bench")).to_be_visible()
    type_lengths(page, all_of_them=False)
    typed = page.locator('[name="depth.to_face"]').input_value()
    page.locator("#set-back").click()
    expect(page.locator("#lengths-bench")).to_be_hidden()
    page.locator("#set-on").click()
    expect(page.locator('[name="depth.to_face"]')).to_have_value(typed)
    page.reload()
    wait_for_python(page)
    expect(page.locator('[name="depth.to_face"]')).to_have_value(typed)
