"""Clearances on the wall: how far rod, ends, stacks and hems are from what they must clear."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut, Point, SetOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.setting_out.profile import height_at
from elevation.setting_out.tilt import axis_at
from elevation.sheet.annotation.wall_chains import edge_mm
from elevation.sheet.inks import with_alpha
from elevation.sheet.paths import rectangle
from elevation.sheet.records import NARROW, Fill, Group, Ink, Line, Pen, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.units import format_length
from elevation.units.tolerance import TOUCH_MM
from elevation.window.texts import tr
from elevation.words import Message, Style, msg

HEIGHT = 2.9
"""Type size, paper mm: less than a dimension's, because these stand inside the wall."""
_ARROW = 1.3
_LEAST = 0.5
_PLATE = with_alpha(Ink.PAPER, 0.94)
_EDGE = 2.6 * NARROW
"""Width of the pale edge under a line over a dark wall, paper mm."""


def clearance_groups(
    set_out: SetOut,
    style: Style,
    mm_per_paper: float,
    only: Sequence[TreatmentOut] | None = None,
    *,
    is_lit: bool = False,
) -> tuple[Group, ...]:
    """One group of marks for each treatment.

    Parameters
    ----------
    set_out : SetOut
    style : Style
    mm_per_paper : float
        Wall mm for one paper mm.
    only : sequence of TreatmentOut or None
        Those in sight; None: all.
    is_lit : bool
        The wall may be dark: lines lie on a pale edge.

    Returns
    -------
    tuple of Group
        Layer ``clearance``, wall coordinates.
    """
    groups = []
    for treatment in set_out.treatments if only is None else only:
        records: list[Record] = []
        marker = _Marker(records, style, mm_per_paper, is_lit)
        for layer in treatment.layers:
            if treatment.mount not in INSIDE:
                # Between the jambs neither the wall's ends nor its ceiling is what the rod must clear.
                _rod(marker, set_out, layer, [other for other in treatment.layers if other is not layer])
            _hems(marker, set_out, layer)
        _stack(marker, treatment)
        title = tr(msg("Clearances: {name}", name=treatment.name or treatment.ref[-1]))
        groups.append(Group(treatment.ref, "clearance", title, tuple(records)))
    return tuple(groups)


class _Marker:
    """Draws one clearance: a line with two arrow heads and its figure on a plate of paper."""

    def __init__(self, records: list[Record], style: Style, scale: float, is_lit: bool) -> None:
        self._records, self._style, self._scale, self._is_lit = records, style, scale, is_lit

    def mark(
        self,
        a: Point,
        b: Point,
        ink: str,
        words: Message | None = None,
        *,
        outside: tuple[float, int] | None = None,
        room_above_mm: float = inf,
        within: tuple[float, float] = (-inf, inf),
    ) -> None:
        """Mark the gap from ``a`` to ``b`` (level or upright); too small a gap to see is left alone.

        Where a figure is too high for an upright gap it stands on ``a``, ``outside`` of what hangs there: beside that
        place along the wall, to its left (-1) or right (1). A level gap's figure stands over its line, or under it where
        ``room_above_mm`` is too little. It stays ``within`` two places along the wall, and leaves its words out where they
        would take more than half of what is between them.
        """
        scale = self._scale
        dx, dy = b[0] - a[0], b[1] - a[1]
        length = abs(dx) + abs(dy)
        if length < _LEAST * scale:
            return
        figure = format_length(length, self._style.unit, self._style.graduation_mm, decimal_mark=self._style.decimal_mark)
        text = figure if words is None else tr(msg("{figure} {what}", figure=figure, what=tr(words)))
        if (text_width(text, HEIGHT) + 1.2) * scale > (within[1] - within[0]) / 2:
            text = figure
        if abs(dx) > abs(dy) and text_width(text, HEIGHT) * scale > length and ink != Ink.ACCENT:
            # No room for the figure between its ends: the dimensions outside the wall tell it.
            return
        pen = Pen(ink, NARROW)
        if self._is_lit:
            self._records.append(Line(a, b, Pen(_PLATE, _EDGE)))
        self._records.append(Line(a, b, pen))
        ux, uy = dx / length, dy / length
        head = min(_ARROW * scale, length / 3)
        for (x, y), way in ((a, 1.0), (b, -1.0)):
            for side in (-0.45, 0.45):
                tip = (x + way * head * ux - side * head * uy, y + way * head * uy + side * head * ux)
                self._records.append(Line((x, y), tip, pen))
        width, height = (text_width(text, HEIGHT) + 1.2) * scale, HEIGHT * 1.15 * scale
        if outside is not None and length < height:
            x, way = outside
            # Not over the line of the floor, nor over the cloth's edge.
            self._plate(x + way * 0.6 * scale - (width if way < 0 else 0), a[1] + 0.7 * scale, width, height, text, ink)
            return
        x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        is_level = abs(dx) > abs(dy)
        if is_level:
            # Over or under the line, or on it where it runs through.
            beside = 0.3 * scale if room_above_mm > height + 0.9 * scale else -0.3 * scale - height
            left, bottom = x - width / 2, y + (beside if width < length else -height / 2)
            left = max(min(left, within[1] - width), within[0])
        else:
            left, bottom = x + 0.9 * scale, y - height / 2
        self._plate(left, bottom, width, height, text, ink)

    def is_level_with(self, one_mm: float, other_mm: float) -> bool:
        """Whether figures at both heights would stand in each other's way."""
        return abs(one_mm - other_mm) < HEIGHT * 1.15 * self._scale

    def _plate(self, left: float, bottom: float, width: float, height: float, text: str, ink: str) -> None:
        scale = self._scale
        self._records.append(Fill(rectangle(left, bottom, left + width, bottom + height), _PLATE))
        at = (left + width / 2, bottom + 0.26 * HEIGHT * scale)
        self._records.append(Text(at, text, HEIGHT, Ink.ACCENT if ink == Ink.ACCENT else Ink.QUIET, "middle"))


