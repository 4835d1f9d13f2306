"""Drilling plates as files for cutting machines: DXF and SVG in mm, cuts apart from marks, no words."""

from __future__ import annotations

import io
import os
from collections.abc import Iterator, Sequence
from types import ModuleType

from elevation.output.svg import number
from elevation.places import state_folder
from elevation.planning.plate import HOLE_MM, Plate, side_by_side, size_of
from elevation.setting_out.model import Point

CUT, MARKS = "CUT", "MARKS"
"""Layers: a machine is told which it cuts and which it scores or leaves out."""
_MM = 4
"""Of $INSUNITS: millimetres (DXF reference, HEADER section)."""
_RED, _BLUE = 1, 5
"""Colours by their DXF numbers; many machines tell layers apart by them."""
_PLACES = 3
_CACHE = "XDG_CACHE_HOME"


def to_dxf(found: Sequence[Plate]) -> bytes:
    """The plates side by side as DXF R2010.

    Parameters
    ----------
    found : sequence of Plate

    Returns
    -------
    bytes
        The same for the same plates.
    """
    ezdxf = _library()
    kept = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        document = ezdxf.new("R2010", units=_MM)
        for name, colour in ((CUT, _RED), (MARKS, _BLUE)):
            document.layers.add(name, color=colour)
        space = document.modelspace()
        for plate, at in side_by_side(found):
            space.add_lwpolyline(_moved(plate.outline, at), close=True, dxfattribs={"layer": CUT})
            for hole in _moved(plate.holes, at):
                space.add_circle(hole, HOLE_MM / 2, dxfattribs={"layer": CUT})
            for segment in plate.marks:
                a, b = _moved(segment, at)
                space.add_line(a, b, dxfattribs={"layer": MARKS})
        out = io.StringIO()
        document.write(out)
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = kept
    return out.getvalue().encode("utf-8")


def _library() -> ModuleType:
    """The library that writes DXF.

    It keeps a list of the machine's fonts in the person's cache, and says so on standard output where it cannot: it is
    given our own folder for that, which can always be written.
    """
    before = os.environ.get(_CACHE)
    os.environ[_CACHE] = str(state_folder())
    try:
        # Loaded where it is needed: it takes longer than the whole check of a room.
        import ezdxf
    finally:
        if before is None:
            del os.environ[_CACHE]
        else:
            os.environ[_CACHE] = before
    return ezdxf


def to_cutting_svg(found: Sequence[Plate]) -> bytes:
    """The plates side by side as SVG: a group a layer, one user unit a mm."""
    laid = side_by_side(found)
    sizes = [(size_of(plate), at) for plate, at in laid]
    wide = max((right + at[0] for (_, _, right, _), at in sizes), default=0.0)
    high = max((top + at[1] for (_, _, _, top), at in sizes), default=0.0)
    width, height = number(wide), number(high)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}">',
        f'<g id="{MARKS}" fill="none" stroke="#0000ff" stroke-width="0.1">',
        *(line for plate, at in laid for line in _svg_marks(plate, at, high)),
        "</g>",
        f'<g id="{CUT}" fill="none" stroke="#ff0000" stroke-width="0.1">',
        *(line for plate, at in laid for line in _svg_cuts(plate, at, high)),
        "</g>",
        "</svg>",
    ]
    return ("\n".join(lines) + "\n").encode("utf-8")


def _svg_marks(plate: Plate, at: Point, high: float) -> Iterator[str]:
    for segment in plate.marks:
        (x1, y1), (x2, y2) = _moved(segment, at)
        yield f'<line x1="{number(x1)}" y1="{number(high - y1)}" x2="{number(x2)}" y2="{number(high - y2)}"/>'


def _svg_cuts(plate: Plate, at: Point, high: float) -> Iterator[str]:
    points = " ".join(f"{number(x)},{number(high - y)}" for x, y in _moved(plate.outline, at))
    yield f'<polygon points="{points}"/>'
    for x, y in _moved(plate.holes, at):
        yield f'<circle cx="{number(x)}" cy="{number(high - y)}" r="{number(HOLE_MM / 2)}"/>'


def _moved(points: Sequence[Point], at: Point) -> list[Point]:
    return [(round(x + at[0], _PLACES), round(y + at[1], _PLACES)) for x, y in points]
