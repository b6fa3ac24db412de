"""The sheet on paper: all of a job that belongs on record, as data that the page only paints.

Every reading of every round stands on it as it was typed, and what was not done is named.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import asdict, dataclass
from typing import Any

from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.drawing.housing import drawing_of
from sweepsheet.findings.finding import Finding
from sweepsheet.job.assembly import lacks
from sweepsheet.job.checklist import RECORDED
from sweepsheet.job.model import ABOUT_KEYS, Dowel, FaceSweeps, Job, Round, Sweeps
from sweepsheet.maths.clock import clock_time
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.verdict import Judged
from sweepsheet.report.photos import captions_of, reading_text
from sweepsheet.report.sheet import limit_line, round_name, sheet_of
from sweepsheet.solution import Solution
from sweepsheet.words.messages import (
    BareDistance,
    ClockPosition,
    Degrees,
    Distance,
    Language,
    Message,
    Probability,
    StockSize,
)

# So many readings stand side by side; further ones in a table below.
MOST_COLUMNS = 12

# Titles and lines of the sheet, whatever the job.
WORDS = (
    "to_do", "found", "doubts", "open", "done", "signature", "view", "link", "caution",
    "photos", "no_picture",
)  # fmt: skip

Rows = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """A text with its label, for the title block."""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table in words. Its first column tells what stands in the row."""

    title: str
    head: tuple[str, ...]
    rows: Rows


def paper_of(
    solution: Solution, findings: tuple[Finding, ...], language: Language
) -> dict[str, Any]:
    """The sheet on paper, as plain data."""
    job, say = solution.job, language.say
    sheet = asdict(sheet_of(solution, findings, language))
    kept = ("verdict", "verdict_text", "headline", "steps", "sections")
    limit = limit_line(job.limits.bore_offset, job.units, language)
    listed = [c for c in RECORDED if not lacks(job.housing.assembly, f"checklist.{c}")]
    done = [code for code in listed if code in job.checklist]
    missed = [code for code in listed if code not in job.checklist]
    return {key: sheet[key] for key in kept} | {
        "title": job.name or say("paper.title"),
        # Beside the title, where it takes no line of its own.
        "shop": job.about["shop"].strip(),
        "about": [asdict(entry) for entry in _about(job, language)],
        # The limit stands among the limits.
        "figures": [line for line in sheet["figures"] if line != limit],
        "limits": [limit, *_limits(job, language)],
        "remarks": _each_once(sheet["remarks"]),
        "dial": list(dial_lines(job, language)),
        "results": asdict(_results(solution, language)),
        "readings": [asdict(table) for table in _readings(job, language)],
        "photos": [asdict(photo) for photo in captions_of(job, language)],
        # Another drawing in the same page must not lend this one its hatch.
        "done": [say(f"checklist.{code}") for code in done],
        "open": [say(f"checklist.{code}") for code in missed],
        "drawing": drawing_of(solution, language).replace("sweepsheet-hatch", "paper-hatch"),
        "words": {key: say(f"paper.{key}") for key in WORDS},
    }


def _each_once(remarks: Iterable[dict[str, Any]]) -> list[dict[str, Any]]:
    """Remarks without those that say the same of another sweep in the same words."""
    return list({remark["text"]: remark for remark in reversed(list(remarks))}.values())[::-1]


def _about(job: Job, language: Language) -> Iterator[Entry]:
    """What was told about the job; what is blank takes no room."""
    for key in ABOUT_KEYS:
        if key != "shop" and job.about[key].strip():
            yield Entry(language.say(f"name.about.{key}"), job.about[key])


def _limits(job: Job, language: Language) -> Iterator[str]:
    """The limits beside that of the bore, and where they come from."""
    limits, say = job.limits, language.say
    if limits.face_runout is not None:
        runout = Distance(limits.face_runout, job.units)
        if limits.face_radius is None:
            yield say("paper.face_limit", runout=runout)
        else:
            radius = _length(limits.face_radius, job.units, language)
            yield say("paper.face_limit_at", runout=runout, radius=radius)
    if limits.pilot_offset is not None:
        pilot = limits.pilot_offset
        both = {"offset": Distance(pilot, job.units), "tir": Distance(2.0 * pilot, job.units)}
        yield say("paper.pilot_limit", **both)
    if limits.source.strip():
        yield say("paper.source", source=limits.source)
    else:
        yield say("paper.usual_limit" if job.usual_limit else "paper.no_source")


