"""The result as JSON-ready data: version 1 of the result format."""

from __future__ import annotations

from typing import Any

from sweepsheet.bore import Bore
from sweepsheet.dowels import Option
from sweepsheet.solution import Solution
from sweepsheet.vector import Sym2, Vec2
from sweepsheet.wording import Language

FORMAT = "sweepsheet-result"
VERSION = 1


def result_of(solution: Solution, language: Language) -> dict[str, Any]:
    """The result of a solution; small distances in the job's small unit, angles in degrees.

    Chances and verdicts are ``None`` where there is no limit.
    """
    job = solution.job
    return {
        "format": FORMAT,
        "version": VERSION,
        "units": job.units.name,
        "rounds": [
            {"name": each.name, "bore": _bore(bore)}
            for each, bore in zip(job.rounds, solution.bores, strict=True)
        ],
        "dowel_options": [_option(option) for option in solution.options],
        "dowel_choice": None if solution.choice is None else _option(solution.choice),
        "findings": [
            {
                "code": finding.code,
                "level": finding.level,
                "field": finding.field,
                "text": language.text(finding.message),
            }
            for finding in solution.findings
        ],
    }


def _bore(bore: Bore) -> dict[str, Any]:
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
        "residuals": [list(row) for row in bore.fitted.residuals],
        "repeatability": bore.doubt.scatter,
        "lack_of_fit": bore.doubt.lack_of_fit,
        "out_of_round": None if bore.round_error is None else bore.round_error.tir,
        "pair_difference": None if bore.pairs is None else bore.pairs.difference,
        "closing_error": bore.closing_error,
        "probability_within": bore.probability,
        "verdict": bore.verdict,
    }


def _option(option: Option) -> dict[str, Any]:
    return {
        "offset": option.offset,
        "aim_deg": option.aim_deg,
        "leave": option.leave,
        "expected_offset": option.expected_offset,
        "probability_within": option.probability,
        "verdict": option.verdict,
    }


def _vector(v: Vec2) -> list[float]:
    # Adding nothing turns minus zero into zero.
    return [v.x + 0.0, v.y + 0.0]


def _matrix(m: Sym2) -> list[list[float]]:
    return [[m.xx + 0.0, m.xy + 0.0], [m.xy + 0.0, m.yy + 0.0]]
