"""The first screen: readings under the thumb, what matters in one line each, the answer below."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import Page, expect

from tests.web.page import wait_for_python

if TYPE_CHECKING:
    from tests.web.server import Server

pytestmark = pytest.mark.later

# The lower edge of what is read and typed first, and the upper edge of the foot.
EDGES = """() => {
    const edge = (selector) => document.querySelector(selector).getBoundingClientRect();
    const rows = [...document.querySelectorAll('.bore-readings .rows :is(input, .sign)')];
    return {
        last: Math.max(...rows.map((each) => each.getBoundingClientRect().bottom)),
        first: Math.min(...rows.map((each) => each.getBoundingClientRect().top)),
        lines: edge('.lines').bottom,
        foot: edge('#foot').top,
        scrolled: scrollY,
        wide: document.documentElement.scrollWidth,
    };
}"""
SECOND_TEXT = "document.documentElement.style.fontSize = `${2 * 18}px`"


@pytest.mark.parametrize("language", ["", "index.es.html"])
@pytest.mark.parametrize("size", [(360, 740), (390, 844)])
def test_all_four_readings_with_their_keys_are_on_the_first_screen(
    page: Page, server: Server, size: tuple[int, int], language: str
) -> None:
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(server.address + language)
    wait_for_python(page)
    edges = page.evaluate(EDGES)
    assert edges["scrolled"] == 0
    assert edges["lines"] <= edges["first"]
    assert edges["last"] <= edges["foot"]
    for line in ("#jobs", "#checks-preparation", "#set-up"):
        expect(page.locator(f"{line} > summary")).to_be_in_viewport(ratio=1)
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("0")
    for i, text in enumerate(["0", "-8", "-16", "-8"]):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)
    expect(page.locator("#strip-headline")).to_be_in_viewport(ratio=1)
    assert page.evaluate("scrollY") == 0


def test_on_its_side_and_in_large_text_the_readings_come_first(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    page.set_viewport_size({"width": 740, "height": 360})
    edges = page.evaluate(EDGES)
    assert edges["last"] <= edges["foot"]
    page.set_viewport_size({"width": 360, "height": 740})
    page.evaluate(SECOND_TEXT)
    edges = page.evaluate(EDGES)
    assert edges["first"] < edges["foot"]
    assert edges["first"] < edges["lines"]
    assert edges["wide"] <= 360


def test_the_set_up_is_said_in_one_line_that_opens(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    line = page.locator("#set-up-line")
    expect(line).to_have_text("thou · inside · 4 positions from 12 · turning counterclockwise")
    line.tap()
    page.locator("#contact").select_option("outside")
    page.locator("#turn").select_option("clockwise")
    page.locator('[name="units"][value="metric"]').check()
    page.locator("#shows").select_option("all_round")
    page.locator('[name="indicator.plus_when"]').select_option("plunger_out")
    expect(line).to_have_text(
        "mm · outside · 4 positions from 12 · turning clockwise · dial numbered all the way round"
        " · plus when the plunger comes out"
    )
    page.locator("#positions-choice").select_option("own")
    page.locator("#positions").fill("12 4 8")
    expect(line).to_contain_text("3 positions of your own")


def test_the_readings_may_stand_where_they_are_on_the_housing(page: Page, server: Server) -> None:
    """12 on top, 9 on the left as seen from behind; the phone remembers it, not the job."""
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#set-up > summary").tap()
    page.locator("#layout").select_option("clock")
    page.reload()
    wait_for_python(page)

    def middle(hour: int) -> tuple[float, float]:
        box = page.locator(f'[data-at="{hour}"] input').first.bounding_box()
        assert box
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    (top_x, top_y), (right_x, right_y) = middle(12), middle(3)
    (low_x, low_y), (left_x, left_y) = middle(6), middle(9)
    assert left_x < top_x < right_x
    assert top_x == pytest.approx(low_x)
    assert top_y < left_y < low_y
    assert left_y == pytest.approx(right_y)
    page.locator('[name="rounds.0.bore.sweeps.0.1"]').fill("5.5")
    page.locator("#hand .hand-row button", has_text="±").tap()
    expect(page.locator('[data-at="9"] input').first).to_have_value("-5.5")
    edges = page.evaluate(EDGES)
    assert edges["last"] <= edges["foot"]


def test_what_was_not_entered_is_one_line_and_a_reason_is_a_tap_away(
    page: Page, server: Server
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    for i, text in enumerate(["0", "-8", "-16", "-8"]):
        page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]').fill(text)
    page.locator('[name="rounds.0.bore.closing.0"]').fill("0")
    expect(page.locator("#not-entered-line")).to_contain_text("Not entered: face")
    expect(page.locator("#not-entered-list li").first).to_be_hidden()
    expect(page.locator("#steps li")).to_have_count(1)
    why = page.locator("#steps .why")
    expect(why.locator("p")).to_be_hidden()
    why.locator("summary").tap()
    expect(why.locator("p")).to_be_visible()
    # It stays open while another field changes nothing of the steps.
    page.locator("#not-entered > summary").tap()
    page.locator("#set-up > summary").tap()
    page.locator('[name="units"][value="inch"]').check()
    expect(why.locator("p")).to_be_visible()
    page.locator("#steps .go").tap()
    expect(page.locator('[name="face.radius"]')).to_be_focused()


def test_the_foot_is_silent_where_the_answer_is_on_the_screen(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#example").evaluate("button => button.click()")
    expect(page.locator("#strip")).to_be_visible()
    page.locator("#strip").tap()
    expect(page.locator("#verdict")).to_be_in_viewport()
    expect(page.locator("#strip")).to_be_hidden()


def test_what_is_done_by_hand_is_ticked_and_begins_anew_with_a_recheck(
    page: Page, server: Server
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    expect(page.locator("#checks-fit")).to_be_hidden()
    page.locator("#example").evaluate("button => button.click()")
    fit = page.locator("#checks-fit")
    expect(fit).to_be_visible()
    expect(page.locator("#checks-trim")).to_be_hidden()
    fit.locator("summary").tap()
    page.locator('[name="checklist.dowels_out"]').check()
    expect(fit.locator(".ticked")).to_have_text("1 of 8")
    page.locator("#add-round").evaluate("button => button.click()")
    expect(fit.locator(".ticked")).to_have_text("0 of 8")
    page.locator("#undo").evaluate("button => button.click()")
    expect(fit.locator(".ticked")).to_have_text("1 of 8")


def test_a_job_that_comes_back_opens_where_its_work_goes_on(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#example").evaluate("button => button.click()")
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    expect(page.locator('[data-stage="face"]')).to_have_attribute("aria-current", "step")
    page.reload()
    expect(page.locator("#headline")).to_contain_text("8.8")
    # The face is next: its place is with the readings, on the first screen.
    assert page.evaluate("scrollY") == 0
    page.locator('[name="limits.face_runout"]').evaluate(
        "e => { e.value = ''; e.dispatchEvent(new Event('input', { bubbles: true })); }"
    )
    expect(page.locator('[data-stage="fit"]')).to_have_attribute("aria-current", "step")
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
    page.reload()
    expect(page.locator("#verdict")).to_be_in_viewport()
    page.locator('[data-stage="prepare"]').tap()
    expect(page.locator("#checks-preparation")).to_be_in_viewport()


def test_the_picture_is_turned_for_who_lies_otherwise(page: Page, server: Server) -> None:
    """The bore of the example is off toward 4:45: with 9 on top that is low on the left."""
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#example").evaluate("button => button.click()")
    expect(page.locator("#drawing .region")).to_have_count(1)

    def off() -> tuple[float, float]:
        """From the crank to the bore, on the screen: to the right, and down."""
        bore = page.locator("#drawing .region").bounding_box()
        rim = page.locator("#drawing .turns circle").first.bounding_box()
        assert bore
        assert rim
        return (
            bore["x"] + bore["width"] / 2 - rim["x"] - rim["width"] / 2,
            bore["y"] + bore["height"] / 2 - rim["y"] - rim["height"] / 2,
        )

    right, down = off()
    assert right > 5
    assert down > 5
    view = page.locator("#view-choice")
    for choice, wanted in {
        "9": (-down, right),
        "3": (down, -right),
        "6": (-right, -down),
        "front": (-right, down),
    }.items():
        view.select_option(choice)
        assert off() == pytest.approx(wanted, abs=1.0)
        expect(page.locator("#view-line")).to_contain_text("the car's")
        expect(page.locator("#drawing .as-drawn")).to_be_hidden()
    page.reload()
    wait_for_python(page)
    expect(view).to_have_value("front")
    view.select_option("12")
    expect(page.locator("#view-line")).to_be_empty()
