"""The practice housing in the page: turn the crank, note, fit, sweep again, and see the truth."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from sweepsheet.job.model import Dowel
from sweepsheet.practice.housing import TURN, bore_after, true_housing_of
from tests.web.page import wait_for_offline, wait_for_python

if TYPE_CHECKING:
    from collections.abc import Callable

    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.page import Guard
    from tests.web.server import Server

pytestmark = pytest.mark.later

THOU = 0.0254
SEED, LEVEL = 417, 2
OFFSET_AND_TIR = re.compile(r"([\d.]+) thou off, .*\(TIR ([\d.]+) thou\)")
PLUS_MINUS = re.compile(r"± ([\d.]+) thou")


def open_exercise(page: Page, server: Server, named: str = f"#seed={SEED}&level={LEVEL}") -> None:
    page.goto(f"{server.address}practice.html{named}")
    wait_for_python(page)
    expect(page.locator("#crank-view svg")).to_be_visible()


def reading(page: Page, name: str) -> Locator:
    return page.locator(f'[name="{name}"]')


def set_crank(page: Page, degrees: int) -> None:
    """Put the slider where a key or finger would."""
    page.locator("#crank").evaluate(
        """(slider, degrees) => {
            slider.value = degrees;
            slider.dispatchEvent(new Event('input', { bubbles: true }));
        }""",
        degrees,
    )


def sweep(page: Page) -> None:
    """Note four readings and the return to zero."""
    for degrees in (0, 90, 180, 270, TURN):
        set_crank(page, degrees)
        page.locator("#note").click()


def figures(page: Page) -> tuple[float, float]:
    """The offset that the page found, and its plus or minus."""
    offset = OFFSET_AND_TIR.search(page.locator("#headline").inner_text())
    doubt = PLUS_MINUS.search(page.locator("#figures").text_content() or "")
    assert offset
    assert doubt
    return float(offset[1]), float(doubt[1])


def angle_of(page: Page, what: str) -> float:
    """The angle to which a part of the drawing is turned."""
    turned = page.locator(f'[data-turns="{what}"]').get_attribute("transform") or ""
    return float(turned.removeprefix("rotate(").split()[0])


def test_a_whole_exercise(page: Page, server: Server) -> None:
    """Sweep, read the answer, fit what it says, sweep again, and see that it was so."""
    open_exercise(page, server)
    hidden = true_housing_of(SEED, LEVEL)
    sweep(page)
    found, doubt = figures_when(page, "As found")
    assert abs(found - hidden.center.length / THOU) <= doubt + 0.5
    expect(page.locator("#verdict-text")).to_have_text("Outside the limit")
    expect(page.locator("#to-do")).to_contain_text("Fit 21 thou offset dowels, both aimed at 5")
    assert not page.locator("#truth").is_visible()

    page.locator("#fit-offset").select_option("21")
    page.locator("#fit-aim").fill("5")
    page.locator("#fit").click()
    expect(page.locator("#round")).to_have_text("Recheck 1: 21 thou dowels, aimed at 5 o'clock")
    expect(page.locator("#old-answer")).to_be_visible()
    sweep(page)
    expect(reading(page, "rounds.1.bore.closing.0")).not_to_have_value("")
    expect(page.locator("#old-answer")).to_be_hidden()
    now = bore_after(hidden, [Dowel(21.0 * THOU, 150.0)]).length / THOU
    expect(page.locator("#headline")).to_contain_text("thou off")
    page.wait_for_function("() => !document.querySelector('#shown.stale')")
    for _ in range(100):  # each reading is answered; the last answer counts
        found, doubt = figures(page)
        if abs(found - now) <= doubt + 0.5:
            break
        page.wait_for_timeout(50)
    assert abs(found - now) <= doubt + 0.5

    page.locator("#tell").click()
    rows = page.locator("#truth-table tr")
    expect(rows).to_have_count(4)
    told = OFFSET_AND_TIR.search(rows.nth(2).inner_text())
    assert told
    assert float(told[1]) == pytest.approx(now, abs=0.06)
    expect(rows.nth(1)).to_contain_text("within the ±")
    expect(rows.nth(2)).to_contain_text("within the ±")


def figures_when(page: Page, name: str) -> tuple[float, float]:
    """The figures, once the round's answer is there."""
    expect(page.locator("#round")).to_have_text(name)
    expect(page.locator("#headline")).to_contain_text("thou off")
    return figures(page)


