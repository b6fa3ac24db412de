"""A dial read off its photo: by itself, or by taps under a lens; offered, and never entered."""

from __future__ import annotations

import io
import json
import math
import re
from typing import TYPE_CHECKING

import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.cases.dial_pictures import any_case
from tests.web import axe
from tests.web.page import wait_for_python
from tests.web.test_photos import add, key, opened, reading

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

# A drawn dial, first at zero, then at 15.8 divisions of 100.
DIAL = any_case("tuning", 14)


def dial_file(grey: bytes) -> bytes:
    made = io.BytesIO()
    Image.frombytes("L", (240, 240), grey).convert("RGB").save(made, "JPEG", quality=95)
    return made.getvalue()


def opened_dial(page: Page, index: int) -> None:
    key(page, index).click()
    page.locator("#dial-reader > summary").click()


def test_a_dial_is_read_off_its_photo_against_the_first_one(page: Page, server: Server) -> None:
    """What it comes to is offered, and stands in the field only when it is tapped."""
    opened(page, server)
    add(page, 0, dial_file(DIAL.first))
    add(page, 1, dial_file(DIAL.photo))
    opened_dial(page, 1)
    expect(page.locator("#dial-self")).to_be_hidden()  # the first one's reading is not known
    page.locator("#photo-close-key").click()
    reading(page, 0).fill("0")
    opened_dial(page, 1)
    axe.check(page, "a dial to be read")
    wait_for_python(page)
    page.locator("#dial-self").click()
    expect(page.locator("#dial-told")).to_contain_text("give or take")
    expect(page.locator("#dial-told")).to_contain_text("whole turns")
    assert reading(page, 1).input_value() == ""
    page.locator("#dial-enter").click()
    assert float(reading(page, 1).input_value()) == pytest.approx(DIAL.division, abs=0.3)
    expect(page.locator("#photo-view")).to_be_hidden()
    # It can be taken back as any change.
    opened_dial(page, 1)
    page.locator("#dial-divisions").fill("many")
    page.locator("#dial-self").click()
    expect(page.locator("#dial-told")).to_contain_text("Enter how many divisions")
    expect(page.locator("#dial-enter")).to_be_hidden()
    assert float(reading(page, 1).input_value()) == pytest.approx(DIAL.division, abs=0.3)


def box_of(place: Locator) -> tuple[float, float, float, float]:
    box = place.bounding_box()
    assert box
    return box["x"], box["y"], box["width"], box["height"]


def middle_of(place: Locator) -> tuple[float, float]:
    left, top, wide, high = box_of(place)
    return left + wide / 2, top + high / 2


class Tapped:
    """The drawn dial's photo, large on the screen, with the places that are to be tapped."""

    def __init__(self, page: Page, server: Server) -> None:
        """Open the second reading's photo, to be read by taps."""
        opened(page, server)
        add(page, 1, dial_file(DIAL.photo))
        wait_for_python(page)
        opened_dial(page, 1)
        view, self.page = DIAL.views[1], page
        self.picture, self.lens = page.locator("#photo-view img"), page.locator(".lens")
        self.enter = page.locator("#dial-enter")

        def at(angle: float) -> tuple[float, float]:
            turn = math.radians(view.roll + angle)
            return view.x + 70.0 * math.sin(turn), view.y - 70.0 * math.cos(turn)

        # Middle, zero and tip, in pixels of the picture.
        self.places = [(view.x, view.y), at(0.0), at(3.6 * DIAL.division)]
        page.locator("#dial-tap").click()
        expect(page.locator(".dial-mark")).to_be_focused()

    def on_screen(self, place: tuple[float, float]) -> tuple[float, float]:
        """Where a place of the picture is on the screen."""
        left, top, wide, high = box_of(self.picture)
        return left + place[0] * wide / 240, top + place[1] * high / 240

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        """Press at one place and go to another, without letting go."""
        self.page.mouse.move(*self.on_screen(start))
        self.page.mouse.down()
        self.page.mouse.move(*self.on_screen(end), steps=3)

    @property
    def value(self) -> float:
        """What the key enters."""
        expect(self.enter).to_be_visible()
        return float(self.enter.get_attribute("value") or "nan")


def test_a_dial_is_read_by_three_taps_and_by_keys(page: Page, server: Server) -> None:
    tapped = Tapped(page, server)
    for place in tapped.places:
        page.mouse.click(*tapped.on_screen(place))
    expect(tapped.lens).to_be_hidden()
    assert tapped.value == pytest.approx(DIAL.division, abs=1.5)
    # By the keys alone: the mark begins in the middle, and is moved from tap to tap.
    page.locator("#dial-tap").click()
    mark = page.locator(".dial-mark")
    expect(mark).to_be_focused()
    expect(mark).to_have_attribute("aria-label", re.compile("tap the middle of the dial.*Enter"))
    page.keyboard.press("Enter")
    expect(mark).to_have_attribute("aria-label", re.compile("tap the zero"))
    for _ in range(4):
        page.keyboard.press("Shift+ArrowUp")
    expect(tapped.lens).to_be_visible()
    page.keyboard.press("Enter")
    for _ in range(4):
        page.keyboard.press("Shift+ArrowDown")
    for _ in range(40):
        page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")
    assert tapped.value == pytest.approx(25.0, abs=0.1)
    expect(tapped.lens).to_be_hidden()
    tapped.enter.click()
    expect(reading(page, 1)).to_have_value("25")


