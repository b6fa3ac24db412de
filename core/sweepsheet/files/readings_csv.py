"""The readings of a job as CSV (RFC 4180), a line a reading, and a job of the usual settings back.

The columns are ``COLUMNS``. A position that was not reached has a line without a reading; the
return to zero of a sweep has a line of its own. Parts that turn with the crank belong to no round.
A text that a spreadsheet could take for a formula gets a ``'`` in front.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, get_args

from sweepsheet.form.from_job import number_text
from sweepsheet.form.parse import Value, number_or_text
from sweepsheet.job.model import RotatingPartKind
from sweepsheet.job.read import FORMAT, MOST_ROUNDS, VERSION
from sweepsheet.job.sweeps import MOST_SWEEPS
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.words.faults import refused

COLUMNS = ("round", "part", "sweep", "position_deg", "reading", "return_to_zero", "unit")
SECOND = "face_second_dial"
MOST_LINES = 30_000
_UNITS = {units.small: name for name, units in SYSTEMS.items()}
# A spreadsheet takes these for formulas. A text that begins with the mark itself would lose it.
_MARKED = ("=", "+", "-", "@", "\t", "\r", "'")
_DELIMITERS = (",", ";", "\t")

Data = dict[str, Any]


def csv_of(data: Mapping[str, Any]) -> str:
    r"""The readings of a job file's data, which need not be finished.

    >>> bore = {"positions_deg": [0, 90], "sweeps": [[0, "=5"]], "closing": [0.5]}
    >>> print(csv_of({"rounds": [{"bore": bore}]}).replace("\r", ""), end="")
    round,part,sweep,position_deg,reading,return_to_zero,unit
    1,bore,1,0,0,,thou
    1,bore,1,90,'=5,,thou
    1,bore,1,,,0.5,thou
    """
    import csv  # noqa: PLC0415 (only here, since it would make every start longer)

    written = _Written()
    writer = csv.writer(written)
    writer.writerow(COLUMNS)
    unit = SYSTEMS[data.get("units", "inch")].small
    for line in _lines(data):
        writer.writerow([_cell(value) for value in (*line, unit)])
    return "".join(written.pieces)


class _Written:
    """What a CSV writer writes to."""

    def __init__(self) -> None:
        self.pieces: list[str] = []

    def write(self, piece: str) -> None:
        self.pieces.append(piece)


def _lines(data: Mapping[str, Any]) -> Iterator[tuple[object, ...]]:
    """The lines of every sweep, without the unit."""
    for n, each in enumerate(data["rounds"], start=1):
        yield from _sweep_lines(n, "bore", each["bore"])
        if each.get("face") is not None:
            yield from _sweep_lines(n, "face", each["face"])
            opposite = each["face"].get("opposite") or ()
            yield from _sweep_lines(n, SECOND, {**each["face"], "sweeps": opposite, "closing": ()})
    for part in data.get("companions") or ():
        yield from _sweep_lines("", part["kind"], part)


def _sweep_lines(n: object, part: str, swept: Mapping[str, Any]) -> Iterator[tuple[object, ...]]:
    closing = swept.get("closing") or ()
    for j, row in enumerate(swept["sweeps"]):
        for position, reading in zip(swept["positions_deg"], row, strict=False):
            yield (n, part, j + 1, position, reading, "")
        if j < len(closing) and closing[j] is not None:
            yield (n, part, j + 1, "", "", closing[j])


def _cell(value: object) -> str:
    text = number_text(value)
    return f"'{text}" if isinstance(value, str) and text.startswith(_MARKED) else text


# Back ---------------------------------------------------------------------------------------


def is_csv(text: str) -> bool:
    """Whether a text begins as readings do.

    >>> is_csv('round;part;sweep;position_deg;reading;return_to_zero;unit'), is_csv("{}")
    (True, False)
    """
    return _delimiter(text) is not None


def _delimiter(text: str) -> str | None:
    first = text.lstrip("\ufeff")[:200].splitlines()[:1]
    for delimiter in _DELIMITERS:
        cells = [cell.strip().strip('"') for line in first for cell in line.split(delimiter)]
        if tuple(cells) == COLUMNS:
            return delimiter
    return None


@dataclass(frozen=True, slots=True)
class _Swept:
    """What a CSV tells of one thing that was swept: readings by sweep and position."""

    positions: list[Value] = field(default_factory=list)
    sweeps: dict[int, dict[Value, Value]] = field(default_factory=dict)
    closing: dict[int, Value] = field(default_factory=dict)


def data_of_csv(text: str) -> Data:
    """A job file's data from readings as CSV; ``InputError`` where it is none of ours."""
    import csv  # noqa: PLC0415 (only here, since it would make every start longer)

    delimiter = _delimiter(text)
    if delimiter is None:
        raise refused("csv.header", columns=", ".join(COLUMNS))
    swept: dict[tuple[int, str], _Swept] = {}
    units = set()
    try:
        rows = csv.reader(text.lstrip("\ufeff").splitlines(keepends=True), delimiter=delimiter)
        for number, row in enumerate(rows, start=1):
            if number > MOST_LINES:
                raise refused("csv.long", high=MOST_LINES)
            if number > 1 and any(cell.strip() for cell in row):
                units.add(_read_line(swept, row, number))
    except csv.Error as error:
        raise refused("csv.broken", why=str(error)) from None
    if len(units) != 1:
        raise refused("csv.units" if units else "csv.empty")
    return _job(swept, units.pop())