def round_the_crank(page: Page) -> Callable[[float], tuple[float, float]]:
    """Places on the screen round the crank, by clock angle."""
    page.locator("#bench .choice").evaluate("choice => choice.scrollIntoView()")
    box = page.locator(".grip").bounding_box()
    assert box
    x, y, r = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2, box["width"] / 2.5

    def at(degrees: float) -> tuple[float, float]:
        turn = math.radians(degrees)
        return x + r * math.sin(turn), y - r * math.cos(turn)

    return at


def test_a_touch_turns_the_crank_and_leaves_the_page_where_it_is(
    page: Page, server: Server
) -> None:
    """From 12 down to 6 on the right, where a finger elsewhere would scroll."""
    open_exercise(page, server)
    at = round_the_crank(page)
    screen = page.context.new_cdp_session(page)

    def touch(kind: str, degrees: float | None) -> None:
        points = [] if degrees is None else [dict(zip("xy", at(degrees), strict=True))]
        screen.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    before = page.evaluate("scrollY")
    touch("touchStart", 0)
    for degrees in range(5, 181, 5):
        touch("touchMove", degrees)
    touch("touchEnd", None)
    page.wait_for_function("() => document.querySelector('#crank').value >= 178")
    assert page.evaluate("scrollY") == before
    assert angle_of(page, "crank") == pytest.approx(180.0, abs=2.0)


def test_a_finger_turns_the_crank_and_the_dial_follows(page: Page, server: Server) -> None:
    """Dragged a quarter round from 12 to 3, past where the readings are taken."""
    open_exercise(page, server)
    at = round_the_crank(page)
    page.mouse.move(*at(0))
    page.mouse.down()
    seen = []
    for degrees in range(5, 91, 5):
        page.mouse.move(*at(degrees))
        seen.append(angle_of(page, "needle"))
    page.mouse.up()
    assert angle_of(page, "crank") == pytest.approx(90.0, abs=1.5)
    assert len(set(seen)) > 12, "the needle moves all the way"
    expect(page.locator("#note")).to_have_text(re.compile(r"Note \S+ at 3 o'clock"))
    expect(page.locator("#crank")).to_have_attribute(
        "aria-valuetext", re.compile(r"^(3 o'clock|[23]:\d\d): \S+ thou$")
    )
    page.mouse.move(*at(90))
    page.mouse.down()
    for degrees in range(90, 500, 10):
        page.mouse.move(*at(degrees))
    page.mouse.up()
    assert page.locator("#crank").input_value() == str(TURN), "a turn has an end"
    expect(page.locator("#note")).to_contain_text("back at 12 o'clock")


def test_keys_alone_will_do(page: Page, server: Server) -> None:
    open_exercise(page, server)
    page.locator("#crank").focus()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    assert angle_of(page, "crank") == 4.0
    expect(page.locator("#note")).to_be_enabled()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    expect(page.locator("#note")).to_be_disabled()
    page.keyboard.press("End")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(reading(page, "rounds.0.bore.closing.0")).not_to_have_value("")


def test_who_wants_no_motion_gets_none(page: Page, server: Server) -> None:
    page.emulate_media(reduced_motion="reduce")
    open_exercise(page, server)
    page.locator("#on").click()
    assert page.locator("#crank").input_value() == "90"
    page.locator("#back").click()
    assert page.locator("#crank").input_value() == "0"


