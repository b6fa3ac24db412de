"""Where to measure: engine and gearbox from the side, each length with the letter of its field.

Drawn of one invented gearbox, to no scale that counts. Forward is to the left; on the engine every
length begins at the crank's flange, on the gearbox at the face that meets the housing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from sweepsheet.alignment.places import Places
from sweepsheet.drawing.depth_view import WIDTH, Scale, crank_end, parts_of
from sweepsheet.drawing.marks import dimension, label, paper
from sweepsheet.drawing.svg import element
from sweepsheet.maths.vector import Vec2
from sweepsheet.words.messages import Language

# What is measured on each, in the order of the form; the letters run on from one to the other.
ENGINE = (
    "to_face", "to_pilot", "pilot_length", "to_bottom", "to_hub_front", "to_hub_rear", "to_fingers",
)  # fmt: skip
GEARBOX = ("to_tip", "journal_length", "to_splines_front", "to_splines_rear", "to_bearing")
LETTERS: Mapping[str, str] = {name: chr(ord("A") + i) for i, name in enumerate((*ENGINE, *GEARBOX))}
# What holds them in a job.
FIELDS: Mapping[str, str] = {name: f"depth.{name}" for name in LETTERS}

_SHOWN = Places(
    face=62.0, pilot_rear=-6.0, pilot_front=-16.0, bottom=-24.0, tip=-18.0, journal_rear=2.0,
    hub_front=14.0, hub_rear=24.0, splines_front=10.0, splines_rear=40.0, fingers=36.0,
    bearing=46.0,
)  # fmt: skip
_SCALE = Scale(-26.0, 3.5)
_FACE = 62.0
_FIRST_ROW, _ROW = 152.0, 22.0
# Where each length begins and ends.
_ENDS: Mapping[str, tuple[float, float]] = {
    "to_face": (0.0, _FACE),
    "to_pilot": (-6.0, 0.0),
    "pilot_length": (-16.0, -6.0),
    "to_bottom": (-24.0, 0.0),
    "to_hub_front": (0.0, 14.0),
    "to_hub_rear": (0.0, 24.0),
    "to_fingers": (0.0, 36.0),
    "to_tip": (-18.0, _FACE),
    "journal_length": (-18.0, 2.0),
    "to_splines_front": (10.0, _FACE),
    "to_splines_rear": (40.0, _FACE),
    "to_bearing": (46.0, _FACE),
}


def engine_measures(title: str) -> str:
    """Crank, pilot bearing and clutch with the lengths A to G."""
    return _drawn(title, ENGINE, *_engine())


def gearbox_measures(title: str) -> str:
    """Input shaft and release bearing with the lengths H to L."""
    return _drawn(title, GEARBOX, *_gearbox())


def called(name: str, language: Language) -> str:
    """A length by its letter and its name."""
    return f"{LETTERS[name]}: {language.say(f'name.{FIELDS[name]}')}"


def one_measure(name: str, language: Language, shown: str = "") -> str:
    """What one length is measured on, with that length alone; ``shown`` is what the gauge shows."""
    parts = _engine() if name in ENGINE else _gearbox()
    title, gauge = called(name, language), []
    if shown:
        title = f"{title}: {shown}"
        gauge = [
            element("rect", x=118, y=4, width=124, height=34, rx=4, fill="none"),
            label(Vec2(180.0, 28.0), shown, font_size=20, font_weight="bold", text_anchor="middle"),
        ]
    return _drawn(title, (name,), *parts, *gauge)


def _engine() -> tuple[str, ...]:
    """The parts on the engine."""
    places = replace(
        _SHOWN, tip=None, journal_rear=None, splines_front=None, splines_rear=None, bearing=None
    )
    return (*crank_end(places, _SCALE), *parts_of(places, _FACE, _SCALE))


def _gearbox() -> tuple[str, ...]:
    """The parts on the gearbox."""
    places = replace(_SHOWN, pilot_front=None, hub_front=None, hub_rear=None, fingers=None)
    return tuple(parts_of(places, _FACE, _SCALE))


def _drawn(title: str, names: tuple[str, ...], *parts: str) -> str:
    """The parts, and below them a row for each length."""
    rows = []
    for i, name in enumerate(names):
        y = _FIRST_ROW + i * _ROW
        left, right = (_SCALE.at(place) for place in _ENDS[name])
        way = f"M{left:.2f} 98V{y + 6.0}M{right:.2f} 98V{y + 6.0}"
        rows.append(element("path", d=way, stroke_width=0.5, stroke_dasharray="2 3"))
        rows.append(dimension(Vec2(left, y), Vec2(right, y)))
        rows.append(
            label(Vec2(right + 6.0, y + 5.0), LETTERS[name], font_size=14, font_weight="bold")
        )
    height = round(_FIRST_ROW + len(names) * _ROW)
    return paper(WIDTH, height, title, ", ".join(LETTERS[name] for name in names), *parts, *rows)
