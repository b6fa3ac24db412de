"""A sweep on film: from a video or a burst of drawn pictures to readings, by taps alone."""

from __future__ import annotations

import base64
import io
import re
from functools import cache
from typing import TYPE_CHECKING, Any

import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.cases.dial_films import Film, any_film
from tests.cases.pictures import camera_file
from tests.cases.webm import Frame, webm
from tests.web import axe
from tests.web.page import main_of, wait_for_python
from tests.web.test_photos import HOLD

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

SWEEP = "rounds.0.bore.sweeps.0"
# What the page makes of pictures: the frames of a film in which each is held, and turned to come to
# the next, encoded as a browser encodes what it records, but without waiting for the time to pass.
ENCODE = """async ([pictures, held, turned]) => {
    const load = (text) => new Promise((resolve, reject) => {
        const image = new Image();
        image.onload = () => resolve(image);
        image.onerror = reject;
        image.src = `data:image/jpeg;base64,${text}`;
    });
    const images = await Promise.all(pictures.map(load));
    const canvas = document.createElement('canvas');
    canvas.width = 400;
    canvas.height = 320;
    const pen = canvas.getContext('2d');
    const draw = (image, share) => {
        pen.fillStyle = '#654';
        pen.fillRect(0, 0, 400, 320);
        pen.save();
        pen.translate(200 + 40 * Math.sin(Math.PI * share), 160);
        pen.rotate(share);
        pen.drawImage(image, -284, -160, 568, 320);
        pen.restore();
    };
    const chunks = [];
    const encoder = new VideoEncoder({
        output: (chunk) => {
            const bytes = new Uint8Array(chunk.byteLength);
            chunk.copyTo(bytes);
            let text = '';
            for (const byte of bytes) text += String.fromCharCode(byte);
            chunks.push([chunk.timestamp / 1000, chunk.type === 'key', btoa(text)]);
        },
        error: (error) => { throw error; },
    });
    encoder.configure({ codec: 'vp8', width: 400, height: 320, bitrate: 1e6, framerate: 12 });
    const whole = held + turned;
    for (let n = 0; ; n += 1) {
        const at = n / 12;
        const k = Math.floor(at / whole);
        const share = Math.max(0, at - k * whole - held) / turned;
        if (k >= images.length || (share && k + 1 === images.length)) break;
        draw(images[k + Math.round(share)], share);
        const frame = new VideoFrame(canvas, { timestamp: Math.round(at * 1e6) });
        encoder.encode(frame, { keyFrame: n % 12 === 0 });
        frame.close();
    }
    await encoder.flush();
    encoder.close();
    return chunks;
}"""


def jpeg(film: Film, stop: int) -> bytes:
    """The picture of a stop, in its middle."""
    stretch = film.stops[stop]
    made = io.BytesIO()
    grey = film.photo(int((stretch.start + stretch.end) / 2 / 0.2))
    picture = Image.frombytes("L", (240, 240), grey).convert("RGB")
    wide = Image.new("RGB", (853, 480), (90, 80, 70))  # as a phone takes it
    wide.paste(picture.resize((480, 480), Image.Resampling.BICUBIC), (186, 0))
    wide.save(made, "JPEG", quality=92)
    return made.getvalue()


@cache
def sweep_of(stops: int = 5) -> tuple[Film, tuple[bytes, ...]]:
    """A film of four positions and the return, and its pictures."""
    film = any_film("tuning", 1, stops=stops)
    return film, tuple(jpeg(film, i) for i in range(stops))


def truth(film: Film, stop: int) -> float:
    """What the dial reads, the first stop's reading being 0."""
    return film.stops[stop].division - film.stops[0].division


def opened(page: Page, server: Server, way: str = "files", *, positions: str = "12 3 6 9") -> Page:
    """The page with the panel for a film open."""
    page.goto(server.address)
    page.wait_for_function("() => sessionStorage.length > 0")
    page.locator("#set-up").evaluate("details => { details.open = true }")
    page.locator("#photos-choice").select_option(way)
    page.locator("#positions-choice").select_option(positions)
    page.locator("#set-up").evaluate("details => { details.open = false }")
    page.locator(".film-key").first.click()
    expect(page.locator("#film")).to_be_visible()
    page.locator("#film-divisions").fill(str(sweep_of()[0].style.divisions))
    return page


