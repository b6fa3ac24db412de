"""What is typed beside a photo of a dial, as the numbers of which a reader of photos makes use."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.form.parse import number_or_text

_FEWEST, _MOST, _LARGEST = 2, 1000, 1e6


def typed_dial(asked: Mapping[str, Any]) -> dict[str, Any] | None:
    """The request with numbers for texts; ``None`` where one of them is no number that can be.

    >>> typed_dial({"scale": {"divisions": "100", "step": "0,5", "clockwise": True}})
    {'scale': {'divisions': 100.0, 'step': 0.5, 'clockwise': True}}
    >>> typed_dial({"scale": {"divisions": "a lot", "step": "1"}}) is None
    True
    """
    found = dict(asked)
    scale, reference = asked.get("scale"), asked.get("reference")
    if isinstance(scale, dict):
        divisions, step = _number(scale.get("divisions")), _number(scale.get("step"))
        if divisions is None or step is None or divisions != int(divisions):
            return None
        if not (_FEWEST <= divisions <= _MOST and 0.0 < step <= _LARGEST):
            return None
        found["scale"] = {**scale, "divisions": divisions, "step": step}
    if isinstance(reference, dict):
        reading = _number(reference.get("reading"))
        if reading is None:
            return None
        found["reference"] = {**reference, "reading": reading}
    return found


def _number(value: object) -> float | None:
    """A number, or one that was typed."""
    read = number_or_text(value) if isinstance(value, str) else value
    is_number = isinstance(read, int | float) and not isinstance(read, bool)
    return float(read) if is_number else None  # type: ignore[arg-type]
