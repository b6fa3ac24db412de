"""The two unit systems: thou and inches, or millimetres throughout.

Small distances (readings, offsets, limits, shims) are in the *small* unit, lengths (radii,
depths) in the *long* one. Slopes are small unit over small unit, plain ratios.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

UnitName = Literal["inch", "metric"]

# One inch is 25.4 mm exactly (international yard and pound agreement, 1959; ISO 80000-3).
MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class UnitSystem:
    """Names, sizes and usual values of one system.

    ``mm`` is the size of the small unit in millimetres; ``small_per_long`` how many small
    units make a long one; ``decimals`` how many a result shows.
    """

    name: UnitName
    small: str
    long: str
    mm: float
    small_per_long: float
    decimals: int
    # Usual values where the job gives none. 0.005 in offset and offset dowels of 0.007, 0.014
    # and 0.021 in are common practice, no source; the maker's figure rules.
    step: float
    accuracy: float
    repeatability: float
    bore_offset_limit: float
    face_runout_limit: float
    dowel_offsets: tuple[float, ...]
    dowel_clearance: float
    largest_reading: float
    # How far (plus or minus) a length may be wrong that was taken with straight-edge and depth
    # gauge, and one taken with a caliper; common practice, no source.
    engine_pm: float
    gearbox_pm: float

    @property
    def small_per_inch(self) -> float:
        """How many small units make an inch."""
        return MM_PER_INCH / self.mm

    @property
    def long_mm(self) -> float:
        """The size of the long unit in millimetres."""
        return self.mm * self.small_per_long

    @property
    def hair(self) -> float:
        """A hundredth of a thou in the small unit: a difference that nobody can make or measure."""
        return 0.01 * MM_PER_INCH / 1000 / self.mm

    def show(self, value: float) -> str:
        """A small distance as text, without the unit, never as minus zero.

        >>> INCH.show(-0.01), METRIC.show(0.1397)
        ('0.0', '0.140')
        """
        text = f"{value:.{self.decimals}f}"
        return text.removeprefix("-") if float(text) == 0 else text

    def to_mm(self, value: float) -> float:
        """A small distance in millimetres.

        >>> round(INCH.to_mm(7.0), 4)
        0.1778
        """
        return value * self.mm


INCH = UnitSystem(
    name="inch", small="thou", long="in", mm=MM_PER_INCH / 1000, small_per_long=1000.0,
    decimals=1, step=0.5, accuracy=0.5, repeatability=0.25,
    bore_offset_limit=5.0, face_runout_limit=5.0, dowel_offsets=(7.0, 14.0, 21.0),
    dowel_clearance=1.0, largest_reading=500.0, engine_pm=0.01, gearbox_pm=0.005,
)  # fmt: skip

METRIC = UnitSystem(
    name="metric", small="mm", long="mm", mm=1.0, small_per_long=1.0,
    decimals=3, step=0.01, accuracy=0.01, repeatability=0.005,
    bore_offset_limit=0.127, face_runout_limit=0.127, dowel_offsets=(0.178, 0.356, 0.533),
    dowel_clearance=0.025, largest_reading=12.7, engine_pm=0.25, gearbox_pm=0.13,
)  # fmt: skip

SYSTEMS: dict[UnitName, UnitSystem] = {"inch": INCH, "metric": METRIC}