def reading(page: Page, index: int) -> Locator:
    name = f"{SWEEP}.{index}" if index < 4 else "rounds.0.bore.closing.0"
    return page.locator(f'[name="{name}"]')


def photo(page: Page, index: int) -> str:
    name = f"{SWEEP}.{index}" if index < 4 else "rounds.0.bore.closing.0"
    field = page.locator(f'[name="{name}.photo"]')
    return field.input_value() if field.count() else ""


def files(pictures: tuple[bytes, ...]) -> list[Any]:
    return [
        {"name": f"shot {i + 1}.jpg", "mimeType": "image/jpeg", "buffer": data}
        for i, data in enumerate(pictures)
    ]


def read(page: Page) -> None:
    """Wait until the work is done."""
    expect(page.locator("#film-cancel-key")).to_be_hidden(timeout=60_000)


def test_a_burst_comes_to_readings_that_are_entered_by_one_tap(page: Page, server: Server) -> None:
    film, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    expect(page.locator("#film-told")).to_have_text("5 stops: 4 positions and the return.")
    rows = page.locator(".film-stops li")
    expect(rows).to_have_count(5)
    expect(rows.nth(1)).to_contain_text("give or take")
    assert [reading(page, i).input_value() for i in range(5)] == [""] * 5
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_have_text(
        "Entered: 5. Not read, or already filled in: 0."
    )
    for i in range(5):
        assert float(reading(page, i).input_value()) == pytest.approx(truth(film, i), abs=0.3), i
    assert all(re.fullmatch("[0-9a-f]{16}", photo(page, i)) for i in range(5))
    page.locator("#undo").click()  # all of it was one step
    assert [reading(page, i).input_value() for i in range(5)] == [""] * 5
    assert [photo(page, i) for i in range(5)] == [""] * 5


def test_whole_turns_of_a_stop_are_chosen_when_asked_for(page: Page, server: Server) -> None:
    film, pictures = sweep_of()
    opened(page, server)
    goes_round = page.locator("#film-turns")
    expect(goes_round).to_be_hidden()
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    turns = page.locator("[id^=film-turn-]")
    assert not any(each.is_visible() for each in turns.all())
    goes_round.check()
    # What the first stop reads was entered by hand, turns and all.
    assert [each.is_visible() for each in turns.all()] == [False, True, True, True, True]
    axe.check(page, "the turns of a film's stops")
    turns.nth(2).select_option(index=3)
    goes_round.uncheck()  # what was chosen holds
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 5.")
    for i in range(5):
        wanted = truth(film, i) + (film.style.divisions if i == 2 else 0)
        assert float(reading(page, i).input_value()) == pytest.approx(wanted, abs=0.3), i


def filmed(page: Page, stops: int = 5, held: float = 2.2, *, is_told: bool = False) -> bytes:
    """A film of the first pictures, encoded by the browser; whether it tells how long it is."""
    texts = [base64.b64encode(each).decode() for each in sweep_of()[1][:stops]]
    made = page.evaluate(ENCODE, [texts, held, 1.4])
    frames = [Frame(round(at), is_key, base64.b64decode(text)) for at, is_key, text in made]
    return webm(frames, 400, 320, frames[-1].at_ms + 1000 / 12 if is_told else None)


@pytest.mark.slow
def test_a_film_comes_to_readings(page: Page, server: Server) -> None:
    film, _ = sweep_of()
    opened(page, server)
    data = filmed(page)
    page.locator("#film-file").set_input_files(
        {"name": "sweep.webm", "mimeType": "video/webm", "buffer": data}
    )
    reading(page, 2).press_sequentially("7.5")  # while it works
    read(page)
    expect(page.locator("#film-told")).to_have_text("5 stops: 4 positions and the return.")
    rows = page.locator(".film-stops li")
    expect(rows).to_have_count(5)
    expect(rows.nth(2)).to_contain_text("In the form: 7.5.")
    axe.check(page, "a film's stops")
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_have_text(
        "Entered: 4. Not read, or already filled in: 1."
    )
    for i in (0, 1, 3, 4):
        assert float(reading(page, i).input_value()) == pytest.approx(truth(film, i), abs=0.3), i
    expect(reading(page, 2)).to_have_value("7.5")
    replace = rows.nth(2).get_by_role("button")
    expect(replace).to_contain_text("Replace 7.5 with")
    replace.click()
    expect(reading(page, 2)).not_to_have_value("7.5")
    assert float(reading(page, 2).input_value()) == pytest.approx(truth(film, 2), abs=0.3)
    page.locator("#undo").click()
    expect(reading(page, 2)).to_have_value("7.5")


