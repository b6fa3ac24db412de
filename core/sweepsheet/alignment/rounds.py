"""One round measured: its bore, its face, and the pilot line of the two."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore, measure_bore
from sweepsheet.alignment.face import Face, limit_at, measure_face
from sweepsheet.alignment.pilot import Pilot, pilot_line
from sweepsheet.alignment.plate import Plate, plate_of, without_plate
from sweepsheet.alignment.seat import clearance_of, seat_covariance
from sweepsheet.job.model import Job, Round


@dataclass(frozen=True, slots=True)
class RoundResult:
    """What the sweeps of one round tell.

    ``face`` is ``None`` where it was not swept, ``pilot`` where the face or the distance is
    missing, or where end play may be in the face.
    """

    bore: Bore
    face: Face | None
    pilot: Pilot | None


def measure_rounds(job: Job) -> tuple[tuple[RoundResult, ...], Plate | None]:
    """Work out every round of a job, and the plate that was swept with the housing, if any."""
    raw = [_bore(job, each) for each in job.rounds]
    plate = plate_of(job, raw)
    bores = without_plate(job, raw, plate)
    found = (measure_round(job, each, bore) for each, bore in zip(job.rounds, bores, strict=True))
    return tuple(found), plate


def _bore(job: Job, each: Round) -> Bore:
    limits = job.limits
    return measure_bore(each.bore, job.indicator, job.crank, limits.bore_offset, limits.confidence)


def measure_round(job: Job, each: Round, bore: Bore | None = None) -> RoundResult:
    """Work out the sweeps of one round of a job; ``bore`` where its own sweep is not all."""
    limits, per_long = job.limits, job.units.small_per_long
    bore = bore or _bore(job, each)
    if each.face is None:
        return RoundResult(bore, None, None)
    allowed = limit_at(limits.face_runout, limits.face_radius, each.face.radius)
    face = measure_face(each.face, job.indicator, per_long, allowed, limits.confidence)
    distance = job.housing.pilot_distance
    if distance is None or not face.trusted:
        return RoundResult(bore, face, None)
    pilot = pilot_line(
        bore,
        face,
        distance * per_long,
        limits.pilot_offset,
        limits.confidence,
        seat_covariance(clearance_of(job)),
    )
    return RoundResult(bore, face, pilot)
