"""What of a wall is in sight: what stands beside the canvas need not be drawn."""

from __future__ import annotations

from elevation.setting_out.model import Span, TreatmentOut
from elevation.window.viewport import Viewport

AROUND_MM = 600.0
"""Finials, rings, shadows and cloth that lies on the floor stand out past what is set out, but never this far."""


def is_in_sight(treatment: TreatmentOut, viewport: Viewport, width_px: float | None) -> bool:
    """Whether any of a treatment may be seen on a canvas ``width_px`` wide (None: on any canvas)."""
    if width_px is None:
        return True
    left, right = _span(treatment)
    return (
        viewport.x + (right + AROUND_MM) * viewport.px_per_mm >= 0.0
        and viewport.x + (left - AROUND_MM) * viewport.px_per_mm <= width_px
    )


def _span(treatment: TreatmentOut) -> Span:
    """From where to where its metal and its cloth reach, however far that is drawn, wall mm."""
    spans = [(layer.support.metal_left_mm, layer.support.metal_right_mm) for layer in treatment.layers]
    spans += [
        span for layer in treatment.layers for panel in layer.panels for span in (panel.open, panel.drawn, panel.closed)
    ]
    return min(span[0] for span in spans), max(span[1] for span in spans)
