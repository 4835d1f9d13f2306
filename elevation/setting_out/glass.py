"""Glass of the covered openings: how much of it the cloth covers, open, closed and as drawn."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.heads import area_between
from elevation.setting_out.model import GlassOut, LayerOut, PanelOut, Span
from elevation.setting_out.opening import Placed
from elevation.setting_out.spans import common, union


def glass_of(openings: Sequence[Placed], layers: Sequence[LayerOut]) -> GlassOut:
    """Sums over all covered openings and all layers; areas are exact integrals of the heads."""
    panels = [panel for layer in layers for panel in layer.panels]
    area = sum(opening.out.glass_area_mm2 for opening in openings)
    opened = union(panel.open for panel in panels)
    closed = union(panel.closed for panel in panels)
    drawn = union(panel.drawn for panel in panels)
    return GlassOut(
        area_mm2=area,
        clear_open=clear_share(openings, opened, area),
        clear_closed=clear_share(openings, closed, area),
        clear_drawn=clear_share(openings, drawn, area),
        stack_over_left_mm=_over_glass(openings, panels, "left"),
        stack_over_right_mm=_over_glass(openings, panels, "right"),
        support_to_clear_mm=max((_to_clear(openings, layer) for layer in layers), default=0.0),
        light_blocking_mm=sum(right - left for left, right in closed),
    )


def clear_share(openings: Sequence[Placed], covered: Sequence[Span], area_mm2: float) -> float:
    """The share of the glass that stretches of cloth leave clear; 1 where there is no glass.

    Parameters
    ----------
    openings : sequence of Placed
    covered : sequence of Span
        Standing apart, as ``union`` gives them.
    area_mm2 : float
        All the glass.
    """
    if area_mm2 <= 0:
        return 1.0
    hidden = 0.0
    for opening in openings:
        for left, right in covered:
            hidden += area_between(opening.glass, left, right)
    return min(max(1.0 - hidden / area_mm2, 0.0), 1.0)


def _over_glass(openings: Sequence[Placed], panels: Sequence[PanelOut], side: str) -> float:
    spans = union(panel.open for panel in panels if panel.side == side)
    return sum(common(spans, o.glass.left_mm, o.glass.right_mm) for o in openings)


def _to_clear(openings: Sequence[Placed], layer: LayerOut) -> float:
    """Length of a rod whose end stacks stand beside all the glass, parked as they are now."""
    support = layer.support
    left = min(opening.glass.left_mm for opening in openings)
    right = max(opening.glass.right_mm for opening in openings)
    near, far = left, right
    for panel in layer.panels:
        # Only panels that park at the rod's ends move with them; those in the middle stand where they stand.
        if panel.side == "left" and panel.parks_at_mm <= left + panel.stack_mm:
            near = min(near, left - panel.stack_mm - (panel.parks_at_mm - support.left_mm))
        elif panel.side == "right" and panel.parks_at_mm >= right - panel.stack_mm:
            far = max(far, right + panel.stack_mm + (support.right_mm - panel.parks_at_mm))
    return far - near
