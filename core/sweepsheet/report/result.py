"""The result as JSON-ready data: version 1 of the result format.

Small distances are in the job's small unit, angles in clock degrees, slopes plain ratios, angles
between axes in radians. ``None`` stands where something is not known or there is no limit to judge
by.
"""

from __future__ import annotations

from typing import Any

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.depth import Gap
from sweepsheet.alignment.face import Face
from sweepsheet.alignment.pilot import Pilot
from sweepsheet.alignment.rotating_part import Runout
from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.alignment.seat import Seat
from sweepsheet.findings.advice import Step, advice_for
from sweepsheet.findings.finding import Finding
from sweepsheet.findings.reach import reach_of
from sweepsheet.job.model import Dowel
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.maths.verdict import Judged
from sweepsheet.remedy.chip import ChipEffect
from sweepsheet.remedy.dowels import Option
from sweepsheet.remedy.history import History
from sweepsheet.remedy.spacer import Band, DepthFit
from sweepsheet.remedy.squaring import Squaring
from sweepsheet.remedy.unequal_pairs import Pair
from sweepsheet.solution import Solution
from sweepsheet.sweep.analysis import SweepAnalysis
from sweepsheet.words.messages import Language

FORMAT = "sweepsheet-result"
VERSION = 1

Data = dict[str, Any]


def result_of(
    solution: Solution, findings: tuple[Finding, ...], language: Language
) -> dict[str, Any]:
    """The result of a solution and its findings."""
    job = solution.job
    squaring = solution.squaring
    return {
        "format": FORMAT,
        "version": VERSION,
        "units": job.units.name,
        "rounds": [
            _round(each.name, measured)
            for each, measured in zip(job.rounds, solution.measured, strict=True)
        ],
        "dowel_options": [_option(option) for option in solution.options],
        "dowel_choice": None if solution.chosen is None else _option(solution.chosen),
        "fine_options": [_pair(pair) for pair in solution.pairs],
        "reach": _reach(solution),
        "dowels_did": _deed(solution.history),
        "trim": _trim(solution.history),
        "shims": _shims(squaring),
        "squaring": None if squaring is None else _squaring(squaring),
        "joint": None if solution.seat is None else _seat(solution.seat),
        "depth": None if solution.depth is None else _depth(solution.depth),
        "chip": None if solution.chip is None else _chip(solution.chip),
        "companions": [_companion(runout) for runout in solution.companions],
        "advice": [_step(each, language) for each in advice_for(solution, findings)],
        "findings": [_finding(each, language) for each in findings],
    }


def _round(name: str, measured: RoundResult) -> Data:
    face, pilot = measured.face, measured.pilot
    return {
        "name": name,
        "bore": _bore(measured.bore),
        "face": None if face is None else _face(face),
        "pilot": None if pilot is None else _pilot(pilot),
    }


def _bore(bore: Bore) -> Data:
    return {
        "center": _vector(bore.center),
        "covariance": _matrix(bore.covariance),
        "offset": bore.offset,
        "offset_pm": bore.offset_pm,
        "direction_deg": bore.direction_deg,
        "direction_pm_deg": bore.direction_pm_deg,
        "move_deg": bore.move_deg,
        "tir": bore.tir,
        "ellipse95": {
            "semi_axes": [bore.ellipse.major, bore.ellipse.minor],
            "at_deg": bore.ellipse.at_deg,
        },
        **_checks(bore.swept),
        **_judged(bore.judged),
    }


def _judged(judged: Judged) -> Data:
    return {"probability_within": judged.probability, "verdict": judged.verdict}


def _checks(swept: SweepAnalysis) -> Data:
    """What the checks of any sweep say."""
    return {
        "residuals": [list(row) for row in swept.fitted.residuals],
        "repeatability": swept.uncertainty.scatter,
        "lack_of_fit": swept.uncertainty.lack_of_fit,
        "out_of_round": None if swept.second is None else swept.second.tir,
        "pair_difference": None if swept.pairs is None else swept.pairs.difference,
        "closing_error": swept.closing_error,
    }


def _face(face: Face) -> Data:
    return {
        "slope": _vector(face.slope),
        "slope_covariance": _matrix(face.slope_covariance),
        "runout": face.runout,
        "runout_pm": face.runout_pm,
        "rearmost_deg": face.rearmost_deg,
        "direction_pm_deg": face.direction_pm_deg,
        "limit": face.limit,
        "total_reading": face.swept.total_reading,
        "warp": face.warp,
        "end_float_free": face.trusted,
        **_checks(face.swept),
        **_judged(face.judged),
    }


def _pilot(pilot: Pilot) -> Data:
    return {
        "center": _vector(pilot.center),
        "covariance": _matrix(pilot.covariance),
        "offset": pilot.offset,
        "offset_pm": pilot.offset_pm,
        "direction_deg": pilot.direction_deg,
        "direction_pm_deg": pilot.direction_pm_deg,
        "angle": pilot.angle,
        "angle_pm": pilot.angle_pm,
        **_judged(pilot.judged),
    }


