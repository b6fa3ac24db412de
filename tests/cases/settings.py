"""What the tests derive from the settings of a job, so that a new one is in them by itself."""

from __future__ import annotations

from typing import Any

from sweepsheet.job.model import SECTIONS, SETTINGS
from sweepsheet.job.settings import LENGTH, LIMIT, SMALL, Setting, settings_of
from sweepsheet.maths.units import INCH
from tests.cases.jobs import Data

# Keys of small distances and of lengths, wherever they stand in a job.
SMALL_KEYS = {
    "sweeps", "opposite", "closing", "sag", "height", "limit", "offset",
    *(
        path.rpartition(".")[2]
        for path, setting in SETTINGS.items()
        if setting.kind == "sizes" or (setting.kind == "number" and setting.span in (SMALL, LIMIT))
    ),
}  # fmt: skip
LONG_KEYS = {
    "radius",
    *(path.rpartition(".")[2] for path, setting in SETTINGS.items() if setting.span is LENGTH),
}


def other_than_usual(setting: Setting) -> Any:
    """An allowed value that is not the usual one, in inches and thou."""
    if setting.kind == "choice":
        return setting.choices[-1]
    if setting.kind == "text":
        return "a text"
    if setting.kind == "sizes":
        return [14.0, 7.0, 7.0, 0.0]
    low, high = setting.span.low(INCH), setting.span.high(INCH)
    return low + (high - low) * 0.2


def every_setting() -> dict[str, Data]:
    """The sections of a job in which every setting is other than usual.

    But for the assembly: one that is not the main one has none of some of the others.
    """
    found = {
        section: {key: other_than_usual(each) for key, each in settings_of(part).items()}
        for section, part in SECTIONS.items()
    }
    return found | {"housing": found["housing"] | {"assembly": None}}
