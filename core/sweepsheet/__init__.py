"""Sweepsheet: from dial readings to a bellhousing that is true to the crankshaft.

``solve`` is the one function that other programs need; ``python -m sweepsheet JOB.json`` is the
same from a shell. The package is pure Python, needs the standard library alone and does no input
or output.

The frame, here and everywhere: seen from behind the engine, looking forward; angles in degrees
clockwise from 12 o'clock; x right, y up; a reading is plus when the plunger is pushed in.
"""

from sweepsheet.api import sheet, solve
from sweepsheet.words.faults import Fault, InputError

__all__ = ["Fault", "InputError", "sheet", "solve"]
