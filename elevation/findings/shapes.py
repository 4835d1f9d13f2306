"""Rectangles and lines on the wall, enough for the rules: plain arithmetic in mm, nothing allocated but tuples."""

from __future__ import annotations

from math import isfinite, radians, sqrt, tan

from elevation.setting_out.model import (
    LayerOut,
    OpeningOut,
    PanelOut,
    PelmetOut,
    Profile,
    SetOut,
    Span,
    SupportOut,
    TreatmentOut,
)
from elevation.setting_out.tilt import axis_at, over_tops, under_line
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

Rect = tuple[float, float, float, float]
"""Left, bottom, right, top in wall mm."""


def meet(a: Rect, b: Rect) -> bool:
    """Whether two rectangles share more than an edge (1e-6 mm)."""
    return a[0] < b[2] - TOUCH_MM and b[0] < a[2] - TOUCH_MM and a[1] < b[3] - TOUCH_MM and b[1] < a[3] - TOUCH_MM


def shared(a: Rect, b: Rect) -> float:
    """By how much two meeting rectangles overlap: the shortest way out, in mm."""
    return min(a[2] - b[0], b[2] - a[0], a[3] - b[1], b[3] - a[1])


def middle(rect: Rect, span: Span) -> float:
    """Along the wall, the middle of what a rectangle and a stretch of it share, in mm."""
    return (max(rect[0], span[0]) + min(rect[2], span[1])) / 2


def height_at(profile: Profile, x: float) -> float:
    """Height of a profile at ``x``: straight between its points, level beyond them, 0 where it has none."""
    points = profile.points
    if not points:
        return 0.0
    if x <= points[0][0]:
        return points[0][1]
    last = points[0]
    for point in points:
        if x <= point[0]:
            run = point[0] - last[0]
            return point[1] if run <= 0 else last[1] + (point[1] - last[1]) * (x - last[0]) / run
        last = point
    return last[1]


def extremes(profile: Profile, left: float, right: float) -> tuple[float, float]:
    """Least and greatest height of a profile between two x."""
    low = high = height_at(profile, left)
    for height in (height_at(profile, right), *(y for x, y in profile.points if left < x < right)):
        low, high = min(low, height), max(high, height)
    return low, high


def under_ceiling(set_out: SetOut, support: SupportOut) -> float | None:
    """Least distance from the rod's centre line up to the ceiling or crown; None where no ceiling was measured."""
    if not set_out.ceiling.known:
        return None
    return under_line(support, set_out.ceiling) - set_out.crown_mm


def lowest_under_ceiling(set_out: SetOut, support: SupportOut) -> float:
    """The x along the rod where the ceiling comes down lowest; the rod's middle under a level ceiling."""
    left, right = support.left_mm, support.right_mm
    places = [(left + right) / 2, left, right, *(x for x, _ in set_out.ceiling.points if left < x < right)]
    slope = support.tilt
    return min(places, key=lambda x: round(height_at(set_out.ceiling, x) - slope * (x - left), 6))


def top_name(openings: tuple[OpeningOut, ...]) -> Message:
    """What the top of the highest opening is: its casing, or its head where it has none."""
    highest = max(openings, key=lambda opening: opening.casing_top_mm)
    return msg("the casing") if highest.casing_mm > 0 else msg("the opening")


def casing_top(openings: tuple[OpeningOut, ...]) -> float | None:
    """The highest casing top (head where uncased) of some openings; None for none."""
    return max((opening.casing_top_mm for opening in openings), default=None)


def rod_over(treatment: TreatmentOut, layer: LayerOut, over_mm: float) -> float:
    """How high the middle of a rod is whose centre line runs ``over_mm`` over the casings (at least one), and no lower."""
    support = layer.support
    if not support.tilt:
        return max(opening.casing_top_mm for opening in treatment.openings) + over_mm
    return support.height_mm + over_mm - over_tops(support, treatment.openings, with_casing=True)