# The brightness in the middle of the lens, beside its cross-hair, and of the picture itself there.
SEEN = """(lens) => {
    const seen = lens.getContext('2d').getImageData(lens.width / 2 + 2, lens.height / 2 + 2, 1, 1);
    return seen.data[0];
}"""


def test_a_lens_shows_what_lies_under_a_mark_that_is_dragged(page: Page, server: Server) -> None:
    """The press need not hit: what counts is where the mark is let go."""
    tapped = Tapped(page, server)
    lens, mark = tapped.lens, page.locator(".dial-mark")
    expect(lens).to_be_hidden()
    expect(lens).to_have_attribute("aria-hidden", "true")
    photo = Image.open(io.BytesIO(dial_file(DIAL.photo)))
    dialog = page.locator("#photo-view")
    for x, y in ((4.0, 4.0), (236.0, 4.0), (4.0, 236.0), (236.0, 236.0), (60.0, 8.0)):
        page.mouse.move(*tapped.on_screen((120.0, 120.0)))
        page.mouse.down()
        page.mouse.move(*tapped.on_screen((x, y)), steps=3)
        box, whole = box_of(lens), box_of(dialog)
        # All of it is to be seen, and the finger, which is over the mark, does not hide it.
        assert box[0] >= whole[0], (x, y)
        assert box[1] >= whole[1], (x, y)
        assert box[0] + box[2] <= whole[0] + whole[2], (x, y)
        off = math.dist(middle_of(lens), middle_of(mark))
        assert off > box[2] / 2 + 20, (x, y)
        grey = photo.convert("L").getpixel((int(x), int(y)))
        assert lens.evaluate(SEEN) == pytest.approx(grey, abs=25), (x, y)
        page.mouse.up()  # which sets it; begun anew
        page.locator("#dial-tap").click()
    for (x, y), (right, down) in zip(tapped.places, ((20, -9), (-15, 30), (8, 8)), strict=True):
        tapped.drag((x + right, y + down), (x, y))
        expect(lens).to_be_visible()
        page.mouse.up()
        expect(lens).to_be_hidden()
    assert tapped.value == pytest.approx(DIAL.division, abs=1.5)


def test_a_phone_that_is_turned_between_taps_keeps_those_that_were_set(
    page: Page, server: Server
) -> None:
    tapped = Tapped(page, server)
    size = page.viewport_size
    assert size
    page.mouse.click(*tapped.on_screen(tapped.places[0]))
    page.mouse.click(*tapped.on_screen(tapped.places[1]))
    wide = {"width": size["height"], "height": size["width"]}
    before = tapped.picture.evaluate("(img) => img.width")
    page.set_viewport_size(wide)  # type: ignore[arg-type]  # width and height
    page.wait_for_function("(was) => document.querySelector('#photo-view img').width !== was",
                           arg=before)  # fmt: skip
    # The mark went with the picture: it is where it was set last.
    mark = page.locator(".dial-mark")
    assert middle_of(mark) == pytest.approx(tapped.on_screen(tapped.places[1]), abs=2.0)
    mark.scroll_into_view_if_needed()
    page.mouse.click(*tapped.on_screen(tapped.places[2]))
    assert tapped.value == pytest.approx(DIAL.division, abs=1.5)


def test_a_finger_on_the_picture_scrolls_it_but_for_taps(page: Page, server: Server) -> None:
    tapped = Tapped(page, server)
    screen = page.context.new_cdp_session(page)
    dialog = page.locator("#photo-view")
    page.set_viewport_size({"width": 360, "height": 420})  # there is something to be scrolled

    def swiped() -> float:
        dialog.evaluate("(each) => { each.scrollTop = 0; }")
        x, y = tapped.on_screen((120.0, 200.0))
        for kind, far in (("Start", 0), *(("Move", 15 * i) for i in range(1, 9)), ("End", None)):
            points = [] if far is None else [{"x": x, "y": y - far}]
            screen.send("Input.dispatchTouchEvent", {"type": f"touch{kind}", "touchPoints": points})
        page.wait_for_timeout(300)
        return float(dialog.evaluate("(each) => each.scrollTop"))

    assert swiped() == 0.0
    expect(page.locator("#dial-wanted")).to_contain_text("2 of 3")
    page.locator("#photo-close-key").click()
    opened_dial(page, 1)
    assert swiped() > 20.0


