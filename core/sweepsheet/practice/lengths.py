"""A gearbox to practise on: places of its parts along the crank axis, and lengths to be measured.

Every part is a solid from one place to another on that axis, in millimetres rearward from the
crank's flange; those of the gearbox stand where its face is, and go rearward with what is put in
front of it. What a gap truly is, is seen from where two parts are; nothing is added up of what is
measured, and nothing taken from the formulas by which it is found. Invented; the lengths are of the
size that is common practice, no source.

A seed makes it, always the same: of the random module only ``random()`` is used.
"""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from sweepsheet.drawing.depth_measures import ENGINE, LETTERS
from sweepsheet.maths.units import MM_PER_INCH

# What the manual of this gearbox asks for, in mm: fields of the job that nobody measures here.
MANUAL = {
    "engagement_min": 0.4 * MM_PER_INCH, "tip_gap_min": 0.06 * MM_PER_INCH,
    "release_gap_min": 0.1 * MM_PER_INCH, "release_gap_max": 0.32 * MM_PER_INCH,
    "disc_wear": 0.06 * MM_PER_INCH, "fingers_worn": 0.08 * MM_PER_INCH,
    "bearing_stroke": 0.85 * MM_PER_INCH, "release_travel": 0.45 * MM_PER_INCH,
}  # fmt: skip
# By how much a careful hand is wrong at most, on the engine and on the gearbox, in mm.
_ON_ENGINE, _ON_GEARBOX = 0.008 * MM_PER_INCH, 0.004 * MM_PER_INCH


@dataclass(frozen=True, slots=True)
class Solid:
    """A part from its front end to its rear end."""

    front: float
    rear: float

    def at(self, by: float) -> Solid:
        """The same part, that much further rearward.

        >>> Solid(1.0, 2.0).at(0.5)
        Solid(front=1.5, rear=2.5)
        """
        return Solid(self.front + by, self.rear + by)

    def within(self, other: Solid) -> float:
        """How much of it lies in another; negative: how far they are apart.

        >>> Solid(0.0, 3.0).within(Solid(1.0, 2.0)), Solid(0.0, 1.0).within(Solid(2.0, 3.0))
        (1.0, -1.0)
        """
        return min(self.rear, other.rear) - max(self.front, other.front)


@dataclass(frozen=True, slots=True)
class TrueGearbox:
    """Where everything is: on the engine from the flange, on the gearbox from its own face.

    ``hole`` is the bottom of the hole behind the pilot bearing, ``face`` where the housing's rear
    face is; ``bearing`` the release bearing's face, pushed all the way back.
    """

    seed: int
    pilot: Solid
    hole: float
    hub: Solid
    fingers: float
    face: float
    shaft: Solid
    journal: Solid
    splines: Solid
    bearing: float

    def gaps(self, spacer: float) -> dict[str, float]:
        """Every gap with so much put between housing and gearbox, by the names of the job's."""
        by = self.face + spacer
        splines, room = self.splines.at(by), self.bearing + by - self.fingers
        hub, worn = self.hub, self.hub.at(-MANUAL["disc_wear"] / 2.0)
        return {
            "engagement": self.journal.at(by).within(self.pilot),
            "tip": self.shaft.at(by).front - self.hole,
            "hub_front": hub.front - splines.front,
            "hub_front_worn": worn.front - splines.front,
            "hub_rear": splines.rear - hub.rear,
            "release": room,
            "release_worn": room - MANUAL["fingers_worn"],
            "stroke": MANUAL["bearing_stroke"] - MANUAL["release_travel"] - room,
        }

    def fits(self, spacer: float) -> bool:
        """Whether every gap is as the manual asks for, and none is negative."""
        gaps = self.gaps(spacer)
        asked = {name: MANUAL.get(f"{name}_min", 0.0) for name in gaps}
        most = MANUAL["release_gap_max"]
        return all(gaps[name] >= asked[name] for name in gaps) and gaps["release"] <= most

    def length(self, name: str) -> float:
        """A length as a careful hand takes it, by the name of its field, in mm."""
        true = {
            "to_face": self.face,
            "to_pilot": -self.pilot.rear,
            "pilot_length": self.pilot.rear - self.pilot.front,
            "to_bottom": -self.hole,
            "to_hub_front": self.hub.front,
            "to_hub_rear": self.hub.rear,
            "to_fingers": self.fingers,
            "to_tip": -self.shaft.front,
            "journal_length": self.journal.rear - self.journal.front,
            "to_splines_front": -self.splines.front,
            "to_splines_rear": -self.splines.rear,
            "to_bearing": -self.bearing,
        }[name]
        draw = Random(self.seed * 1009 + list(LETTERS).index(name))  # noqa: S311 - no secret
        wrong = _ON_ENGINE if name in ENGINE else _ON_GEARBOX
        return true + wrong * (2.0 * draw.random() - 1.0)


def true_gearbox_of(seed: int) -> TrueGearbox:
    """The gearbox of a seed: one of three fits as it is; of the others the shaft bottoms.

    A spacer of the right thickness puts those right.

    >>> true_gearbox_of(10).fits(0.0), true_gearbox_of(2).fits(0.0), true_gearbox_of(2).fits(5.0)
    (True, False, True)
    """
    draw = Random(seed * 1009 + 7)  # noqa: S311 - an exercise that anybody may foretell

    def inch(low: float, high: float) -> float:
        return MM_PER_INCH * (low + (high - low) * draw.random())

    fits_as_it_is = draw.random() < 1.0 / 3.0
    rear = -inch(0.1, 0.2)
    pilot = Solid(rear - inch(0.7, 0.8), rear)
    hole = pilot.front - inch(0.1, 0.2)
    front = inch(0.95, 1.05)
    hub = Solid(front, front + inch(0.95, 1.05))
    fingers, face = inch(2.5, 2.6), inch(6.25, 6.35)
    # How far the tip is from the bottom, and the bearing from the fingers, with nothing between.
    gap = inch(0.12, 0.2) if fits_as_it_is else -inch(0.03, 0.1)
    room = inch(0.15, 0.25) if fits_as_it_is else inch(-0.01, 0.04)
    tip = hole + gap - face
    ahead, behind = inch(0.3, 0.4), inch(0.3, 0.5)
    return TrueGearbox(
        seed=seed,
        pilot=pilot,
        hole=hole,
        hub=hub,
        fingers=fingers,
        face=face,
        shaft=Solid(tip, 0.0),
        journal=Solid(tip, tip + inch(0.8, 0.9)),
        splines=Solid(hub.front - ahead - face, hub.rear + behind - face),
        bearing=fingers + room - face,
    )
