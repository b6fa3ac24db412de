"""Reading single values of a job in its unit system, each with its usual value and its range."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.job.fields import FieldReader
from sweepsheet.maths.units import UnitSystem
from sweepsheet.words.messages import Message, Quantity

LONGEST_MM = 5000.0


def name_of(key: str, **values: Quantity) -> Message:
    """The name of a field, for a fault."""
    return Message(f"name.{key}", values)


class ValueReader:
    """Reads single values, noting faults in its reader. Paths end with the key of the value."""

    def __init__(self, reader: FieldReader, units: UnitSystem) -> None:
        """Read into this list of faults, in this unit system."""
        self.reader = reader
        self.units = units
        self.longest = LONGEST_MM / (units.mm * units.small_per_long)
        self.shortest = self.longest / 1e5

    def number(
        self, part: Mapping[str, Any], path: str, default: float, low: float, high: float
    ) -> float:
        """A number that must be known."""
        value = part.get(path.rpartition(".")[2], default)
        number = self.reader.number(value, path, name_of(path), low, high)
        return default if number is None else number

    def known(
        self, part: Mapping[str, Any], path: str, default: float | None, low: float, high: float
    ) -> float | None:
        """A number that may be ``null``, not known."""
        value = part.get(path.rpartition(".")[2], default)
        return None if value is None else self.reader.number(value, path, name_of(path), low, high)

    def small(self, part: Mapping[str, Any], path: str, default: float) -> float:
        """A small distance that is not negative."""
        return self.number(part, path, default, 0.0, self.units.largest_reading)

    def length(self, part: Mapping[str, Any], path: str) -> float | None:
        """A length in the long unit, ``None`` where not known."""
        return self.known(part, path, None, self.shortest, self.longest)

    def sizes(self, value: object, path: str, name: str, most: int) -> tuple[float, ...]:
        """Sizes in stock, each once, the smallest first. One of nothing is no size."""
        items = self.reader.listing(value, path, name_of(path), 0, most)
        largest = self.units.largest_reading
        found = [
            self.reader.number(item, f"{path}.{i}", name_of(name, n=i + 1), 0.0, largest)
            for i, item in enumerate(items)
        ]
        return tuple(sorted({size for size in found if size}))
