"""Films of sweeps that never were: a dial that goes from stop to stop, before a hand that shakes.

Three ways to film: the phone is clamped to what carries the dial, so that the workshop turns behind
it; it is held by hand and follows the dial; or dial and phone stand, and a part turns under them.
Small frames are drawn quickly, for who looks for stops; a large one as a photo is drawn.
"""

from __future__ import annotations

import io
import math
import random
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from PIL import Image, ImageFilter

from tests.cases.dial_pictures import View, any_view, photo_of, projection_of
from tests.cases.dial_styles import HALF, RADIUS, Style, any_style, face_of, needle_of

SMALL = 64  # pixels of a small frame's sides
STEP = 0.2  # seconds between frames
WAYS = ("carried", "held", "fixed")
# Textures for small frames are finer than these by this much, and drawn at this many pixels.
_COARSER, _DRAWN = 4, 128


@dataclass(frozen=True)
class Stretch:
    """A part of a film: a stop with its reading in divisions, or the way from stop to stop."""

    start: float
    end: float
    division: float
    is_stop: bool


@dataclass(frozen=True)
class Film:
    """A sweep on film: what the mechanic did, and how the phone was held meanwhile."""

    seed: int
    way: str
    style: Style
    stretches: tuple[Stretch, ...]
    views: tuple[View, ...]  # the view of each stretch, at its end
    shake: float  # pixels of a photo
    flicker: float  # of the exposure

    @property
    def times(self) -> list[float]:
        """When the frames are."""
        return [STEP * i for i in range(int(self.stretches[-1].end / STEP))]

    @property
    def stops(self) -> list[Stretch]:
        """The stops that were made."""
        return [each for each in self.stretches if each.is_stop]

    def at(self, time: float) -> tuple[View, float, float]:
        """The view, the reading and how far the crank is, in degrees, at a time."""
        k = next(i for i, each in enumerate(self.stretches) if time < each.end)
        now, before = self.stretches[k], self.stretches[max(0, k - 1)]
        share = 1.0 if now.is_stop else (time - now.start) / (now.end - now.start)
        eased = share * share * (3.0 - 2.0 * share)
        view = _between(self.views[max(0, k - 1)], self.views[k], eased)
        division = before.division + eased * (now.division - before.division)
        turns = sum(not each.is_stop for each in self.stretches[:k])
        return (
            self._shaken(view, time, eased if not now.is_stop else 0.0),
            division,
            40.0 * (turns + (0.0 if now.is_stop else eased)),
        )

    def _shaken(self, view: View, time: float, moving: float) -> View:
        rng = random.Random(self.seed)
        x, y, roll = (
            sum(a * math.sin(math.tau * f * time + p)
                for a, f, p in ((rng.uniform(0.4, 1.0), rng.uniform(0.2, 0.6), rng.uniform(0, 6)),
                                (rng.uniform(0.2, 0.5), rng.uniform(1, 3), rng.uniform(0, 6)),
                                (rng.uniform(0.05, 0.2), rng.uniform(5, 9), rng.uniform(0, 6))))
            for _ in range(3)
        )  # fmt: skip
        light = random.Random(f"{self.seed} {time:.3f}").uniform(-1.0, 1.0)
        more = self.shake * (1.0 + 2.0 * min(moving, 1.0 - moving))
        return replace(
            view, x=view.x + more * x, y=view.y + more * y, roll=view.roll + 0.3 * more * roll,
            blur=math.hypot(view.blur, 0.12 * more), exposure=view.exposure * (
                1.0 + self.flicker * light),
        )  # fmt: skip

    def small(self, i: int) -> bytes:
        """A frame of SMALL x SMALL grey pixels, row by row."""
        view, division, crank = self.at(self.times[i])
        return self._draw.small(view, division, crank, i)

    def photo(self, i: int) -> bytes:
        """The same frame as a picture of which a dial is read."""
        view, division, _ = self.at(self.times[i])
        return photo_of(self.style, replace(view, seed=view.seed + i), division)

    @cached_property
    def _draw(self) -> _Quick:
        return _Quick(self)


