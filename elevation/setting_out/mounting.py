"""What a mount means for a rod: how far out it stands, how high brackets of the ceiling hold it, where plates stand."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.room.model import Bracket, Rod
from elevation.setting_out.facts import Overhead
from elevation.setting_out.model import OpeningOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import BracketRow, Trade
from elevation.trade.tables import row_of

INSIDE = frozenset({"reveal", "sash"})
"""Mounts that hang inside one opening."""

PLATE_MM = 3.175
"""How thick a plate on the ceiling is drawn, seen edge-on (1/8 in; from memory)."""


def depths_of(rod: Rod, mount: str, openings: Sequence[OpeningOut]) -> tuple[float, float | None]:
    """Wall's face to the rod's centre line (negative: behind it, in the reveal), and the sash to it, in mm.

    The second is None for mounts outside the opening. A reveal that was not measured counts as none.
    """
    if mount not in INSIDE:
        return rod.projection.mm, None
    return rod.projection.mm - (openings[0].reveal_mm or 0.0), rod.projection.mm


def drop_of(brackets: Sequence[Bracket], trade: Trade) -> float:
    """How far below the ceiling its brackets hold the rod's axis, in mm: the longest of them decides."""
    kits = (row_of(trade.brackets, bracket.kit, "bracket kit") for bracket in brackets)
    return max((kit.drop_mm for kit in kits if kit.mount in ("ceiling", "layer")), default=0.0)


def plate_of(kit: BracketRow, x_mm: float, height_mm: float, facts: Overhead) -> tuple[float, float, float, float]:
    """A bracket's plate on the wall, or on the ceiling seen edge-on: left, bottom, right, top in mm."""
    half = kit.plate_width_mm / 2
    if kit.mount == "ceiling":
        top = height_at(facts.ceiling, x_mm)
        return x_mm - half, top - PLATE_MM, x_mm + half, top
    return x_mm - half, height_mm - kit.plate_below_mm, x_mm + half, height_mm + kit.plate_above_mm
