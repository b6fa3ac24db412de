"""Dials of invented styles, drawn at random: two families that share no font and no needle.

The reader is tuned on the family ``tuning`` alone; what it is worth is measured on ``held-out``.
Lengths are shares of the radius of the face, angles degrees clockwise from the face's own top.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass

from PIL import Image, ImageDraw, ImageFont

# A face's texture: its radius in pixels, and half its side, which holds the bezel too.
RADIUS, HALF = 300, 400
FAMILIES = ("tuning", "held-out")

# Digits as strokes of a pen on a grid of 4 by 6: the font of the family that is held out.
STROKES: dict[str, list[list[tuple[float, float]]]] = {
    "0": [[(1, 0), (3, 0), (4, 1.5), (4, 4.5), (3, 6), (1, 6), (0, 4.5), (0, 1.5), (1, 0)]],
    "1": [[(0.8, 1.2), (2.2, 0), (2.2, 6)]],
    "2": [[(0, 1.4), (1, 0), (3, 0), (4, 1.2), (3.6, 2.6), (0, 6), (4, 6)]],
    "3": [[(0.2, 0), (4, 0), (1.8, 2.4), (3.2, 2.6), (4, 4), (3.2, 5.8), (1.2, 6), (0, 5)]],
    "4": [[(3, 6), (3, 0), (0, 4), (4, 4)]],
    "5": [[(3.8, 0), (0.6, 0), (0.2, 2.6), (2.6, 2.3), (4, 3.6), (3.6, 5.4), (2, 6), (0, 5.4)]],
    "6": [[(3.4, 0), (1.2, 1.6), (0, 4), (1, 6), (3, 6), (4, 4.5), (3, 3), (1, 3), (0, 4)]],
    "7": [[(0, 0), (4, 0), (1.6, 6)]],
    "8": [[(2, 2.8), (0.4, 1.6), (1, 0), (3, 0), (3.6, 1.6), (2, 2.8), (0, 4.4), (1, 6), (3, 6),
           (4, 4.4), (2, 2.8)]],
    "9": [[(4, 2), (3, 3), (1, 3), (0, 1.5), (1, 0), (3, 0), (4, 2), (2.8, 4.4), (0.6, 6)]],
}  # fmt: skip


@dataclass(frozen=True)
class Style:
    """One dial: what is printed on its face, its needle and its case."""

    family: str
    seed: int
    divisions: int
    every: int  # divisions from number to number
    balanced: bool  # numbered up both ways from zero
    upright: bool  # numbers all upright, and not pointing outward
    paper: int
    ink: int
    needle_ink: int
    needle: str
    needle_width: float
    tip: float
    tail: float
    hub: float
    needle_height: float
    ticks_at: float
    tick: float
    tick_width: float
    numbers_at: float
    number_size: float
    ring: bool
    counter: tuple[float, float, float] | None  # its angle, its distance, its radius
    bezel: float
    bezel_ink: int
    wall_ink: int
    bezel_height: float


def any_style(family: str, rng: random.Random) -> Style:
    """A style of a family."""
    held = family == "held-out"
    dark = rng.random() < (0.15 if held else 0.2)
    divisions, every = rng.choice(
        [(100, 10), (100, 10), (100, 10), (100, 10), (60, 5), (50, 5), (120, 10)] if held
        else [(100, 10), (100, 10), (100, 10), (100, 20), (80, 10), (50, 10), (40, 5)]
    )  # fmt: skip
    paper = rng.randint(20, 60) if dark else rng.randint(185, 250)
    ink = rng.randint(200, 250) if dark else rng.randint(5, 55)
    counter = None
    if rng.random() < 0.75:
        at = rng.choice([0, 90, 180, 270]) if not held else rng.choice([45, 135, 180, 225, 300])
        counter = (float(at), rng.uniform(0.36, 0.48), rng.uniform(0.12, 0.2))
    return Style(
        family=family,
        seed=rng.randrange(10**9),
        divisions=divisions,
        every=every,
        balanced=rng.random() < (0.3 if held else 0.4),
        upright=rng.random() < (0.8 if held else 0.65),
        paper=paper,
        ink=ink,
        needle_ink=ink if rng.random() < 0.75 else (90 if not dark else 180),
        needle=rng.choice(
            ["lance", "leaf", "baton", "arrow"] if held else ["taper", "thin", "bar", "step"]
        ),
        needle_width=rng.uniform(0.028, 0.075) if held else rng.uniform(0.022, 0.085),
        tip=rng.uniform(0.76, 0.92),
        tail=rng.uniform(0.15, 0.35) if held else rng.choice([0.0, rng.uniform(0.12, 0.32)]),
        hub=rng.uniform(0.05, 0.11),
        needle_height=rng.uniform(0.02, 0.06),
        ticks_at=rng.uniform(0.88, 0.97),
        tick=rng.uniform(0.05, 0.085),
        tick_width=rng.uniform(0.009, 0.018),
        numbers_at=rng.uniform(0.66, 0.74),
        number_size=rng.uniform(0.11, 0.17),
        ring=rng.random() < 0.4,
        counter=counter,
        bezel=rng.uniform(1.1, 1.28),
        bezel_ink=rng.randint(40, 220),
        wall_ink=rng.randint(20, 130),
        bezel_height=rng.uniform(0.05, 0.15),
    )


def spot(radius: float, deg: float) -> tuple[float, float]:
    """A place of the texture: a share of the radius from the middle, clockwise from up."""
    a = math.radians(deg)
    return HALF + RADIUS * radius * math.sin(a), HALF - RADIUS * radius * math.cos(a)


def _disc(draw: ImageDraw.ImageDraw, at: tuple[float, float], radius: float, **how: int) -> None:
    r = RADIUS * radius
    draw.ellipse((at[0] - r, at[1] - r, at[0] + r, at[1] + r), **how)


def _number(style: Style, text: str, size: float) -> Image.Image:
    """A number as a mask."""
    high = max(8, round(RADIUS * size))
    if style.family == "held-out":
        slant = random.Random(style.seed).uniform(-0.05, 0.25)
        pen, wide = max(3, round(high / 9)), high * 0.62
        mask = Image.new("L", (round(wide * len(text) * 1.3 + high), 2 * high))
        draw = ImageDraw.Draw(mask)
        for i, letter in enumerate(text):
            for line in STROKES[letter]:
                points = [(high / 3 + i * wide * 1.3 + x * wide / 4 + slant * (6 - y) * high / 6,
                           high / 2 + y * high / 6) for x, y in line]  # fmt: skip
                draw.line(points, fill=255, width=pen, joint="curve")
        return mask
    font = ImageFont.load_default(high * 1.3)
    box = font.getbbox(text)
    bold = random.Random(style.seed).choice([0, 0, 1, 2])
    mask = Image.new("L", (round(box[2] - box[0]) + 8, round(box[3] - box[1]) + 8))
    at = (4 - box[0], 4 - box[1])
    ImageDraw.Draw(mask).text(at, text, fill=255, font=font, stroke_width=bold)
    return mask


def _stamp(face: Image.Image, style: Style, text: str, radius: float, deg: float) -> None:
    """Print a number on the face."""
    mask = _number(style, text, style.number_size)
    box = mask.getbbox()
    mask = mask.crop(box)
    if not style.upright:
        mask = mask.rotate(-deg, Image.Resampling.BICUBIC, expand=True)
    x, y = spot(radius, deg)
    face.paste(style.ink, (round(x - mask.width / 2), round(y - mask.height / 2)), mask)


def face_of(style: Style, turns: float) -> Image.Image:
    """The face as a texture, its zero at the top, with the counter-dial's hand where it is."""
    rng = random.Random(style.seed)
    face = Image.new("L", (2 * HALF, 2 * HALF), style.paper)
    draw = ImageDraw.Draw(face)
    for i in range(style.divisions):
        major, middle = i % style.every == 0, i % 5 == 0
        long = style.tick * (1.6 if major else 1.3 if middle else 1.0)
        width = style.tick_width * (1.5 if major else 1.0)
        deg = 360.0 * i / style.divisions
        line = (spot(style.ticks_at, deg), spot(style.ticks_at - long, deg))
        draw.line(line, fill=style.ink, width=max(2, round(RADIUS * width)))
    if style.ring:
        _disc(draw, (HALF, HALF), style.ticks_at + 0.005, outline=style.ink, width=4)
    for i in range(0, style.divisions, style.every):
        shown = min(i, style.divisions - i) if style.balanced else i
        _stamp(face, style, str(shown), style.numbers_at, 360.0 * i / style.divisions)
    _print(face, style, rng)
    if style.counter is not None:
        _counter(draw, style, turns)
    return face


