"""The reading of a dial off its photo, against a first photo of the same dial.

The first photo's reading is known; the needle's turn against the face, in this photo less that in
the first, is how far the reading went. Nothing is guessed: what is not sure is refused.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import sub

from sweepsheet.maths.normal import K_95_LINE
from sweepsheet.picture.match import match_prints, print_of
from sweepsheet.picture.needle import find_needle, unrolled
from sweepsheet.picture.outline import Grey, find_outline
from sweepsheet.picture.scale import DialReading, Refusal, Scale
from sweepsheet.picture.ticks import Lie, find_ticks

# What must hold, found on drawn pictures: the share of ticks in their places, the flatness of the
# face (the cosine of 40 degrees), how much of the needle is seen and how clearly, and how clearly
# the prints match.
_AGREEMENT, _FLATTEST = 0.87, 0.766
_SEEN, _NEEDLE_LEAD = 0.65, 0.1
_LIKENESS, _MATCH_LEAD = 0.15, 0.08
# For the outline every second pixel is looked at; every one where that tells no ticks.
_LOOKS = (2, 1)
# Fewer divisions agree with too much: with every fifth tick of a finer scale, and, on real photos,
# with what is no dial. As many as the drawn dials have at least.
FEWEST = 40
# Drawn dials have at most 0.98 of this; taken for one of twice as many divisions, at least 1.13.
_COARSENESS = 1.06
# Below this a picture is out of focus: its change over one pixel beside that over four.
_SHARP = 0.33
# Above this share of pixels that are as bright as can be, it is glare that hides things.
_GLARE, _BRIGHTEST = 0.04, 250
# The needle may pass beside the middle of the face: as made, and by its height over the face, in
# radii, when it is seen aslant.
_AS_MADE, _HEIGHT = 0.006, 0.045
# The standard uncertainty of a needle's angle beside what its own line tells: of ticks and print,
# in radians; and by how much its line's scatter is short of the truth. From drawn pictures.
_BASE, _SHORT = 0.0025, 1.4
# A standard uncertainty above this part of a division is not read.
_WORST = 0.07


@dataclass(frozen=True, slots=True)
class Look:
    """A photo of a dial, looked at.

    The needle's ``angle`` clockwise from one of the ticks and its standard uncertainty ``sigma``,
    both in divisions, and the face's ``prints``, ring by ring, clockwise from that tick.
    """

    angle: float
    sigma: float
    prints: tuple[bytes, ...]


def look_at(grey: Grey, divisions: int) -> Look | Refusal:
    """Find face, ticks, needle and print in a photo whose middle shows a dial.

    ``find_outline``, ``find_ticks``, ``find_needle`` and ``print_of`` in turn; the needle's
    uncertainty is ``sqrt((1.4 u_line)^2 + 0.0025^2)`` radians, found on drawn pictures alone.
    Refused too are a scale of fewer than 40 divisions, and one that has fewer than told.

    >>> look_at(Grey(bytes(240 * 240), 240, 240), 100)
    Refusal(code='outline')
    >>> look_at(Grey(bytes(240 * 240), 240, 240), 39)
    Refusal(code='few')
    """
    lie = _face(grey, divisions)
    if isinstance(lie, Refusal):
        return lie
    rings = unrolled(grey, lie, divisions)
    slope = math.sqrt(1.0 - lie.flatness**2) / lie.flatness
    needle = find_needle(grey, lie, rings, math.hypot(_AS_MADE, _HEIGHT * slope))
    if needle is None or needle.seen < _SEEN or needle.lead < _NEEDLE_LEAD:
        return Refusal(_hidden_by(grey) or "needle")
    to_divisions = divisions / math.tau
    sigma = math.hypot(_SHORT * needle.sigma, _BASE) * to_divisions
    if sigma > _WORST:
        return Refusal(_hidden_by(grey) or "needle")
    return Look(needle.angle * to_divisions, sigma, print_of(rings, needle))


def read_dial(now: Look, first: Look, reading: float, scale: Scale) -> DialReading | Refusal:
    """The reading of a photo from that of the first photo of the same dial.

    ``reading + step (angle now - angle first - turns of the face)``, divisions clockwise; minus
    that where the scale counts counterclockwise; within a turn. The half width is 1.96 standard
    uncertainties, those of both photos added as squares (JCGM 100, 5.1.2).

    >>> face = tuple(bytes([0] * i + [250] * i + [0] * (90 - 2 * i)) for i in range(1, 10))
    >>> turned = tuple(ring[-6:] + ring[:-6] for ring in face)
    >>> read = read_dial(Look(12.25, 0.1, turned), Look(3.0, 0.1, face), 5.0, Scale(45, 1.0, True))
    >>> read.value, round(read.pm, 3)
    (11.25, 0.277)
    >>> blank = (bytes(90),) * 9
    >>> read_dial(Look(1.0, 0.1, face), Look(1.0, 0.1, blank), 0.0, Scale(45, 1.0, True))
    Refusal(code='match')
    """
    match = match_prints(first.prints, now.prints, scale.divisions)
    if match.likeness < _LIKENESS or match.lead < _MATCH_LEAD:
        return Refusal("match")
    divisions = now.angle - first.angle - match.turned
    moved = scale.reading_at(360.0 * divisions / scale.divisions)
    value = float(f"{scale.within_a_turn(reading + moved):.12g}")
    return DialReading(value, K_95_LINE * math.hypot(now.sigma, first.sigma) * scale.step)


def _face(grey: Grey, divisions: int) -> Lie | Refusal:
    """How the face lies, where that is sure."""
    if divisions < FEWEST:
        return Refusal("few")
    for every in _LOOKS:
        oval = find_outline(grey, every)
        lie = None if oval is None else find_ticks(grey, oval, divisions)
        if lie is not None and lie.agreement >= _AGREEMENT:
            break
    else:
        is_cut = oval is not None and not oval.within(grey)
        return Refusal(_hidden_by(grey) or ("cut" if is_cut else "outline"))
    if lie.flatness < _FLATTEST:
        return Refusal("slanted")
    if not lie.within(grey):
        return Refusal("cut")
    if lie.coarseness > _COARSENESS:
        return Refusal("divisions")
    return lie


def _hidden_by(grey: Grey) -> str:
    """What may hide the dial: ``glare``, ``blur``, or nothing that can be told."""
    rows = [_middle_of(grey, y) for y in range(grey.height // 4, 3 * grey.height // 4, 4)]
    bright = sum(value >= _BRIGHTEST for row in rows for value in row)
    if bright > _GLARE * sum(map(len, rows)):
        return "glare"
    near = sum(sum(map(abs, map(sub, row[1:], row))) for row in rows)
    far = sum(sum(map(abs, map(sub, row[4:], row))) for row in rows)
    return "blur" if 0 < near < _SHARP * far else ""


def _middle_of(grey: Grey, y: int) -> Sequence[int]:
    at = y * grey.width
    return grey.pixels[at + grey.width // 4 : at + 3 * grey.width // 4]