def test_which_turn_it_was_is_asked_and_nothing_is_entered_without_a_tap(
    page: Page, server: Server
) -> None:
    tapped = Tapped(page, server)
    for place in tapped.places:
        page.mouse.click(*tapped.on_screen(place))
    read = tapped.value
    fold = page.locator("#dial-turns")
    choices = fold.locator("input")
    expect(choices.first).to_be_hidden()
    fold.locator("summary").click()
    expect(choices).to_have_count(5)
    expect(choices.nth(2)).to_be_checked()
    axe.check(page, "which turn it was")
    for index, more in ((3, 100), (0, -200), (2, 0), (1, -100)):
        choices.nth(index).check()
        assert tapped.value == pytest.approx(read + more)
        value = tapped.enter.get_attribute("value") or ""
        expect(tapped.enter).to_have_text(f"Enter {value.replace('-', '−')}")
    assert reading(page, 1).input_value() == ""
    tapped.enter.click()
    assert float(reading(page, 1).input_value()) == pytest.approx(read - 100)
    # The next time it begins anew.
    opened_dial(page, 1)
    expect(fold).to_be_hidden()


def test_a_dial_numbered_all_round_gets_what_its_field_takes(page: Page, server: Server) -> None:
    tapped = Tapped(page, server)
    page.evaluate("""() => {
        const shows = document.getElementById('shows');
        shows.value = 'all_round';
        shows.dispatchEvent(new Event('input', { bubbles: true }));
        shows.dispatchEvent(new Event('change', { bubbles: true }));
    }""")
    for place in tapped.places:
        page.mouse.click(*tapped.on_screen(place))
    expect(tapped.enter).to_have_attribute("value", re.compile(r"^\+1[4-7](\.\d)?$"))
    page.locator("#dial-turns summary").click()
    choice = page.locator("#dial-turns input").nth(3)
    choice.check()
    wanted = choice.input_value()
    assert wanted.startswith("+11")
    tapped.enter.click()
    expect(reading(page, 1)).to_have_value(wanted)


def test_a_picture_that_is_too_small_to_be_read_by_itself_says_so(
    page: Page, server: Server
) -> None:
    opened(page, server)
    small = io.BytesIO()
    Image.new("L", (300, 150), 90).save(small, "JPEG")
    for index in (0, 1):
        add(page, index, small.getvalue())
    reading(page, 0).fill("0")
    opened_dial(page, 1)
    wait_for_python(page)
    page.locator("#dial-self").click()
    told = re.compile("The first photo: .*too small to be read by itself")
    expect(page.locator("#dial-told")).to_have_text(told)


@pytest.mark.parametrize("kept", ["null", "5", "nonsense", "[null, 5]", '{"divisions": "50"}'])
def test_whatever_stands_where_a_dial_s_scale_is_kept_a_photo_opens(
    page: Page, server: Server, kept: str
) -> None:
    page.add_init_script(f"localStorage.setItem('sweepsheet-dial', {json.dumps(kept)})")
    opened(page, server)
    add(page, 0, dial_file(DIAL.photo))
    opened_dial(page, 0)
    expect(page.locator("#dial-divisions")).to_have_value("100")


def test_a_scale_is_remembered_for_its_rig_and_unit(page: Page, server: Server) -> None:
    opened(page, server)
    for index in (0, 1):
        add(page, index, dial_file(DIAL.photo))
    reading(page, 0).fill("0")
    wait_for_python(page)

    def scale() -> list[str]:
        fields = [page.locator(f"#dial-{name}") for name in ("divisions", "step", "way")]
        return [field.input_value() for field in fields]

    def used(divisions: str, step: str, way: str) -> None:
        page.locator("#dial-divisions").fill(divisions)
        page.locator("#dial-step").fill(step)
        page.locator("#dial-way").select_option(way)
        page.locator("#dial-self").click()
        expect(page.locator("#dial-told")).not_to_have_text(re.compile("Reading|^$"))

    def opened_with(units: str, rig: str) -> list[str]:
        if page.locator("#photo-view").is_visible():
            page.locator("#photo-close-key").click()
        page.evaluate(
            """(texts) => {
                for (const [name, text] of Object.entries(texts)) {
                    const field = document.querySelector(`[name="${name}"]`);
                    field.value = text;
                    field.dispatchEvent(new Event('input', { bubbles: true }));
                    field.dispatchEvent(new Event('change', { bubbles: true }));
                }
            }""",
            {"units": units, "rig.id": rig},
        )
        opened_dial(page, 1)
        return scale()

    assert opened_with("inch", "") == ["100", "1", "clockwise"]
    used("80", "0.5", "counter")
    assert opened_with("metric", "") == ["100", "0.01", "clockwise"]
    used("60", "0.02", "clockwise")
    assert opened_with("inch", "") == ["80", "0.5", "counter"]
    assert opened_with("inch", "long bar") == ["80", "0.5", "counter"]  # the last in that unit
    used("50", "1", "clockwise")
    assert opened_with("inch", "") == ["80", "0.5", "counter"]
    assert opened_with("metric", "") == ["60", "0.02", "clockwise"]
    assert opened_with("inch", "long bar") == ["50", "1", "clockwise"]
