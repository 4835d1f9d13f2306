"""Curves that a decision can be read off: glass left clear over the support's length, gap under the hem over its height.

Each is worked out by setting the wall out anew with the decision moved, so it says what the drawing would say.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from elevation.errors import ElevationError
from elevation.findings.shapes import extremes, way
from elevation.room.model import Ref, Room
from elevation.setting_out.facts import defaults_of
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade

Move = Callable[[float], Room]
"""The room with the decision moved to a place, mm on the wall; raises BadInput where it cannot be."""

STEPS = 24
"""Rooms that are set out for one curve."""
SAG_STEPS = 60
"""Places of a sagged line; every break between two stretches is another."""


class Mark(Struct, frozen=True, gc=False):
    """A place on a curve that has a name: where it is, what is there (same units as the curve), a length in mm."""

    at_mm: float
    value: float
    length_mm: float


class Curve(Struct, frozen=True, gc=False):
    """Points of a curve with rising ``at_mm``, and marked places on it.

    ``values`` are percent for glass, mm for a gap or a sag (downwards negative). ``limits`` are (from, to, value): what
    still looks neat there.
    """

    at_mm: tuple[float, ...] = ()
    values: tuple[float, ...] = ()
    marks: tuple[Mark, ...] = ()
    limits: tuple[tuple[float, float, float], ...] = ()


def places(low_mm: float, high_mm: float, steps: int = STEPS) -> tuple[float, ...]:
    """``steps`` + 1 places from one end to the other; none where there is no way between them."""
    if not high_mm > low_mm or steps < 1:
        return ()
    return tuple(low_mm + (high_mm - low_mm) * step / steps for step in range(steps + 1))


def glass_over_length(
    move: Move, low_mm: float, high_mm: float, wall_id: str, scheme_id: str | None, trade: Trade, ref: Ref
) -> Curve:
    """Glass left clear with open panels (percent) over the length of the front support (mm).

    Parameters
    ----------
    move : callable
        The room with the right end of the support at a place; the left end may go with it.
    low_mm, high_mm : float
        Places of the right end.
    wall_id, scheme_id, trade
        What is set out.
    ref : Ref
        The treatment.
    """
    lengths: list[float] = []
    percents: list[float] = []
    for place in places(low_mm, high_mm):
        laid = _laid(move, place, wall_id, scheme_id, trade, ref)
        if laid is None or not laid.layers:
            continue
        length = laid.layers[0].support.length_mm
        if lengths and length <= lengths[-1]:
            continue
        lengths.append(length)
        percents.append(laid.glass.clear_open * 100.0)
    return Curve(tuple(lengths), tuple(percents))


def gap_over_height(room: Room, laid: SetOut, layer: LayerOut, trade: Trade, low_mm: float, high_mm: float) -> Curve:
    """The least gap under the hem (mm; negative: cloth lies on the floor) over the rod's height (mm).

    The panels keep the length they have; the rod goes up and down. Marked are the heights at which panels of the lengths
    that are sold just clear the floor. A straight line, since cloth hangs as far below the rod wherever that is.

    Parameters
    ----------
    room : Room
        Its unit says which lengths are sold.
    laid : SetOut
    layer : LayerOut
    trade : Trade
    low_mm, high_mm : float
        Heights of the rod's centre line.

    Returns
    -------
    Curve
        Empty where no length is known, or nothing hangs.
    """
    panels = [panel for panel in layer.panels if panel.finished_length_mm is not None]
    if not panels or not high_mm > low_mm:
        return Curve()
    support = layer.support
    spans = [way(panel) for panel in panels]
    _, floor_mm = extremes(laid.floor, min(span[0] for span in spans), max(span[1] for span in spans))
    heading_mm = max(panel.heading_mm for panel in panels)
    # Over an uneven floor each panel has its own gap: the least of them, and that moves with the rod.
    gaps = [panel.top_mm - (panel.finished_length_mm or 0.0) - _floor_under(laid, way(panel)) for panel in panels]
    gap_mm = min(gaps)
    heights = tuple(sorted({low_mm, support.height_mm, high_mm}))
    heights = tuple(height for height in heights if low_mm <= height <= high_mm)
    values = tuple(gap_mm + height - support.height_mm for height in heights)
    clear_mm = defaults_of(trade, room.limits).hem_clear_mm
    marks = []
    for row in sorted(trade.ready_made.values(), key=lambda row: row.length_mm):
        at_mm = row.length_mm + heading_mm + floor_mm + clear_mm
        if row.market == room.unit and low_mm <= at_mm <= high_mm:
            marks.append(Mark(at_mm, clear_mm, row.length_mm))
    return Curve(heights, values, tuple(marks))


def sag_along(layer: LayerOut) -> Curve:
    """The sagged line of a rod with its panels as drawn (mm below the line through its brackets, negative), over the wall.

    Marked are the brackets; the limits are those that the length of each span sets. Empty where the rod's stiffness, or
    what hangs on it, is not known.
    """
    loads = layer.loads
    if loads is None or loads.line is None:
        return Curve()
    marks = tuple(Mark(bracket.x_mm, 0.0, bracket.x_mm) for bracket in layer.brackets)
    limits = tuple((span.left_mm, span.right_mm, -span.neat_mm) for span in loads.spans)
    line = loads.line
    first, last = line.breaks_mm[0], line.breaks_mm[-1]
    points = sorted({*places(first, last, SAG_STEPS), *line.breaks_mm})
    return Curve(tuple(points), tuple(-line.at(x) for x in points), marks, limits)


def _floor_under(laid: SetOut, span: tuple[float, float]) -> float:
    return extremes(laid.floor, span[0], span[1])[1]


def _laid(move: Move, place_mm: float, wall_id: str, scheme_id: str | None, trade: Trade, ref: Ref) -> TreatmentOut | None:
    try:
        laid = set_out(move(place_mm), wall_id, scheme_id, trade)
    except ElevationError:
        # A place that the room refuses is no point of the curve.
        return None
    return next((one for one in laid.treatments if one.ref == ref), None)
