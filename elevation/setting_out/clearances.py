"""Clearances of one treatment: rod to openings, casing and ceiling, brackets to openings, hems to the floor."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import ClearancesOut, LayerOut, OpeningOut
from elevation.setting_out.profile import lowest_over
from elevation.setting_out.tilt import over_tops, under_line


def clearances_of(openings: Sequence[OpeningOut], layers: Sequence[LayerOut], facts: WallFacts) -> ClearancesOut:
    """Distances of the front layer's rod; hems over the cloth of all layers. Least where they vary.

    Distances to the ceiling are None where no ceiling was measured, those of hems where there are no panels.
    """
    support = layers[0].support
    brackets = layers[0].brackets
    first, last = openings[0], openings[-1]
    casing = max(opening.casing_top_mm for opening in openings)
    below = gap = None
    if facts.ceiling.known:
        below = under_line(support, facts.ceiling) - facts.crown_mm
        over = lowest_over(facts.ceiling, first.left_mm - first.casing_mm, last.right_mm + last.casing_mm)
        gap = over - facts.crown_mm - casing
        if support.tilt:
            # Between two lines that lean, what the rod has to share is the least that both leave along it.
            gap = over_tops(support, openings, with_casing=True) + below
    lows = [p.gap_low_mm for layer in layers for p in (*layer.panels, *layer.guests) if p.gap_low_mm is not None]
    highs = [p.gap_high_mm for layer in layers for p in (*layer.panels, *layer.guests) if p.gap_high_mm is not None]
    return ClearancesOut(
        above_opening_mm=over_tops(support, openings, with_casing=False),
        above_casing_mm=over_tops(support, openings, with_casing=True),
        below_ceiling_mm=below,
        left_of_opening_mm=first.left_mm - support.left_mm,
        right_of_opening_mm=support.right_mm - last.right_mm,
        bracket_left_mm=first.left_mm - brackets[0].x_mm if brackets else None,
        bracket_right_mm=brackets[-1].x_mm - last.right_mm if brackets else None,
        head_to_ceiling_mm=gap,
        hem_to_floor_low_mm=min(lows, default=None),
        hem_to_floor_high_mm=max(highs, default=None),
    )