def test_typed_readings_do_as_well_as_noted_ones(page: Page, server: Server) -> None:
    """Level 1, in the other sense and the other way round: 9 comes second."""
    open_exercise(page, server, "#seed=5&level=1")
    page.locator("#set-up summary").click()
    page.locator("#plus-when").select_option("plunger_out")
    page.locator("#turn").select_option("anticlockwise")
    hidden = true_housing_of(5, 1)
    expect(page.locator("#rounds .reading label").nth(1)).to_have_text("9 o'clock")
    c = (hidden.center.x / THOU, hidden.center.y / THOU)
    first = c[1]
    # Plus when the plunger comes out: the dial rises toward where the bore is off.
    readings = [first, -c[0], -c[1], c[0]]
    for i, value in enumerate(readings):
        text = f"{round((value - first) * 2) / 2:g}"
        reading(page, f"rounds.0.bore.sweeps.0.{i}").fill(text)
    found, _ = figures_when(page, "As found")
    assert found == pytest.approx(hidden.center.length / THOU, abs=0.4)


@pytest.mark.parametrize(
    "named",
    ["#seed=0&level=1", "#seed=<img src=x onerror=alert(1)>", "#seed=%00%FF", "#seed=1e99"],
)
def test_a_hostile_address_is_a_fault_at_its_field(page: Page, server: Server, named: str) -> None:
    """... and a new exercise puts it right."""
    page.goto(f"{server.address}practice.html{named}")
    wait_for_python(page)
    expect(page.locator("#seed")).to_have_attribute("aria-invalid", "true")
    expect(page.locator(".practice-fault").first).to_contain_text("number of the exercise")
    assert page.locator("main img").count() == 0
    page.locator("#new").click()
    expect(page.locator("#crank-view svg")).to_be_visible()
    expect(page.locator("[aria-invalid]")).to_have_count(0)
    assert re.search(r"#seed=\d{1,6}&level=1$", page.url)


def test_another_address_is_another_exercise(page: Page, server: Server) -> None:
    open_exercise(page, server)
    sweep(page)
    expect(reading(page, "rounds.0.bore.sweeps.0.1")).not_to_have_value("")
    page.evaluate("location.hash = '#seed=99&level=3'")
    expect(page.locator("#title")).to_have_text("Exercise 99, level 3")
    expect(reading(page, "rounds.0.bore.sweeps.0.1")).to_have_value("")
    expect(page.locator("#level")).to_have_value("3")


def test_dowels_aimed_at_nothing_are_a_fault_and_are_not_fitted(page: Page, server: Server) -> None:
    open_exercise(page, server)
    page.locator("#fit-offset").select_option("7")
    page.locator("#fit-aim").fill("25")
    page.locator("#fit").click()
    expect(page.locator("#fit-aim")).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#fitting .practice-fault")).to_contain_text("such as 10:30")
    expect(page.locator("#round")).to_have_text("As found")


def test_the_face_is_swept_with_the_same_dial(page: Page, server: Server) -> None:
    open_exercise(page, server, "#seed=12&level=3")
    sweep(page)
    page.get_by_role("radio", name="on the face").check()
    expect(reading(page, "rounds.0.face.sweeps.0.0")).to_be_visible()
    expect(page.locator("#crank-view desc")).to_have_text(re.compile("rear face"))
    sweep(page)
    expect(page.locator("#section-face")).to_contain_text("Runout (TIR)")
    expect(page.locator("#section-pilot")).to_be_visible()


def test_what_the_figures_are_is_told_and_stays_open(page: Page, server: Server) -> None:
    open_exercise(page, server)
    sweep(page)
    page.locator("#sure > summary").click()
    words = page.locator("#answer .meanings").first
    expect(words.locator("dd").first).to_be_hidden()
    words.locator("summary").click()
    expect(words).to_contain_text("twice the offset")
    before = page.locator("#headline").inner_text()
    reading(page, "rounds.0.bore.sweeps.0.1").fill("-30")
    expect(page.locator("#headline")).not_to_have_text(before)
    expect(words.locator("dd").first).to_be_visible()