def _length(value: float, units: UnitSystem, language: Language) -> str:
    """A length in the long unit."""
    return language.say(f"paper.length.{units.name}", value=value)


def dial_lines(job: Job, language: Language) -> Iterator[str]:
    """How the readings were taken."""
    dial, units, say = job.indicator, job.units, language.say
    yield say(
        "paper.dial",
        step=StockSize(dial.step, units), accuracy=StockSize(dial.accuracy, units),
        scatter=StockSize(dial.repeatability, units), plus=Message(f"paper.{dial.plus_when}"),
    )  # fmt: skip
    if dial.rig.strip():
        yield say("paper.rig", name=dial.rig)
    if job.crank.axis == "horizontal":
        yield from _sag(job, language)
    if dial.contact_angle_deg:
        yield say("paper.contact_angle", angle=Degrees(dial.contact_angle_deg))
    if job.crank.lift:
        yield say("paper.lift", lift=StockSize(job.crank.lift, units))
    if job.housing.plate_thickness is not None:
        plate = _length(job.housing.plate_thickness, units, language)
        yield say("paper.plate", thickness=plate)


def _sag(job: Job, language: Language) -> Iterator[str]:
    """What is known of the sag, and where from."""
    dial, units, say = job.indicator, job.units, language.say
    if dial.sag is None:
        yield say("paper.droop_unknown", most=StockSize(dial.sag_allowance, units))
        return
    yield say("paper.droop", sag=StockSize(dial.sag.mean, units))
    if dial.sag_date.strip():
        yield say("paper.sag_date", date=dial.sag_date)
    if dial.sag_bar.strip():
        yield say("paper.sag_bar", bar=dial.sag_bar)
    if dial.sag_reach is not None:
        yield say("paper.sag_reach", reach=_length(dial.sag_reach, units, language))
    low, high = dial.sag_range
    if dial.reach is not None:
        yield say("paper.reach", reach=_length(dial.reach, units, language))
    if low < high:
        yield say("paper.droop_other", low=BareDistance(low, units), high=Distance(high, units))


# What each round came to --------------------------------------------------------------------


def _results(solution: Solution, language: Language) -> Table:
    """A row a round; columns that stay empty in every row are left out."""
    job, say = solution.job, language.say
    heads = ("round", "dowels", "offset", "tir", "toward", "chance", "bore", "face", "pilot")
    rows = [
        _result(i, each, measured, job, language)
        for i, (each, measured) in enumerate(zip(job.rounds, solution.measured, strict=True))
    ]
    used = [i for i in range(len(heads)) if any(row[i] for row in rows)]
    return Table(
        say("paper.results", unit=language.unit(job.units)),
        tuple(say(f"paper.head.{heads[i]}") for i in used),
        tuple(tuple(row[i] for i in used) for row in rows),
    )


def _result(
    index: int, each: Round, measured: RoundResult, job: Job, language: Language
) -> tuple[str, ...]:
    bore, face, pilot, units = measured.bore, measured.face, measured.pilot, job.units
    word, chance = language.word, bore.judged.probability
    return (
        round_name(index, each, language),
        _dowels(each.dowels, units, language),
        _with_pm(bore.offset, bore.offset_pm, units, language),
        word(BareDistance(bore.tir, units)),
        "" if bore.direction_pm_deg is None else word(ClockPosition(bore.direction_deg)),
        "" if chance is None else word(Probability(chance)),
        _verdict(bore.judged, language),
        ""
        if face is None
        else _with_pm(face.runout, face.runout_pm, units, language)
        + _verdict(face.judged, language, after=" "),
        ""
        if pilot is None
        else _with_pm(pilot.offset, pilot.offset_pm, units, language)
        + _verdict(pilot.judged, language, after=" "),
    )


def _with_pm(value: float, pm: float, units: UnitSystem, language: Language) -> str:
    return language.say("paper.pm", value=BareDistance(value, units), pm=BareDistance(pm, units))