# Lets a browser that jumps in a film say that it is there, and draw the frame before for a while.
LATE = """(late) => {
    const draw = CanvasRenderingContext2D.prototype.drawImage;
    const time = Object.getOwnPropertyDescriptor(HTMLMediaElement.prototype, 'currentTime');
    let old = null;
    let until = 0;
    Object.defineProperty(HTMLMediaElement.prototype, 'currentTime', {
        ...time,
        set(seconds) {
            if (old && Math.abs(seconds - time.get.call(this)) > 0.3) {
                this.addEventListener('seeked', () => { until = performance.now() + late; });
                until = Infinity;
            }
            time.set.call(this, seconds);
        },
    });
    CanvasRenderingContext2D.prototype.drawImage = function (picture, ...places) {
        if (!(picture instanceof HTMLVideoElement)) return draw.call(this, picture, ...places);
        if (!old || performance.now() > until) {
            old = document.createElement('canvas');
            [old.width, old.height] = [picture.videoWidth, picture.videoHeight];
            draw.call(old.getContext('2d'), picture, 0, 0);
        }
        return draw.call(this, old, ...places);
    };
}"""


def late(page: Page, server: Server, milliseconds: float) -> None:
    """A film that is drawn late."""
    opened(page, server)
    data = filmed(page, is_told=True)
    page.evaluate(LATE, milliseconds)
    page.locator("#film-file").set_input_files(
        {"name": "sweep.webm", "mimeType": "video/webm", "buffer": data}
    )
    read(page)


@pytest.mark.slow
def test_a_frame_that_comes_late_is_waited_for(page: Page, server: Server) -> None:
    """Once a busy browser drew the stop before: its reading was offered for the next one."""
    film, _ = sweep_of()
    late(page, server, 80)
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 5.")
    for i in range(5):
        assert float(reading(page, i).input_value()) == pytest.approx(truth(film, i), abs=0.3), i


@pytest.mark.slow
@pytest.mark.parametrize(
    "untold",
    [
        "delete HTMLVideoElement.prototype.requestVideoFrameCallback",
        "HTMLVideoElement.prototype.requestVideoFrameCallback = () => 0",
    ],
    ids=["older", "hidden"],
)
def test_a_browser_that_does_not_tell_when_a_frame_is_shown(
    page: Page, server: Server, untold: str
) -> None:
    page.add_init_script(untold)
    """It gets on all the same; on a busy machine it may see a stop too many, and says so."""
    late(page, server, 0)
    expect(page.locator("#film-told")).to_contain_text(re.compile("(for|:) 4 positions"))
    assert page.locator(".film-stops li").count() >= 5


@pytest.mark.slow
def test_a_frame_that_does_not_come_is_not_read(page: Page, server: Server) -> None:
    late(page, server, 1e9)
    expect(page.locator("#film-told")).to_contain_text("did not reach this place in the film")
    expect(page.locator(".film-stops li")).to_have_count(5)
    expect(page.locator("#film-all-key")).to_be_disabled()


# What does not fit ------------------------------------------------------------------------------


