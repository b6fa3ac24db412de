"""Sweepsheet: from dial readings to a bellhousing that is true to the crankshaft.

``solve`` is the one function that other programs need; ``python -m sweepsheet JOB.json`` is the
same from a shell. The package is pure Python, needs the standard library alone and does no input
or output.

The frame, here and everywhere: seen from behind the engine, looking forward; angles in degrees
clockwise from 12 o'clock; x right, y up; a reading is plus when the plunger is pushed in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sweepsheet.api import sheet, solve
    from sweepsheet.words.faults import Fault, InputError

__all__ = ["Fault", "InputError", "sheet", "solve"]


def __getattr__(name: str) -> object:
    """What the package offers is imported when it is wanted (PEP 562): a page needs none of it."""
    if name not in __all__:
        raise AttributeError(f"module 'sweepsheet' has no attribute {name!r}")
    from sweepsheet.api import sheet, solve  # noqa: PLC0415 - see above
    from sweepsheet.words.faults import Fault, InputError  # noqa: PLC0415 - see above

    return {"Fault": Fault, "InputError": InputError, "sheet": sheet, "solve": solve}[name]