def _between(one: View, other: View, share: float) -> View:
    """A view on the way from one to another."""
    parts = ("x", "y", "roll", "slant", "way", "radius")
    now = {name: (1 - share) * getattr(one, name) + share * getattr(other, name) for name in parts}
    return replace(other, **now)


class _Quick:
    """Draws the small frames of a film: its textures are made once."""

    def __init__(self, film: Film) -> None:
        rng = random.Random(film.seed)
        size = 2 * HALF // _COARSER
        self.film = film
        self.face = face_of(film.style, 0.0).resize((size, size), Image.Resampling.BOX)
        self.needle = needle_of(film.style, 0.0).resize((size, size), Image.Resampling.BOX)
        self.disc = {r: _disc(r, size) for r in (1.02, film.style.bezel)}
        self.behind = Image.fromarray(_workshop(rng, 2 * _DRAWN))
        ys, xs = np.mgrid[0:_DRAWN, 0:_DRAWN] / _DRAWN - 0.5
        a, view = rng.uniform(0, math.tau), film.views[0]
        self.light = 1 + view.shade * (xs * math.cos(a) + ys * math.sin(a))
        glare = np.exp(-(((xs - 0.1) / 0.06) ** 2) - ((ys + 0.2) / 0.08) ** 2)
        self.glare = 255 * view.glare * glare

    def _placed(self, texture: Image.Image, view: View, height: float) -> Image.Image:
        r, h = RADIUS / _COARSER, HALF / _COARSER
        to_texture = np.array([[r, 0, h], [0, r, h], [0, 0, 1]])
        k = _DRAWN / 240
        back = to_texture @ np.linalg.inv(np.diag([k, k, 1.0]) @ projection_of(view, height))
        how = tuple((back / back[2, 2]).ravel()[:8])
        size = (_DRAWN, _DRAWN)
        return texture.transform(size, Image.Transform.PERSPECTIVE, how, Image.Resampling.BILINEAR)

    def small(self, view: View, division: float, crank: float, i: int) -> bytes:
        film, style = self.film, self.film.style
        turned = {"carried": -crank, "held": view.roll, "fixed": crank}[film.way]
        shift = (0, 0) if film.way != "held" else (round(view.x), round(view.y))
        low = _DRAWN // 2
        picture = self.behind.rotate(turned, Image.Resampling.BILINEAR, translate=shift)
        picture = picture.crop((low, low, low + _DRAWN, low + _DRAWN))
        if film.way == "fixed":  # the part that turns is seen at the foot of the picture
            picture.paste(90, (0, 0, _DRAWN, _DRAWN * 5 // 6))
        high = style.bezel_height
        picture.paste(style.bezel_ink, (0, 0), self._placed(self.disc[style.bezel], view, high))
        inner = self._placed(self.face, view, 0.0)
        needle = replace(view, roll=view.roll + 360.0 * division / style.divisions)
        inner.paste(style.needle_ink, (0, 0),
                    self._placed(self.needle, needle, style.needle_height))  # fmt: skip
        picture.paste(inner, (0, 0), self._placed(self.disc[1.02], view, high))
        grey = np.asarray(picture, dtype=float) * self.light * view.exposure + self.glare
        seen = Image.fromarray(np.clip(grey, 0, 255).astype(np.uint8))
        seen = seen.filter(ImageFilter.GaussianBlur(view.blur * _DRAWN / 240))
        seen = seen.resize((SMALL, SMALL), Image.Resampling.BOX)
        noise = np.random.default_rng((film.seed, i)).normal(0, view.noise / 2.5, (SMALL, SMALL))
        stored = io.BytesIO()
        noisy = np.clip(np.asarray(seen, dtype=float) + noise, 0, 255).astype(np.uint8)
        Image.fromarray(noisy).save(stored, "JPEG", quality=view.quality)
        return Image.open(stored).convert("L").tobytes()


def _disc(radius: float, size: int) -> Image.Image:
    ys, xs = np.mgrid[0:size, 0:size] - size / 2
    return Image.fromarray((255 * (np.hypot(xs, ys) < RADIUS / _COARSER * radius)).astype(np.uint8))


def _workshop(rng: random.Random, size: int) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """Large soft patches of light and dark."""
    coarse = np.random.default_rng(rng.randrange(10**9)).integers(10, 230, (8, 8), dtype=np.uint8)
    picture = Image.fromarray(coarse).resize((size, size), Image.Resampling.BICUBIC)
    return np.asarray(picture, dtype=np.uint8)


def any_film(family: str, seed: int, *, stops: int = 0, kind: str = "") -> Film:
    """A sweep of 4 to 12 positions and back to the start, of a housing that is off.

    ``stops``: how many instead; ``kind``: ``rest`` where the hand rests on one of the ways,
    ``missed`` where one position is passed without a stop.
    """
    rng = random.Random(f"film {family} {seed}")
    way, style = rng.choice(WAYS), any_style(family, rng)
    view = any_view(rng, held=family == "held-out")
    view = replace(view, radius=rng.uniform(80.0, 96.0), slant=min(view.slant, 28.0), glare=0.0,
                   blur=min(view.blur, 0.6), dirt=min(view.dirt, 4))  # fmt: skip
    count = (stops or rng.randint(5, 13)) - 1
    size, toward = style.divisions / 100 * rng.uniform(6.0, 30.0), rng.uniform(0.0, math.tau)
    start = rng.uniform(0.0, 1.5)
    swings = [math.cos(math.tau * i / count - toward) - math.cos(toward) for i in range(count)]
    readings = [size * swing + rng.gauss(0, 0.3) for swing in swings]
    readings.append(readings[0] + rng.gauss(0, 0.2))
    passed = rng.randrange(1, count)
    if kind == "missed":
        del readings[passed]
    rests = {passed - 1} if kind == "rest" else set()
    stretches: list[Stretch] = []
    views: list[View] = []
    time = 0.0

    def go_on(seconds: float, division: float, *, is_stop: bool) -> None:
        nonlocal time
        stretches.append(Stretch(time, time + seconds, division, is_stop))
        after = view if not stretches[:-1] or way != "held" else views[-1]
        if not is_stop and way == "held":
            after = replace(view, x=120 + rng.uniform(-9, 9), y=120 + rng.uniform(-9, 9),
                            slant=rng.uniform(0, 25), roll=views[-1].roll + rng.uniform(-60, 60)
                            if views else view.roll)  # fmt: skip
        views.append(after)
        time += seconds

    go_on(start + 0.4, readings[0], is_stop=False)
    for i, reading in enumerate(readings):
        go_on(rng.uniform(1.5, 3.2), reading, is_stop=True)
        if i in rests:
            middle = (reading + readings[i + 1]) / 2
            go_on(rng.uniform(0.8, 1.6), middle, is_stop=False)
            go_on(rng.uniform(1.4, 2.4), middle, is_stop=True)
        if i + 1 < len(readings):
            seconds = rng.uniform(1.0, 3.5)
            is_long = kind == "missed" and i + 1 == passed
            go_on(2.0 * seconds if is_long else seconds, readings[i + 1], is_stop=False)
    go_on(rng.uniform(0.3, 1.2), readings[-1] + 20.0, is_stop=False)
    shake = {"carried": rng.uniform(0.0, 0.2), "held": rng.uniform(0.5, 3.0),
             "fixed": rng.uniform(0.0, 0.15)}[way]  # fmt: skip
    return Film(rng.randrange(10**9), way, style, tuple(stretches), tuple(views), shake,
                rng.choice([0.0, 0.02, 0.06]))  # fmt: skip
