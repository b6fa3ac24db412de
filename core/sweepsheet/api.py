"""The two doors for programs: a job as data in, a result as data or a sheet in words out."""

from __future__ import annotations

from typing import Any

from sweepsheet.findings.job import findings_for
from sweepsheet.job.read import read_job
from sweepsheet.report.result import result_of
from sweepsheet.report.sheet import sheet_text
from sweepsheet.solution import work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.messages import Language


def solve(job: dict[str, Any], language: Language = ENGLISH) -> dict[str, Any]:
    """The result of a job, both as JSON-ready data (job and result format, version 1).

    Small distances are thou (0.001 in) for ``"units": "inch"`` and mm for ``"metric"``, angles
    clock degrees seen from behind. Pure: the same job gives the same result, nothing is kept
    and nothing in ``job`` is changed. Raises ``InputError``, with every fault, for bad input, and
    nothing else.

    >>> result = solve({"format": "sweepsheet-job", "version": 1, "indicator": {"sag": 0},
    ...     "rounds": [{"bore": {"sweeps": [[0, -5.5, -11, -5.5]], "closing": [0]}}]})
    >>> bore = result["rounds"][0]["bore"]
    >>> bore["center"], bore["tir"], bore["move_deg"]
    ([0.0, -5.5], 11.0, 0.0)
    >>> choice = result["dowel_choice"]
    >>> choice["offset"], choice["aim_deg"], choice["expected_offset"]
    (7.0, 0.0, 1.5)
    """
    solution = work_out(read_job(job))
    language = worded(language, solution.job.housing.assembly)
    return result_of(solution, findings_for(solution), language)


def sheet(job: dict[str, Any], language: Language = ENGLISH) -> str:
    """The sheet of a job as plain text. Raises ``InputError`` as ``solve`` does."""
    solution = work_out(read_job(job))
    language = worded(language, solution.job.housing.assembly)
    return sheet_text(solution, findings_for(solution), language)
