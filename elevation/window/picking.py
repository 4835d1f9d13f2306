"""What lies under the pointer: plain rules over plain numbers, so that they can be tested without a screen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import hypot

from elevation.findings.model import Finding
from elevation.handles.model import Handle
from elevation.output.dimension_lines import PAST
from elevation.room.model import Ref
from elevation.setting_out.model import PanelOut, SetOut
from elevation.setting_out.tilt import axis_at
from elevation.sheet.records import Dimension, Group
from elevation.sheet.type_metrics import text_width
from elevation.window.shown import Cloth
from elevation.window.viewport import PX_PER_PAPER_MM, Viewport

TARGET_PX = 12.0
"""Half the side of a handle's target (24 px: WCAG 2.2, success criterion 2.5.8)."""
NEAR_PX = 110.0
"""Handles this near to the pointer show themselves."""
CROWD_PX = 48.0
"""Where many handles stand close together, only those this near."""
ROD_PX = 5.0
"""This near to its centre line, a thin rod can be taken too."""
CLOTH_PX = 28.0
"""This near to its leading edge, a panel is taken by its cloth."""
MOST_NEAR = 5
"""More than these at once would hide the wall."""


def handle_at(handles: Iterable[Handle], viewport: Viewport, x: float, y: float) -> Handle | None:
    """The handle whose target holds pixel (x, y); of several the nearest, of equals the first."""
    best: tuple[float, Handle] | None = None
    for handle in handles:
        px, py = viewport.to_px(handle.at)
        if abs(px - x) <= TARGET_PX and abs(py - y) <= TARGET_PX:
            distance = hypot(px - x, py - y)
            if best is None or distance < best[0]:
                best = distance, handle
    return best[1] if best else None


def rod_handle_at(handles: Iterable[Handle], set_out: SetOut, viewport: Viewport, x: float, y: float) -> Handle | None:
    """The height handle of the rod at pixel (x, y): a rod can be taken anywhere along it."""
    wall_x, wall_y = viewport.to_wall(x, y)
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            support = layer.support
            reach = max(support.diameter_mm / 2, ROD_PX * viewport.mm_per_px)
            if support.left_mm <= wall_x <= support.right_mm and abs(wall_y - axis_at(support, wall_x)) <= reach:
                wanted = ("rod-height", layer.ref)
                return next((handle for handle in handles if handle.key == wanted), None)
    return None


def cloth_handle_at(
    handles: Iterable[Handle], set_out: SetOut, viewport: Viewport, x: float, y: float, cloth: Cloth = "drawn"
) -> Handle | None:
    """The handle of the leading edge of the panel whose cloth is at pixel (x, y), near that edge.

    A hand draws a curtain by its cloth, wherever it gets hold of the edge; the rest of the cloth stays paper to shift.

    Parameters
    ----------
    handles : iterable of Handle
    set_out : SetOut
    viewport : Viewport
    x, y : float
        Pixels.
    cloth : str
        Where panels are shown just now.
    """
    wall_x, wall_y = viewport.to_wall(x, y)
    for panel in _panels(set_out):
        left, right = getattr(panel, cloth)
        reach = min(CLOTH_PX * viewport.mm_per_px, (right - left) / 2)
        low, high = (right - reach, right) if panel.side == "left" else (left, left + reach)
        if low <= wall_x <= high and panel.hem_low_mm <= wall_y <= panel.top_mm:
            found = next((handle for handle in handles if handle.key == ("lead", panel.ref)), None)
            if found is not None:
                return found
    return None


def edge_shown_mm(set_out: SetOut, ref: Ref, cloth: Cloth) -> float:
    """Where the leading edge of the panel at ``ref`` is shown just now, wall mm."""
    panel = next(panel for panel in _panels(set_out) if panel.ref == ref)
    left, right = getattr(panel, cloth)
    return float(right if panel.side == "left" else left)


def _panels(set_out: SetOut) -> Iterator[PanelOut]:
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            yield from layer.panels


def body_handle(
    handles: Iterable[Handle], set_out: SetOut, viewport: Viewport, pressed: tuple[float, float], now: tuple[float, float]
) -> Handle | None:
    """The handle that is meant where an obstacle itself is pressed and pulled: along the way that it is pulled.

    Parameters
    ----------
    handles : iterable of Handle
    set_out : SetOut
    viewport : Viewport
    pressed, now : tuple of float
        Pixels: where the press was, and where the pointer has gone.
    """
    ref = thing_at(set_out, *viewport.to_wall(*pressed))
    if ref is None or all(obstacle.ref != ref for obstacle in set_out.obstacles):
        return None
    sideways = abs(now[0] - pressed[0]) >= abs(now[1] - pressed[1])
    wanted = ("obstacle-x" if sideways else "obstacle-y", ref)
    return next((handle for handle in handles if handle.key == wanted), None)