def test_the_droop_can_be_measured(page: Page, server: Server) -> None:
    open_exercise(page, server)
    sweep(page)
    expect(page.locator("#shown")).to_contain_text("sag of the holder was not measured")
    page.locator("#measure-droop").click()
    expect(page.locator("#shown")).not_to_contain_text("sag of the holder was not measured")
    assert page.locator("#sag").input_value() != ""


@pytest.mark.kept
def test_it_works_without_a_signal(
    page: Page, server: Server, context: BrowserContext, guard: Guard
) -> None:
    """Opened once from the main page's own link, then with the server gone."""
    guard.allow("ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|Failed to fetch")
    page.goto(server.address)
    page.get_by_role("link", name="Practice").click()
    wait_for_python(page)
    wait_for_offline(page)
    context.set_offline(offline=True)
    server.stop()
    page.goto("about:blank")  # so that it is opened anew: another part of the address alone is not
    open_exercise(page, server, "#seed=31&level=1")
    expect(page.locator("#title")).to_have_text("Exercise 31, level 1")
    sweep(page)
    expect(page.locator("#headline")).to_contain_text("thou off")


def test_turning_asks_nothing_of_python(page: Page, server: Server) -> None:
    """A whole turn is in the page, so that the dial follows at once however slow the phone."""
    page.add_init_script(
        """const { postMessage } = Worker.prototype;
        window.asked = 0;
        Worker.prototype.postMessage = function (...given) {
            if (given[0].text) window.asked++;
            return postMessage.apply(this, given);
        };"""
    )
    open_exercise(page, server)
    before = page.evaluate("asked")
    assert before > 0
    for degrees in range(0, TURN + 1, 10):
        set_crank(page, degrees)
        assert angle_of(page, "crank") == degrees
    assert page.evaluate("asked") == before


def test_every_part_of_the_drawings_is_shown(page: Page, server: Server) -> None:
    """No rule of another part of the house hides or hollows one."""
    open_exercise(page, server)
    sweep(page)
    expect(page.locator("#drawing svg")).to_be_visible()
    hidden = page.evaluate(
        """[...document.querySelectorAll('svg.drawing *')]
            .filter((part) => !part.closest('defs, title, desc'))
            .filter((part) => getComputedStyle(part).display === 'none')
            .map((part) => part.outerHTML)"""
    )
    assert hidden == []
    filled = page.locator("svg.drawing .paper")
    assert filled.count() > 4
    assert "none" not in filled.evaluate_all("parts => parts.map((p) => getComputedStyle(p).fill)")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_everything_can_be_hit_and_nothing_sticks_out(
    page: Page, server: Server, scheme: str
) -> None:
    """At 360 px: no sideways scroll, and every target 48 px high."""
    page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    open_exercise(page, server)
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    heights = page.locator("button:visible, input:visible:not([type=radio]), select:visible")
    for target in heights.all():
        box = target.bounding_box()
        assert box
        assert box["height"] >= 47.9, target.evaluate("e => e.outerHTML")


def test_dowels_of_one_housing_are_not_fitted_to_the_next(page: Page, server: Server) -> None:
    """Fitted and, before Python has answered, begun anew with another housing."""
    open_exercise(page, server)
    page.evaluate(
        """() => {
            document.getElementById('fit-offset').selectedIndex = 1;
            document.getElementById('fit-aim').value = '12';
            for (const id of ['fit', 'new']) document.getElementById(id).click();
        }"""
    )
    expect(page.locator("#title")).not_to_contain_text(str(SEED))
    page.wait_for_timeout(1000)  # for an answer that would come too late
    assert page.locator("#rounds details").count() == 1
    assert page.locator('[name="exercise.part"]').first.is_checked()
