"""Photos beside readings: small, pixels alone, kept with the job, in its file, in no link."""

from __future__ import annotations

import base64
import hashlib
import io
import json
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from PIL import Image
from playwright.sync_api import expect

from sweepsheet.files.pictures import LARGEST_PICTURE
from tests.cases.links import unpacked
from tests.cases.pictures import COMMENT, MAKER, UP, bare_file, camera_file, segments
from tests.web import axe
from tests.web.page import make_share, new_profile, until, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext, FilePayload, Locator, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

# Holds the reading of a picture as a slow phone does.
HOLD = """
    const read = globalThis.createImageBitmap;
    globalThis.hold = () => {
        globalThis.isHeld = false;
        globalThis.free = new Promise((resolve) => { globalThis.letGo = resolve; });
    };
    globalThis.createImageBitmap = async (...all) => {
        globalThis.isHeld = true;
        await globalThis.free;
        return read.apply(globalThis, all);
    };
"""
# What the album has: the pictures as base64 by name, and the tickets.
ALBUM = """async () => {
    const all = (await indexedDB.databases()).map(({ name }) => name);
    const name = all.find((each) => each.startsWith('sweepsheet photos'));
    const asked = (request) => new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
    const db = await asked(indexedDB.open(name));
    const stores = db.transaction(['pictures', 'tickets']);
    const names = await asked(stores.objectStore('pictures').getAllKeys());
    const bytes = await asked(stores.objectStore('pictures').getAll());
    const tickets = await asked(stores.objectStore('tickets').getAllKeys());
    db.close();
    const text = (each) => btoa(Array.from(each, (byte) => String.fromCharCode(byte)).join(''));
    return { pictures: Object.fromEntries(names.map((n, i) => [n, text(bytes[i])])), tickets };
}"""
NEEDED = {0xC0, 0xC4, 0xDA, 0xDB, 0xDD}  # frame, Huffman tables, scan, quantization, restarts


def opened(page: Page, server: Server, way: str = "files", *, held: bool = False) -> Page:
    """The page with a key for a photo beside each reading."""
    if held:
        page.add_init_script(HOLD)
    page.goto(server.address)
    page.wait_for_function("() => sessionStorage.length > 0")  # a job stands in the form
    if way:
        page.locator("#set-up").evaluate("details => { details.open = true }")
        page.locator("#photos-choice").select_option(way)
        expect(key(page, 0)).to_be_visible()
        page.locator("#set-up").evaluate("details => { details.open = false }")
    page.locator("#jobs").evaluate("details => { details.open = true }")
    return page


def reading(page: Page, index: int, at: str = "rounds.0.bore.sweeps.0") -> Locator:
    return page.locator(f'[name="{at}.{index}"]')


def key(page: Page, index: int, at: str = "rounds.0.bore.sweeps.0") -> Locator:
    """The key of a reading's photo."""
    return page.locator(".reading").filter(has=reading(page, index, at)).locator("button.photo")


def as_file(name: str, data: bytes) -> FilePayload:
    kind = "application/json" if name.endswith(".json") else "image/jpeg"
    return {"name": name, "mimeType": kind, "buffer": data}


def choose(page: Page, at: Locator, jpeg: bytes, name: str = "dial.jpg") -> None:
    with page.expect_file_chooser() as waiting:
        at.click()
    waiting.value.set_files(as_file(name, jpeg))


def there(at: Locator, state: str = "there") -> None:
    expect(at).to_have_attribute("data-state", state)


def add(page: Page, index: int, jpeg: bytes, at: str = "rounds.0.bore.sweeps.0") -> str:
    """Put a photo beside a reading; its name."""
    choose(page, key(page, index, at), jpeg)
    there(key(page, index, at))
    return photo_of(page, index, at)


def photo_of(page: Page, index: int, at: str = "rounds.0.bore.sweeps.0") -> str:
    """The name of a reading's photo, as the form has it."""
    field = page.locator(f'[name="{at}.{index}.photo"]')
    return field.input_value() if field.count() else ""


def album(page: Page) -> dict[str, Any]:
    found: dict[str, Any] = page.evaluate(ALBUM)
    return found


def kept(page: Page) -> None:
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")


def photo(shade: int) -> bytes:
    """A picture that differs from the others of a test."""
    made = io.BytesIO()
    Image.new("RGB", (320, 240), (shade, 40, 200 - shade)).save(made, "JPEG")
    return made.getvalue()


