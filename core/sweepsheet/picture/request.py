"""What the page asks of a dial's photo: data in, a reading or a refusal in words out."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from sweepsheet.picture.scale import DialReading, Refusal, Scale
from sweepsheet.picture.taps import Taps, read_taps
from sweepsheet.words.faults import refused
from sweepsheet.words.messages import Language

_MOST_DIVISIONS, _LARGEST = 1000, 1e6
_MOST_SLANT_DEG = 60.0


def answer_dial(asked: Mapping[str, Any], language: Language) -> dict[str, Any]:
    """The reading of a dial: ``state`` is ``read`` or ``refused``.

    ``asked`` holds the ``scale`` (``divisions`` in a turn, what one ``step`` is worth, whether
    readings rise ``clockwise``) and the ``taps`` (``middle``, ``zero`` and ``tip`` as ``[x, y]`` in
    pixels, the ``sigma`` of a tap in pixels, the largest ``slant`` in degrees). Raises
    ``InputError`` for anything else.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> scale = {"divisions": 100, "step": 1, "clockwise": True}
    >>> taps = {"middle": [100, 100], "zero": [100, 20], "tip": [180, 100], "sigma": 1, "slant": 0}
    >>> shown = answer_dial({"scale": scale, "taps": taps}, ENGLISH)
    >>> shown["state"], shown["typed"], shown["text"]
    ('read', '25', 'Reading 25, give or take 0.8.')
    """
    scale = _scale(asked.get("scale"))
    read = read_taps(_taps(asked.get("taps")), scale)
    return _shown(read, scale, language)


def _shown(read: DialReading | Refusal, scale: Scale, language: Language) -> dict[str, Any]:
    if isinstance(read, Refusal):
        text = language.say(f"picture.refused.{read.code}")
        return {"state": "refused", "code": read.code, "text": text}
    # A tenth of a division is as fine as it is shown; the half width is rounded up.
    places = max(0, 1 - math.floor(math.log10(scale.step)))
    value = round(read.value, places) + 0.0
    pm = math.ceil(read.pm * 10.0**places) / 10.0**places
    reading, width = f"{value:.{places}f}", f"{pm:.{places}f}"
    if "." in reading:
        reading, width = reading.rstrip("0").rstrip("."), width.rstrip("0").rstrip(".")
    return {
        "state": "read",
        "reading": value,
        "pm": pm,
        "turn": scale.turn,
        "typed": reading,
        "text": language.say(
            "picture.read", reading=language.number(reading), pm=language.number(width)
        ),
        "turns": language.say("picture.turns"),
    }


# What was asked, checked ------------------------------------------------------------------------


def _number(value: object, least: float, most: float) -> float:
    """A number between two; ``InputError`` for anything else."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not least <= value <= most:
        raise refused("fault.request")
    return float(value)


def _data(value: object) -> Mapping[str, Any]:
    if not isinstance(value, dict):
        raise refused("fault.request")
    return value


def _scale(asked: object) -> Scale:
    data = _data(asked)
    divisions = _number(data.get("divisions"), 2, _MOST_DIVISIONS)
    clockwise = data.get("clockwise")
    if divisions != int(divisions) or not isinstance(clockwise, bool):
        raise refused("fault.request")
    return Scale(int(divisions), _number(data.get("step"), 1e-6, _LARGEST), clockwise)


def _point(asked: object) -> tuple[float, float]:
    if not isinstance(asked, list) or len(asked) != 2:
        raise refused("fault.request")
    x, y = (_number(value, -_LARGEST, _LARGEST) for value in asked)
    return x, y


def _taps(asked: object) -> Taps:
    data = _data(asked)
    middle, zero, tip = (_point(data.get(name)) for name in ("middle", "zero", "tip"))
    sigma = _number(data.get("sigma"), 0.01, _LARGEST)
    return Taps(middle, zero, tip, sigma, _number(data.get("slant"), 0.0, _MOST_SLANT_DEG))
