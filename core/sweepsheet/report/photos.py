"""What stands below the photo of a reading: where it was taken, and what was read there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sweepsheet.job.model import Job, Sweeps
from sweepsheet.report.sheet import round_name
from sweepsheet.words.messages import ClockPosition, Language, Message, Quantity


@dataclass(frozen=True, slots=True)
class Caption:
    """A photo's name, and the line below it."""

    name: str
    text: str


def captions_of(job: Job, language: Language) -> Iterator[Caption]:
    """The photos of a job in the order of its record, each with its place and its reading."""
    for photo in job.photos:
        top, n, *rest = photo.at.split(".")
        values: dict[str, Quantity] = {}
        if top == "companions":
            part = job.companions[int(n)]
            sweeps, opposite, values["what"] = part.sweeps, None, Message(f"what.{part.kind}")
        else:
            each, kind = job.rounds[int(n)], rest.pop(0)
            values["round"] = round_name(int(n), each, language)
            values["what"] = Message(f"what.{kind}")
            # A photo of a face is one of a face that was read.
            face = each.face if kind == "face" else None
            sweeps = face.sweeps if face else each.bore.sweeps
            opposite = face.opposite if face else None
        yield Caption(photo.name, _text(values, rest, sweeps, opposite or (), language))


def _text(
    values: dict[str, Quantity],
    rest: list[str],
    sweeps: Sweeps,
    opposite: tuple[tuple[float | None, ...], ...],
    language: Language,
) -> str:
    """Which reading it is: ``rest`` is its list, its sweep and, but for a return, its position."""
    kind, j = rest[0], int(rest[1])
    if kind == "closing":
        values["at"], reading = Message("paper.head.closing"), sweeps.closing[j]
    else:
        i = int(rest[2])
        values["at"] = ClockPosition(sweeps.positions_deg[i])
        reading = (opposite if kind == "opposite" else sweeps.readings)[j][i]
    if kind == "opposite":
        values["what"] = Message("what.second_dial")
    said = reading_text(reading, language)
    key = "paper.photo" if "round" in values else "paper.photo_of_part"
    return language.say(key, n=j + 1, reading=said, **values)


def reading_text(value: float | None, language: Language) -> str:
    """A reading as typed."""
    if value is None:
        return "—"
    return language.number(f"{value:+g}") if value else "0"