# Small, and of pixels alone -----------------------------------------------------------------


def test_a_picture_is_small_upright_and_carries_nothing_but_pixels(
    page: Page, server: Server
) -> None:
    raw = camera_file()
    before = dict(segments(raw))
    assert MAKER.encode() in before[0xE1]
    assert COMMENT in before[0xFE]
    opened(page, server)
    name = add(page, 1, raw)
    jpeg = base64.b64decode(album(page)["pictures"][name])
    assert hashlib.sha256(jpeg).hexdigest()[:16] == name
    assert len(jpeg) <= LARGEST_PICTURE
    assert {kind for kind, _ in segments(jpeg)} <= NEEDED
    foreign = [content for kind, content in segments(raw) if kind not in NEEDED]
    pieces = [each[i : i + 6] for each in foreign for i in range(len(each) - 5)]
    told = [piece for piece in pieces if len(set(piece)) > 3]
    assert len(told) > 50
    assert [piece for piece in told if piece in jpeg] == []
    picture = Image.open(io.BytesIO(jpeg))
    assert picture.size == (768, 1024)
    red, green = (part.getpixel((384, 350)) for part in picture.convert("RGB").split()[:2])
    assert isinstance(red, int | float)
    assert isinstance(green, int | float)
    assert abs(red - UP[0]) < 40
    assert green < 90


def test_a_small_picture_is_not_made_larger(page: Page, server: Server) -> None:
    opened(page, server)
    name = add(page, 1, camera_file(large=False))
    jpeg = base64.b64decode(album(page)["pictures"][name])
    assert Image.open(io.BytesIO(jpeg)).size == (150, 200)


def test_the_small_grey_picture_is_that_of_the_photo(page: Page, server: Server) -> None:
    opened(page, server)
    add(page, 0, camera_file())
    (text,) = album(page)["pictures"].values()
    script = page.locator("script[type=module]").first.evaluate("script => script.src")
    found = page.evaluate(
        """async ([address, text]) => {
            const { greyOf } = await import(address);
            const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
            const { grey, width, height } = await greyOf(bytes);
            return { grey: Array.from(grey), width, height };
        }""",
        [script.replace("main.js", "photos.js"), text],
    )
    assert (found["width"], found["height"]) == (240, 240)  # of 768 x 1024, the middle
    whole = Image.open(io.BytesIO(base64.b64decode(text))).convert("L")
    expected = whole.crop((0, 128, 768, 896)).resize((240, 240))
    differences = [abs(a - b) for a, b in zip(found["grey"], expected.tobytes(), strict=True)]
    assert sum(differences) / len(differences) < 3


# Only when asked for ------------------------------------------------------------------------


def test_nothing_of_it_is_loaded_or_shown_until_it_is_asked_for(page: Page, server: Server) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    opened(page, server, way="")
    wait_for_python(page)
    page.locator("#example").click()
    until(page, "data-answer", "answer")
    expect(page.locator("button.photo")).to_have_count(0)
    assert not [name for name in asked if name.startswith("photo")]
    assert not [db for db in page.evaluate("indexedDB.databases()") if "photos" in db["name"]]
    page.locator("#set-up").evaluate("details => { details.open = true }")
    page.locator("#photos-choice").select_option("files")
    expect(key(page, 0)).to_be_visible()
    assert "photos.js" in asked


def test_the_camera_is_asked_for_by_the_tap_that_takes_the_photo(
    page: Page, server: Server
) -> None:
    opened(page, server, "camera")
    assert page.locator("#photo-camera").get_attribute("capture") == "environment"
    assert page.locator("#photo-files").get_attribute("capture") is None
    with page.expect_file_chooser() as waiting:
        key(page, 0).click()
    assert waiting.value.element.get_attribute("id") == "photo-camera"
    page.reload()  # the choice is the phone's
    expect(key(page, 0)).to_be_visible()


def test_where_a_page_keeps_nothing_it_is_said_why(page: Page, server: Server) -> None:
    page.add_init_script("Object.defineProperty(crypto, 'subtle', { value: undefined })")
    opened(page, server, way="")
    page.locator("#set-up").evaluate("details => { details.open = true }")
    page.locator("#photos-choice").select_option("files")
    expect(page.locator("#photos-told")).to_contain_text("need a page from https")


