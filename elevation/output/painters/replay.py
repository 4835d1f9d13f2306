"""The display list on a QPainter.

One recording, many painters: screen, PNG and PDF replay the same groups. Coordinates of a group are mm, y up;
a ``Placing`` says where wall and sheet stand in the painter's own units (y down), so the flip happens
once, here. A group is compiled to Qt's paths when it is first met and kept as long as the
group itself lives: a drag compiles only what it rebuilt. Compiled paths do not depend on the scale; pens do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Protocol

from msgspec import Struct
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
    QTransform,
)

from elevation.output.dimension_lines import dimension_lines
from elevation.output.painters.fonts import SET_AT, drawing_font
from elevation.sheet.inks import colour
from elevation.sheet.records import (
    LAYERS,
    Dimension,
    Fill,
    Gradient,
    Group,
    Line,
    Path,
    Pen,
    Picture,
    Polyline,
    Record,
    Text,
)


class Placing(Struct, frozen=True, gc=False):
    """Where wall and sheet stand in the painter's units.

    Attributes
    ----------
    px_per_paper_mm : float
        Painter's units for one paper mm: pens and type follow it.
    px_per_wall_mm : float
        Painter's units for one wall mm.
    wall_x, wall_y : float
        Painter's place of the wall's origin (left end, datum).
    paper_x, paper_y : float
        Painter's place of the sheet's lower left corner.
    """

    px_per_paper_mm: float
    px_per_wall_mm: float
    wall_x: float
    wall_y: float
    paper_x: float = 0.0
    paper_y: float = 0.0

    @property
    def mm_per_paper(self) -> float:
        """Wall mm for one paper mm: the drawing's scale."""
        return self.px_per_paper_mm / self.px_per_wall_mm


def placing_of(picture: Picture, px_per_paper_mm: float) -> Placing:
    """Where a picture with a page stands when its page fills the painter from the top left corner.

    Parameters
    ----------
    picture : Picture
        With a page.
    px_per_paper_mm : float
        Painter's units per mm of paper (dpi / 25.4 for a raster).

    Returns
    -------
    Placing
    """
    height = picture.page.height_mm if picture.page is not None else 0.0
    return Placing(
        px_per_paper_mm,
        px_per_paper_mm / picture.scale,
        picture.origin[0] * px_per_paper_mm,
        (height - picture.origin[1]) * px_per_paper_mm,
        0.0,
        height * px_per_paper_mm,
    )


Size = tuple[float, float]

_AROUND = 30.0
"""How far a dimension's text and strokes may stand out past its points, paper mm."""
_MOST_MEASURES = 4000


class _Op(Protocol):
    def paint(self, painter: QPainter, frame: _Frame) -> None: ...


class _Frame:
    """A group's coordinates on one painter: transform, and pens of the right width under it."""

    def __init__(
        self, x: float, y: float, px: float, px_per_paper_mm: float, base: QTransform, seen: Size | None = None
    ) -> None:
        self.x, self.y, self.px = x, y, px
        self.seen: tuple[float, float, float, float] | None = None
        if seen is not None:
            self.seen = -x / px, (y - seen[1]) / px, (seen[0] - x) / px, y / px
        self.px_per_paper_mm = px_per_paper_mm
        self.mm_per_paper = px_per_paper_mm / px
        self.base = base
        self.transform = QTransform(px, 0, 0, -px, x, y) * base
        self._pens: dict[Pen, QPen] = {}

    def pen(self, pen: Pen) -> QPen:
        made = self._pens.get(pen)
        if made is None:
            made = QPen(QBrush(_colour(pen.ink)), pen.width * self.mm_per_paper)
            # Flat caps: a pen equal to the painter's own default never reaches Qt's PDF engine.
            made.setCapStyle(Qt.PenCapStyle.FlatCap)
            made.setJoinStyle(Qt.PenJoinStyle.SvgMiterJoin)
            made.setMiterLimit(4.0)
            if pen.dash:
                pattern = [max(part / pen.width, 1e-3) for part in pen.dash]
                made.setDashPattern(pattern if len(pattern) % 2 == 0 else pattern * 2)
            self._pens[pen] = made
        return made


_COLOURS: dict[str, QColor] = {}


def _colour(ink: str) -> QColor:
    made = _COLOURS.get(ink)
    if made is None:
        text = colour(ink)
        # Qt reads eight digits as #AARRGGBB; ours end in alpha.
        made = QColor("#" + text[7:9] + text[1:7]) if len(text) == 9 else QColor(text)
        _COLOURS[ink] = made
    return made


