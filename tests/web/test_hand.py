"""One hand: a reading moved by a step, the next one, the last change taken back."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.web.page import open_lines, wait_for_python
from tests.web.server import Server

pytestmark = pytest.mark.later

FIRST = "rounds.0.bore.sweeps.0"
# Stands for the browser's own, and tells what became of each lock.
WAKE_LOCK = """
globalThis.locks = [];
Object.defineProperty(navigator, 'wakeLock', { value: { async request() {
    const n = locks.push('held') - 1;
    return { async release() { locks[n] = 'released'; } };
} } });
"""
BOX = "e => { const b = e.getBoundingClientRect(); return [b.top, b.bottom, b.width, b.height]; }"


@pytest.fixture
def form(page: Page, server: Server) -> Page:
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    return page


def press(page: Page, text: str) -> None:
    page.locator("#hand .hand-row button", has_text=text).tap()


def test_a_reading_is_moved_by_steps_of_the_dial_and_keeps_the_focus(form: Page) -> None:
    reading = form.locator(f'[name="{FIRST}.1"]')
    expect(form.locator("#hand")).to_be_hidden()
    reading.tap()
    for _ in range(3):
        press(form, "−")
    expect(reading).to_have_value("-1.5")
    press(form, "+")
    expect(reading).to_have_value("-1")
    form.locator(f'[name="{FIRST}.1"] + .sign').tap()
    expect(reading).to_have_value("1")
    expect(reading).to_be_focused()
    form.keyboard.press("ArrowDown")
    form.keyboard.press("ArrowDown")
    form.keyboard.press("ArrowDown")
    expect(reading).to_have_value("-0.5")
    form.locator('[name="indicator.step"]').evaluate("e => { e.value = '0.1'; }")
    form.keyboard.press("ArrowUp")
    expect(reading).to_have_value("-0.4")
    form.locator("#limit").focus()
    expect(form.locator("#hand")).to_be_hidden()


def test_a_dial_that_goes_all_the_way_round_is_moved_past_its_zero(form: Page) -> None:
    form.locator("#shows").select_option("all_round")
    expect(form.locator("#turn-of-dial")).to_have_value("100")
    reading = form.locator(f'[name="{FIRST}.1"]')
    reading.tap()
    press(form, "−")
    expect(reading).to_have_value("99.5")
    press(form, "+")
    expect(reading).to_have_value("0")
    for i, text in enumerate(("0", "93.5", "80", "86.5")):
        form.locator(f'[name="{FIRST}.{i}"]').fill(text)
    expect(form.locator("#headline")).to_contain_text("11.3 thou off")
    form.locator(f'[name="{FIRST}.1"]').fill("50")
    expect(form.locator(f'[name="{FIRST}.1"]')).to_have_attribute("aria-invalid", "true")


@pytest.mark.parametrize("way", ["Enter", "key"])
def test_next_goes_round_as_the_crank_is_turned_and_then_to_the_answer(
    form: Page, way: str
) -> None:
    form.locator("#turn").select_option("anticlockwise")
    form.locator(f'[name="{FIRST}.0"]').tap()
    seen = []
    for _ in range(5):
        label = "document.activeElement.closest('.reading').querySelector('label').textContent"
        seen.append(form.evaluate(label))
        if way == "Enter":
            form.keyboard.press("Enter")
        else:
            press(form, "Next")
    assert seen == ["12 o'clock", "9 o'clock", "6 o'clock", "3 o'clock", "Back at the start"]
    expect(form.locator("#answer-title")).to_be_in_viewport()
    form.locator(".round details.face summary").tap()
    form.locator('[name="rounds.0.bore.closing.0"]').tap()
    press(form, "Next")
    assert form.evaluate("document.activeElement.name") == "rounds.0.face.sweeps.0.0"


def test_keys_and_strip_never_cover_the_field_and_are_large_enough(form: Page) -> None:
    form.set_viewport_size({"width": 320, "height": 400})  # as with a number pad below
    form.locator("#positions-choice").select_option("12 1 2 3 4 5 6 7 8 9 10 11")
    form.locator(f'[name="{FIRST}.0"]').tap()
    for i in range(12):
        name = f"{FIRST}.{i}"
        assert form.evaluate("document.activeElement.name") == name
        top, bottom, *_ = form.locator(f'[name="{name}"]').evaluate(BOX)
        foot, *_ = form.locator("#foot").evaluate(BOX)
        assert top >= 0
        assert bottom <= foot
        press(form, "Next")
    for key in form.locator("#hand .hand-row button").all():
        _, _, width, height = key.evaluate(BOX)
        assert min(width, height) >= 48
    expect(form.locator("#strip")).to_be_in_viewport()
    assert form.evaluate("document.documentElement.scrollWidth") <= 320


def test_changes_are_taken_back_one_by_one(form: Page) -> None:
    first, second = (form.locator(f'[name="{FIRST}.{i}"]') for i in (0, 1))
    expect(form.locator("#undo")).to_be_hidden()
    first.fill("1")
    second.press_sequentially("-23")
    second.tap()
    press(form, "+")
    press(form, "Undo")
    expect(second).to_have_value("-23")
    expect(second).to_be_focused()
    press(form, "Undo")
    expect(second).to_have_value("")
    expect(first).to_have_value("1")
    form.locator("#positions-choice").select_option("12 2 4 6 8 10")
    form.locator("#undo").tap()
    expect(form.locator("#positions-choice")).to_have_value("12 3 6 9")
    expect(first).to_have_value("1")
    form.locator("#undo").tap()
    expect(first).to_have_value("")
    expect(form.locator("#undo")).to_be_hidden()


def test_a_removed_sweep_a_recheck_and_the_example_are_taken_back(form: Page) -> None:
    form.locator(".more-bore").first.click()
    other = form.locator('[name="rounds.0.bore.sweeps.1.0"]')
    other.fill("4")
    form.get_by_role("button", name="Remove sweep 2 of the bore").click()
    expect(other).to_have_count(0)
    form.locator("#undo").click()
    expect(other).to_have_value("4")
    form.locator("#add-round").click()
    expect(form.locator(".round")).to_have_count(2)
    form.locator("#undo").click()
    expect(form.locator(".round")).to_have_count(1)
    form.locator("#example").click()
    expect(form.locator("#positions-choice")).to_have_value("12 1:30 3 4:30 6 7:30 9 10:30")
    form.locator("#undo").click()
    expect(other).to_have_value("4")
    expect(form.locator("#positions-choice")).to_have_value("12 3 6 9")


def test_what_was_taken_back_is_kept_and_another_job_has_nothing_to_take_back(form: Page) -> None:
    first = form.locator(f'[name="{FIRST}.0"]')
    first.fill("1")
    form.locator(f'[name="{FIRST}.1"]').fill("2")
    form.locator("#undo").click()
    expect(form.locator("#kept")).to_have_attribute("data-kept", "yes")
    form.wait_for_timeout(500)
    form.reload()
    wait_for_python(form)
    expect(first).to_have_value("1")
    expect(form.locator(f'[name="{FIRST}.1"]')).to_have_value("")
    first.fill("5")
    expect(form.locator("#undo")).to_be_visible()
    form.locator("#jobs > summary").click()
    form.locator("#job-new").click()
    expect(first).to_have_value("")
    expect(form.locator("#undo")).to_be_hidden()


def test_a_sweep_taken_otherwise_can_be_said_by_hand(form: Page) -> None:
    form.locator(".naming > summary").first.click()
    form.locator(".own-bore").click()
    own = form.locator('[name="rounds.0.bore.positions"]')
    expect(own).to_be_focused()
    own.fill("12 4 8")
    expect(form.locator(f'[name="{FIRST}.2"]')).to_be_visible()
    expect(form.locator(f'[name="{FIRST}.3"]')).to_have_count(0)
    form.locator(".own-face").click()
    expect(form.locator('[name="rounds.0.face.positions"]')).to_be_focused()
    form.locator("#companions > summary").click()
    form.locator('[data-own-of="flywheel_face"]').click()
    expect(form.locator('[name="companions.flywheel_face.positions"]')).to_be_focused()


def test_the_screen_stays_on_while_readings_are_typed_and_for_a_while_after(
    page: Page, server: Server
) -> None:
    page.add_init_script(WAKE_LOCK)
    page.clock.install()
    page.goto(server.address)
    wait_for_python(page)
    open_lines(page)
    page.locator("#limit").focus()
    assert page.evaluate("locks") == []
    page.locator(f'[name="{FIRST}.0"]').focus()
    page.keyboard.type("0")
    page.clock.run_for(4 * 60_000)
    page.locator(f'[name="{FIRST}.1"]').focus()
    page.clock.run_for(4 * 60_000)
    assert page.evaluate("locks") == ["held"]
    page.clock.run_for(2 * 60_000)
    assert page.evaluate("locks") == ["released"]
    page.keyboard.type("-3")
    assert page.evaluate("locks") == ["released", "held"]