def hanging(layer: LayerOut) -> tuple[PanelOut, ...]:
    """All cloth of a layer before this wall: its own, and what comes round the corner of a bent track."""
    return (*layer.panels, *layer.guests) if layer.guests else layer.panels


def way(panel: PanelOut) -> Span:
    """Everything a panel covers in any position, left to right; a tied one is pulled to its hook."""
    left, right = min(panel.open[0], panel.closed[0]), max(panel.open[1], panel.closed[1])
    if panel.tie is not None:
        return min(left, panel.tie.waist[0]), max(right, panel.tie.waist[1])
    return left, right


def cloth(panel: PanelOut, span: Span, support: SupportOut) -> Rect:
    """The cloth's rectangle over ``span``, from its lowest hem to its top, along its rod."""
    if not support.tilt:
        return span[0], panel.hem_low_mm, span[1], panel.top_mm
    ups = [axis_at(support, x) - support.height_mm for x in span]
    return span[0], panel.hem_low_mm + min(ups), span[1], panel.top_mm + max(ups)


def cloth_back(layer: LayerOut, panel: PanelOut) -> float:
    """Distance from the wall to the back of the folds, in mm."""
    return layer.support.projection_mm - panel.fold_depth_mm / 2


def rod_rects(support: SupportOut) -> tuple[tuple[str, Rect, float, float], ...]:
    """The rod and its ends: (part, rectangle, back, front), the last two as distances from the wall.

    An end bent back to the wall reaches it.
    """
    radius = support.diameter_mm / 2
    y, out = support.height_mm, support.projection_mm
    parts = [
        ("rod", (left, low - radius, right, high + radius), out - radius, out + radius)
        for left, low, right, high in _along(support)
    ]
    thick = max(support.finial_diameter_mm / 2, radius)
    carried = support.carried
    y = axis_at(support, support.left_mm)
    if support.metal_left_mm < support.left_mm:
        back = 0.0 if carried[0] and support.left_ends != "socket" else out - thick
        parts.append(("end", (support.metal_left_mm, y - thick, support.left_mm, y + thick), back, out + thick))
    y = axis_at(support, support.right_mm)
    if support.metal_right_mm > support.right_mm:
        back = 0.0 if carried[1] and support.right_ends != "socket" else out - thick
        parts.append(("end", (support.right_mm, y - thick, support.metal_right_mm, y + thick), back, out + thick))
    return tuple(parts)


_PIECES = 24


def _along(support: SupportOut) -> list[Rect]:
    """The rod's axis in pieces that rise by no more than its diameter (unless it is very steep)."""
    left, right, y = support.left_mm, support.right_mm, support.height_mm
    if not support.tilt:
        return [(left, y, right, y)]
    rise = abs(support.tilt) * (right - left)
    count = min(_PIECES, 1 + int(rise / max(support.diameter_mm, 1.0)))
    xs = [left + (right - left) * part / count for part in range(count + 1)]
    ys = [axis_at(support, x) for x in xs]
    return [(a, min(h, k), b, max(h, k)) for a, b, h, k in zip(xs, xs[1:], ys, ys[1:], strict=False)]


def boxes_before(treatment: TreatmentOut) -> tuple[Rect, ...]:
    """What always hangs before the openings: a pelmet, the boxes of blinds."""
    found = [(blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm) for blind in treatment.blinds]
    pelmet = treatment.pelmet
    if pelmet is not None:
        found.append(pelmet_box(pelmet))
    return tuple(found)


def pelmet_box(pelmet: PelmetOut) -> Rect:
    """The smallest upright rectangle around a pelmet's outline on the wall."""
    up = abs(pelmet.up_at(pelmet.right_mm))
    return pelmet.left_mm, pelmet.bottom_mm - up, pelmet.right_mm, pelmet.top_mm + up


