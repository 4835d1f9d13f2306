"""The display list: one picture that every output replays.

Coordinates of a group in frame ``wall`` are wall mm, y up; in frame ``paper`` they are sheet mm, y up, from the
sheet's lower left corner. Pen widths and text heights are always paper mm (on screen 1 paper mm = 96/25.4 px),
so are a Dimension's ``tick`` sizes. No clip records, no opacity of painters: clip by geometry, alpha in colours only.
Arcs travel as cubics.

What each output does with each record:

=========== ============================== ============================== ==============================
record      SVG (``output.svg``)           QPainter: screen, PNG, PDF     figures and rules that all keep
=========== ============================== ============================== ==============================
Line        ``path`` M L                   drawLines of one pen           flat caps
Polyline    ``polyline`` or ``polygon``    drawPath                       flat caps, mitred joins
Path        ``path``                       drawPath, stroked              flat caps, mitred joins
Fill        ``path``, even-odd             fillPath, odd-even             no outline; alpha in the colour
Gradient    ``linearGradient`` in sheet mm QLinearGradient                colours beyond its ends go on
Text        ``text`` with ``textLength``,  text set at 250 px and scaled  no kerning, no ligatures, no
            font subset embedded           down, bundled fonts            hinting; turned about its anchor
Dimension   a group of the lines that      the same lines                 ``output.dimension_lines`` makes
            ``dimension_lines`` gives                                     extension lines, strokes, figure
Group       ``g`` with id (layer and Ref), compiled once and kept while   drawn in the order of LAYERS
            class (layer) and ``title``    the group lives
Picture     mm size, ``title``, ``desc``   page of that size              y is flipped once, at the edge
=========== ============================== ============================== ==============================

In a dash pattern, lengths are paper mm; a Dimension's extension line starts 1 mm off its point and runs 1.5 mm past the
line. A DXF file gets true dimension entities from Dimension, plain fractions in texts, and no fills.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Literal

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.model import Point


class Ink(StrEnum):
    """Roles of colour; ``sheet.inks`` says what each looks like. A ``#rrggbb`` or ``#rrggbbaa`` may stand in its place."""

    PAPER = "paper"
    WALL = "wall"
    FLOOR = "floor"
    TRIM = "trim"
    GLASS = "glass"
    OUTLINE = "outline"  # cut and visible edges
    THIN = "thin"  # dimension, extension, leader
    TEXT = "text"
    QUIET = "quiet"  # secondary text
    METAL = "metal"
    ACCENT = "accent"  # what asks attention
    HELD = "held"  # what is held
    GHOST = "ghost"  # the other position of a panel, unmeasured facts


class Pen(Struct, frozen=True, gc=False):
    """A line's look: ink, width in paper mm (wide 0.5, narrow 0.25: ISO 128 2:1), dash pattern in paper mm."""

    ink: str = Ink.OUTLINE
    width: float = 0.25
    dash: tuple[float, ...] = ()


WIDE = 0.5
NARROW = 0.25


class Line(Struct, frozen=True, gc=False):
    """A straight line."""

    a: Point
    b: Point
    pen: Pen


class Polyline(Struct, frozen=True, gc=False):
    """Straight lines through points, closed or not."""

    points: tuple[Point, ...]
    pen: Pen
    closed: bool = False


class Stop(Struct, frozen=True, gc=False):
    """A stop of a gradient: place 0..1 and colour (role or hex, alpha allowed)."""

    at: float
    colour: str


class Gradient(Struct, frozen=True, gc=False):
    """A linear gradient from ``a`` to ``b`` (in the group's coordinates)."""

    a: Point
    b: Point
    stops: tuple[Stop, ...]


class Path(Struct, frozen=True, gc=False):
    """A path of straight and cubic steps, stroked.

    ``steps``: each is (``"M"``, x, y), (``"L"``, x, y), (``"C"``, x1, y1, x2, y2, x, y) or (``"Z"``,).
    """

    steps: tuple[tuple[str | float, ...], ...]
    pen: Pen


class Fill(Struct, frozen=True, gc=False):
    """An area: the same steps, filled (even-odd) with a colour or a gradient."""

    steps: tuple[tuple[str | float, ...], ...]
    paint: str | Gradient


class Text(Struct, frozen=True, gc=False):
    """One line of text.

    ``at`` is the anchor on the baseline; ``align`` says which part of the text stands there; ``turn`` degrees
    counter-clockwise; ``height`` is the type size (em) in paper mm; ``weight`` regular, semibold or italic.
    """

    at: Point
    text: str
    height: float
    ink: str = Ink.TEXT
    align: Literal["left", "middle", "right"] = "left"
    turn: float = 0.0
    weight: Literal["regular", "semibold", "italic"] = "regular"


class Dimension(Struct, frozen=True, gc=False):
    """A dimension from ``a`` to ``b``, measured along ``along``, its line at coordinate ``line``.

    Attributes
    ----------
    ref : Ref
        What it measures; ``field`` names the form field it opens.
    a, b : Point
        The measured points (extension lines start near them).
    along : str
        ``x`` or ``y``.
    line : float
        y (along x) or x (along y) of the dimension line, group coordinates.
    text : str
        The figure.
    text_at : Point
        Baseline middle of the figure; the text reads from the bottom (along x) or from the right (along y, turned 90).
    rung : str
        ``between``, ``beside``, ``staggered``, ``leader``, ``key``.
    leader : tuple of Point
        Points of the leader, empty where the rung needs none.
    ink : str
        THIN, or ACCENT where a finding is about it.
    """

    ref: Ref
    field: str
    a: Point
    b: Point
    along: Literal["x", "y"]
    line: float
    text: str
    text_at: Point
    rung: str
    height: float = 2.5
    leader: tuple[Point, ...] = ()
    ink: str = Ink.THIN


Record = Line | Polyline | Path | Fill | Text | Dimension


class Group(Struct, frozen=True, gc=False):
    """Records that belong together.

    ``layer`` is one of ``LAYERS``; ``ref`` what it draws (empty tuple for the sheet itself); ``title`` plain words for
    SVG and screen readers; ``frame`` the coordinates.
    """

    ref: Ref
    layer: str
    title: str
    records: tuple[Record, ...]
    frame: Literal["wall", "paper"] = "wall"


# Drawn in this order. The screen may switch layers off.
LAYERS = (
    "sheet", "wall", "zone", "band", "opening", "obstacle", "blind", "board", "panel-open", "panel-closed", "panel-drawn",
    "stack", "rod", "bracket", "pelmet", "person", "light", "plan", "guide", "sag", "clearance", "dimension", "held",
    "finding", "title",
)  # fmt: skip


class Page(Struct, frozen=True, gc=False):
    """A sheet of paper: name, width and height in mm."""

    name: str
    width_mm: float
    height_mm: float


class Picture(Struct, frozen=True, gc=False):
    """A display list.

    Wall point (x, y) stands on the sheet at ``(origin[0] + x / scale, origin[1] + y / scale)`` mm from its lower left
    corner. ``scale`` is paper mm to wall mm (24.0 for 1:24). ``page`` is None for a picture of the screen.
    ``title`` and ``description`` describe it in words.
    """

    groups: tuple[Group, ...]
    scale: float
    origin: Point = (0.0, 0.0)
    page: Page | None = None
    title: str = ""
    description: str = ""