class _Lines:
    """Straight lines of one pen."""

    def __init__(self, pen: Pen) -> None:
        self.pen = pen
        self.lines: list[QLineF] = []

    def paint(self, painter: QPainter, frame: _Frame) -> None:
        painter.setPen(frame.pen(self.pen))
        painter.drawLines(self.lines)


class _Stroke:
    """Paths of one pen."""

    def __init__(self, pen: Pen) -> None:
        self.pen = pen
        self.path = QPainterPath()

    def paint(self, painter: QPainter, frame: _Frame) -> None:
        painter.strokePath(self.path, frame.pen(self.pen))


class _Area:
    """A filled path."""

    def __init__(self, path: QPainterPath, brush: QBrush) -> None:
        self._path, self._brush = path, brush

    def paint(self, painter: QPainter, frame: _Frame) -> None:
        del frame
        painter.fillPath(self._path, self._brush)


class _Words:
    """One line of text."""

    def __init__(self, text: Text) -> None:
        self._text = text
        self._font: QFont = drawing_font(text.weight)
        self._shift = 0.0
        if text.align != "left":
            width = _advance(text.text, text.weight, self._font)
            self._shift = -width if text.align == "right" else -width / 2

    def paint(self, painter: QPainter, frame: _Frame) -> None:
        text = self._text
        size = text.height * frame.px_per_paper_mm / SET_AT
        place = QTransform(1, 0, 0, 1, frame.x + text.at[0] * frame.px, frame.y - text.at[1] * frame.px)
        if text.turn:
            place.rotate(-text.turn)
        place.scale(size, size)
        painter.setTransform(place * frame.base)
        painter.setFont(self._font)
        painter.setPen(_colour(text.ink))
        painter.drawText(QPointF(self._shift, 0.0), text.text)
        painter.setTransform(frame.transform)


class _Measure:
    """A dimension: its lines depend on the scale, so they are laid for the last one met."""

    def __init__(self, dimension: Dimension) -> None:
        self._dimension = dimension
        self._laid_for = 0.0
        self._ops: list[_Op] = []
        points = (dimension.a, dimension.b, dimension.text_at, *dimension.leader)
        across = (dimension.line,)
        xs = [x for x, _ in points] + list(across if dimension.along == "y" else ())
        ys = [y for _, y in points] + list(across if dimension.along == "x" else ())
        self._box = min(xs), min(ys), max(xs), max(ys)

    def _is_out_of_sight(self, frame: _Frame) -> bool:
        if frame.seen is None:
            return False
        around = _AROUND * frame.mm_per_paper
        box, seen = self._box, frame.seen
        return (
            box[2] + around < seen[0] or box[0] - around > seen[2] or box[3] + around < seen[1] or box[1] - around > seen[3]
        )

    def paint(self, painter: QPainter, frame: _Frame) -> None:
        if self._is_out_of_sight(frame):
            return
        if self._laid_for != frame.mm_per_paper:
            self._laid_for = frame.mm_per_paper
            self._ops = _compile(dimension_lines(self._dimension, frame.mm_per_paper))
        for op in self._ops:
            op.paint(painter, frame)


_ADVANCES: dict[tuple[str, str], float] = {}


def _advance(text: str, weight: str, font: QFont) -> float:
    key = (text, weight)
    width = _ADVANCES.get(key)
    if width is None:
        if len(_ADVANCES) > 4000:
            _ADVANCES.clear()
        width = QFontMetricsF(font).horizontalAdvance(text)
        _ADVANCES[key] = width
    return width


def _add_steps(path: QPainterPath, steps: tuple[tuple[str | float, ...], ...]) -> None:
    add: dict[str | float, Callable[..., None]] = {
        "L": path.lineTo, "C": path.cubicTo, "M": path.moveTo, "Z": path.closeSubpath,
    }  # fmt: skip
    for step in steps:
        add[step[0]](*step[1:])


def _brush(paint: str | Gradient) -> QBrush:
    if isinstance(paint, str):
        return QBrush(_colour(paint))
    gradient = QLinearGradient(QPointF(*paint.a), QPointF(*paint.b))
    gradient.setStops([(stop.at, _colour(stop.colour)) for stop in paint.stops])
    return QBrush(gradient)