def _rod(marker: _Marker, set_out: SetOut, layer: LayerOut, others: Sequence[LayerOut]) -> None:
    support = layer.support
    width = support.metal_right_mm - support.metal_left_mm
    # Beside the middle, where the handle and its readout stand.
    x = support.metal_left_mm + width * 0.22
    # Two layers at one height would have one figure over the other: the nearer one has the mark.
    level = [other.support for other in others if marker.is_level_with(other.support.height_mm, support.height_mm)]
    over_mm = axis_at(support, x) + support.diameter_mm / 2
    is_first = layer.ref < min((other.ref for other in others), default=layer.ref)
    higher = [axis_at(other, x) + other.diameter_mm / 2 - over_mm for other in level]
    if set_out.ceiling.known and not _is_behind(higher, is_first=is_first):
        top = min(height_at(set_out.ceiling, place) for place in (support.metal_left_mm, x, support.metal_right_mm))
        marker.mark((x, over_mm), (x, top - set_out.crown_mm), Ink.QUIET)
    y = support.height_mm
    for kind, end, edge, farther in (
        # Under a raked ceiling the wall ends earlier than its corner.
        (
            set_out.ends[0],
            edge_mm(set_out, y, "left"),
            support.metal_left_mm,
            [support.metal_left_mm - other.metal_left_mm for other in level],
        ),
        (
            set_out.ends[1],
            edge_mm(set_out, y, "right"),
            support.metal_right_mm,
            [other.metal_right_mm - support.metal_right_mm for other in level],
        ),
    ):
        if _is_behind(farther, is_first=is_first):
            continue
        if kind == "corner" and not _is_taken(set_out, layer.ref, end, edge):
            above_mm = height_at(set_out.ceiling, (end + edge) / 2) - set_out.crown_mm - y if set_out.ceiling.known else inf
            marker.mark((end, y), (edge, y), Ink.QUIET, room_above_mm=above_mm)


def _is_behind(farther_mm: Sequence[float], *, is_first: bool) -> bool:
    """Whether another layer reaches farther; of two that reach as far the first has the mark."""
    return any(far > TOUCH_MM or (far >= -TOUCH_MM and not is_first) for far in farther_mm)


def _is_taken(set_out: SetOut, own: Ref, end: float, edge: float) -> bool:
    """Whether another rod stands between this rod's end and the wall's end."""
    low, high = min(end, edge), max(end, edge)
    return any(
        layer.ref != own and low < (layer.support.left_mm + layer.support.right_mm) / 2 < high
        for treatment in set_out.treatments
        for layer in treatment.layers
    )


def _hems(marker: _Marker, set_out: SetOut, layer: LayerOut) -> None:
    for panel in layer.panels:
        left, right = panel.open
        x = (left + right) / 2
        floor = height_at(set_out.floor, x)
        if panel.hem and panel.hem_low_mm > floor:
            edge = (left, -1) if panel.side == "left" else (right, 1)
            marker.mark((x, floor), (x, panel.hem_low_mm), Ink.QUIET, outside=edge)


def _stack(marker: _Marker, treatment: TreatmentOut) -> None:
    """Where open cloth stands before glass, in the ink that asks attention."""
    glass = treatment.glass
    openings = treatment.openings
    if not openings or treatment.mount in INSIDE:
        return  # cloth between the jambs always stands before glass
    y = openings[0].glass_bottom_mm + (openings[0].glass_top_mm - openings[0].glass_bottom_mm) * 0.25
    words = msg("over glass")
    first, last = openings[0], openings[-1]
    # What stands over the left glass and over the right one may be the same pane: each keeps to its own side.
    whole = (first.glass_left_mm, last.glass_right_mm)
    if glass.stack_over_left_mm > 0:
        left = first.glass_left_mm
        marker.mark((left, y), (left + glass.stack_over_left_mm, y), Ink.ACCENT, words, within=whole)
    if glass.stack_over_right_mm > 0:
        right = last.glass_right_mm
        marker.mark((right - glass.stack_over_right_mm, y), (right, y), Ink.ACCENT, words, within=whole)
