"""Led through a sweep: each stop, the form behind it, the way back, wake lock and voice."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from sweepsheet.drawing.depth_measures import LETTERS
from tests.cases import forms
from tests.web import axe
from tests.web.page import PATIENCE, lose_signal, open_and_keep, open_lines, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.page import Guard
    from tests.web.server import Server

pytestmark = [pytest.mark.slow, pytest.mark.later]

SWEEP = "rounds.0.bore.sweeps.0"
# Stands for the browser's wake lock, which a browser without a screen may refuse.
SPY_LOCK = """() => {
    window.locks = { taken: 0, released: 0 };
    const wakeLock = { request: async () => {
        window.locks.taken += 1;
        return { release: async () => { window.locks.released += 1; } };
    } };
    Object.defineProperty(navigator, 'wakeLock', { get: () => wakeLock });
}"""
REFUSE_LOCK = """() => {
    const wakeLock = { request: async () => { throw new DOMException('no', 'NotAllowedError'); } };
    Object.defineProperty(navigator, 'wakeLock', { get: () => wakeLock });
}"""
STUB_VOICE = """() => {
    window.said = [];
    window.hushed = 0;
    const voices = [
        { lang: 'en-GB', localService: false, name: 'far' },
        { lang: 'de-DE', localService: true, name: 'other' },
        { lang: 'en-US', localService: true, name: 'near' },
    ];
    window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
    Object.defineProperty(window, 'speechSynthesis', { value: {
        getVoices: () => voices,
        speak: ({ text, lang, voice }) => window.said.push([text, lang, voice && voice.name]),
        cancel: () => { window.hushed += 1; },
    } });
}"""
NO_VOICE = "() => { delete window.speechSynthesis; }"


def spied(script: str) -> str:
    return f"({script})();"


def open_page(page: Page, server: Server, name: str = "") -> None:
    page.goto(server.address + name)
    wait_for_python(page)


def lead(page: Page, sweep: str = "bore", n: int = 0) -> Locator:
    return page.locator(f".{sweep}-readings button.lead").nth(n)


def field(page: Page, name: str) -> Locator:
    return page.locator(f'[name="{name}"]')


def reading(page: Page, i: int = 0) -> Locator:
    return page.locator(f"#guide-reading-{i}")


def stands_at(page: Page, text: str) -> None:
    expect(page.locator(".guide-position")).to_have_text(text, timeout=PATIENCE)


def go_on(page: Page) -> None:
    page.locator(".guide-next").click()


def type_on(page: Page, *texts: str) -> None:
    """A reading at each stop, with Next after it."""
    for text in texts:
        reading(page).fill(text)
        go_on(page)


def crank(page: Page) -> str:
    return page.locator('#guide [data-turns="crank"]').get_attribute("transform") or ""


def is_closed(page: Page) -> None:
    expect(page.locator("#guide")).to_be_hidden()
    expect(lead(page)).to_be_focused()


def test_a_whole_sweep_of_four(page: Page, server: Server) -> None:
    open_page(page, server)
    lead(page).click()
    stands_at(page, "Get ready")
    expect(page.locator(".guide-watch")).to_contain_text("zero it")
    expect(page.locator("#guide .guide-picture svg")).to_be_visible()
    go_on(page)
    seen = []
    for label, text in (("12", "0"), ("9", "-5.5"), ("6", "-11"), ("3", "-5.5")):
        stands_at(page, f"{label} o'clock")
        seen.append((page.locator(".guide-count").inner_text(), crank(page).split()[0]))
        reading(page).fill(text)
        go_on(page)
    turns = ["rotate(0", "rotate(-90", "rotate(-180", "rotate(-270"]
    assert seen == [(f"{n} of 4", turn) for n, turn in enumerate(turns, start=1)]
    stands_at(page, "Back at the start")
    expect(page.locator(".guide-short")).to_contain_text("6.2 thou off")
    type_on(page, "0")
    stands_at(page, "Swept")
    expect(page.locator(".guide-verdict")).to_contain_text("Outside the limit")
    expect(page.locator(".guide-verdict .headline")).to_contain_text("toward 6 o'clock")
    page.locator(".guide-next").click()
    is_closed(page)
    typed = [field(page, f"{SWEEP}.{i}").input_value() for i in range(4)]
    assert typed == ["0", "-5.5", "-11", "-5.5"]
    expect(field(page, "rounds.0.bore.closing.0")).to_have_value("0")
    page.reload()  # and kept, as what is typed in the form
    expect(field(page, f"{SWEEP}.2")).to_have_value("-11")


def test_eight_anticlockwise(page: Page, server: Server) -> None:
    open_page(page, server)
    open_lines(page)
    page.locator("#positions-choice").select_option("12 1:30 3 4:30 6 7:30 9 10:30")
    page.locator("#turn").select_option("anticlockwise")
    lead(page).click()
    go_on(page)
    for n, label in enumerate(("12", "10:30", "9", "7:30", "6", "4:30", "3", "1:30")):
        stands_at(page, label if ":" in label else f"{label} o'clock")
        assert crank(page).startswith(f"rotate({-45 * n} ")
        if n:
            expect(page.locator(".guide-turn")).to_contain_text("counterclockwise")
        type_on(page, str(n))
    expect(field(page, f"{SWEEP}.7")).to_have_value("7")


def test_a_face_with_a_second_dial(page: Page, server: Server) -> None:
    open_page(page, server)
    page.locator(".round details.face > summary").click()
    page.locator("#face-radius").fill("3")
    page.locator("#face-end-float").select_option("second_held")
    lead(page, "face").click()
    stands_at(page, "Get ready")
    expect(page.locator(".guide-watch")).to_contain_text("the second opposite")
    go_on(page)
    for one, two in (("1", "-1"), ("3", "3"), ("-4", "-2"), ("3", "3")):
        reading(page).fill(one)
        reading(page).press("Enter")
        expect(reading(page, 1)).to_be_focused()
        expect(page.locator(".guide-turn")).to_contain_text(
            "Push the crank to its stop the chosen way, then let go."
        )
        reading(page, 1).fill(two)
        reading(page, 1).press("Enter")
    stands_at(page, "Back at the start")
    expect(reading(page, 1)).to_be_hidden()
    expect(field(page, "rounds.0.face.sweeps.0.2")).to_have_value("-4")
    expect(field(page, "rounds.0.face.opposite.0.2")).to_have_value("-2")


def test_a_blank_the_sign_and_the_way_back(page: Page, server: Server) -> None:
    open_page(page, server)
    lead(page).click()
    go_on(page)
    reading(page).fill("7")
    page.locator(".guide-reading .sign").first.click()
    expect(field(page, f"{SWEEP}.0")).to_have_value("-7")
    expect(reading(page)).to_be_focused()
    go_on(page)
    reading(page).fill("3")
    page.locator(".guide-skip").click()
    expect(field(page, f"{SWEEP}.1")).to_have_value("")
    stands_at(page, "6 o'clock")
    page.locator(".guide-back").click()
    page.locator(".guide-back").click()
    stands_at(page, "12 o'clock")
    expect(reading(page)).to_have_value("-7")
    page.locator(".guide-leave").click()
    is_closed(page)
    lead(page).click()  # it goes on at the first blank field
    stands_at(page, "9 o'clock")


def test_a_wrong_reading_is_told_at_its_stop(page: Page, server: Server) -> None:
    open_page(page, server)
    for i, text in enumerate(("0", "o", "1", "2")):
        field(page, f"{SWEEP}.{i}").fill(text)
    lead(page).click()
    stands_at(page, "Back at the start")
    for _ in range(3):
        page.locator(".guide-back").click()
    expect(page.locator(".guide-reading .fault").first).to_contain_text("enter a number")
    expect(reading(page)).to_have_attribute("aria-invalid", "true")
    reading(page).fill("0")
    expect(page.locator(".guide-reading .fault").first).to_be_hidden()


def test_positions_that_cannot_be_read(page: Page, server: Server) -> None:
    open_page(page, server)
    open_lines(page)
    page.locator("#positions-choice").select_option("own")
    page.locator("#positions").fill("12 25 6 <b>x</b>")
    lead(page).click()
    expect(page.locator(".guide-notice")).to_contain_text("the positions can't be read")
    go_on(page)
    go_on(page)
    stands_at(page, "25 o'clock")  # as the form says it
    expect(page.locator(".guide-picture")).to_be_hidden()
    assert page.locator("#guide b").count() == 0


def test_escape_and_the_phone_s_back_button(page: Page, server: Server) -> None:
    open_page(page, server)
    entries = page.evaluate("history.length")
    for _ in range(2):
        lead(page).click()
        go_on(page)
        reading(page).fill("4")
        page.keyboard.press("Escape")
        is_closed(page)
        page.wait_for_function("() => !history.state?.guide")
    expect(field(page, f"{SWEEP}.0")).to_have_value("4")
    lead(page).click()
    expect(page.locator("#guide")).to_be_visible()
    page.go_back()
    is_closed(page)
    assert page.url == server.address
    assert page.evaluate("history.length") == entries + 1


def test_the_screen_is_kept_awake(page: Page, server: Server) -> None:
    page.add_init_script(spied(SPY_LOCK))
    open_page(page, server)
    lead(page).click()
    page.wait_for_function("() => window.locks.taken === 1 && window.locks.released === 0")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    page.wait_for_function("() => window.locks.taken === 2 && window.locks.released === 1")
    expect(page.get_by_text("The screen may go dark")).to_be_hidden()
    page.keyboard.press("Escape")
    page.wait_for_function("() => window.locks.released === window.locks.taken")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    assert page.evaluate("window.locks.taken") == 2


def test_a_refused_lock_is_told(page: Page, server: Server) -> None:
    page.add_init_script(spied(REFUSE_LOCK))
    open_page(page, server)
    lead(page).click()
    expect(page.get_by_text("The screen may go dark")).to_be_visible()


def test_the_voice(page: Page, server: Server) -> None:
    page.add_init_script(spied(STUB_VOICE))
    open_page(page, server)
    lead(page).click()
    go_on(page)
    assert page.evaluate("window.said") == []
    expect(page.get_by_text("The voice is the browser's own.")).to_be_visible()
    page.get_by_role("switch", name="Read steps out loud").check()
    go_on(page)
    said = page.evaluate("window.said")
    turn = "Turn the crank counterclockwise to 9 o'clock. For the helper at the front: clockwise."
    assert said[-1] == [f"{turn} Read the dial.", "en", "near"]
    before = page.evaluate("window.hushed")
    page.keyboard.press("Escape")
    page.wait_for_function("before => window.hushed > before", arg=before)
    page.reload()
    wait_for_python(page)
    lead(page).click()
    expect(page.get_by_role("switch", name="Read steps out loud")).to_be_checked()


def test_without_a_voice_there_is_no_switch(page: Page, server: Server) -> None:
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } });"
        "delete window.speechSynthesis; delete Window.prototype.speechSynthesis;"
    )
    open_page(page, server)
    lead(page).click()
    stands_at(page, "Get ready")
    expect(page.locator(".guide-voice")).to_be_hidden()


def test_by_keys_alone_and_once_more(page: Page, server: Server) -> None:
    open_page(page, server)
    lead(page).focus()
    page.keyboard.press("Enter")
    stands_at(page, "Get ready")
    expect(page.locator(".guide-next")).to_be_focused()
    page.keyboard.press("Enter")
    page.locator(".guide-position").press("Tab")
    for text in ("0", "-5", "-10", "-5", "0"):
        expect(reading(page)).to_be_focused()
        page.keyboard.type(text)
        page.keyboard.press("Enter")
    stands_at(page, "Swept")
    expect(page.locator(".guide-next")).to_be_focused()
    page.locator(".guide-again").press("Enter")
    stands_at(page, "Get ready")
    expect(page.locator("#guide-title")).to_have_text("Sweep 2 of the bore")
    page.keyboard.press("Enter")
    page.locator(".guide-position").press("Tab")
    page.keyboard.type("1")
    expect(field(page, "rounds.0.bore.sweeps.1.0")).to_have_value("1")
    expect(page.locator("#guide [role=status]")).to_contain_text("1 of 4. 12 o'clock")


@pytest.mark.new
def test_before_python_is_there(page: Page, server: Server, guard: Guard) -> None:
    guard.allow("library.wasm")
    page.route("**/library.wasm", lambda _: None)  # it never comes
    page.goto(server.address)
    lead(page).click()
    go_on(page)
    stands_at(page, "12 o'clock")
    expect(page.locator(".guide-picture")).to_be_hidden()
    type_on(page, "2")
    expect(field(page, f"{SWEEP}.0")).to_have_value("2")


@pytest.mark.parametrize("name", ["", "index.es.html?language=es"])
def test_accessible_by_day_and_night_and_on_a_narrow_phone(
    page: Page, server: Server, name: str
) -> None:
    open_page(page, server, name)
    page.locator(".round details.face > summary").click()
    page.locator("#face-end-float").select_option("second_held")
    lead(page, "face").click()
    for n in range(7):
        expect(page.locator(".guide-next")).to_be_visible()
        if n in (0, 2, 5, 6):
            axe.check(page, f"stop {n}")
            axe.check_large_text(page, f"stop {n}", width=320, times=1)
            axe.check_large_text(page, f"stop {n}", width=360, times=2)
        if n < 6:
            go_on(page)
    boxes = page.locator("#guide button:visible").evaluate_all(
        """all => all.map((button) => button.getBoundingClientRect())
            .map(({ width, height }) => [width, height])"""
    )
    assert boxes
    assert all(width >= 48 and height >= 48 for width, height in boxes)


@pytest.mark.parametrize("height", [640, 400])
def test_the_keys_are_in_sight_above_the_number_pad(
    page: Page, server: Server, height: int
) -> None:
    page.set_viewport_size({"width": 320, "height": height})
    open_page(page, server)
    lead(page).click()
    go_on(page)
    stands_at(page, "12 o'clock")
    for key in (page.locator(".guide-next"), page.locator(".guide-back"), reading(page)):
        box = key.bounding_box()
        assert box
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= height
        assert box["height"] >= 64


@pytest.mark.kept
def test_first_wanted_without_a_signal(page: Page, context: BrowserContext, server: Server) -> None:
    open_and_keep(page, server.address)
    page.reload()
    wait_for_python(page)
    lose_signal(context, server)
    lead(page).click()
    stands_at(page, "Get ready")
    expect(page.locator("#guide .guide-picture svg")).to_be_visible()
    assert page.locator("#guide").evaluate("dialog => getComputedStyle(dialog).position") == "fixed"


def test_the_practice_page_has_no_guide(page: Page, server: Server) -> None:
    page.goto(f"{server.address}practice.html")
    wait_for_python(page)
    expect(page.locator(".sweep").first).to_be_attached()
    assert page.locator("button.lead").count() == 0


# The lengths along the crank axis ---------------------------------------------------------------


def lead_lengths(page: Page) -> None:
    page.locator("#lengths").evaluate("part => { part.open = true; }")
    page.locator("#lengths button.lead").click()


def test_the_lengths_are_led_through_one_by_one(page: Page, server: Server) -> None:
    """From A to L into the form's own fields, to what they come to."""
    open_page(page, server)
    for i, text in enumerate(("0", "-1", "-2", "-1")):
        field(page, f"{SWEEP}.{i}").fill(text)
    lead_lengths(page)
    stands_at(page, "Get ready")
    expect(page.locator(".guide-watch")).to_contain_text("Never measure under one that hangs.")
    go_on(page)
    for n, (name, letter) in enumerate(LETTERS.items(), 1):
        stands_at(page, letter)
        expect(page.locator(".guide-count")).to_have_text(f"{n} of 12")
        expect(page.locator("#guide .guide-picture svg text")).to_have_text([letter])
        reading(page).fill(forms.DEPTH[f"depth.{name}"])
        expect(field(page, f"depth.{name}")).to_have_value(forms.DEPTH[f"depth.{name}"])
        expect(page.locator("#guide .sign").first).to_be_hidden()
        go_on(page)
    stands_at(page, "Measured")
    end = page.locator(".guide-verdict")
    expect(end).to_contain_text("Bore within, depth does not fit", timeout=PATIENCE)
    expect(end).to_contain_text("It does not fit: tip to the bottom of the hole")
    expect(end).to_contain_text("splines ahead of the hub")
    expect(page.locator(".guide-again")).to_be_hidden()
    axe.check(page, "lengths measured")
    go_on(page)
    expect(page.locator("#lengths button.lead")).to_be_focused()


def test_lengths_that_are_left_midway_are_kept_and_gone_on_with(page: Page, server: Server) -> None:
    open_page(page, server)
    lead_lengths(page)
    go_on(page)
    stands_at(page, "A")
    reading(page).fill("6.3")
    page.keyboard.press("Escape")
    expect(field(page, "depth.to_face")).to_have_value("6.3")
    lead_lengths(page)
    stands_at(page, "C")
    page.locator(".guide-skip").click()
    stands_at(page, "D")
    expect(field(page, "depth.pilot_length")).to_have_value("")
    reading(page).fill("deep")
    expect(page.locator("#guide-reading-0-fault")).to_contain_text(
        "length to the bottom of the hole", ignore_case=True, timeout=PATIENCE
    )
    expect(field(page, "depth.to_bottom")).to_have_value("deep")


def test_the_lengths_are_told_in_spanish(page: Page, server: Server) -> None:
    open_page(page, server, "index.es.html?language=es")
    lead_lengths(page)
    stands_at(page, "Preparar")
    go_on(page)
    expect(page.locator(".guide-turn")).to_contain_text("brida del cigüeñal", timeout=PATIENCE)