def _print(face: Image.Image, style: Style, rng: random.Random) -> None:
    """A few invented marks, as faces bear them: words as bars and figures."""
    draw = ImageDraw.Draw(face)
    for _ in range(rng.randint(1, 4)):
        x, y = spot(rng.uniform(0.22, 0.5), rng.uniform(0, 360))
        if rng.random() < 0.5:
            small = Style(**{**vars(style), "number_size": rng.uniform(0.06, 0.1), "upright": True})
            mask = _number(small, str(rng.randint(10, 9999)), small.number_size)
            face.paste(style.ink, (round(x - mask.width / 2), round(y - mask.height / 2)), mask)
        else:
            wide, high = RADIUS * rng.uniform(0.08, 0.25), RADIUS * rng.uniform(0.03, 0.06)
            for k in range(rng.randint(3, 7)):
                left = x - wide / 2 + k * high * 1.2
                box = (left, y, left + high * rng.uniform(0.4, 0.9), y + high)
                draw.rectangle(box, fill=style.ink if k % 3 else None, outline=style.ink)


def _counter(draw: ImageDraw.ImageDraw, style: Style, turns: float) -> None:
    assert style.counter is not None
    at_deg, distance, radius = style.counter
    at = spot(distance, at_deg)
    _disc(draw, at, radius, fill=style.paper, outline=style.ink, width=3)

    def place(share: float, deg: float) -> tuple[float, float]:
        a, r = math.radians(deg), RADIUS * radius * share
        return at[0] + r * math.sin(a), at[1] - r * math.cos(a)

    for i in range(10):
        draw.line((place(0.95, 36.0 * i), place(0.75, 36.0 * i)), fill=style.ink, width=4)
    hand = 36.0 * turns
    draw.line((place(0.2, hand + 180.0), place(0.7, hand)), fill=style.needle_ink, width=7)
    _disc(draw, at, 0.025, fill=style.needle_ink)