def test_stops_that_do_not_fit_are_matched_by_hand(page: Page, server: Server) -> None:
    """A picture too many: nothing can be entered before the positions are confirmed."""
    film, pictures = sweep_of()
    opened(page, server)
    burst = files((*pictures[:2], pictures[1], *pictures[2:]))
    page.locator("#film-burst").set_input_files(burst)
    read(page)
    expect(page.locator("#film-told")).to_contain_text("6 stops for 4 positions and the return")
    enter = page.locator("#film-all-key")
    expect(enter).to_be_disabled()
    choices = page.locator("[id^=film-stop-]")
    expect(choices.nth(5)).to_have_value("")
    names = [f"{SWEEP}.2", f"{SWEEP}.3", "rounds.0.bore.closing.0"]
    for i, name in enumerate(names):
        choices.nth(3 + i).select_option(name)
    expect(page.locator("#film")).to_contain_text("Two stops have the same position.")
    expect(page.locator("#film-right-key")).to_be_disabled()
    choices.nth(2).select_option("")
    page.locator("#film-right-key").click()
    expect(enter).to_be_disabled()  # it is to be read again, by what may be another first picture
    page.locator("#film-again-key").click()
    read(page)
    enter.click()
    for i in range(5):
        expect(reading(page, i)).not_to_have_value("")
        assert float(reading(page, i).input_value()) == pytest.approx(truth(film, i), abs=0.3), i


def test_too_few_stops_are_told_and_may_be_entered_once_confirmed(
    page: Page, server: Server
) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files(pictures[:4]))
    read(page)
    expect(page.locator("#film-told")).to_contain_text("4 stops for 4 positions: no return")
    expect(page.locator("#film-all-key")).to_be_disabled()
    page.locator("#film-right-key").click()
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 4.")
    expect(reading(page, 4)).to_have_value("")
    page.locator("#film-burst").set_input_files(files(pictures[:3]))
    read(page)
    expect(page.locator("#film-told")).to_contain_text("3 stops for 4 positions and the return")


def test_what_can_not_be_read_says_why_and_its_picture_is_kept_to_be_tapped(
    page: Page, server: Server
) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    nothing = camera_file()
    page.locator("#film-burst").set_input_files(files((*pictures[:2], nothing, *pictures[3:])))
    read(page)
    expect(page.locator(".film-stops li").nth(2)).to_contain_text("Glare on the glass")
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 4.")
    expect(reading(page, 2)).to_have_value("")
    assert photo(page, 2)


def test_a_first_picture_that_can_not_be_read_stops_it(page: Page, server: Server) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files((camera_file(large=False), *pictures[1:])))
    read(page)
    expect(page.locator("#film-told")).to_contain_text("Picture 1: The picture is too small")
    expect(page.locator("#film-all-key")).to_be_disabled()
    page.locator("[id^=film-stop-]").first.select_option("")
    page.locator("#film-again-key").click()
    expect(page.locator("#film-told")).to_have_text("No stop has the first position. Choose it.")


def test_a_scale_typed_wrongly_is_said_and_mended(page: Page, server: Server) -> None:
    film, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-first").fill("zero")
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    expect(page.locator(".film-stops li").nth(1)).to_contain_text("first reading as a number")
    page.locator("#film-first").fill("12")
    page.locator("#film-again-key").click()
    read(page)
    page.locator(".film-stops li").nth(0).get_by_role("button").click()
    expect(reading(page, 0)).to_have_value("12")
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 4.")
    turn = film.style.divisions
    off = float(reading(page, 1).input_value()) - truth(film, 1) - 12
    assert min(off % turn, -off % turn) == pytest.approx(0, abs=0.3)


# Meanwhile --------------------------------------------------------------------------------------


def test_cancelled_midway_it_changes_nothing_and_what_was_typed_stays(
    page: Page, server: Server
) -> None:
    page.add_init_script(f"{HOLD} globalThis.hold();")
    _, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files(pictures))
    page.wait_for_function("() => globalThis.isHeld")
    reading(page, 1).press_sequentially("-5.5")
    page.locator("#film-cancel-key").click()
    expect(page.locator("#film-told")).to_have_text("Canceled. Nothing was changed.")
    expect(page.locator("#film-title")).to_be_focused()
    page.evaluate("globalThis.letGo()")
    page.wait_for_timeout(500)
    expect(page.locator(".film-stops li")).to_have_count(0)
    expect(reading(page, 1)).to_have_value("-5.5")
    page.locator("#film-burst").set_input_files(files(pictures))  # once more
    read(page)
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 4.")
    expect(reading(page, 1)).to_have_value("-5.5")


