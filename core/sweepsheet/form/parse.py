"""What a person types, as numbers and positions where it looks like them, as text where not.

Nothing is refused here: what can't be understood is passed on as it was typed, so that
``read_job`` can say at its field what is wanted.
"""

from __future__ import annotations

import re

from sweepsheet.maths.clock import parse_position

_NUMBER = re.compile(r"[+-]?(?:\d{1,12}(?:\.\d{0,24})?|\.\d{1,24})(?:e-\d{1,3})?")
_BETWEEN_POSITIONS = re.compile(r"[;\s]+|(?<!\d),|,(?!\d+°)")
_SIGNS = str.maketrans({"\N{MINUS SIGN}": "-", "\N{EN DASH}": "-", "\N{NO-BREAK SPACE}": " "})

Value = float | str | None


def number_or_text(typed: str) -> Value:
    """A typed number, the text itself where it is none, ``None`` where nothing was typed.

    A decimal comma will do, and so will any minus sign a phone may set.

    >>> number_or_text(" -5,5 "), number_or_text(".004"), number_or_text("o"), number_or_text(" ")
    (-5.5, 0.004, 'o', None)
    """
    text = typed.translate(_SIGNS).strip()
    if not text or text in ("+", "-"):
        return None  # nothing yet, or the sign of a number that is still being typed
    plain = text.replace(",", ".").replace("- ", "-").replace("+ ", "+")
    return float(plain) if _NUMBER.fullmatch(plain) else text


def number_list(typed: str) -> list[Value]:
    """Typed numbers parted by spaces, semicolons, or commas that are followed by a space.

    >>> number_list("7, 14, 21"), number_list("0,178 0,356"), number_list("7,14,21")
    ([7.0, 14.0, 21.0], [0.178, 0.356], [7.0, 14.0, 21.0])
    """
    parts = [part.strip(",") for part in re.split(r"[;\s]+", typed.strip())]
    if len(parts) == 1 and parts[0].count(",") > 1:
        parts = parts[0].split(",")
    return [number_or_text(part) for part in parts if part]


def position_or_text(typed: str) -> Value:
    """A typed clock position in degrees, the text itself where it is none.

    >>> position_or_text("10:30"), position_or_text("noon"), position_or_text("")
    (315.0, 'noon', None)
    """
    angle = parse_position(typed)
    return angle if angle is not None else typed.strip() or None


def position_list(typed: str, most: int) -> list[Value]:
    """Typed clock positions parted by spaces, commas or semicolons; no more than one over ``most``.

    A comma between digits that lead to a degree sign is a decimal comma.

    >>> position_list("12, 3 6;9", 12), position_list("45°,92,5°", 12)
    ([0.0, 90.0, 180.0, 270.0], [45.0, 92.5])
    """
    words = [word for word in _BETWEEN_POSITIONS.split(typed.strip()) if word]
    return [position_or_text(word) for word in words[: most + 1]]
