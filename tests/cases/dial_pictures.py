"""Photos of dials that never were: a face in space, through a pinhole, in bad light.

Face, needle and bezel lie at different heights, so that they move against each other when the
photo is taken aslant. Everything is drawn at twice the size and then made small.
"""

from __future__ import annotations

import io
import math
import random
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageChops, ImageDraw, ImageFilter

from tests.cases.dial_styles import HALF, RADIUS, Style, any_style, face_of, needle_of

SIDE = 240  # pixels of a picture's sides
Floats = np.ndarray[tuple[int, ...], np.dtype[np.float64]]


@dataclass(frozen=True)
class View:
    """How a photo was taken: lengths in pixels of the picture, angles in degrees."""

    seed: int
    radius: float
    x: float
    y: float
    roll: float
    slant: float
    way: float
    distance: float  # of the camera, in radii of the face
    blur: float
    noise: float
    shade: float
    glare: float
    dirt: int
    quality: int
    exposure: float


@dataclass(frozen=True)
class Case:
    """Two photos of one dial: the first, whose reading is known, and the one to be read."""

    style: Style
    first: bytes
    photo: bytes
    first_division: float
    division: float
    views: tuple[View, View]


def any_view(rng: random.Random, *, held: bool) -> View:
    """A photo as it may be taken by hand: most are fair, some are bad."""
    radius = rng.uniform(78.0, 98.0)
    return View(
        seed=rng.randrange(10**9),
        radius=radius,
        x=SIDE / 2 + rng.uniform(-9.0, 9.0),
        y=SIDE / 2 + rng.uniform(-9.0, 9.0),
        roll=rng.uniform(0.0, 360.0),
        slant=35.0 * math.sqrt(rng.random()) if held else rng.uniform(0.0, 35.0),
        way=rng.uniform(0.0, 360.0),
        distance=rng.uniform(4.5, 9.0) if held else rng.uniform(5.0, 10.0),
        blur=abs(rng.gauss(0.3, 0.35)),
        noise=rng.uniform(1.0, 7.0),
        shade=rng.uniform(0.0, 0.5),
        glare=rng.choice([0.0, 0.0, rng.uniform(0.2, 1.0)]),
        dirt=rng.choice([0, 0, rng.randint(1, 12)]),
        quality=rng.randint(50, 95),
        exposure=rng.uniform(0.7, 1.1),
    )


def any_case(family: str, seed: int) -> Case:
    """A dial of a family, photographed twice; the first time it may stand at any reading."""
    rng = random.Random(f"{family} {seed}")
    style = any_style(family, rng)
    first = 0.0 if rng.random() < 0.7 else rng.uniform(0.0, style.divisions)
    now = rng.uniform(0.0, style.divisions)
    views = (any_view(rng, held=family == "held-out"), any_view(rng, held=family == "held-out"))
    photos = [photo_of(style, view, at) for view, at in zip(views, (first, now), strict=True)]
    return Case(style, photos[0], photos[1], first, now, views)


def projection_of(view: View, height: float) -> Floats:
    """From a plane parallel to the face, in radii, to pixels: a 3 x 3 projection."""
    roll, slant, way = (math.radians(a) for a in (view.roll, view.slant, view.way))

    def about_z(a: float) -> Floats:
        return np.array([[math.cos(a), -math.sin(a), 0], [math.sin(a), math.cos(a), 0], [0, 0, 1]])

    tilt = np.array(
        [[math.cos(slant), 0, math.sin(slant)], [0, 1, 0], [-math.sin(slant), 0, math.cos(slant)]]
    )
    turn = about_z(way) @ tilt @ about_z(-way) @ about_z(roll)
    # The camera looks along z; heights above the face are toward it.
    plane = turn @ np.array([[1, 0, 0], [0, 1, 0], [0, 0, -height]])
    plane[2, 2] += view.distance
    focal = view.radius * view.distance
    lens = np.array([[focal, 0, view.x], [0, focal, view.y], [0, 0, 1]])
    projection: Floats = lens @ plane
    return projection


def _placed(texture: Image.Image, view: View, height: float) -> Image.Image:
    """A texture as the camera sees it, at twice the picture's size."""
    to_texture = np.array([[RADIUS, 0, HALF], [0, RADIUS, HALF], [0, 0, 1]])
    big = np.diag([2.0, 2.0, 1.0]) @ projection_of(view, height)
    back = to_texture @ np.linalg.inv(big)
    how = tuple((back / back[2, 2]).ravel()[:8])
    size = (2 * SIDE, 2 * SIDE)
    # Textures are finer than the picture: blurred first, so that thin lines do not break up.
    soft = texture.filter(ImageFilter.GaussianBlur(0.6))
    return soft.transform(size, Image.Transform.PERSPECTIVE, how, Image.Resampling.BILINEAR)


def _round(radius: float) -> Image.Image:
    mask = Image.new("L", (2 * HALF, 2 * HALF))
    r = RADIUS * radius
    ImageDraw.Draw(mask).ellipse((HALF - r, HALF - r, HALF + r, HALF + r), fill=255)
    return mask