def handles_near(handles: Iterable[Handle], viewport: Viewport, x: float, y: float) -> tuple[Handle, ...]:
    """Handles that show themselves while the pointer is at pixel (x, y), the nearest first.

    A few may show from afar; in a crowd only the nearest do.
    """
    near = []
    for order, handle in enumerate(handles):
        px, py = viewport.to_px(handle.at)
        distance = hypot(px - x, py - y)
        if distance <= NEAR_PX:
            near.append((distance, order, handle))
    near.sort(key=lambda one: one[:2])
    if len(near) > MOST_NEAR:
        near = [one for one in near if one[0] <= CROWD_PX][:MOST_NEAR] or near[:1]
    return tuple(handle for _, _, handle in near)


_HUNG = 3
"""Parts of the name of a treatment; what belongs to one has as many or more."""


def reading_order(handles: Sequence[Handle]) -> list[Handle]:
    """What hangs first, then the wall and what stands on it; each as a page is read: from the top, rows from the left."""

    def place(handle: Handle) -> tuple[bool, int, float, str]:
        # Rows of 50 mm: a rod's ends, brackets and middle belong to one row although they differ by a little.
        return len(handle.ref) < _HUNG, -round(handle.at[1] / 50.0), handle.at[0], handle.axis

    return sorted(handles, key=place)


def dimension_at(groups: Iterable[Group], viewport: Viewport, x: float, y: float) -> Dimension | None:
    """The dimension whose figure or line stands at pixel (x, y); figures go before lines."""
    wall_x, wall_y = viewport.to_wall(x, y)
    unit = viewport.mm_per_paper
    line: Dimension | None = None
    for group in groups:
        if group.frame != "wall":
            continue
        for record in group.records:
            if not isinstance(record, Dimension):
                continue
            if _on_figure(record, wall_x, wall_y, unit):
                return record
            if line is None and _on_line(record, wall_x, wall_y, 4.0 / PX_PER_PAPER_MM * unit, unit):
                line = record
    return line


def _on_figure(dimension: Dimension, x: float, y: float, unit: float) -> bool:
    half = max(text_width(dimension.text, dimension.height, "regular") / 2, 1.5) * unit
    height = dimension.height * unit
    dx, dy = x - dimension.text_at[0], y - dimension.text_at[1]
    if dimension.along == "x":
        return abs(dx) <= half and -0.3 * height <= dy <= height
    return abs(dy) <= half and -height <= dx <= 0.3 * height


def _on_line(dimension: Dimension, x: float, y: float, reach: float, unit: float) -> bool:
    along, across = (x, y) if dimension.along == "x" else (y, x)
    index = 0 if dimension.along == "x" else 1
    ends = sorted((dimension.a[index], dimension.b[index]))
    return abs(across - dimension.line) <= reach and ends[0] - PAST * unit <= along <= ends[1] + PAST * unit


def finding_at(findings: Iterable[Finding], viewport: Viewport, x: float, y: float) -> Finding | None:
    """The finding whose place is at pixel (x, y)."""
    for finding in findings:
        if finding.at is not None:
            px, py = viewport.to_px(finding.at)
            if hypot(px - x, py - y) <= TARGET_PX:
                return finding
    return None


def thing_at(set_out: SetOut, x: float, y: float, cloth: Cloth = "open") -> Ref | None:
    """The foremost thing at a wall point: cloth (where it is shown) or rod, obstacle, opening; None for the bare wall."""
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            support = layer.support
            reach = support.diameter_mm + 15.0
            if support.metal_left_mm <= x <= support.metal_right_mm and abs(y - axis_at(support, x)) <= reach:
                return layer.ref
            for panel in layer.panels:
                left, right = getattr(panel, cloth)
                if left <= x <= right and panel.hem_low_mm <= y <= panel.top_mm:
                    return layer.ref
    for obstacle in set_out.obstacles:
        if obstacle.left_mm <= x <= obstacle.right_mm and obstacle.bottom_mm <= y <= obstacle.top_mm:
            return obstacle.ref
    for opening in set_out.openings:
        if opening.left_mm <= x <= opening.right_mm and opening.bottom_mm <= y <= opening.top_mm:
            return opening.ref
    return None
