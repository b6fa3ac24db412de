"""Dials read off drawn photos: those of the family held out, and what must be refused."""

from __future__ import annotations

import math
import random
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from PIL import Image

from sweepsheet.picture import dial as module
from sweepsheet.picture.dial import Look, look_at, read_dial
from sweepsheet.picture.outline import Grey, Oval
from sweepsheet.picture.scale import DialReading, Refusal, Scale
from sweepsheet.picture.ticks import Lie
from tests.cases.dial_pictures import SIDE, View, any_case, any_view, photo_of
from tests.cases.dial_styles import Style, any_style
from tests.core.picture.measure import measure

TRIALS = 12


@cache
def fair() -> tuple[Style, View]:
    """A plain dial in a fair photo."""
    rng = random.Random(5)
    style = replace(any_style("tuning", rng), divisions=100, every=10, paper=220, ink=20)
    view = any_view(rng, held=False)
    return replace(style, needle_ink=20), replace(
        view, slant=10.0, blur=0.2, noise=2.0, glare=0.0, dirt=0, exposure=1.0, radius=90.0,
        x=120.0, y=120.0,
    )  # fmt: skip


def grey(style: Style, view: View, division: float = 12.3) -> Grey:
    return Grey(photo_of(style, view, division), SIDE, SIDE)


def look(style: Style, view: View, division: float = 12.3) -> Look:
    found = look_at(grey(style, view, division), style.divisions)
    assert isinstance(found, Look)
    return found


def test_the_photos_show_what_they_are_said_to_show() -> None:
    """At 25 of 100 on an upright dial the needle points to the right of the picture."""
    style, view = fair()
    view = replace(view, roll=0.0, slant=0.0)
    pixels = photo_of(style, view, 25.0)
    assert pixels[120 * SIDE + 165] < 70
    assert all(pixels[y * SIDE + x] > 110 for x, y in ((165, 128), (165, 112)))


def test_dials_of_styles_that_were_held_out() -> None:
    """The same that ``measure`` counts on 2,000, on a few."""
    tally = measure(any_case("held-out", seed) for seed in range(TRIALS))
    assert tally.all == TRIALS
    assert tally.beyond(1.0) == 0
    assert tally.beyond(0.25) == 0
    assert len(tally.errors) >= TRIALS - 4
    assert tally.held >= 0.8 * len(tally.errors)


@pytest.mark.parametrize("clockwise", [True, False])
def test_the_sense_and_the_step_of_the_scale(*, clockwise: bool) -> None:
    style, view = fair()
    first, now = look(style, view, 0.0), look(style, replace(view, roll=200.0), 30.0)
    read = read_dial(now, first, 0.05, Scale(100, 0.01, clockwise))
    assert isinstance(read, DialReading)
    assert read.value == pytest.approx(0.35 if clockwise else -0.25, abs=0.0025)
    assert 0.0005 < read.pm < 0.002


def test_a_dial_off_the_middle_of_the_photo_is_read() -> None:
    style, view = fair()
    first, now = look(style, view, 0.0), look(style, replace(view, x=80.0), 30.0)
    read = read_dial(now, first, 0.0, Scale(100, 1.0, clockwise=True))
    assert isinstance(read, DialReading)
    assert read.value == pytest.approx(30.0, abs=0.25)


def test_the_first_photo_on_itself_reads_what_it_read() -> None:
    style, view = fair()
    first = look(style, view)
    read = read_dial(first, first, -48.0, Scale(100, 1.0, clockwise=True))
    assert isinstance(read, DialReading)
    assert read.value == -48.0
    assert read.pm == pytest.approx(1.96 * math.sqrt(2) * first.sigma, abs=1e-4)


@pytest.mark.parametrize(
    ("code", "style", "view"),
    [
        ("blur", {}, {"blur": 3.5}),
        ("slanted", {}, {"slant": 48.0}),
        ("outline", {}, {"x": 60.0}),
        ("needle", {"needle_ink": 220, "hub": 0.001}, {}),
    ],
)
def test_what_can_t_be_read_is_refused(
    code: str, style: dict[str, float], view: dict[str, float]
) -> None:
    plain, straight = fair()
    spoiled = grey(replace(plain, **style), replace(straight, **view))  # type: ignore[arg-type]  # a table's fields
    assert look_at(spoiled, 100) == Refusal(code)


