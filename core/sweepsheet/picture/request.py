"""What the page asks of a dial's photo: data in, a reading or a refusal in words out."""

from __future__ import annotations

import math
from binascii import a2b_base64, b2a_base64
from collections.abc import Mapping
from typing import Any

from sweepsheet.picture.dial import FEWEST, Look, look_at, read_dial
from sweepsheet.picture.match import PRINTS
from sweepsheet.picture.outline import Grey
from sweepsheet.picture.scale import DialReading, Refusal, Scale
from sweepsheet.picture.taps import Taps, read_taps
from sweepsheet.picture.ticks import samples_of
from sweepsheet.words.faults import refused
from sweepsheet.words.messages import Language

_LARGEST = 1e6
# Between what the numbers of a dial may lie, by the part of a request and the name in it.
RANGES = {
    "scale": {"divisions": (2.0, 1000.0), "step": (1e-6, _LARGEST)},
    "reference": {"reading": (-_LARGEST, _LARGEST)},
}
_MOST_SLANT_DEG = 60.0
# So many whole turns more and less are offered.
_MOST_TURNS = 2
# The sides of a picture in pixels: the reader knows dials of this size.
SIDES = (160, 320)


def answer_dial(asked: Mapping[str, Any], language: Language) -> dict[str, Any]:
    """The reading of a dial: ``state`` is ``read``, ``face`` or ``refused``.

    ``asked`` holds the ``scale`` (``divisions`` in a turn, what one ``step`` is worth, whether
    readings rise ``clockwise``) and one of these; anything else raises ``InputError``:

    - ``taps``: ``middle``, ``zero`` and ``tip`` as ``[x, y]`` in pixels, the ``sigma`` of a tap in
      pixels, the largest ``slant`` in degrees. The answer is a reading.
    - ``picture``: ``width``, ``height`` (up to 320; below 160 it is too small) and ``grey``, one
      byte a pixel, row by row, as Base64. The answer is its ``face``, to be handed over with later
      pictures.
    - ``picture`` and ``reference``: the ``face`` of the first photo, and the ``reading`` that it
      shows. The answer is a reading.

    A reading comes as it is ``typed`` into a field and as it is ``shown`` in the language, and with
    what it would be with whole turns more or less, ``turns``. Where ``all_round`` is true the field
    takes a number without a sign for what the dial shows, so a plus is typed; and it is said what
    the dial shows for minus.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> scale = {"divisions": 100, "step": 1, "clockwise": True}
    >>> taps = {"middle": [100, 100], "zero": [100, 20], "tip": [180, 100], "sigma": 1, "slant": 0}
    >>> shown = answer_dial({"scale": scale, "taps": taps}, ENGLISH)
    >>> shown["state"], shown["typed"], shown["text"]
    ('read', '25', 'Reading 25, give or take 0.8.')
    """
    scale = _scale(asked.get("scale"))
    is_all_round = asked.get("all_round", False)
    if not isinstance(is_all_round, bool):
        raise refused("fault.request")
    read = _read(asked, scale)
    if isinstance(read, Look):
        return {"state": "face", "face": _face(read)}
    if isinstance(read, Refusal):
        text = language.say(f"picture.refused.{read.code}", fewest=FEWEST)
        return {"state": "refused", "code": read.code, "text": text}
    return _shown(read, scale, language, is_all_round=is_all_round)


def _read(asked: Mapping[str, Any], scale: Scale) -> DialReading | Refusal | Look:
    """What is asked for, of a scale that was checked."""
    if "picture" not in asked:
        return read_taps(_taps(asked.get("taps")), scale)
    grey = _picture(asked["picture"])
    if min(grey.width, grey.height) < SIDES[0]:
        return Refusal("small")
    look = look_at(grey, scale.divisions)
    if "reference" not in asked or isinstance(look, Refusal):
        return look
    reference = data_of(asked["reference"])
    reading = number_of(reference.get("reading"), *RANGES["reference"]["reading"])
    return read_dial(look, _look(reference.get("face"), scale.divisions), reading, scale)


