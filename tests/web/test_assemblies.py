"""Other assemblies than a bellhousing on a crank: chosen at the start, told in their own words."""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import TYPE_CHECKING, get_args

import pytest
from playwright.sync_api import expect

from sweepsheet.job.assembly import LACKS, Assembly
from tests.core.words.test_assemblies import foreign
from tests.web.page import (
    PATIENCE,
    Guard,
    lose_signal,
    make_share,
    open_and_keep,
    open_lines,
    until,
    wait_for_python,
    wait_while,
)

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Page, Route

    from tests.web.server import Server

pytestmark = pytest.mark.later

ASSEMBLIES = get_args(Assembly)
# A folder to put a picture of each into, for people to look at.
PICTURES = os.environ.get("ASSEMBLY_PICTURES")
# What is put on what is chosen from a list of all of them, each in its own words.
CHOICE = "#assembly"
# Every text in sight, but for that list.
SEEN = """() => {
    const found = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const part = node.parentElement;
        const isSeen = (part.closest('select') ?? part).checkVisibility();
        if (part.closest('#assembly, script, style, footer, #paper') || !isSeen) continue;
        if (node.data.trim()) found.push(node.data.trim());
    }
    return found;
}"""
HEADS = {
    "converter": ("converter housing", "crank", "Transmission"),
    "transfer_case": ("transfer case", "output shaft", "Transfer case"),
    "pump": ("pump", "driving shaft", "Pump"),
    "other": ("any bore", "shaft", "Part"),
}  # fmt: skip


def choose(page: Page, assembly: str) -> None:
    open_lines(page)
    page.locator(CHOICE).select_option(assembly)
    if assembly:
        until(page, "data-assembly", assembly)


def type_readings(page: Page, number: int, *readings: str) -> None:
    for i, text in enumerate((*readings, "0")):
        place = f"sweeps.0.{i}" if i < len(readings) else "closing.0"
        page.locator(f'[name="rounds.{number}.bore.{place}"]').fill(text)