# Shown, taken away, by keys -----------------------------------------------------------------


def test_a_photo_is_shown_taken_away_brought_back_and_replaced(page: Page, server: Server) -> None:
    opened(page, server)
    reading(page, 1).fill("-5.5")
    first = add(page, 1, photo(10))
    kept(page)
    page.reload()
    there(key(page, 1))
    assert photo_of(page, 1) == first
    key(page, 1).click()
    view = page.locator("#photo-view")
    expect(view).to_contain_text("9 o'clock, bore, sweep 1")
    expect(view).to_contain_text("Reading: -5.5")
    expect(view.locator("img")).to_have_js_property("naturalWidth", 320)
    page.locator("#photo-remove-key").click()
    there(key(page, 1), "add")
    assert photo_of(page, 1) == ""
    page.locator("#undo").click()
    there(key(page, 1))
    key(page, 1).click()
    choose(page, page.locator("#photo-files-key"), photo(90))
    expect(page.locator('[name="rounds.0.bore.sweeps.0.1.photo"]')).not_to_have_value(first)
    there(key(page, 1))
    expect(reading(page, 1)).to_have_value("-5.5")


def test_by_keys_and_by_ear(page: Page, server: Server) -> None:
    opened(page, server)
    wait_for_python(page)
    axe.check(page, "a key for a photo beside each reading")
    expect(key(page, 1)).to_have_attribute("aria-label", "Add a photo: 9 o'clock, bore, sweep 1")
    add(page, 1, photo(10))
    expect(key(page, 1)).to_have_attribute("aria-label", "Photo: 9 o'clock, bore, sweep 1")
    reading(page, 1).focus()
    page.keyboard.press("Tab")
    expect(key(page, 1)).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#photo-close-key")).to_be_focused()
    axe.check(page, "a photo, large")
    axe.check_large_text(page, "a photo, large")
    page.keyboard.press("Escape")
    expect(key(page, 1)).to_be_focused()
    page.locator("details").evaluate_all("all => all.forEach((d) => { d.open = true })")
    axe.check(page, "all parts open, a photo")


def test_a_row_with_its_photo_is_one_line_on_a_phone(page: Page, server: Server) -> None:
    opened(page, server)
    boxes = [part.bounding_box() for part in (reading(page, 1), key(page, 1))]
    assert boxes[0]
    assert boxes[1]
    assert abs(boxes[0]["y"] - boxes[1]["y"]) < 4
    assert boxes[1]["x"] + boxes[1]["width"] <= 360


# A photo goes where its reading goes --------------------------------------------------------


def test_a_photo_goes_with_its_sweep_and_its_position(page: Page, server: Server) -> None:
    """A sweep in the middle is removed, positions are changed, and taken back."""
    opened(page, server)
    for _ in range(2):
        page.locator(".more-bore").first.click()
    second, third = (f"rounds.0.bore.sweeps.{j}" for j in (1, 2))
    gone, stays = add(page, 1, photo(10), second), add(page, 2, photo(90), third)
    page.locator(".sweep h4 button").nth(1).click()
    assert [photo_of(page, i, second) for i in range(4)] == ["", "", stays, ""]
    page.locator("#undo").click()
    assert photo_of(page, 1, second) == gone
    assert photo_of(page, 2, third) == stays
    there(key(page, 1, second))
    # 9 and 6 o'clock; there is no 9 o'clock among six.
    page.locator("#positions-choice").evaluate("list => list.closest('details').open = true")
    page.locator("#positions-choice").select_option("12 2 4 6 8 10")
    assert [photo_of(page, i, second) for i in range(6)] == [""] * 6
    assert [photo_of(page, i, third) for i in range(6)] == ["", "", "", stays, "", ""]
    there(key(page, 3, third))
    page.locator("#positions-choice").select_option("12 3 6 9")
    assert photo_of(page, 1, second) == gone
    assert photo_of(page, 2, third) == stays


def test_a_new_recheck_and_a_cleared_form_have_no_old_photo(page: Page, server: Server) -> None:
    opened(page, server)
    page.locator("#add-round").click()
    at = "rounds.1.bore.sweeps.0"
    add(page, 1, photo(10), at)
    page.locator(".remove-round:visible").click()
    page.locator("#add-round").click()
    there(key(page, 1, at), "add")
    add(page, 1, photo(90), at)
    page.locator("#clear").click()
    page.locator("#add-round").click()
    there(key(page, 1, at), "add")
    kept(page)
    page.reload()
    there(key(page, 1, at), "add")


