"""Reading single values of a job in its unit system, each with its usual value and its range."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.job.fields import FieldReader
from sweepsheet.job.settings import MOST_SIZES, Setting, longest, settings_of, shortest
from sweepsheet.maths.units import UnitSystem
from sweepsheet.words.messages import Message, Quantity


def name_of(key: str, **values: Quantity) -> Message:
    """The name of a field, for a fault."""
    return Message(f"name.{key}", values)


class ValueReader:
    """Reads single values, noting faults in its reader. Paths end with the key of the value."""

    def __init__(self, reader: FieldReader, units: UnitSystem) -> None:
        """Read into this list of faults, in this unit system."""
        self.reader = reader
        self.units = units
        self.longest, self.shortest = longest(units), shortest(units)

    def settings(self, kind: type, section: str, part: Mapping[str, Any]) -> dict[str, Any]:
        """Every described setting of a part of the job (``settings``), by its key."""
        described = settings_of(kind)
        return {key: self.setting(part, f"{section}.{key}", of) for key, of in described.items()}

    def setting(self, part: Mapping[str, Any], path: str, setting: Setting) -> Any:
        """One setting as it is described."""
        value = part.get(path.rpartition(".")[2], usual := setting.usual_in(self.units))
        if value is None and setting.nullable:
            return None
        match setting.kind:
            case "number":
                low, high = setting.span.low(self.units), setting.span.high(self.units)
                number = self.reader.number(value, path, name_of(path), low, high)
                return usual if number is None and not setting.nullable else number
            case "choice":
                return self.reader.choice(value, path, name_of(path), setting.choices)
            case "text":
                return self.reader.text(value, path, name_of(path))
            case _:  # sizes
                return self.sizes(value, path, setting.name)

    def sizes(self, value: object, path: str, name: str) -> tuple[float, ...]:
        """Sizes in stock, each once, the smallest first. One of nothing is no size."""
        items = self.reader.listing(value, path, name_of(path), 0, MOST_SIZES)
        largest = self.units.largest_reading
        found = [
            self.reader.number(item, f"{path}.{i}", name_of(name, n=i + 1), 0.0, largest)
            for i, item in enumerate(items)
        ]
        return tuple(sorted({size for size in found if size}))