def _option(option: Option) -> Data:
    return {
        "offset": option.offset,
        "aim_deg": option.aim_deg,
        "leave": option.leave,
        "expected_offset": option.expected_offset,
        **_judged(option.judged),
        "expected_pilot_offset": option.expected_pilot,
        "pilot_probability_within": option.pilot_judged.probability,
        "fits_bolt_holes": option.fits,
    }


def _pair(pair: Pair) -> Data:
    return {
        "dowels": [_dowel(dowel) for dowel in pair.dowels],
        "expected_offset": pair.expected_offset,
        "housing_turn_deg": pair.moved.turn_deg,
        "spacing_misfit": pair.moved.misfit,
        **_judged(pair.judged),
    }


def _reach(solution: Solution) -> Data | None:
    reach = reach_of(solution)
    if reach is None:
        return None
    return {
        "kind": reach.kind,
        "offset": reach.size,
        "expected_offset": reach.left,
        "sure": reach.sure,
        "bolt_clearance": reach.clearance,
        "fits_bolt_holes": reach.fits,
        "pair": None if reach.pair is None else _pair(reach.pair),
    }


def _dowel(dowel: Dowel) -> Data:
    return {"offset": dowel.offset, "aim_deg": dowel.aim_deg}


def _deed(history: History) -> Data | None:
    observed, response = history.observed, history.response
    if observed is None:
        return None
    return {
        "offset": observed.size,
        "offset_pm": observed.size_pm,
        "direction_deg": observed.direction_deg,
        "direction_pm_deg": observed.direction_pm_deg,
        "agrees": observed.agrees,
        "opposite": observed.opposite,
        "mirrored": observed.mirrored,
        "gain": None if response is None or observed.contradicts else response.gain,
        "lag_deg": None if response is None or observed.contradicts else response.lag_deg,
    }


def _trim(history: History) -> Data | None:
    trim = history.trim
    if trim is None:
        return None
    return {
        "turn_deg": trim.turn_deg,
        "aim_deg": trim.aim_deg,
        "expected_offset": trim.expected_offset,
        "probability_within": history.trim_probability,
    }


def _shims(squaring: Squaring | None) -> list[Data]:
    if squaring is None or squaring.shims is None:
        return []
    return [
        {
            "at_deg": shim.at_deg,
            "thickness": shim.thickness,
            "ideal": shim.ideal,
            "pieces": None if shim.pieces is None else list(shim.pieces),
        }
        for shim in squaring.shims.shims
    ]


def _squaring(squaring: Squaring) -> Data:
    shims, after = squaring.shims, squaring.bore_after
    return {
        "cause": squaring.cause,
        "bore_after": None if after is None else _vector(after),
        "bore_if_tipped": None if squaring.if_tipped is None else _vector(squaring.if_tipped),
        "bore_if_crooked": _vector(squaring.if_crooked),
        "taper": {
            "slope": squaring.taper.slope,
            "deepest_deg": squaring.taper.deepest_deg,
            "across": squaring.taper.across,
        },
        "slope_left": None if shims is None else _vector(shims.slope_left),
        "rock": None if shims is None else shims.rock,
        "chip_that_explains": squaring.chip,
    }


def _seat(seat: Seat) -> Data:
    return {
        "clearance": seat.clearance,
        **_judged(seat.judged),
    }


def _depth(depth: DepthFit) -> Data:
    """Gaps along the crank axis, in the long unit."""
    return {
        "gaps": [_gap(gap) for gap in depth.gaps],
        "spacer": _band(depth.spacer),
        "release_shim": _band(depth.release_shim),
    }


def _gap(gap: Gap) -> Data:
    return {
        "name": gap.name,
        "size": gap.size,
        "size_pm": gap.pm,
        "least": gap.least if gap.is_given else None,
        "most": gap.most,
        **_judged(gap.judged),
    }


def _band(band: Band | None) -> list[float] | None:
    """From which thickness to which."""
    return None if band is None else [band.low, band.high]


def _chip(chip: ChipEffect) -> Data:
    moves = {"bore": chip.bore, "nose": chip.nose, "tail": chip.tail}
    return {"slope": _vector(chip.slope)} | {
        key: None if move is None else _vector(move) for key, move in moves.items()
    }


def _companion(runout: Runout) -> Data:
    return {
        "kind": runout.kind,
        "tir": runout.tir,
        "total_reading": runout.swept.total_reading,
        "offset": runout.offset,
        "offset_pm": runout.offset_pm,
        "direction_deg": runout.direction_deg,
        "direction_pm_deg": runout.direction_pm_deg,
        **_checks(runout.swept),
        **_judged(runout.judged),
    }


def _step(each: Step, language: Language) -> Data:
    return {"code": each.code, **each.numbers, "text": language.text(each.message)}


def _finding(each: Finding, language: Language) -> Data:
    return {
        "code": each.code,
        "level": each.level,
        "field": each.field,
        "text": language.text(each.message),
    }


def _vector(v: Vec2) -> list[float]:
    # Adding nothing turns minus zero into zero.
    return [v.x + 0.0, v.y + 0.0]


def _matrix(m: Sym2) -> list[list[float]]:
    return [[m.xx + 0.0, m.xy + 0.0], [m.xy + 0.0, m.yy + 0.0]]