def test_a_photo_goes_with_the_first_mark(page: Page, server: Server) -> None:
    """The readings go along when the first mark is moved, and so does the photo."""
    opened(page, server)
    reading(page, 1).fill("4")
    name = add(page, 1, photo(10))
    page.locator("#marks-first").evaluate("field => field.closest('details').open = true")
    page.locator("#marks-first").fill("1:30")
    expect(reading(page, 1)).to_have_value("4")
    assert photo_of(page, 1) == name
    there(key(page, 1))


# Kept with the job --------------------------------------------------------------------------


def test_copied_deleted_brought_back_and_forgotten_with_the_job(page: Page, server: Server) -> None:
    opened(page, server)
    page.locator("#job-name").fill("One")
    name = add(page, 1, photo(10))
    page.locator("#job-copy").click()
    expect(page.locator("#job-name")).to_have_value("One, copy")
    there(key(page, 1))
    extra = add(page, 2, photo(90))
    page.locator("#job-delete").click()
    expect(page.locator("#job-name")).to_have_value("One")
    there(key(page, 1))
    there(key(page, 2), "add")
    page.locator("#job-undo").click()
    there(key(page, 2))
    assert set(album(page)["pictures"]) == {name, extra}
    page.locator("#job-delete").click()
    there(key(page, 2), "add")
    page.reload()
    there(key(page, 1))
    assert set(album(page)["pictures"]) == {name}
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-delete").click()
    there(key(page, 1), "add")
    page.reload()
    expect(key(page, 1)).to_be_visible()
    assert album(page) == {"pictures": {}, "tickets": []}


def test_another_page_on_the_job_sees_a_photo_come_and_go(
    page: Page, context: BrowserContext, server: Server
) -> None:
    opened(page, server)
    reading(page, 0).fill("0")
    kept(page)
    other = opened(context.new_page(), server)
    name = add(page, 1, photo(10))
    there(key(other, 1))
    key(page, 1).click()
    page.locator("#photo-remove-key").click()
    there(key(other, 1), "add")
    other.reload()  # the picture stays, since the first page may still take the step back
    there(key(other, 1), "add")
    page.locator("#undo").click()
    there(key(page, 1))
    there(key(other, 1))
    assert set(album(page)["pictures"]) == {name}


# Meanwhile ----------------------------------------------------------------------------------


def waiting(page: Page, server: Server, index: int = 1, jpeg: bytes | None = None) -> Page:
    """A page on which a picture is being read, and is not let go."""
    opened(page, server, held=True)
    page.locator("#job-name").fill("One")
    page.evaluate("globalThis.hold()")
    choose(page, key(page, index), jpeg or photo(10))
    page.wait_for_function("() => globalThis.isHeld")
    there(key(page, index), "waiting")
    return page


def let_go(page: Page) -> None:
    page.evaluate("globalThis.letGo()")


def test_what_is_typed_while_a_picture_is_read_stays(page: Page, server: Server) -> None:
    waiting(page, server)
    reading(page, 1).press_sequentially("-5")
    let_go(page)
    there(key(page, 1))
    expect(reading(page, 1)).to_be_focused()
    page.keyboard.type(".5")
    expect(reading(page, 1)).to_have_value("-5.5")
    name = photo_of(page, 1)
    kept(page)
    page.reload()
    expect(reading(page, 1)).to_have_value("-5.5")
    assert photo_of(page, 1) == name
    page.locator("#undo").wait_for(state="hidden")


def test_a_photo_that_is_read_goes_where_its_reading_went(page: Page, server: Server) -> None:
    """Another sweep and the positions change while it is read."""
    opened(page, server, held=True)
    page.locator(".more-bore").first.click()
    second = "rounds.0.bore.sweeps.1"
    page.evaluate("globalThis.hold()")
    choose(page, key(page, 2, second), photo(10))
    page.wait_for_function("() => globalThis.isHeld")
    page.locator(".sweep h4 button").first.click()
    page.locator("#positions-choice").evaluate("list => list.closest('details').open = true")
    page.locator("#positions-choice").select_option("12 2 4 6 8 10")
    let_go(page)
    there(key(page, 3))
    assert [bool(photo_of(page, i)) for i in range(6)] == [False, False, False, True, False, False]