def needle_of(style: Style, deg: float) -> Image.Image:
    """The needle as a mask, its tip this far clockwise of the face's top."""
    mask = Image.new("L", (2 * HALF, 2 * HALF))
    draw = ImageDraw.Draw(mask)
    w, tip, tail, hub = style.needle_width / 2, style.tip, style.tail, style.hub

    def outline(*corners: tuple[float, float]) -> None:
        """A shape alike on both sides: distances along the needle, and half widths there."""
        a = math.radians(deg)
        sides = [*corners, *((along, -half) for along, half in reversed(corners))]
        draw.polygon(
            [(HALF + RADIUS * (along * math.sin(a) + half * math.cos(a)),
              HALF - RADIUS * (along * math.cos(a) - half * math.sin(a)))
             for along, half in sides], fill=255,
        )  # fmt: skip

    match style.needle:
        case "taper":
            outline((-tail, w * 1.2), (0.0, w), (tip, 0.004))
        case "thin":
            outline((-tail, 0.012), (0.0, 0.012), (tip, 0.007))
        case "bar":
            outline((-tail, w), (tip - 0.1, w), (tip, 0.003))
        case "step":
            outline((-tail, w), (tip * 0.6, w), (tip * 0.62, 0.009), (tip, 0.007))
        case "lance":
            outline((-tail, 0.014), (tip * 0.55, 0.012), (tip * 0.75, w), (tip, 0.003))
        case "leaf":
            outline((-tail, w * 0.5), (0.0, w * 0.4), (tip * 0.4, w), (tip, 0.004))
        case "baton":
            outline((-tail, 0.016), (tip, 0.012))
            _disc(draw, spot(-tail, deg), w + 0.02, fill=255)
        case _:
            outline((-tail, 0.02), (tip * 0.8, 0.012), (tip * 0.8, w), (tip, 0.003))
    _disc(draw, (HALF, HALF), hub, fill=255)
    return mask
