"""Links for the tests, and their insides, read and made independently of the code under test."""

from __future__ import annotations

import base64
import json
import zlib
from typing import Any

from sweepsheet.findings.job import findings_for
from sweepsheet.job.read import read_job
from sweepsheet.link.codec import fragment_of
from sweepsheet.link.figures import figures_of
from sweepsheet.solution import work_out
from tests.cases.jobs import (
    face_readings,
    make_job,
    readings_of,
    then,
    with_dowels,
    with_face,
)

Data = dict[str, Any]


def link_of(data: Data) -> str:
    """The link of a job with its own figures."""
    solution = work_out(read_job(data))
    return fragment_of(data, figures_of(solution, findings_for(solution)))


def packed(text: str | bytes) -> str:
    """A fragment with any text in it, made independently of the code under test."""
    raw = text.encode("utf-8", "surrogatepass") if isinstance(text, str) else text
    return "3" + base64.urlsafe_b64encode(zlib.compress(raw)).decode().rstrip("=")


def unpacked(fragment: str) -> str:
    """The JSON in a fragment, read independently of the code under test."""
    payload = fragment[1:]
    return zlib.decompress(base64.urlsafe_b64decode(payload + "=" * (-len(payload) % 4))).decode()


def ordinary_job(positions: tuple[float, ...]) -> Data:
    """As found and after a pair of dowels; bore and face; texts of a usual length."""

    def on_dial(readings: list[float]) -> list[float]:
        return [round(2 * (m - readings[0])) / 2 for m in readings]

    def swept(x: float, y: float) -> Data:
        job = make_job(
            on_dial(readings_of(x, y, positions)),
            positions=positions,
            about={
                "vehicle": "1968 coupe, blue", "engine": "V8, no. 4471", "gearbox": "5-speed",
                "technician": "M. Keller", "customer": "A. Winter", "date": "2026-11-25",
                "notes": "One burr stoned off the joint.",
            },
            limits={"bore_offset": 5.0, "face_runout": 5.0, "source": "maker's manual, p. 12-4"},
            indicator={"step": 0.5, "accuracy": 0.5, "sag": 1.5, "contact_angle_deg": 0.0},
            stock={"dowel_offsets": [7.0, 14.0, 21.0], "aim_for": "bore"},
            housing={"dowel_clearance": 1.0},
        )  # fmt: skip
        face = on_dial(face_readings(0.3, 0.4, positions))
        return with_face(job, face, positions=positions)

    return then(swept(5.2, -6.1), with_dowels(swept(0.8, -0.9), (7.0, 320.0)))


def doctored(fragment: str, *, job: Data | None = None, figures: list[str] | None = None) -> str:
    """The link with another job (its keys short already) or other figures in it."""
    old_job, old_figures = json.loads(unpacked(fragment))
    return packed(json.dumps([job or old_job, figures or old_figures]))