def _verdict(judged: Judged, language: Language, after: str = "") -> str:
    """A verdict in few words, ``after`` what stands before it; empty where nothing is judged."""
    return after + language.say(f"paper.verdict.{judged.verdict}") if judged.verdict else ""


def _dowels(dowels: tuple[Dowel, Dowel], units: UnitSystem, language: Language) -> str:
    first, second = dowels
    if first == second or first.offset == second.offset == 0:
        return _dowel(first, units, language)
    return "; ".join(_dowel(dowel, units, language) for dowel in dowels)


def _dowel(dowel: Dowel, units: UnitSystem, language: Language) -> str:
    if dowel.offset == 0:
        return language.say("pairs.standard")
    size, aim = StockSize(dowel.offset, units), ClockPosition(dowel.aim_deg)
    return language.say("pairs.dowel", size=size, aim=aim)


# Readings -----------------------------------------------------------------------------------


def _readings(job: Job, language: Language) -> Iterator[Table]:
    """Every reading, round by round, then those of the parts that turn with the crank."""
    say = language.say
    for i, each in enumerate(job.rounds):
        contact = say(f"paper.{each.bore.contact}")
        title = say("paper.readings_of", round=round_name(i, each, language), contact=contact)
        rows = [_Row(say("paper.row.bore"), each.bore.sweeps)]
        if (face := job.face_swept_in(i)) is not None:
            rows.extend(_face_rows(face, job.units, language))
        yield from _tables(title, rows, language)
    for part in job.companions:
        what = Message(f"what.{part.kind}")
        title = say("section.companion", what=what)
        yield from _tables(title, [_Row(say("paper.row.part"), part.sweeps)], language)


@dataclass(frozen=True, slots=True)
class _Row:
    """Sweeps to be written down, with what was swept."""

    what: str
    sweeps: Sweeps


def _face_rows(face: FaceSweeps, units: UnitSystem, language: Language) -> Iterator[_Row]:
    """The face's sweeps; those of a second dial come after them."""
    say = language.say
    radius, end = _length(face.radius, units, language), Message(f"paper.{face.end_float}")
    way = Message(f"paper.{face.plunger}")
    if face.opposite is None:
        yield _Row(say("paper.row.face", radius=radius, plunger=way, end=end), face.sweeps)
        return
    second = Message("paper.second")
    yield _Row(say("paper.row.face", radius=radius, plunger=way, end=second), face.sweeps)
    unknown = (None,) * len(face.opposite)
    opposite = Sweeps(face.sweeps.positions_deg, face.opposite, unknown)
    yield _Row(say("paper.row.opposite"), opposite)


def _tables(title: str, rows: list[_Row], language: Language) -> Iterator[Table]:
    """Rows over the same positions share a table; one too wide is folded."""
    while rows:
        positions = rows[0].sweeps.positions_deg
        alike = [row for row in rows if row.sweeps.positions_deg == positions]
        rows = [row for row in rows if row.sweeps.positions_deg != positions]
        for start in range(0, len(positions), MOST_COLUMNS):
            end = start + MOST_COLUMNS
            closes = end >= len(positions)
            head = [
                language.say("paper.head.sweep"),
                *(_position(a, language) for a in positions[start:end]),
            ]
            head += [language.say("paper.head.closing")] if closes else []
            body = tuple(
                cells for row in alike for cells in _cells(row, start, end, language, closes=closes)
            )
            yield Table(title, tuple(head), body)


def _cells(
    row: _Row, start: int, end: int, language: Language, *, closes: bool
) -> Iterator[tuple[str, ...]]:
    sweeps = row.sweeps
    for n, (readings, closing) in enumerate(zip(sweeps.readings, sweeps.closing, strict=True), 1):
        what = row.what
        if len(sweeps.readings) > 1:
            what = language.say("paper.sweep", what=what, n=n)
        last = (reading_text(closing, language),) if closes else ()
        yield (what, *(reading_text(m, language) for m in readings[start:end]), *last)


def _position(angle_deg: float, language: Language) -> str:
    """A position, exactly: by the clock where it stands on one of its five minutes."""
    if angle_deg % 2.5:
        return language.number(f"{angle_deg:g}") + "°"
    return clock_time(angle_deg)