def test_a_photo_whose_sweep_is_removed_meanwhile_turns_up_nowhere(
    page: Page, server: Server
) -> None:
    opened(page, server, held=True)
    page.locator(".more-bore").first.click()
    page.evaluate("globalThis.hold()")
    choose(page, key(page, 1), photo(10))
    page.wait_for_function("() => globalThis.isHeld")
    page.locator(".sweep h4 button").first.click()
    let_go(page)
    page.wait_for_timeout(500)
    assert [photo_of(page, i) for i in range(4)] == [""] * 4
    page.locator("#undo").click()  # the sweep is back, and its photo
    there(key(page, 1))


def test_a_photo_that_is_taken_back_meanwhile_stays_so(page: Page, server: Server) -> None:
    waiting(page, server)
    page.locator("#undo").click()
    there(key(page, 1), "add")
    let_go(page)
    page.wait_for_timeout(500)
    there(key(page, 1), "add")


def test_a_job_that_is_left_meanwhile_has_its_photo_and_the_other_none(
    page: Page, server: Server
) -> None:
    waiting(page, server)
    page.locator("#job-new").click()
    expect(page.locator("#job-name")).to_have_value("")
    reading(page, 0).fill("7")
    let_go(page)
    page.wait_for_timeout(500)
    there(key(page, 1), "add")
    page.locator("#job-list button").filter(has_text="One").click()
    there(key(page, 1))
    page.locator("#job-list button").first.click()
    expect(reading(page, 0)).to_have_value("7")
    there(key(page, 1), "add")


def test_a_job_that_is_copied_meanwhile_has_its_photo_in_both(page: Page, server: Server) -> None:
    waiting(page, server)
    page.locator("#job-copy").click()
    expect(page.locator("#job-name")).to_have_value("One, copy")
    let_go(page)
    there(key(page, 1))
    page.locator("#job-list button").filter(has_text="One").click()
    expect(page.locator("#job-name")).to_have_value("One")
    there(key(page, 1))


def test_a_job_that_is_deleted_meanwhile_stays_so_and_comes_back_with_its_photo(
    page: Page, server: Server
) -> None:
    waiting(page, server)
    page.locator("#job-delete").click()
    expect(page.locator("#job-undo")).to_be_visible()
    let_go(page)
    page.wait_for_timeout(500)
    there(key(page, 1), "add")
    expect(page.locator("#job-list button")).to_have_count(0)
    page.locator("#job-undo").click()
    expect(page.locator("#job-name")).to_have_value("One")
    there(key(page, 1))


def test_a_page_that_is_loaded_anew_meanwhile_goes_on(page: Page, server: Server) -> None:
    waiting(page, server, jpeg=camera_file(large=False))
    kept(page)
    page.wait_for_function(f"async () => (await ({ALBUM})()).tickets.length === 1")
    page.reload()
    there(key(page, 1))
    assert re.fullmatch("[0-9a-f]{16}", photo_of(page, 1))
    page.reload()
    there(key(page, 1))
    (text,) = album(page)["pictures"].values()
    assert MAKER.encode() not in base64.b64decode(text)
    assert album(page)["tickets"] == []  # nothing is left of it as it came


def test_a_picture_that_comes_when_the_readings_are_others_is_not_kept(
    page: Page, server: Server
) -> None:
    """The chooser was open when another page removed the sweep, or the job was changed."""
    opened(page, server)
    reading(page, 0).fill("1")
    with page.expect_file_chooser() as chooser:
        key(page, 1).click()
    page.locator("#job-new").click()
    expect(reading(page, 0)).to_have_value("")
    chooser.value.set_files(as_file("x.jpg", photo(10)))
    expect(page.locator(".photo-trouble")).to_contain_text("The readings changed meanwhile")
    there(key(page, 1), "add")


# No room, no picture ------------------------------------------------------------------------