def _background(rng: random.Random) -> Image.Image:
    """A workshop out of focus."""
    picture = Image.new("L", (2 * SIDE, 2 * SIDE), rng.randint(30, 200))
    draw = ImageDraw.Draw(picture)
    for _ in range(rng.randint(3, 12)):
        corners = [(rng.uniform(-80, 560), rng.uniform(-80, 560)) for _ in range(rng.randint(3, 5))]
        draw.polygon(corners, fill=rng.randint(10, 240))
    return picture.filter(ImageFilter.GaussianBlur(rng.uniform(1.0, 12.0)))


def _bezel(style: Style, rng: random.Random) -> Image.Image:
    """The case around the face: a ring that shines in places, with or without a knurl."""
    n = 240
    ys, xs = np.mgrid[0 : 2 * HALF, 0 : 2 * HALF] - HALF
    angle = np.arctan2(ys, xs)
    shine = style.bezel_ink + 40 * np.sin(angle + rng.uniform(0, 6)) * rng.random()
    if rng.random() < 0.5:
        knurled = np.hypot(xs, ys) > RADIUS * (style.bezel - 0.08)
        shine = shine + 25 * np.sign(np.sin(n / 2 * angle)) * knurled
    ring = Image.fromarray(np.clip(shine, 0, 255).astype(np.uint8))
    ring.paste(style.wall_ink, (0, 0), _round(1.04))
    return ring


def photo_of(style: Style, view: View, division: float) -> bytes:
    """A picture of SIDE x SIDE grey pixels, row by row."""
    rng = random.Random(view.seed)
    deg = 360.0 * division / style.divisions
    picture = _background(rng)
    high = style.bezel_height
    picture.paste(_placed(_bezel(style, rng), view, high), (0, 0),
                  _placed(_round(style.bezel), view, high))  # fmt: skip
    # Seen past the bezel's inner edge, the wall and the face below it.
    opening = _placed(_round(1.02), view, high)
    inner = Image.new("L", picture.size, style.wall_ink)
    inner.paste(_placed(face_of(style, division / style.divisions + rng.randint(0, 9)), view, 0.0),
                (0, 0), _placed(_round(1.02), view, 0.0))  # fmt: skip
    mask = _placed(needle_of(style, deg), view, style.needle_height)
    if rng.random() < 0.5:
        shift = (round(rng.uniform(-5, 5)), round(rng.uniform(-5, 5)))
        shadow = ImageChops.offset(mask, *shift).filter(ImageFilter.GaussianBlur(2.0))
        inner.paste(round(style.paper * 0.6), (0, 0), shadow.point(lambda v: v * 0.5))
    inner.paste(style.needle_ink, (0, 0), mask)
    picture.paste(inner, (0, 0), opening)
    return _seen(picture, view, rng)


def _seen(picture: Image.Image, view: View, rng: random.Random) -> bytes:
    """What light, glass, dirt and camera make of it."""
    for _ in range(view.dirt):
        x, y = (rng.uniform(0.2, 0.8) * 2 * SIDE for _ in range(2))
        r = rng.uniform(1.0, 7.0)
        ImageDraw.Draw(picture).ellipse((x - r, y - r, x + r, y + r * rng.uniform(0.4, 1)),
                                        fill=rng.randint(20, 220))  # fmt: skip
    grey = np.asarray(picture, dtype=float)
    ys, xs = np.mgrid[0 : 2 * SIDE, 0 : 2 * SIDE] / (2 * SIDE) - 0.5
    a = rng.uniform(0, math.tau)
    grey *= view.exposure * (1 + view.shade * (xs * math.cos(a) + ys * math.sin(a)))
    if view.glare:
        cx, cy, w, h, b = (rng.uniform(-0.3, 0.3), rng.uniform(-0.3, 0.3), rng.uniform(0.02, 0.12),
                           rng.uniform(0.02, 0.12), rng.uniform(0, math.tau))  # fmt: skip
        u = (xs - cx) * math.cos(b) + (ys - cy) * math.sin(b)
        v = (ys - cy) * math.cos(b) - (xs - cx) * math.sin(b)
        grey += 255 * view.glare * np.exp(-((u / w) ** 2) - (v / h) ** 2)
    if rng.random() < 0.3:  # the edge of a shadow across the dial
        edge = xs * math.cos(a + 1) + ys * math.sin(a + 1) - rng.uniform(-0.3, 0.3)
        grey *= 1 - rng.uniform(0.1, 0.45) / (1 + np.exp(-edge / 0.01))
    seen = Image.fromarray(np.clip(grey, 0, 255).astype(np.uint8))
    seen = seen.filter(ImageFilter.GaussianBlur(2.0 * view.blur)).reduce(2)
    noisy = np.asarray(seen, dtype=float) + np.random.default_rng(view.seed).normal(
        0, view.noise, (SIDE, SIDE)
    )
    stored = io.BytesIO()
    Image.fromarray(np.clip(noisy, 0, 255).astype(np.uint8)).save(
        stored, "JPEG", quality=view.quality
    )
    return Image.open(stored).convert("L").tobytes()
