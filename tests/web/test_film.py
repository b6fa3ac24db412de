"""A sweep on film: from a video or a burst of drawn pictures to readings in the form, by taps alone."""

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
from tests.web import axe
from tests.web.page import main_of, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

SWEEP = "rounds.0.bore.sweeps.0"
# What the page makes of pictures: a film in which each is held, and turned away to come to the next.
RECORD = """async ([pictures, held, turned]) => {
    const load = (text) => new Promise((resolve, reject) => {
        const image = new Image();
        image.onload = () => resolve(image);
        image.onerror = reject;
        image.src = `data:image/jpeg;base64,${text}`;
    });
    const images = await Promise.all(pictures.map(load));
    const canvas = document.createElement('canvas');
    canvas.width = 640;
    canvas.height = 480;
    const pen = canvas.getContext('2d');
    const recorder = new MediaRecorder(canvas.captureStream(25), {
        mimeType: 'video/webm;codecs=vp8', videoBitsPerSecond: 6e6,
    });
    const parts = [];
    recorder.ondataavailable = ({ data }) => parts.push(data);
    const ended = new Promise((resolve) => { recorder.onstop = resolve; });
    const draw = (image, share) => {
        pen.fillStyle = '#654';
        pen.fillRect(0, 0, 640, 480);
        pen.save();
        pen.translate(320 + 60 * Math.sin(Math.PI * share), 240);
        pen.rotate(share);
        pen.drawImage(image, -240, -240, 480, 480);
        pen.restore();
    };
    draw(images[0], 0);
    recorder.start();
    const whole = held + turned;
    const began = performance.now();
    for (;;) {
        const at = (performance.now() - began) / 1000;
        const k = Math.floor(at / whole);
        if (k >= images.length) break;
        const share = Math.max(0, at - k * whole - held) / turned;
        if (share && k + 1 === images.length) break;
        draw(images[k + Math.round(share)], share);
        await new Promise((next) => setTimeout(next, 30));
    }
    recorder.stop();
    await ended;
    const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
    let text = '';
    for (const byte of bytes) text += String.fromCharCode(byte);
    return btoa(text);
}"""


def jpeg(film: Film, stop: int) -> bytes:
    """The picture of a stop, in its middle."""
    stretch = film.stops[stop]
    made = io.BytesIO()
    grey = film.photo(int((stretch.start + stretch.end) / 2 / 0.2))
    picture = Image.frombytes("L", (240, 240), grey).convert("RGB")
    picture.resize((480, 480), Image.Resampling.BICUBIC).save(made, "JPEG", quality=92)
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


def recorded(page: Page, pictures: tuple[bytes, ...], held: float = 1.8) -> bytes:
    """A film of pictures, made by the browser itself."""
    kinds = page.evaluate("typeof MediaRecorder === 'undefined' ? '' : 'there'")
    if not kinds:
        pytest.skip("this engine makes no films: MediaRecorder is not there")
    texts = [base64.b64encode(each).decode() for each in pictures]
    made: str = page.evaluate(RECORD, [texts, held, 1.2])
    return base64.b64decode(made)


@pytest.mark.slow
def test_a_film_comes_to_readings(page: Page, server: Server) -> None:
    film, pictures = sweep_of()
    opened(page, server)
    data = recorded(page, pictures)
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