def test_a_film_that_is_cancelled_midway_changes_nothing(page: Page, server: Server) -> None:
    opened(page, server)
    data = filmed(page)
    page.locator("#film-file").set_input_files(
        {"name": "sweep.webm", "mimeType": "video/webm", "buffer": data}
    )
    page.wait_for_function("() => document.querySelector('#film progress').value > 4")
    reading(page, 1).press_sequentially("-5.5")
    page.locator("#film-cancel-key").click()
    expect(page.locator("#film-told")).to_have_text("Canceled. Nothing was changed.")
    page.wait_for_timeout(1000)
    expect(page.locator("#film-told")).to_have_text("Canceled. Nothing was changed.")
    expect(page.locator("#film progress")).to_be_hidden()
    expect(page.locator(".film-stops li")).to_have_count(0)
    expect(reading(page, 1)).to_have_value("-5.5")
    page.locator("#film-close-key").click()
    expect(page.locator("#film")).to_have_count(0)


@pytest.mark.slow
def test_a_film_that_does_not_go_on_is_given_up(page: Page, server: Server) -> None:
    opened(page, server)
    data = filmed(page, 1)
    page.clock.install()
    page.evaluate(
        """() => Object.defineProperty(HTMLMediaElement.prototype, 'currentTime', { set() {} })"""
    )
    page.locator("#film-file").set_input_files(
        {"name": "sweep.webm", "mimeType": "video/webm", "buffer": data}
    )
    expect(page.locator("#film progress")).to_be_visible()
    page.clock.fast_forward(19_000)
    expect(page.locator("#film-told")).to_have_text("Looking for stops…")
    page.clock.fast_forward(2_000)
    expect(page.locator("#film-told")).to_contain_text(
        "The film does not go on. Choose pictures, one per stop."
    )
    read(page)


def test_in_another_job_nothing_is_entered(page: Page, server: Server) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    reading(page, 3).fill("1")
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-new").click()
    expect(reading(page, 3)).to_have_value("")
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("The readings changed meanwhile")
    assert [reading(page, i).input_value() for i in range(5)] == [""] * 5


def test_without_pictures_where_there_is_no_room_or_none_are_wanted(
    page: Page, server: Server
) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    page.locator("#film-keep").uncheck()
    page.locator(".film-stops li").nth(0).get_by_role("button").click()
    expect(reading(page, 0)).to_have_value("0")
    assert photo(page, 0) == ""
    page.locator("#film-keep").check()
    page.evaluate("navigator.storage.estimate = async () => ({ quota: 5e6, usage: 4e6 })")
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("NOT SAVED: no room on this phone")
    expect(reading(page, 1)).not_to_have_value("")
    assert photo(page, 1) == ""


# What is no film --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "The file is empty"),
        (b"no film", "cannot open that film"),
        (b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>", "cannot open that film"),
        (b"\x1aE\xdf\xa3" + bytes(2000), "cannot open that film"),
        (b"\0\0\0\x18ftypisom" + b"\xff" * 500_000, "cannot open that film"),
    ],
)
def test_what_is_no_film_is_refused_in_words(
    page: Page, server: Server, data: bytes, said: str
) -> None:
    opened(page, server)
    reading(page, 1).fill("4")
    page.locator("#film-file").set_input_files(
        {"name": "x.mp4", "mimeType": "video/mp4", "buffer": data}
    )
    expect(page.locator("#film-told")).to_contain_text(said)
    read(page)
    expect(reading(page, 1)).to_have_value("4")
    expect(page.locator("#undo")).to_be_visible()


def test_a_burst_with_no_picture_in_it_or_too_many_is_refused(page: Page, server: Server) -> None:
    _, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-burst").set_input_files(files((pictures[0], b"<script>alert(1)</script>")))
    expect(page.locator("#film-told")).to_contain_text("cannot open that picture")
    page.locator("#film-burst").set_input_files(files((pictures[0],) * 61))
    expect(page.locator("#film-told")).to_have_text("No more than 60 pictures at once.")
    expect(page.locator(".film-stops li")).to_have_count(0)


