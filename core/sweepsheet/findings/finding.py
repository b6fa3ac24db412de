"""A finding: one thing to know about the readings or the result.

``stop``: do not act on this before it is cleared up; ``caution``: know this before you act;
``note``. Words are in the language's table under ``finding.<code>``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sweepsheet.words.messages import Message, Quantity

Level = Literal["stop", "caution", "note"]
LEVELS: tuple[Level, ...] = ("stop", "caution", "note")


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to know, with the field of the job that it speaks of."""

    code: str
    level: Level
    field: str
    message: Message


def finding(code: str, level: Level, field: str, **values: Quantity) -> Finding:
    """A finding with the quantities of its sentence."""
    return Finding(code, level, field, Message(f"finding.{code}", values))