def _shown(
    read: DialReading, scale: Scale, language: Language, *, is_all_round: bool
) -> dict[str, Any]:
    # A tenth of a division is as fine as it is shown; the half width is rounded up.
    places = max(0, 1 - math.floor(math.log10(scale.step)))
    value = round(read.value, places) + 0.0
    pm = math.ceil(read.pm * 10.0**places) / 10.0**places

    def entered(reading: float) -> dict[str, str]:
        plus = "+" if is_all_round and reading > 0.0 else ""
        text = _written(reading, places)
        return {"typed": plus + text, "shown": plus + language.number(text)}

    number = language.number(_written(value, places))
    turns = []
    for reading in scale.turns_to(value, _MOST_TURNS):
        told = language.number(_written(reading, places))
        text = language.say("picture.as_read", reading=told) if reading == value else told
        turns.append({**entered(reading), "text": text})
    width = language.number(_written(pm, places))
    text = language.say("picture.read", reading=number, pm=width)
    if is_all_round and value < 0.0:
        shown = language.number(_written(value + scale.turn, places))
        text = f"{text} {language.say('picture.on_dial', shown=shown)}"
    return {
        "state": "read",
        "reading": value,
        "pm": pm,
        "turn": scale.turn,
        **entered(value),
        "text": text,
        "turns": turns,
        "note": language.say("picture.turns"),
    }


def _written(value: float, places: int) -> str:
    """A number as it is typed, without zeros behind the decimal point."""
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


# What was asked, checked ------------------------------------------------------------------------


def number_of(value: object, least: float, most: float) -> float:
    """A number between two; ``InputError`` for anything else."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not least <= value <= most:
        raise refused("fault.request")
    return float(value)


def whole_of(value: object, least: float, most: float) -> int:
    """A whole number between two; ``InputError`` for anything else."""
    number = number_of(value, least, most)
    if number != int(number):
        raise refused("fault.request")
    return int(number)


def data_of(value: object) -> Mapping[str, Any]:
    """Data by name; ``InputError`` for anything else."""
    if not isinstance(value, dict):
        raise refused("fault.request")
    return value


def _scale(asked: object) -> Scale:
    data, ranges = data_of(asked), RANGES["scale"]
    divisions = whole_of(data.get("divisions"), *ranges["divisions"])
    clockwise = data.get("clockwise")
    if not isinstance(clockwise, bool):
        raise refused("fault.request")
    return Scale(divisions, number_of(data.get("step"), *ranges["step"]), clockwise)


def _point(asked: object) -> tuple[float, float]:
    if not isinstance(asked, list) or len(asked) != 2:
        raise refused("fault.request")
    x, y = (number_of(value, -_LARGEST, _LARGEST) for value in asked)
    return x, y


def _taps(asked: object) -> Taps:
    data = data_of(asked)
    middle, zero, tip = (_point(data.get(name)) for name in ("middle", "zero", "tip"))
    sigma = number_of(data.get("sigma"), 0.01, _LARGEST)
    return Taps(middle, zero, tip, sigma, number_of(data.get("slant"), 0.0, _MOST_SLANT_DEG))


def unpacked(asked: object, length: int) -> bytes:
    """So many bytes, from Base64."""
    if not isinstance(asked, str) or len(asked) > 2 * length + 4:
        raise refused("fault.request")
    try:
        found = a2b_base64(asked, strict_mode=True)
    except ValueError:
        raise refused("fault.request") from None
    if len(found) != length:
        raise refused("fault.request")
    return found


def _picture(asked: object) -> Grey:
    data = data_of(asked)
    width, height = (whole_of(data.get(name), 1, SIDES[1]) for name in ("width", "height"))
    return Grey(unpacked(data.get("grey"), width * height), width, height)


def _face(look: Look) -> dict[str, Any]:
    """A look as data; ``_look`` reads it."""
    prints = b2a_base64(b"".join(look.prints), newline=False).decode("ascii")
    return {"angle": look.angle, "sigma": look.sigma, "prints": prints}


def _look(asked: object, divisions: int) -> Look:
    data = data_of(asked)
    n = samples_of(divisions)
    prints = unpacked(data.get("prints"), n * PRINTS)
    angle = number_of(data.get("angle"), -_LARGEST, _LARGEST)
    sigma = number_of(data.get("sigma"), 0.0, _LARGEST)
    return Look(angle, sigma, tuple(prints[i * n : (i + 1) * n] for i in range(PRINTS)))