def test_where_there_is_no_room_it_is_said_and_nothing_else_is_lost(
    page: Page, server: Server
) -> None:
    page.add_init_script(
        "navigator.storage.estimate = async () => ({ quota: 5_000_000, usage: 4_000_000 })"
    )
    opened(page, server)
    reading(page, 1).fill("4")
    choose(page, key(page, 1), photo(10))
    expect(page.locator(".photo-trouble")).to_contain_text("no room on this phone")
    there(key(page, 1), "add")
    expect(reading(page, 1)).to_have_value("4")
    assert album(page) == {"pictures": {}, "tickets": []}
    kept(page)
    page.reload()
    expect(reading(page, 1)).to_have_value("4")


def test_a_file_whose_pictures_find_no_room_opens_without_them(
    page: Page, server: Server, tmp_path: Path
) -> None:
    with_example(page, server)
    file = saved(page, tmp_path)
    reading(page, 0).fill("7")  # or the job would be here already
    page.evaluate("navigator.storage.estimate = async () => ({ quota: 5e6, usage: 4e6 })")
    page.locator("#file-open").set_input_files(file)
    expect(page.locator("#file-status")).to_contain_text("opened as a new one")
    expect(page.locator("#file-status")).to_contain_text("NOT SAVED: no room")
    expect(page.locator("#job-list button")).to_have_count(1)
    expect(reading(page, 1)).to_have_value("2")


def test_where_photos_do_not_work_a_job_that_has_some_is_opened_saved_and_printed(
    page: Page, server: Server, chromium: Browser, tmp_path: Path
) -> None:
    with_example(page, server)
    file = saved(page, tmp_path)
    names = json.loads(file.read_text("utf-8"))["photos"]
    with new_profile(chromium) as other:
        there_ = other.new_page()
        there_.add_init_script("Object.defineProperty(crypto, 'subtle', { value: undefined })")
        opened(there_, server, way="")
        wait_for_python(there_)
        there_.locator("#file-open").set_input_files(file)
        status = there_.locator("#file-status")
        expect(status).to_contain_text("opened as a new one. Photos need a page from https.")
        make_share(there_)
        figure = there_.locator("#paper .paper-photos figure")
        expect(figure).to_contain_text("The picture is not on this phone.")
        data = json.loads(saved(there_, tmp_path).read_text("utf-8"))
        assert data["photos"] == names
        assert "pictures" not in data
        expect(status).to_contain_text("Pictures not on this phone: 1.")


@pytest.mark.parametrize("raw", [b"", b"no picture", b"<svg onload=alert(1)>", bare_file()[:300]])
def test_what_is_no_picture_is_refused_in_words(page: Page, server: Server, raw: bytes) -> None:
    opened(page, server)
    choose(page, key(page, 1), raw)
    expect(page.locator(".photo-trouble")).to_contain_text("cannot open that picture")
    there(key(page, 1), "add")
    assert album(page) == {"pictures": {}, "tickets": []}


# In the job's file, on paper, and named in the link -----------------------------------------


def with_example(page: Page, server: Server) -> str:
    """The example with a photo at its second reading; the photo's name."""
    opened(page, server)
    wait_for_python(page)
    page.locator("#example").click()
    return add(page, 1, photo(10))


def saved(page: Page, tmp_path: Path, button: str = "#file-save") -> Path:
    with page.expect_download() as download:
        page.locator(button).click()
    file = tmp_path / "job.json"
    download.value.save_as(file)
    return file


def test_a_job_s_file_carries_its_photos_to_another_phone(
    page: Page, server: Server, chromium: Browser, tmp_path: Path
) -> None:
    name = with_example(page, server)
    file = saved(page, tmp_path)
    expect(page.locator("#file-status")).to_contain_text("Pictures in it: 1.")
    data = json.loads(file.read_text("utf-8"))
    assert data["photos"] == [{"at": "rounds.0.bore.sweeps.0.1", "hash": name}]
    with new_profile(chromium) as other:
        there_ = opened(other.new_page(), server, way="")
        wait_for_python(there_)
        there_.locator("#file-open").set_input_files(file)
        there(key(there_, 1))  # shown though nobody asked for photos here
        assert photo_of(there_, 1) == name
        expect(key(there_, 0)).to_have_count(0)
        assert set(album(there_)["pictures"]) == {name}
        there_.reload()
        there(key(there_, 1))