def _compile(records: Iterable[Record], measures: dict[Dimension, _Measure] | None = None) -> list[_Op]:
    """Qt's own values for records, in order; neighbours of one pen are drawn in one go.

    ``measures`` are dimensions that were compiled before: an equal one is taken again.
    """
    known = {} if measures is None else measures
    ops: list[_Op] = []
    for record in records:
        last = ops[-1] if ops else None
        if isinstance(record, Line):
            if not (isinstance(last, _Lines) and last.pen == record.pen):
                last = _Lines(record.pen)
                ops.append(last)
            last.lines.append(QLineF(*record.a, *record.b))
        elif isinstance(record, Polyline | Path):
            if not (isinstance(last, _Stroke) and last.pen == record.pen):
                last = _Stroke(record.pen)
                ops.append(last)
            if isinstance(record, Path):
                _add_steps(last.path, record.steps)
            else:
                last.path.addPolygon(QPolygonF([QPointF(x, y) for x, y in record.points]))
                if record.closed:
                    last.path.closeSubpath()
        elif isinstance(record, Fill):
            area = QPainterPath()
            _add_steps(area, record.steps)
            ops.append(_Area(area, _brush(record.paint)))
        elif isinstance(record, Text):
            ops.append(_Words(record))
        else:
            measure = known.get(record)
            if measure is None:
                measure = known[record] = _Measure(record)
            ops.append(measure)
    return ops


class Replay:
    """Replays groups and remembers what it compiled for as long as each group is shown.

    Attributes
    ----------
    compiled : int
        How many groups were compiled so far: a drag must raise it by its own groups only.
    """

    def __init__(self) -> None:
        self.compiled = 0
        self._known: dict[int, tuple[Group, list[_Op]]] = {}
        self._measures: dict[Dimension, _Measure] = {}

    def ops_of(self, group: Group) -> list[_Op]:
        """The compiled form of a group (by identity)."""
        found = self._known.get(id(group))
        if found is not None and found[0] is group:
            return found[1]
        if len(self._measures) > _MOST_MEASURES:
            self._measures.clear()
        ops = _compile(group.records, self._measures)
        self.compiled += 1
        # The group is kept beside its ops, so that its id cannot be given to another.
        self._known[id(group)] = (group, ops)
        return ops

    def forget_all_but(self, groups: Iterable[Group]) -> None:
        """Drop what was compiled for groups that are not among ``groups``."""
        kept = {id(group) for group in groups}
        if len(self._known) > len(kept):
            self._known = {key: value for key, value in self._known.items() if key in kept}

    def paint(self, groups: Iterable[Group], painter: QPainter, placing: Placing, seen: Size | None = None) -> None:
        """Replay groups in the order given.

        Parameters
        ----------
        groups : iterable of Group
        painter : QPainter
            Its transform stays the base of everything and is restored.
        placing : Placing
        seen : (float, float) or None
            Width and height, from the painter's origin, of all that will be looked at: dimensions beside it are left
            out. None paints all.
        """
        base = painter.transform()
        painter.save()
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        unit = placing.px_per_paper_mm
        wall = _Frame(placing.wall_x, placing.wall_y, placing.px_per_wall_mm, unit, base, seen)
        paper = _Frame(placing.paper_x, placing.paper_y, unit, unit, base, seen)
        now: _Frame | None = None
        for group in groups:
            frame = wall if group.frame == "wall" else paper
            if frame is not now:
                painter.setTransform(frame.transform)
                now = frame
            for op in self.ops_of(group):
                op.paint(painter, frame)
        painter.restore()


def replay(picture: Picture, painter: QPainter, px_per_paper_mm: float) -> None:
    """Replay a picture with a page once, its page filling the painter from the top left corner.

    Parameters
    ----------
    picture : Picture
    painter : QPainter
    px_per_paper_mm : float
        Painter's units per mm of paper.
    """
    groups = sorted(picture.groups, key=_rank)
    Replay().paint(groups, painter, placing_of(picture, px_per_paper_mm))


def _rank(group: Group) -> int:
    return LAYERS.index(group.layer)


def page_rect(picture: Picture, px_per_paper_mm: float) -> QRectF:
    """The picture's page in painter's units.

    Parameters
    ----------
    picture : Picture
    px_per_paper_mm : float

    Returns
    -------
    QRectF
        Empty for a picture without page.
    """
    if picture.page is None:
        return QRectF()
    return QRectF(0, 0, picture.page.width_mm * px_per_paper_mm, picture.page.height_mm * px_per_paper_mm)