def test_glare_over_the_needle_is_refused() -> None:
    style, view = fair()
    pixels = bytearray(photo_of(style, view, 12.3))
    for y in range(65, 175):
        pixels[y * SIDE + 65 : y * SIDE + 175] = bytes([255]) * 110
    assert look_at(Grey(bytes(pixels), SIDE, SIDE), 100) == Refusal("glare")


def test_a_wrong_number_of_divisions_is_refused() -> None:
    style, view = fair()
    assert look_at(grey(style, view), 80) == Refusal("outline")


@pytest.mark.parametrize(("divisions", "told"), [(40, 80), (40, 120), (50, 100), (60, 120)])
def test_twice_or_three_times_as_many_divisions_as_there_are_are_refused(
    divisions: int, told: int
) -> None:
    """What is narrow and evenly spaced lies in the places of twice as many, too."""
    style, view = fair()
    picture = grey(replace(style, divisions=divisions), view)
    assert isinstance(look_at(picture, divisions), Look)
    assert isinstance(look_at(picture, told), Refusal)
    if told == 2 * divisions:
        assert look_at(picture, told) == Refusal("divisions")


def test_a_tenth_and_a_fifth_of_the_divisions_are_refused() -> None:
    """Every fifth tick is longer, and every tenth has a number: they lie in the places of fewer."""
    style, view = fair()
    for told in (10, 20):
        assert look_at(grey(style, view), told) == Refusal("few")


def test_no_dial_is_found_in_a_real_photo_that_is_none_to_read() -> None:
    """See tests/cases/photos/README.md: a wall clock taken while the camera moved."""
    path = Path(__file__).parents[2] / "cases" / "photos" / "moved_clock.jpg"
    with Image.open(path) as photo:
        middle = photo.convert("L").crop((50, 0, 350, 300))
        near = photo.convert("L").crop((132, 73, 292, 233))
    for seen in (middle, near):
        pixels = seen.resize((SIDE, SIDE), Image.Resampling.BICUBIC).tobytes()
        assert look_at(Grey(pixels, SIDE, SIDE), 60) == Refusal("blur")


def test_no_dial_at_all_is_refused() -> None:
    rng = random.Random(8)
    noise = Grey(rng.randbytes(SIDE * SIDE), SIDE, SIDE)
    assert look_at(noise, 100) == Refusal("outline")


def test_another_dial_does_not_match() -> None:
    style, view = fair()
    other = replace(any_style("tuning", random.Random(77)), divisions=100, every=20, paper=220,
                    ink=20, needle_ink=20)  # fmt: skip
    read = read_dial(look(other, view), look(style, view), 0.0, Scale(100, 1.0, clockwise=True))
    assert read == Refusal("match")


def test_a_dial_that_is_cut_off_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """An outline that reaches out of the picture; a face that would."""
    style, view = fair()
    picture = grey(style, view)
    with monkeypatch.context() as patch:
        patch.setattr(module, "find_outline", lambda *_: Oval(60.0, 120.0, 95.0, 0.0, 95.0))
        assert look_at(picture, 100) == Refusal("cut")
    with monkeypatch.context() as patch:
        lie = Lie((90.0, 0.0, 60.0, 0.0, 90.0, 120.0, 0.0, 0.0), 0.99)
        patch.setattr(module, "find_ticks", lambda *_: lie)
        assert look_at(picture, 100) == Refusal("cut")
    with monkeypatch.context() as patch:
        patch.setattr(module, "find_outline", lambda *_: None)
        assert look_at(picture, 100) == Refusal("outline")


def test_a_needle_that_is_not_known_well_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    style, view = fair()
    monkeypatch.setattr(module, "_WORST", 0.001)
    assert look_at(grey(style, view), 100) == Refusal("needle")
