"""A gearbox and an engine as solids on one axis, measured with errors, and then put together.

Every part is where it is in space, in inches rearward from the crank's flange; what a gap truly
is comes from the places of two parts, never from sums of what was measured.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, replace

from tests.cases.jobs import Data, make_job, readings_of


@dataclass(frozen=True)
class Span:
    """A part from one place to another."""

    front: float
    rear: float

    def shifted(self, by: float) -> Span:
        """The same part further rearward."""
        return Span(self.front + by, self.rear + by)

    def shared(self, other: Span) -> float:
        """How much of two parts lies at the same places; negative: how far they are apart."""
        return min(self.rear, other.rear) - max(self.front, other.front)


@dataclass(frozen=True)
class Gearbox:
    """What stands off the gearbox's face, which is at 0: rearward from there, so most is minus."""

    shaft: Span = Span(-6.9, 0.0)
    journal: Span = Span(-6.9, -6.1)
    splines: Span = Span(-5.6, -4.0)
    release_bearing: float = -3.65
    stroke: float = 0.8


@dataclass(frozen=True)
class Engine:
    """Crank, clutch and housing; what lies between housing and gearbox is ``between``."""

    pilot: Span = Span(-0.85, -0.1)
    bottom: float = -1.5
    hub: Span = Span(0.95, 1.95)
    fingers: float = 2.5
    face: float = 6.3
    between: float = 0.0


@dataclass(frozen=True)
class Fit:
    """Engine and gearbox put together; ``worn`` is how far hub and fingers go by wear."""

    engine: Engine = Engine()
    gearbox: Gearbox = Gearbox()
    disc_wear: float = 0.06
    fingers_worn: float = 0.1
    release_travel: float = 0.45

    def gaps(self, spacer: float = 0.0) -> dict[str, float]:
        """Every gap as it truly is, with another thickness between."""
        engine, gearbox = self.engine, self.gearbox
        by = engine.face + engine.between + spacer
        shaft, splines = gearbox.shaft.shifted(by), gearbox.splines.shifted(by)
        hub, worn = engine.hub, engine.hub.shifted(-self.disc_wear / 2.0)
        room = gearbox.release_bearing + by - engine.fingers
        return {
            "engagement": gearbox.journal.shifted(by).shared(engine.pilot),
            "tip": shaft.front - engine.bottom,
            "hub_front": hub.front - splines.front,
            "hub_front_worn": worn.front - splines.front,
            "hub_rear": splines.rear - hub.rear,
            "release": room,
            "release_worn": room - self.fingers_worn,
            "stroke": gearbox.stroke - (room + self.release_travel),
        }

    def measured(
        self, rng: random.Random | None = None, engine_pm: float = 0.01, gearbox_pm: float = 0.005
    ) -> Data:
        """The ``depth`` of a job; each length wrong by anything up to what its tool allows."""
        engine, gearbox = self.engine, self.gearbox

        def on_engine(length: float) -> float:
            return length + (rng.uniform(-engine_pm, engine_pm) if rng else 0.0)

        def on_gearbox(length: float) -> float:
            return length + (rng.uniform(-gearbox_pm, gearbox_pm) if rng else 0.0)

        return {
            "to_face": on_engine(engine.face),
            "to_pilot": on_engine(-engine.pilot.rear) if engine.pilot.rear else 0.0,
            "pilot_length": on_engine(engine.pilot.rear - engine.pilot.front),
            "to_bottom": on_engine(-engine.bottom),
            "added": on_gearbox(engine.between) if engine.between else 0.0,
            "to_tip": on_gearbox(-gearbox.shaft.front),
            "journal_length": on_gearbox(gearbox.journal.rear - gearbox.journal.front),
            "to_hub_front": on_engine(engine.hub.front),
            "to_hub_rear": on_engine(engine.hub.rear),
            "to_splines_front": on_gearbox(-gearbox.splines.front),
            "to_splines_rear": on_gearbox(-gearbox.splines.rear),
            "disc_wear": self.disc_wear,
            "to_fingers": on_engine(engine.fingers),
            "fingers_worn": self.fingers_worn,
            "to_bearing": on_gearbox(-gearbox.release_bearing),
            "bearing_stroke": on_gearbox(gearbox.stroke),
            "release_travel": self.release_travel,
            "engine_pm": engine_pm,
            "gearbox_pm": gearbox_pm,
        }

    def nearer(self, by: float) -> Fit:
        """The same with the gearbox's face further forward."""
        return replace(self, engine=replace(self.engine, face=self.engine.face - by))


# The tip of the shaft meets the bottom of its hole by a twentieth of an inch.
DEEP = Fit(Engine(bottom=-0.55))


def depth_job(fit: Fit, rng: random.Random | None = None, **depth: object) -> Data:
    """A job with a good bore and what was measured of a fit, but for what is changed."""
    return make_job(readings_of(0.0, -1.0), depth=fit.measured(rng) | depth)


def any_fit(rng: random.Random) -> Fit:
    """A fit by chance, good or bad."""

    def about(value: float, by: float = 0.4) -> float:
        return value + rng.uniform(-by, by)

    between = rng.choice([0.0, 0.03, 0.25])
    tip, rear, front = about(-6.9), about(-0.1, 0.1), about(1.0)
    pilot, hub, splines = about(0.75), about(1.0, 0.2), about(-5.6)
    return Fit(
        Engine(
            Span(rear - pilot, rear), rear - pilot - rng.uniform(0.1, 1.0),
            Span(front, front + hub), about(2.5, 0.2), about(6.3, 0.1), between,
        ),
        Gearbox(
            Span(tip, 0.0), Span(tip, tip + rng.uniform(0.3, 1.0)), Span(splines, splines + 1.6),
            about(-3.65, 0.3), about(0.8, 0.2),
        ),
    )  # fmt: skip
