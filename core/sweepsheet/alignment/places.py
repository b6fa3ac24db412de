"""Where shaft, pilot bearing, clutch and release bearing are once all is together.

Places along the crank axis, rearward from where the engine was measured, as in ``depth``.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

from sweepsheet.alignment.depth import GapName
from sweepsheet.job.model import Depth


@dataclass(frozen=True, slots=True)
class Places:
    """Where each part is, rearward from where the engine was measured; ``None``: not known."""

    face: float | None
    pilot_rear: float
    pilot_front: float | None
    bottom: float | None
    tip: float | None
    journal_rear: float | None
    hub_front: float | None
    hub_rear: float | None
    splines_front: float | None
    splines_rear: float | None
    fingers: float | None
    bearing: float | None

    @property
    def known(self) -> tuple[float, ...]:
        """All of them that are known, and where they are measured from."""
        values = (getattr(self, each.name) for each in fields(self))
        return (0.0, *(value for value in values if value is not None))

    def ends_of(self, name: GapName) -> tuple[float, float] | None:
        """The two places that make a gap, the forward one first where it is not negative.

        ``None`` for what is no distance of two places as they are: worn parts, a stroke.
        """
        ends: dict[GapName, tuple[float | None, float | None]] = {
            "engagement": (_last(self.pilot_front, self.tip), _first(self.pilot_rear,
                                                                    self.journal_rear)),
            "tip": (self.bottom, self.tip),
            "hub_front": (self.splines_front, self.hub_front),
            "hub_rear": (self.hub_rear, self.splines_rear),
            "release": (self.fingers, self.bearing),
        }  # fmt: skip
        left, right = ends.get(name, (None, None))
        return None if left is None or right is None else (left, right)


def _last(*places: float | None) -> float | None:
    """The rearmost of those known."""
    return max((place for place in places if place is not None), default=None)


def _first(*places: float | None) -> float | None:
    """The foremost of those known."""
    return min((place for place in places if place is not None), default=None)


def places_of(given: Depth) -> Places:
    """Where the parts are once all is together.

    >>> from sweepsheet.job.read import read_job
    >>> rounds = [{"bore": {"sweeps": [[0, 1, 2, 1]]}}]
    >>> depth = {"to_face": 6.25, "to_tip": 6.875, "to_pilot": 0.125, "pilot_length": 0.75}
    >>> job = {"format": "sweepsheet-job", "version": 1, "depth": depth, "rounds": rounds}
    >>> places = places_of(read_job(job).depth)
    >>> places.tip, places.pilot_rear, places.pilot_front, places.ends_of("engagement")
    (-0.625, -0.125, -0.875, (-0.625, -0.125))
    """

    def on_gearbox(length: float | None) -> float | None:
        face = given.to_face
        return None if length is None or face is None else face + given.added - length

    tip, pilot = on_gearbox(given.to_tip), -given.to_pilot
    journal, bearing = given.journal_length, given.pilot_length
    return Places(
        face=on_gearbox(0.0),
        pilot_rear=pilot,
        pilot_front=None if bearing is None else pilot - bearing,
        bottom=None if given.to_bottom is None else -given.to_bottom,
        tip=tip,
        journal_rear=None if tip is None or journal is None else tip + journal,
        hub_front=given.to_hub_front,
        hub_rear=given.to_hub_rear,
        splines_front=on_gearbox(given.to_splines_front),
        splines_rear=on_gearbox(given.to_splines_rear),
        fingers=given.to_fingers,
        bearing=on_gearbox(given.to_bearing),
    )