def _read_line(swept: dict[tuple[int, str], _Swept], row: list[str], number: int) -> str:
    """Take in one line, the so-manieth; its units."""
    cells = [cell.strip() for cell in row]
    if len(cells) != len(COLUMNS):
        raise refused("csv.cells", line=number, wanted=len(COLUMNS), got=len(cells))
    _, part, _, at, reading, closing, unit = cells
    companion = part in get_args(RotatingPartKind)
    if not (companion or part in ("bore", "face", SECOND)):
        raise refused("csv.part", line=number)
    if unit not in _UNITS:
        raise refused("csv.unit", line=number)
    n = 0 if companion else _count(cells[0], MOST_ROUNDS, "round", number)
    j = _count(cells[2], MOST_SWEEPS, "sweep", number)
    found = swept.setdefault((n, part), _Swept())
    row_of = found.sweeps.setdefault(j, {})
    if closing:
        if j in found.closing:
            raise refused("csv.twice", line=number)
        found.closing[j] = _value(closing)
    if at:
        position = _value(at)
        if position in row_of:
            raise refused("csv.twice", line=number)
        row_of[position] = _value(reading)
        if position not in found.positions:
            found.positions.append(position)
    elif reading:
        raise refused("csv.position", line=number)
    return _UNITS[unit]


def _count(text: str, most: int, column: str, number: int) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 4 and 1 <= int(text) <= most):
        raise refused("csv.count", line=number, column=column, high=most)
    return int(text)


def _value(text: str) -> Value:
    """A number or a text; the mark that keeps a text from being a formula is taken off."""
    return number_or_text(text.removeprefix("'"))


def _job(swept: dict[tuple[int, str], _Swept], units: str) -> Data:
    rounds = []
    for n in sorted({n for n, _ in swept if n}) or [0]:
        bore = swept.get((n, "bore"), _Swept([0.0, 90.0, 180.0, 270.0], {1: {}}))
        found: Data = {"bore": _sweeps(bore, sorted(bore.sweeps))}
        face, second = swept.get((n, "face")), swept.get((n, SECOND))
        if face or second:
            found["face"] = _face(face or _Swept(), second)
        rounds.append(found)
    companions = [
        {"kind": part, **_sweeps(each, sorted(each.sweeps))}
        for (n, part), each in swept.items()
        if n == 0
    ]
    head = {"format": FORMAT, "version": VERSION, "units": units}
    return {**head, "companions": companions, "rounds": rounds}


def _face(face: _Swept, second: _Swept | None) -> Data:
    numbers = sorted({*face.sweeps, *(second.sweeps if second else ())})
    positions = list(face.positions)
    positions += [at for at in (second.positions if second else ()) if at not in positions]
    data = _sweeps(_Swept(positions, face.sweeps, face.closing), numbers)
    if second:
        data["opposite"] = _sweeps(_Swept(positions, second.sweeps), numbers)["sweeps"]
    return data | {"radius": None}


def _sweeps(swept: _Swept, numbers: list[int]) -> Data:
    rows = [swept.sweeps.get(j, {}) for j in numbers]
    return {
        "positions_deg": list(swept.positions),
        "sweeps": [[row.get(at) for at in swept.positions] for row in rows],
        "closing": [swept.closing.get(j) for j in numbers],
    }