def lines_of(page: Page) -> list[str]:
    """Every text in sight once all parts of the page are open."""
    page.evaluate("for (const part of document.querySelectorAll('details')) part.open = true")
    lines: list[str] = page.evaluate(SEEN)
    return lines


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_one_is_chosen_typed_and_answered_in_its_words(
    page: Page, server: Server, assembly: Assembly
) -> None:
    """On a phone: chosen, swept, offset dowels fitted, swept again; every word in sight fits."""
    page.goto(server.address)
    wait_for_python(page)
    choose(page, assembly)
    title, carried, unit = HEADS[assembly]
    expect(page.locator("#set-up-line")).to_contain_text(f"{title} · thou")
    expect(page.locator('label[for="contact"]')).to_have_text(
        f"The dial, carried by the {carried}, touches"
    )
    expect(page.locator('label[for="about-gearbox"]')).to_have_text(unit)
    expect(page.locator("#limit")).to_have_value("")
    expect(page.locator("#face-limit")).to_have_value("")
    type_readings(page, 0, "0", "-11", "-22", "-11")
    until(page, "data-answer", "answer")
    expect(page.locator("#verdict")).to_have_text("No limit to judge by", timeout=PATIENCE)
    expect(page.locator("#steps")).to_contain_text("Enter the manufacturer's limit")
    page.locator("#limit").fill("5")
    expect(page.locator("#verdict")).to_have_text("Outside the limit")
    expect(page.locator("#then-part")).to_contain_text("Fit 14 thou offset dowels")
    if PICTURES:
        page.locator("#verdict").scroll_into_view_if_needed()
        page.screenshot(path=Path(PICTURES) / f"{assembly}-answer.png", full_page=True)
    found = {text: word for text in lines_of(page) if (word := foreign(assembly, text))}
    assert found == {}
    for place in LACKS[assembly]:
        for field in page.locator(f'[name="{place}"], [name^="{place}."]').all():
            expect(field).to_be_hidden()
    page.locator("#add-round").click()
    page.locator('[name="rounds.1.dowels.0.offset"]').fill("14")
    page.locator('[name="rounds.1.dowels.0.aim"]').fill("12")
    type_readings(page, 1, "0", "1.5", "3", "1.5")
    expect(page.locator("#verdict")).to_have_text("Within the limit")
    found = {text: word for text in lines_of(page) if (word := foreign(assembly, text))}
    assert found == {}


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_the_customer_and_the_sheet_are_told_in_its_words(
    page: Page, server: Server, assembly: Assembly
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    choose(page, assembly)
    page.locator("#limit").fill("5")
    type_readings(page, 0, "0", "-11", "-22", "-11")
    until(page, "data-answer", "answer")
    make_share(page)
    paper = page.locator("#paper").text_content() or ""
    assert "what was measured" in paper
    assert foreign(assembly, paper) == ""
    page.goto(page.locator("#share-link").input_value())
    until(page, "data-view", "agrees")
    expect(page.locator("#title")).to_contain_text("alignment")
    found = {text: word for text in lines_of(page) if (word := foreign(assembly, text))}
    assert found == {}
    if PICTURES:
        page.screenshot(path=Path(PICTURES) / f"{assembly}-customer.png", full_page=True)


def test_spanish_is_spoken_of_it_too(page: Page, server: Server) -> None:
    page.goto(f"{server.address}index.es.html?language=es")
    wait_for_python(page)
    for assembly in ASSEMBLIES:
        choose(page, assembly)
        found = {text: word for text in lines_of(page) if (word := foreign(assembly, text))}
        assert found == {}
    spanish = "El reloj, llevado por el árbol, toca"
    expect(page.locator('label[for="contact"]')).to_have_text(spanish)


def test_the_way_back_finds_every_word_and_all_that_was_typed(page: Page, server: Server) -> None:
    """Through all of them and back: the page is what it was, hidden fields and usual limits too."""
    page.goto(server.address)
    wait_for_python(page)
    lines_of(page)
    page.locator('[name="housing.pilot_distance"]').fill("seven")
    page.locator('[name="depth.to_tip"]').fill("6.5")
    page.locator('[name="companions.pilot_bore.sweeps.0.0"]').fill("2")
    page.locator("#face-limit").fill("3")
    before = lines_of(page)
    for assembly in (*ASSEMBLIES, ""):
        page.locator(CHOICE).select_option(assembly)
        if assembly:
            until(page, "data-assembly", assembly)
            expect(page.locator("#limit")).to_have_value("")
            expect(page.locator("#face-limit")).to_have_value("3")
    until(page, "data-assembly", "")
    expect(page.locator("#limit")).to_have_value("5")
    expect(page.locator('[name="housing.pilot_distance"]')).to_have_value("seven")
    expect(page.locator('[name="depth.to_tip"]')).to_have_value("6.5")
    expect(page.locator('[name="companions.pilot_bore.sweeps.0.0"]')).to_have_value("2")
    after = lines_of(page)
    told = re.compile(r"Saved as you type|Being saved|Works offline|Not ready|Undo")
    assert [each for each in after if not told.search(each)] == [
        each for each in before if not told.search(each)
    ]


def test_it_comes_back_with_the_job_and_goes_with_a_new_one(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    choose(page, "pump")
    type_readings(page, 0, "0", "-1", "-2", "-1")
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    page.reload()
    until(page, "data-assembly", "pump")
    expect(page.locator("#set-up-line")).to_contain_text("pump · thou")
    expect(page.locator("#limit")).to_have_value("")
    open_lines(page)
    page.locator("#job-new").click()
    until(page, "data-assembly", "")
    expect(page.locator(CHOICE)).to_have_value("")
    expect(page.locator("#limit")).to_have_value("5")
    expect(page.locator('label[for="contact"]')).to_contain_text("carried by the crank")
    page.locator("#job-list button").first.click()
    until(page, "data-assembly", "pump")
    expect(page.locator("#limit")).to_have_value("")


def test_the_choice_is_one_step_that_can_be_taken_back(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    choose(page, "pump")
    page.locator("#undo").click()
    until(page, "data-assembly", "")
    expect(page.locator(CHOICE)).to_have_value("")
    expect(page.locator("#limit")).to_have_value("5")


def test_a_name_that_was_typed_is_not_put_into_other_words(page: Page, server: Server) -> None:
    """Though it reads as a label of the page does."""
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    page.locator("#job-name").fill("Gearbox")
    page.locator("#job-copy").click()
    expect(page.locator("#job-list")).to_contain_text("Gearbox")
    page.locator("#job-name").fill("Gearbox")
    lines_of(page)
    page.locator('[name="rounds.0.name"]').fill("Gearbox")
    choose(page, "pump")
    expect(page.locator('label[for="about-gearbox"]')).to_have_text("Pump")
    expect(page.locator("#job-list")).to_contain_text("Gearbox")
    expect(page.locator("#job-name")).to_have_value("Gearbox")


@pytest.mark.new
def test_what_is_typed_while_the_words_are_on_their_way_stays(page: Page, server: Server) -> None:
    waiting: list[Route] = []
    page.route("**/assemblies.en.json", lambda route: waiting.extend([route]))
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    lines_of(page)
    page.locator(CHOICE).select_option("pump")
    page.locator('[name="companions.crank_flange.sweeps.0.1"]').fill("1.5")
    page.locator(CHOICE).select_option("other")
    field = page.locator('[name="companions.crank_flange.sweeps.0.2"]')
    field.press_sequentially("2.")
    wait_while(page, lambda: not waiting, "The words were never asked for.")
    waiting[0].continue_()
    until(page, "data-assembly", "other")
    page.keyboard.type("5")
    expect(field).to_have_value("2.5")
    expect(page.locator('[name="companions.crank_flange.sweeps.0.1"]')).to_have_value("1.5")
    expect(page.locator('[data-companion="crank_flange"]')).to_contain_text("shaft end")


@pytest.mark.new
def test_words_that_do_not_come_are_told_and_the_job_goes_on(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow("assemblies.en.json")
    page.route("**/assemblies.en.json", lambda route: route.abort())
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    page.locator(CHOICE).select_option("pump")
    expect(page.locator("#assembly-lost")).to_contain_text("did not load")
    type_readings(page, 0, "0", "-1", "-2", "-1")
    until(page, "data-answer", "answer")
    expect(page.locator("#lengths")).to_be_hidden()
    page.unroute("**/assemblies.en.json")
    page.locator(CHOICE).select_option("other")
    until(page, "data-assembly", "other")
    expect(page.locator("#assembly-lost")).to_be_hidden()


@pytest.mark.kept
def test_it_is_chosen_without_a_signal(page: Page, server: Server, context: BrowserContext) -> None:
    open_and_keep(page, server.address)
    lose_signal(context, server)
    page.reload()
    wait_for_python(page)
    choose(page, "converter")
    expect(page.locator('label[for="about-gearbox"]')).to_have_text("Transmission")
