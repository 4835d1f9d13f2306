"""What a dimension is made of: lines and a figure, the same in every output.

Sizes in paper mm, as building drawings are made: the extension line starts clear of the measured
point and runs past the dimension line; an oblique stroke at 45 degrees crosses where they meet.
"""

from __future__ import annotations

from elevation.setting_out.model import Point
from elevation.sheet.records import NARROW, WIDE, Dimension, Line, Pen, Polyline, Text

CLEAR = 1.0
"""Gap between the measured point and its extension line, paper mm (ISO 129-1 allows one)."""
PAST = 1.5
"""How far extension and dimension lines run past each other, paper mm."""
STROKE = 1.1
"""Half the extent of the oblique stroke along each axis, paper mm."""


def dimension_lines(dimension: Dimension, mm_per_paper: float) -> tuple[Line | Polyline | Text, ...]:
    """The lines and the figure of a dimension.

    Parameters
    ----------
    dimension : Dimension
    mm_per_paper : float
        Group coordinates per paper mm: 24.0 for a wall at 1:24, 1.0 in a group of paper coordinates.

    Returns
    -------
    tuple of Line, Polyline and Text
        In the group's coordinates, back to front; the figure last.
    """
    thin = Pen(dimension.ink, NARROW)
    heavy = Pen(dimension.ink, WIDE)
    along_x = dimension.along == "x"
    line = dimension.line
    past, stroke = PAST * mm_per_paper, STROKE * mm_per_paper

    def point(along: float, across: float) -> Point:
        return (along, across) if along_x else (across, along)

    first, last = (dimension.a[0], dimension.b[0]) if along_x else (dimension.a[1], dimension.b[1])
    records: list[Line | Polyline | Text] = []
    for end, start in ((first, dimension.a), (last, dimension.b)):
        across = start[1] if along_x else start[0]
        way = 1.0 if line >= across else -1.0
        if abs(line - across) > CLEAR * mm_per_paper:
            records.append(Line(point(end, across + way * CLEAR * mm_per_paper), point(end, line + way * past), thin))
    low, high = min(first, last), max(first, last)
    records.append(Line(point(low - past, line), point(high + past, line), thin))
    # The stroke rises to the right as the figure is read: along y that is read from the right.
    lean = 1.0 if along_x else -1.0
    records.extend(
        Line(point(end - stroke, line - lean * stroke), point(end + stroke, line + lean * stroke), heavy)
        for end in (first, last)
    )
    if dimension.leader:
        records.append(Polyline(dimension.leader, thin))
    ink = dimension.ink if dimension.ink != "thin" else "text"
    turn = 0.0 if along_x else 90.0
    records.append(Text(dimension.text_at, dimension.text, dimension.height, ink, "middle", turn))
    return tuple(records)