def pelmet_over(pelmet: PelmetOut, left_mm: float, right_mm: float) -> Rect:
    """The same of that part of it which is between two places along the wall."""
    ends = [pelmet.up_at(min(max(x, pelmet.left_mm), pelmet.right_mm)) for x in (left_mm, right_mm)]
    return pelmet.left_mm, pelmet.bottom_mm + min(ends), pelmet.right_mm, pelmet.top_mm + max(ends)


def front_of(layer: LayerOut) -> float:
    """How far out from the wall anything of a layer stands at the heading: rod, finial or the folds of closed cloth."""
    support = layer.support
    thick = max(support.diameter_mm, support.finial_diameter_mm, *(panel.fold_depth_mm for panel in hanging(layer)), 0.0)
    return support.projection_mm + thick / 2


def back_of(layer: LayerOut) -> float:
    """How near to the wall anything of a layer comes: rod or the folds of closed cloth."""
    support = layer.support
    thick = max(support.diameter_mm, *(panel.fold_depth_mm for panel in hanging(layer)), 0.0)
    return support.projection_mm - thick / 2


def corner_room(angle: float, back: float, front: float) -> float:
    """Where the neighbour wall stands in a corner, as distance along this wall at depths ``back`` to ``front``.

    Parameters
    ----------
    angle : float
        Inside angle of the corner in degrees; 90 gives 0, less leans the neighbour over this wall (positive).
    back, front : float
        Distances from this wall, in mm.
    """
    slope = tan(radians(angle))
    if not isfinite(slope) or abs(slope) > 1e9:
        return 0.0
    return max(back / slope, front / slope)


def _arc(opening: OpeningOut) -> tuple[float, float, float, float]:
    """Centre x and y, outer radius of the casing, and springing height of a round or segmental head."""
    half = (opening.right_mm - opening.left_mm) / 2
    rise = opening.rise_mm
    radius = (half * half + rise * rise) / (2 * rise)
    centre_y = opening.top_mm - radius
    return (opening.left_mm + opening.right_mm) / 2, centre_y, radius + opening.casing_mm, opening.top_mm - rise


def on_casing(opening: OpeningOut, rect: Rect) -> bool:
    """Whether a rectangle on the wall meets an opening or its casing.

    The casing is a band as wide as it was measured around head and jambs, square at the corners of a flat or
    raked head, concentric around an arc. A rectangle that only touches it does not meet it.
    """
    casing = opening.casing_mm
    bottom = opening.bottom_mm if opening.kind != "window" else opening.bottom_mm - opening.apron_mm
    outer = (opening.left_mm - casing, bottom, opening.right_mm + casing, opening.casing_top_mm)
    if not meet(outer, rect):
        return False
    if opening.head in ("segmental", "half-round") and opening.rise_mm > 0:
        return _under_arc(opening, rect)
    if opening.head == "raked":
        return _under_rake(opening, rect)
    return True


def _under_arc(opening: OpeningOut, rect: Rect) -> bool:
    centre_x, centre_y, radius, springing = _arc(opening)
    if rect[1] < springing - TOUCH_MM:
        return True  # beside the jambs: the band is straight there
    across = max(rect[0] - centre_x, centre_x - rect[2], 0.0)
    up = max(rect[1] - centre_y, 0.0)
    return sqrt(across * across + up * up) < radius - TOUCH_MM


def _under_rake(opening: OpeningOut, rect: Rect) -> bool:
    slope = (opening.right_top_mm - opening.left_top_mm) / (opening.right_mm - opening.left_mm)
    rise = opening.casing_mm * sqrt(1 + slope * slope)  # the band's width is square to the slope
    left = max(rect[0], opening.left_mm - opening.casing_mm)
    right = min(rect[2], opening.right_mm + opening.casing_mm)
    base = opening.left_top_mm + rise - slope * opening.left_mm
    return rect[1] < max(base + slope * left, base + slope * right) - TOUCH_MM
