"""Clock angles: the one place where directions are defined.

Seen from behind the engine, looking forward: degrees clockwise from 12 o'clock (the top of
the engine), so 90 is 3 o'clock (right), 180 is 6, 270 is 9. One hour is 30 degrees.
"""

from __future__ import annotations

import math
import re

from sweepsheet.maths.vector import Vec2

# Nearer to a full hour than this, a direction is called by that hour alone.
HOUR_TOLERANCE_DEG = 5.0

_TIME = re.compile(r"(\d{1,2})(?::([0-5]\d))?(?:\s*(?:h|o'clock|o’clock))?", re.IGNORECASE)
_DEGREES = re.compile(
    r"([+-]?\d{1,3}(?:[.,]\d{1,24})?(?:e-\d{1,3})?)\s*(?:°|deg|d|degrees)", re.IGNORECASE
)


def normalise(angle_deg: float) -> float:
    """The same direction in ``0 <= angle < 360`` degrees.

    >>> normalise(-90.0), normalise(720.0)
    (270.0, 0.0)
    """
    turned = math.fmod(angle_deg, 360.0)
    if turned < 0:
        turned += 360.0
    # A tiny negative angle plus 360 rounds to 360 itself.
    return 0.0 if turned >= 360.0 else turned + 0.0


def turn_between(from_deg: float, to_deg: float) -> float:
    """The shortest turn from one direction to another, clockwise plus, -180 < turn <= 180.

    >>> turn_between(350.0, 10.0), turn_between(10.0, 350.0)
    (20.0, -20.0)
    """
    turn = normalise(to_deg - from_deg)
    return turn - 360.0 if turn > 180.0 else turn


def unit_vector(angle_deg: float) -> Vec2:
    """``u(a) = (sin a, cos a)``: the unit vector toward a clock angle.

    Quarter turns come out exact, so that round readings give round answers.

    >>> unit_vector(90.0), unit_vector(180.0)
    (Vec2(x=1.0, y=0.0), Vec2(x=0.0, y=-1.0))
    """
    a = normalise(angle_deg)
    if a % 90.0 == 0:
        return (Vec2(0.0, 1.0), Vec2(1.0, 0.0), Vec2(0.0, -1.0), Vec2(-1.0, 0.0))[int(a // 90)]
    return Vec2(math.sin(math.radians(a)), math.cos(math.radians(a)))


def polar(angle_deg: float, length: float) -> Vec2:
    """``l u(a)``: the vector of a length toward a clock angle.

    >>> polar(270.0, 7.0)
    Vec2(x=-7.0, y=0.0)
    """
    return unit_vector(angle_deg).scaled(length)


def direction_of(v: Vec2) -> float:
    """The clock angle toward which a vector points; 0 for the zero vector.

    >>> direction_of(Vec2(-1.0, 0.0))
    270.0
    """
    return normalise(math.degrees(math.atan2(v.x, v.y)))


def clock_time(angle_deg: float) -> str:
    """The direction as the time an hour hand would show, to five minutes (2.5 degrees).

    >>> clock_time(315.0), clock_time(0.0), clock_time(309.8)
    ('10:30', '12:00', '10:20')
    """
    fives = round(normalise(angle_deg) / 2.5) % 144
    hour, minute = divmod(fives * 5, 60)
    return f"{hour or 12}:{minute:02d}"


def hour_at(angle_deg: float) -> int | None:
    """The hour the direction lies at, to ``HOUR_TOLERANCE_DEG``; ``None`` between two hours.

    >>> hour_at(2.0), hour_at(309.8)
    (12, None)
    """
    hours = normalise(angle_deg) / 30.0
    whole = round(hours)
    if abs(hours - whole) * 30.0 <= HOUR_TOLERANCE_DEG:
        return (whole - 1) % 12 + 1
    return None


def parse_position(text: str) -> float | None:
    """A position as a person types it, in degrees; ``None`` where it can't be understood.

    A bare number is a clock hour (1 to 12), with minutes if need be; degrees are marked.

    >>> parse_position("10:30"), parse_position("3"), parse_position("45 deg")
    (315.0, 90.0, 45.0)
    >>> parse_position("45") is None
    True
    """
    text = text.strip()
    degrees = _DEGREES.fullmatch(text)
    if degrees:
        value = float(degrees.group(1).replace(",", "."))
        return normalise(value) if abs(value) <= 360 else None
    time = _TIME.fullmatch(text)
    if time and 1 <= int(time.group(1)) <= 12:
        return normalise(int(time.group(1)) * 30.0 + int(time.group(2) or 0) / 2.0)
    return None