def test_all_jobs_go_into_one_file_with_their_photos(
    page: Page, server: Server, tmp_path: Path
) -> None:
    """Also the photo that was being read when its job was left."""
    waiting(page, server)
    page.locator("#job-new").click()
    expect(page.locator("#job-name")).to_have_value("")
    let_go(page)
    add(page, 2, photo(90))
    wait_for_python(page)
    data = json.loads(saved(page, tmp_path, "#file-save-all").read_text("utf-8"))
    assert [len(job["photos"]) for job in data["jobs"]] == [1, 1]
    assert len(data["pictures"]) == 2


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"sha256": "0" * 64}, "does not match its SHA-256"),
        ({"jpeg": base64.b64encode(b"<script>alert(1)</script>").decode()}, "not a picture"),
        ({"jpeg": base64.b64encode(camera_file(large=False)).decode()}, "not a picture"),
        ({"jpeg": "javascript:alert(1)"}, "not a picture"),
        ({"onload": "alert(1)"}, "onload"),
    ],
)
def test_a_file_with_a_hostile_picture_is_refused_whole(
    page: Page, server: Server, tmp_path: Path, change: dict[str, str], said: str
) -> None:
    with_example(page, server)
    file = saved(page, tmp_path)
    data = json.loads(file.read_text("utf-8"))
    data["pictures"][0] |= change
    before = album(page)
    buffer = json.dumps(data).encode()
    page.locator("#file-open").set_input_files(as_file("x.json", buffer))
    expect(page.locator("#file-status")).to_contain_text(said)
    expect(page.locator("#job-list button")).to_have_count(0)
    assert album(page) == before


def test_photos_are_on_paper_with_their_place_and_reading(page: Page, server: Server) -> None:
    with_example(page, server)
    make_share(page)
    figures = page.locator("#paper .paper-photos figure")
    expect(figures).to_have_count(1)
    expect(figures.locator("figcaption")).to_have_text("As found, bore, sweep 1, 10:30: +2")
    expect(figures.locator("img")).to_have_js_property("naturalWidth", 320)


def test_a_link_names_photos_and_the_customer_sees_which_file_is_which(
    page: Page, context: BrowserContext, server: Server, tmp_path: Path
) -> None:
    name = with_example(page, server)
    jpeg = base64.b64decode(album(page)["pictures"][name])
    file = saved(page, tmp_path)
    make_share(page)
    link = page.locator("#share-link").input_value()
    inside = unpacked(link.partition("#")[2])
    assert name in inside
    assert len(inside) < 700 < len(jpeg)
    view = context.new_page()
    view.goto(link)
    until(view, "data-view", "agrees")
    expect(view.locator("#photos-count")).to_have_text("One photo was taken")
    view.locator("#photos-part summary").click()
    axe.check(view, "photos in the customer's view")
    choose_there = view.locator("#photos-open")
    wrong = as_file("wrong.jpg", jpeg + b"x")
    choose_there.set_input_files([wrong])
    status = view.locator("#photos-status")
    expect(status).to_have_text("0 of 1 photos match. No match: wrong.jpg.")
    right = as_file("right.jpg", jpeg)
    choose_there.set_input_files([wrong, right])
    expect(status).to_have_text("1 of 1 photos match. No match: wrong.jpg.")
    row = view.locator("#photos li")
    expect(row).to_contain_text("As found, bore, sweep 1, 10:30: +2 The picture matches.")
    expect(row.locator("img")).to_have_js_property("naturalWidth", 320)
    view.reload()
    until(view, "data-view", "agrees")
    choose_there.set_input_files(file)
    expect(status).to_have_text("1 of 1 photos match.")


def test_a_job_of_one_s_own_from_a_link_tells_that_its_pictures_are_elsewhere(
    page: Page, server: Server, chromium: Browser, tmp_path: Path
) -> None:
    with_example(page, server)
    file = saved(page, tmp_path)
    make_share(page)
    link = page.locator("#share-link").input_value()
    with new_profile(chromium) as other:
        there_ = other.new_page()
        there_.goto(link)
        until(there_, "data-view", "agrees")
        there_.locator("#adopt").click()
        there(key(there_, 1), "away")
        key(there_, 1).click()
        expect(there_.locator("#photo-view")).to_contain_text("is not on this phone")
        there_.keyboard.press("Escape")
        wait_for_python(there_)
        there_.locator("#jobs").evaluate("details => { details.open = true }")
        there_.locator("#file-open").set_input_files(file)
        there(key(there_, 1))
