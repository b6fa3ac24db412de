"""What was typed, as the data of a job file, and from which field of the form each part came."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from sweepsheet.form.dial import SIGNED, Dial
from sweepsheet.form.marks import Marks
from sweepsheet.words.messages import Message


@dataclass(frozen=True, slots=True)
class FormJob:
    """What was typed, as job data, with what the page needs to know about it.

    ``names`` tells, for places of the job that the form calls otherwise, the form's name;
    ``fields``, for places that are one field of the form with all that is below them, which one.
    ``unfinished`` names what was begun and does not count yet; ``dial`` is how readings were
    written, which have their sign in the job, and ``marks`` are those that the readings are named
    by.
    """

    job: dict[str, Any]
    names: dict[str, str] = field(default_factory=dict)
    fields: dict[str, str] = field(default_factory=dict)
    unfinished: list[Message] = field(default_factory=list)
    dial: Dial = SIGNED
    marks: Marks | None = None

    def form_name(self, place: str) -> str:
        """The form's name for a place of the job: the longest known beginning counts."""
        parts = place.split(".")
        for n in range(len(parts), 0, -1):
            beginning = ".".join(parts[:n])
            if beginning in self.fields:
                return self.fields[beginning]
            if beginning in self.names:
                return ".".join([self.names[beginning], *parts[n:]])
        return place
