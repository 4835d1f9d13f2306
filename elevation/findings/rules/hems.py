"""What the three hem rules measure: hem against its wish over the real floor, per layer."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.setting_out.model import LayerOut, PanelOut

NEAR_FLOOR_MM = 101.6
"""A hem higher than this over the floor is not compared with it by the eye (4 in; common practice, no source)."""


def wished_gap(panel: PanelOut) -> float | None:
    """The gap to the floor that a panel is to have, in mm; None where its hem has nothing to do with the floor.

    A panel in hand, a typed length, and hems at sill or apron have no wish for the floor but not to lie on it.
    """
    return panel.target_gap_mm


def short_of_floor(layer: LayerOut) -> Iterator[tuple[PanelOut, float]]:
    """By how much each panel hangs lower than wished, in mm (negative: it does not)."""
    for panel in layer.panels:
        if panel.gap_low_mm is not None:
            yield panel, (wished_gap(panel) or 0.0) - panel.gap_low_mm


def over_wish(layer: LayerOut) -> Iterator[tuple[PanelOut, float]]:
    """By how much each panel with a wish for the floor hangs higher than wished, in mm."""
    for panel in layer.panels:
        wish = wished_gap(panel)
        if wish is not None and panel.gap_high_mm is not None:
            yield panel, panel.gap_high_mm - wish


def variation(layer: LayerOut) -> Iterator[tuple[PanelOut, float]]:
    """By how much the gap of each panel near the floor varies along its way, in mm."""
    for panel in layer.panels:
        if panel.gap_low_mm is None or panel.gap_high_mm is None:
            continue
        if wished_gap(panel) is not None or panel.gap_low_mm <= NEAR_FLOOR_MM:
            yield panel, panel.gap_high_mm - panel.gap_low_mm


def worst(measured: Iterator[tuple[PanelOut, float]]) -> tuple[PanelOut, float] | None:
    """The panel with the greatest figure; None for none."""
    return max(measured, key=lambda pair: pair[1], default=None)
