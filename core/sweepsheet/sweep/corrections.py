"""From what the dial showed to what the bore did, before anything is fitted.

The order is that of the causes: the sense of the dial, the angle of its contact, its return to
zero, then droop and crank lift. What comes out is in the *inside sense*: plus when the plunger of
a dial that touches the bore from inside is pushed in, whatever dial was used.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.job.model import BoreSweeps, Crank, FaceSweeps, Indicator, RotatingPart, Sweeps
from sweepsheet.maths.clock import unit_vector


@dataclass(frozen=True, slots=True)
class CorrectedReadings:
    """Corrected readings, ``readings[j][i]`` for sweep j at position i, ``None`` where missing."""

    positions_deg: tuple[float, ...]
    readings: tuple[tuple[float | None, ...], ...]


def contact_factor(contact_angle_deg: float) -> float:
    """``cos b``: the true displacement over what the dial shows.

    ``b`` is the angle between the plunger and the radial line, or between the lever of a test
    indicator and the tangent. Assumes that it stays the same all round.
    Source: cosine error, as printed in lever-indicator tables.

    >>> round(contact_factor(30.0), 4)
    0.866
    """
    return math.cos(math.radians(contact_angle_deg))


def droop_at(position_deg: float, total: float) -> float:
    """``s (1 - cos a) / 2``: what droop adds at a position, zero at 12, whole ``s`` at 6.

    The bracket hangs down by the same amount wherever the crank stands, so the plunger is pushed
    in at the bottom and let out at the top: a first harmonic, like an offset, and no residual
    tells it from one. ``total`` is the top-to-bottom difference, twice the droop itself.

    >>> droop_at(0.0, 3.0), droop_at(90.0, 3.0), droop_at(180.0, 3.0)
    (0.0, 1.5, 3.0)
    """
    return total * (1.0 - unit_vector(position_deg).y) / 2.0


def vertical_shift(indicator: Indicator, crank: Crank) -> float:
    """The total top-to-bottom difference to take out: sag plus crank lift.

    Sag: as measured, else the middle of what it may be: not measured, it is anything from nothing
    up to the allowance, and never less; measured at another reach, anything that fits that. Lift: a
    crank at rest lies at the bottom of its bearings and runs up to the whole clearance higher;
    measured from below, the bore seems too high by half the lift. It is taken out as US Army
    TM 9-4940-568-34, p. 5-62 does, which adds the whole clearance to the 12 o'clock reading against
    the one at 6. Neither acts on a crank that stands on end.
    """
    if crank.axis == "vertical":
        return 0.0
    low, high = indicator.sag_range
    return (low + high) / 2.0 + crank.lift


def corrected_bore(bore: BoreSweeps, indicator: Indicator, crank: Crank) -> CorrectedReadings:
    """The bore's readings in the inside sense, with every known effect taken out.

    A dial that touches a spigot from outside moves the other way, and droop with it, so both are
    turned round first and one correction serves for both.
    """
    inside = 1.0 if bore.contact == "inside" else -1.0
    shift = vertical_shift(indicator, crank)
    sweeps = _true_displacement(bore.sweeps, indicator)
    return CorrectedReadings(
        bore.sweeps.positions_deg,
        tuple(
            tuple(
                None if m is None else inside * m - droop_at(a, shift)
                for a, m in zip(bore.sweeps.positions_deg, sweep, strict=True)
            )
            for sweep in sweeps
        ),
    )


def corrected_face(face: FaceSweeps, indicator: Indicator) -> CorrectedReadings:
    """The face's readings, plus where the face stands rearward.

    A plunger that points forward touches the face from behind and is pushed in where the face
    stands rearward; one that points rearward, the opposite. A crank that floats endwise moves
    one dial as the face would; two dials half a turn apart move alike with it, so that half their
    difference is free of it (and of every even harmonic, warp of the saddle kind included).
    """
    sense = 1.0 if face.plunger == "forward" else -1.0
    first = _true_displacement(face.sweeps, indicator)
    if face.opposite is None:
        return _in_sense(face.sweeps.positions_deg, first, sense)
    # The second dial's drift is its own, and was not written down.
    second = _true_displacement(
        Sweeps(face.sweeps.positions_deg, face.opposite, (None,) * len(face.opposite)), indicator
    )
    halves = tuple(
        tuple(
            None if m is None or n is None else (m - n) / 2.0
            for m, n in zip(one, other, strict=True)
        )
        for one, other in zip(first, second, strict=True)
    )
    return _in_sense(face.sweeps.positions_deg, halves, sense)


def corrected_rotating_part(part: RotatingPart, indicator: Indicator) -> CorrectedReadings:
    """A companion sweep's readings: the inside sense for a bore, plus rearward for a face.

    The dial stands still, so its droop is the same at every reading.
    """
    plus = part.plunger == "forward" if part.is_face else part.contact == "inside"
    displaced = _true_displacement(part.sweeps, indicator)
    return _in_sense(part.sweeps.positions_deg, displaced, 1.0 if plus else -1.0)


def _in_sense(
    positions_deg: tuple[float, ...],
    readings: tuple[tuple[float | None, ...], ...],
    sense: float,
) -> CorrectedReadings:
    """Readings all turned to one sense."""
    return CorrectedReadings(
        positions_deg,
        tuple(tuple(None if m is None else sense * m for m in row) for row in readings),
    )


def _true_displacement(
    sweeps: Sweeps, indicator: Indicator
) -> tuple[tuple[float | None, ...], ...]:
    """Sense, contact angle and return to zero: what any sweep needs, of bore or face."""
    factor = contact_factor(indicator.contact_angle_deg)
    if indicator.plus_when == "plunger_out":
        factor = -factor
    return tuple(
        tuple(None if m is None else factor * m for m in without_drift(sweep, closing))
        for sweep, closing in zip(sweeps.readings, sweeps.closing, strict=True)
    )


def without_drift(
    readings: Sequence[float | None], closing: float | None
) -> tuple[float | None, ...]:
    """Readings less the drift of the dial, spread evenly over the sweep.

    ``closing`` is by how much the dial was off when the crank was back where the sweep began. Of
    n readings taken at an even pace, the first has none of it and the last (n - 1)/n.

    >>> without_drift((0.0, 5.0, 0.0, -5.0), 2.0)
    (0.0, 4.5, -1.0, -6.5)
    """
    drift = closing or 0.0
    n = len(readings)
    return tuple(None if m is None else m - drift * i / n for i, m in enumerate(readings))
