"""Large keys of our own for readings, and a gauge that types as a keyboard does."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.web.page import wait_for_python

if TYPE_CHECKING:
    from tests.web.server import Server

pytestmark = pytest.mark.later

READING = '[name="rounds.0.bore.sweeps.0.{i}"]'
EVERYWHERE = "localStorage.setItem('sweepsheet-pad', 'all')"
NOWHERE = "localStorage.setItem('sweepsheet-pad', 'none')"


def opened(page: Page, address: str) -> Page:
    page.goto(address)
    wait_for_python(page)
    return page


def reading(page: Page, i: int) -> Locator:
    return page.locator(READING.format(i=i))


def press(page: Page, keys: str, pad: str = "#hand .pad") -> None:
    """Press keys of the pad by their signs, with a blank between."""
    for key in keys.split():
        page.locator(f"{pad} button", has_text=key).first.tap()


@pytest.mark.parametrize("size", [(360, 740), (390, 844), (740, 360)])
def test_a_sweep_is_typed_by_large_keys_above_which_its_field_is_seen(
    page: Page, server: Server, size: tuple[int, int]
) -> None:
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.add_init_script(EVERYWHERE)
    opened(page, server.address)
    reading(page, 0).tap()
    for i, keys in enumerate(["0 Next", "8 ± Next", "1 6 ± Next", "7 ½ ▲ ± Next"]):
        expect(reading(page, i)).to_be_focused()
        assert reading(page, i).get_attribute("inputmode") == "none"
        field, foot = reading(page, i).bounding_box(), page.locator("#foot").bounding_box()
        assert field
        assert foot
        assert field["y"] + field["height"] <= foot["y"]
        press(page, keys)
    assert [reading(page, i).input_value() for i in range(4)] == ["0", "-8", "-16", "-8"]
    expect(page.locator("#headline")).to_contain_text("off, toward 6 o'clock")
    least = 43 if size[1] < 400 else 56
    for key in page.locator("#hand .pad button").all():
        box = key.bounding_box()
        assert box
        assert box["height"] >= least
        assert box["width"] >= 56


def test_half_mark_erase_and_undo(page: Page, server: Server) -> None:
    page.add_init_script(EVERYWHERE)
    opened(page, server.address)
    field = reading(page, 1)
    field.tap()
    for keys, text in {
        "½": "0.5", "½ ": "", "3 ½": "3.5", "½  ": "3", ". .": "3.", "2 ½": "3.2", "⌫ ⌫": "3",
        "▼": "2.5", "±": "-2.5", "Undo": "",
    }.items():  # fmt: skip
        press(page, keys)
        expect(field).to_have_value(text)
        expect(field).to_be_focused()
    field.select_text()
    press(page, "7")
    expect(field).to_have_value("7")
    field.select_text()
    press(page, "⌫")
    expect(field).to_have_value("")


def test_in_spanish_half_has_a_comma(page: Page, server: Server) -> None:
    page.add_init_script(EVERYWHERE)
    opened(page, f"{server.address}index.es.html?language=es")
    reading(page, 0).tap()
    press(page, "4 ½")
    expect(reading(page, 0)).to_have_value("4,5")


def test_the_guide_has_it_unless_the_phone_s_own_was_chosen(page: Page, server: Server) -> None:
    opened(page, server.address)
    reading(page, 0).tap()
    expect(page.locator("#hand .pad")).to_be_hidden()
    assert reading(page, 0).get_attribute("inputmode") == "decimal"
    page.locator(".lead").first.tap()
    page.locator(".guide-next").tap()
    expect(page.locator("#guide .pad")).to_be_hidden()
    field = page.locator("#guide-reading-0")
    field.tap()
    assert field.get_attribute("inputmode") == "none"
    press(page, "0", "#guide .pad")
    page.locator(".guide-next").tap()
    expect(field).to_be_focused()
    press(page, "5 ½ ±", "#guide .pad")
    expect(reading(page, 1)).to_have_value("-5.5")
    page.locator(".guide-leave").tap()
    page.locator("#set-up > summary").tap()
    page.locator("#pad-choice").select_option("none")
    page.reload()
    wait_for_python(page)
    page.locator(".lead").first.tap()
    field.tap()
    expect(page.locator("#guide .pad")).to_be_hidden()
    assert field.get_attribute("inputmode") == "decimal"


# As a gauge sends its figure before Enter: with signs and zeros.
FIGURES = ["+0.0", "-005.5", "-11.00", "-05.5"]


def test_a_gauge_types_a_whole_sweep_into_the_form(page: Page, server: Server) -> None:
    opened(page, server.address)
    reading(page, 0).focus()
    for figure in [*FIGURES, "+000.0"]:
        page.keyboard.type(figure)
        page.keyboard.press("Enter")
    assert [reading(page, i).input_value() for i in range(4)] == FIGURES
    expect(page.locator('[name="rounds.0.bore.closing.0"]')).to_have_value("+000.0")
    expect(page.locator("#headline")).to_contain_text("thou off, toward 6 o'clock")
    # Once more with nowhere to go: it does no harm.
    page.keyboard.type("7.5")
    page.keyboard.press("Enter")
    assert [reading(page, i).input_value() for i in range(4)] == FIGURES


def test_a_gauge_types_a_whole_sweep_into_the_guide(page: Page, server: Server) -> None:
    """On a phone no field has the focus there: the figure finds it."""
    opened(page, server.address)
    page.locator(".lead").first.tap()
    page.locator(".guide-next").tap()
    for figure in [*FIGURES, "0"]:
        page.keyboard.type(figure)
        page.keyboard.press("Enter")
    assert [reading(page, i).input_value() for i in range(4)] == FIGURES
    expect(page.locator('[name="rounds.0.bore.closing.0"]')).to_have_value("0")
    expect(page.locator(".guide-verdict")).to_contain_text("off, toward 6 o'clock")