def test_a_film_in_which_nothing_moves_or_that_is_small_or_long_says_so(
    page: Page, server: Server
) -> None:
    opened(page, server)
    data = filmed(page, 1, 3.0)
    chosen: Any = {"name": "x.webm", "mimeType": "video/webm", "buffer": data}
    page.locator("#film-file").set_input_files(chosen)
    expect(page.locator("#film-told")).to_contain_text("No stops found")
    for name, value, said in (
        ("duration", 181, "over 180 seconds"),
        ("videoWidth", 200, "at least 240 pixels each way"),
        ("videoWidth", 0, "cannot open that film"),
    ):
        page.evaluate(
            """([name, value]) => Object.defineProperty(
                name === 'duration' ? HTMLMediaElement.prototype : HTMLVideoElement.prototype,
                name, { get: () => value, configurable: true })""",
            [name, value],
        )
        page.locator("#film-file").set_input_files(chosen)
        expect(page.locator("#film-told")).to_contain_text(said)


def test_a_second_dial_s_readings_are_left_alone(page: Page, server: Server) -> None:
    """The film shows the first dial: the second one's positions have the same names."""
    film, pictures = sweep_of()
    opened(page, server)
    page.locator("#film-close-key").click()
    page.locator(".round details.face > summary").click()
    page.locator("#face-end-float").select_option("second_held")
    second = page.locator('[name^="rounds.0.face.opposite.0."]:not(.photo-id)')
    expect(second).to_have_count(4)
    page.locator(".round details.face .film-key").click()
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    expect(page.locator("#film-told")).to_have_text("5 stops: 4 positions and the return.")
    offered = (
        page.locator("[id^=film-stop-]")
        .first.locator("option")
        .evaluate_all("options => options.map(({ value }) => value)")
    )
    names = [f"rounds.0.face.sweeps.0.{i}" for i in range(4)] + ["rounds.0.face.closing.0"]
    assert offered == ["", *names]
    page.locator("#film-all-key").click()
    expect(page.locator("#film-told")).to_contain_text("Entered: 5.")
    for i, name in enumerate(names):
        typed = page.locator(f'[name="{name}"]').input_value()
        assert float(typed) == pytest.approx(truth(film, i), abs=0.3), i
    assert [each.input_value() for each in second.all()] == [""] * 4


# Asked for, by keys and by ear ------------------------------------------------------------------


def test_nothing_of_it_is_loaded_until_it_is_asked_for(page: Page, server: Server) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    page.goto(server.address)
    page.wait_for_function("() => sessionStorage.length > 0")
    page.locator("#set-up").evaluate("details => { details.open = true }")
    page.locator("#photos-choice").select_option("files")
    expect(page.locator(".film-key").first).to_be_attached()
    assert "photos.js" in asked
    assert "film.js" not in asked
    page.locator("#photos-choice").select_option("none")
    expect(page.locator(".film-key")).to_have_count(0)


def test_by_keys_and_by_ear(page: Page, server: Server) -> None:
    opened(page, server, "camera")
    expect(page.locator("#film-camera")).to_have_attribute("capture", "environment")
    page.locator("#film-close-key").click()
    film_key = page.locator(".film-key").first
    expect(film_key).to_be_focused()
    expect(film_key).to_have_attribute("aria-label", "From a film: Sweep 1 of the bore")
    page.keyboard.press("Enter")
    expect(page.locator("#film-title")).to_be_focused()
    wait_for_python(page)
    axe.check(page, "a sweep on film")
    _, pictures = sweep_of()
    page.locator("#film-burst").set_input_files(files(pictures))
    read(page)
    axe.check(page, "a film's stops")
    axe.check_large_text(page, "a film's stops")
    enter = page.locator(".film-stops li").nth(1).get_by_role("button")
    expect(enter).to_have_attribute("aria-label", re.compile("^Enter .*: 9 o'clock$"))
    enter.focus()
    page.keyboard.press("Enter")
    expect(reading(page, 1)).not_to_have_value("")


def test_the_policy_opens_media_for_what_the_page_itself_holds_alone(
    page: Page, server: Server
) -> None:
    page.goto(server.address)
    policy = page.locator("meta[http-equiv=Content-Security-Policy]").get_attribute("content")
    assert policy
    rules = [rule.split() for rule in policy.split(";")]
    assert ["media-src", "blob:"] in rules
    assert [rule for rule in rules if "blob:" in rule] == [["media-src", "blob:"]]
    assert main_of(page)
