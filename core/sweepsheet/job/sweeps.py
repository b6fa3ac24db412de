"""Reading the sweeps of a job: bore, face and companion sweeps, their positions and readings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, cast, get_args

from sweepsheet.job.model import (
    BoreSweeps,
    Contact,
    EndFloat,
    FaceSweeps,
    Plunger,
    RotatingPart,
    RotatingPartKind,
    Sweeps,
)
from sweepsheet.job.positions import position_faults
from sweepsheet.job.values import ValueReader, name_of
from sweepsheet.maths.clock import normalise
from sweepsheet.words.messages import ClockPosition

MOST_SWEEPS = 10
MOST_POSITIONS = 72


class SweepReader(ValueReader):
    """Reads sweeps, noting faults in its reader."""

    def bore(self, value: object, path: str) -> BoreSweeps:
        """The bore sweeps of a round."""
        keys = ("contact", "positions_deg", "sweeps", "closing")
        part = self.reader.section(value, path, keys)
        return BoreSweeps(self.contact(part, path), self.sweeps(part, path))

    def face(self, value: object, path: str) -> FaceSweeps:
        """The face sweeps of a round."""
        keys = (
            "radius", "plunger", "end_float", "opposite", "positions_deg", "sweeps", "closing",
        )  # fmt: skip
        part = self.reader.section(value, path, keys)
        radius = self.reader.number(
            part.get("radius"), f"{path}.radius", name_of("face.radius"),
            self.shortest, self.longest,
        )  # fmt: skip
        end_float = self.reader.choice(
            part.get("end_float", "free"), f"{path}.end_float", name_of("face.end_float"),
            get_args(EndFloat),
        )  # fmt: skip
        faults_before = self.reader.count
        sweeps = self.sweeps(part, path)
        return FaceSweeps(
            radius=radius or 1.0,
            plunger=self.plunger(part, path),
            end_float=cast(EndFloat, end_float),
            opposite=self.opposite(part.get("opposite"), f"{path}.opposite", sweeps, faults_before),
            sweeps=sweeps,
        )

    def opposite(
        self, value: object, path: str, first: Sweeps, faults_before: int
    ) -> tuple[tuple[float | None, ...], ...] | None:
        """What the second dial showed: as many sweeps as the first, and where the first has any.

        ``faults_before`` were there before the first dial's sweeps were read.
        """
        of = len(first.readings)
        if value is None or not of:
            return None
        rows = self.reader.listing(value, path, name_of("face.opposite"), of, of)
        found = tuple(
            self.sweep(row, f"{path}.{j}", j, of, first.positions_deg) for j, row in enumerate(rows)
        )
        if rows and self.reader.count == faults_before:
            both = tuple(
                tuple(None if m is None else n for m, n in zip(one, other, strict=True))
                for one, other in zip(first.readings, found, strict=True)
            )
            for fault in position_faults(first.positions_deg, both):
                where = fault.where.replace("sweeps", "opposite")
                self.reader.fault(f"{path.rpartition('.')[0]}.{where}", fault.key, **fault.values)
        return found or None

    def sweeps(self, part: Mapping[str, Any], path: str) -> Sweeps:
        """Positions, readings and returns to zero; positions that can be fitted."""
        faults_before = self.reader.count
        at = f"{path}.positions_deg"
        default = [0, 90, 180, 270]
        items = self.reader.listing(
            part.get("positions_deg", default), at, name_of("positions"), 3, MOST_POSITIONS
        )
        angles = [
            self.reader.number(item, f"{at}.{i}", name_of("position", n=i + 1), -360.0, 360.0)
            for i, item in enumerate(items)
        ]
        # Readings are checked even where a position is not known, so that no fault is hidden.
        positions = tuple(normalise(a or 0.0) for a in angles)
        at = f"{path}.sweeps"
        rows = self.reader.listing(part.get("sweeps"), at, name_of("sweeps"), 1, MOST_SWEEPS)
        readings = tuple(
            self.sweep(row, f"{at}.{j}", j, len(rows), positions) for j, row in enumerate(rows)
        )
        # What a missing or mistyped reading does to the geometry is not a second fault.
        if self.reader.count == faults_before:
            for found in position_faults(positions, readings):
                self.reader.fault(f"{path}.{found.where}", found.key, **found.values)
        return Sweeps(positions, readings, self.closing(part, path, len(rows)))

    def sweep(
        self, row: object, path: str, j: int, of: int, positions: tuple[float, ...]
    ) -> tuple[float | None, ...]:
        """The readings of sweep j of so many."""
        name = name_of("sweep", n=j + 1)
        items = self.reader.listing(row, path, name, 1, MOST_POSITIONS)
        if positions and items and len(items) != len(positions):
            self.reader.fault(
                path, "fault.readings", name=name, wanted=len(positions), got=len(items)
            )
            return ()
        most = self.units.largest_reading
        found: list[float | None] = []
        for i, item in enumerate(items):
            at = ClockPosition(positions[i]) if i < len(positions) else str(i + 1)
            label = name_of("reading" if of == 1 else "reading of sweep", at=at, n=j + 1)
            known = item is not None
            found.append(
                self.reader.number(item, f"{path}.{i}", label, -most, most) if known else None
            )
        return tuple(found)

    def closing(self, part: Mapping[str, Any], path: str, of: int) -> tuple[float | None, ...]:
        """The return to zero of each sweep, ``None`` where it was not taken."""
        at = f"{path}.closing"
        none: list[float | None] = [None] * of
        value = part.get("closing")
        if value is None or not of:
            return tuple(none)
        items = self.reader.listing(value, at, name_of("closing"), 0, MOST_SWEEPS)
        if len(items) > of:
            self.reader.fault(
                at, "fault.readings", name=name_of("closing"), wanted=of, got=len(items)
            )
            return tuple(none)
        most = self.units.largest_reading
        for j, item in enumerate(items):
            if item is not None:
                label = name_of("closing of sweep", n=j + 1)
                none[j] = self.reader.number(item, f"{at}.{j}", label, -most, most)
        return tuple(none)

    def companion(self, value: object, path: str) -> RotatingPart:
        """A sweep of a part that turns with the crank."""
        keys = ("kind", "contact", "plunger", "limit", "positions_deg", "sweeps", "closing")
        part = self.reader.section(value, path, keys)
        kind = self.reader.choice(
            part.get("kind"), f"{path}.kind", name_of("companion.kind"), get_args(RotatingPartKind)
        )
        limit = part.get("limit")
        if limit is not None:
            least = 10.0**-self.units.decimals
            limit = self.reader.number(
                limit,
                f"{path}.limit",
                name_of("companion.limit"),
                least,
                self.units.largest_reading,
            )
        return RotatingPart(
            kind=cast(RotatingPartKind, kind),
            contact=self.contact(part, path),
            plunger=self.plunger(part, path),
            limit=limit,
            sweeps=self.sweeps(part, path),
        )

    def contact(self, part: Mapping[str, Any], path: str) -> Contact:
        """Where a dial touches."""
        found = self.reader.choice(
            part.get("contact", "inside"), f"{path}.contact", name_of("contact"), get_args(Contact)
        )
        return cast(Contact, found)

    def plunger(self, part: Mapping[str, Any], path: str) -> Plunger:
        """Which way a dial on a face points."""
        found = self.reader.choice(
            part.get("plunger", "forward"), f"{path}.plunger", name_of("face.plunger"),
            get_args(Plunger),
        )  # fmt: skip
        return cast(Plunger, found)
