"""A machinist who has nothing but the sheet: reads it, lays the housing on the machine, and cuts.

The housing is a solid in its own frame, as seen from behind: x right, y up, z rearward, its front
flange about z = 0. On the machine it lies as the sheet says, and all that is done there is done in
the frame of who looks at it: right, up, and toward the eye. Nothing is taken from the core but the
text of the sheet and its drawings.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from typing import Any
from xml.etree import ElementTree as ET

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Sheet = dict[str, Any]

MM = 25.4 / 1000.0  # a thou
# Behind the housing one sees it as it is drawn; from the front it is turned about its upright axis.
VIEWS: dict[str, Array] = {
    "behind": np.diag([1.0, 1.0, 1.0]),
    "front": np.diag([-1.0, 1.0, -1.0]),
}
SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Solid:
    """A housing in its own frame, in mm; slopes are those of the two faces, rearward plus.

    ``block`` is the slope of the block's face that it is bolted to, on the engine.
    """

    bore: Array
    hole_a: Array
    hole_b: Array
    front: Array
    rear: Array
    block: Array
    depth: float = 165.0

    @property
    def rear_at_engine(self) -> Array:
        """The slope of the rear face once the front flange lies on the block."""
        onto = turn(normal(self.front), normal(self.block))
        up = onto @ normal(self.rear)
        return np.asarray(-up[:2] / up[2])


def normal(slope: Array) -> Array:
    """The unit normal of a plane ``z = g . p``, rearward."""
    up = np.array([-slope[0], -slope[1], 1.0])
    return np.asarray(up / np.linalg.norm(up))


def turn(start: Array, end: Array) -> Array:
    """The rotation, about the line square to both, from one unit vector to another."""
    axis, cosine = np.cross(start, end), float(start @ end)
    k = np.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    return np.asarray(np.eye(3) + k + k @ k / (1.0 + cosine))


# Reading ------------------------------------------------------------------------------------


def number(text: str) -> float:
    """A number as it is printed."""
    return float(text.replace("\N{MINUS SIGN}", "-").replace(",", ".").removeprefix("+"))


@dataclass(frozen=True)
class Printed:
    """A size as it stands on the sheet, in mm, with its half width where it has one."""

    value: float
    pm: float


def printed(cell: str, unit: str) -> Printed:
    """A cell of the column that is headed with this unit, in mm."""
    found = re.fullmatch(r"([+\N{MINUS SIGN}]?[\d.,]+)(?: ± ([\d.,]+))?", cell)
    assert found, cell
    size = {"mm": 1.0, "in": 25.4, "pulg": 25.4}[unit]
    return Printed(number(found[1]) * size, number(found[2] or "0") * size)


def row(sheet: Sheet, table: int, begins: str, unit: int) -> Printed:
    """The row of a table whose name begins so; ``unit`` is 1 for mm and 2 for inches."""
    of = sheet["tables"][table]
    (cells,) = [r for r in of["rows"] if r[0].startswith(begins)]
    return printed(cells[unit], of["head"][unit])


def degrees(text: str) -> float:
    """The clock position in a text, in degrees."""
    found = re.search(r"\d+:\d\d \(([\d.,]+)°\)", text)
    assert found, text
    return number(found[1])


def line_of(sheet: Sheet, words: str) -> str:
    """The one line of the sheet with these words."""
    (found,) = [line for line in sheet["steps"] if words in line]
    return str(found)


def side_to_look_at(sheet: Sheet) -> str:
    """From which side the part is seen on the machine, by the line on clamping."""
    clamp = line_of(sheet, "Clamp by")
    faces = {"Rear face toward you": "behind", "Front flange toward you": "front"}
    (side,) = [side for words, side in faces.items() if words in clamp]
    return side


def clock_way(angle_deg: float, side: str) -> Array:
    """Where a clock position is for who looks: the first line says on which side 3 lies."""
    a = math.radians(angle_deg)
    right = 1.0 if side == "behind" else -1.0
    return np.array([right * math.sin(a), math.cos(a)])


def view_from(sheet: Sheet, side: str) -> ET.Element:
    """The drawing that is headed with this side."""
    head = {"behind": "FROM BEHIND", "front": "FROM THE FRONT"}[side]
    (found,) = [view for view in sheet["views"] if head in view]
    return ET.fromstring(found)  # noqa: S314 - our own drawing


def drawn_arrow(part: ET.Element) -> tuple[Array, Array]:
    """Tail and head of the one arrow in a part of a drawing, y up."""
    (arrow,) = [g for g in part.iter(f"{SVG}g") if g.get("class") == "pencil"]
    path = arrow.find(f"{SVG}path")
    shaft = arrow.find(f"{SVG}line")
    assert path is not None
    tip = [float(v) for v in re.findall(r"-?[\d.]+", path.get("d", ""))[:2]]
    head = np.array([tip[0], -tip[1]])
    if shaft is None:
        return head, head
    return np.array([float(shaft.get("x1", "")), -float(shaft.get("y1", ""))]), head


def part_of(drawing: ET.Element, name: str) -> ET.Element:
    """The group of this class."""
    (found,) = [g for g in drawing.iter(f"{SVG}g") if g.get("class") == name]
    return found


# Cutting ------------------------------------------------------------------------------------


def recut(solid: Solid, sheet: Sheet, unit: int, way: Array | None = None) -> Solid:
    """The housing after the cut: the plane that is tipped up at the deepest place is cut level.

    ``way`` is where the deepest place is for who looks; by itself it is read from the text.
    """
    side = side_to_look_at(sheet)
    rise = row(sheet, 0, "Rise", unit).value
    across = row(sheet, 0, "Circle", unit).value
    if way is None:
        way = clock_way(degrees(line_of(sheet, "Deepest cut at")), side)
    # Toward the eye plus: the cut takes ``rise / across`` an mm more off that way.
    gradient = np.array([*(way * rise / across), 0.0])
    in_housing = VIEWS[side].T @ gradient
    # What goes off the rear face brings it forward, what goes off the front flange rearward.
    if side == "behind":
        return replace(solid, rear=solid.rear - in_housing[:2])
    return replace(solid, front=solid.front + in_housing[:2])


def bore_by_holes(solid: Solid, sheet: Sheet, unit: int, side: str) -> Array:
    """The new centre in the housing's frame, laid off along the line of the holes."""
    view = VIEWS[side]
    a, b, now = (view @ np.array([*p, 0.0]) for p in (solid.hole_a, solid.hole_b, solid.bore))
    x_axis = (b - a)[:2] / np.linalg.norm(b - a)
    y_axis = np.array([-x_axis[1], x_axis[0]])
    toward = re.search(r"square to it, toward (.*?)\.(?:$| )", line_of(sheet, "Pick up holes"))
    assert toward
    if y_axis @ clock_way(hour(toward[1]), side) < 0:
        y_axis = -y_axis
    x, y = (row(sheet, 0, f"{name}, toward", unit).value for name in "XY")
    there = now[:2] + x * x_axis + y * y_axis
    return np.asarray((view.T @ np.array([*there, 0.0]))[:2])


def bore_by_sight(solid: Solid, sheet: Sheet, unit: int, side: str) -> Array:
    """The new centre by what is right and up for who looks."""
    view, name = VIEWS[side], {"behind": "From behind", "front": "From the front"}[side]
    right, up = (row(sheet, 0, f"{name}: {way}", unit).value for way in ("right", "up"))
    there = view @ np.array([*solid.bore, 0.0]) + np.array([right, up, 0.0])
    return np.asarray((view.T @ there)[:2])


def hour(text: str) -> float:
    """A direction in words, ``3 o'clock`` or ``10:20``, in degrees."""
    found = re.match(r"(\d+)(?::(\d\d))?", text)
    assert found, text
    return int(found[1]) % 12 * 30.0 + int(found[2] or 0) / 2.0
