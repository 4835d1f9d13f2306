"""What a treatment needs to know of its wall and of the trade's defaults, each as one small frozen value."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from elevation.setting_out.model import Profile, Span
from elevation.trade.model import Trade
from elevation.trade.tables import limit_of
from elevation.units import Length


class Overhead(Struct, frozen=True, gc=False):
    """A wall's lines in mm but for its floor: all that rods and brackets know of it.

    ``angles`` are the inside angles at its left and right end, in degrees.
    """

    width_mm: float
    known_width: bool
    ceiling: Profile
    crown_mm: float
    angles: Span = (90.0, 90.0)


class WallFacts(Overhead, frozen=True, gc=False, kw_only=True):
    """The same with the floor (a floor to come laid, and how thick that is) and what stands along it."""

    floor: Profile
    baseboard_mm: float
    floor_to_come_mm: float = 0.0


def overhead_of(facts: WallFacts) -> Overhead:
    """The same without the floor."""
    return Overhead(facts.width_mm, facts.known_width, facts.ceiling, facts.crown_mm, facts.angles)


class Defaults(Struct, frozen=True, gc=False):
    """Figures that stand in where the room gives none, in mm; a room's own limits win over the tables."""

    hem_clear_mm: float
    hem_kiss_mm: float
    hem_break_mm: float
    hem_puddle_mm: float
    hem_sill_mm: float
    hem_apron_mm: float
    hem_below_sill_mm: float
    parked_ring_mm: float
    assumed_ceiling_mm: float
    assumed_gap_mm: float
    handle_zone_mm: float
    tilt_reach: float
    track_glide_mm: float = 0.0
    tie_foot: float = 1.0
    hem_allowance_mm: float = 0.0
    ring_kg: float = 0.0
    glide_kg: float = 0.0
    sag_neat: float = 360.0
    sag_fair: float = 240.0
    pelmet_irons_mm: float = 508.0


def defaults_of(trade: Trade, limits: Mapping[str, Length]) -> Defaults:
    """The defaults of the trade's limits table, each overridden by the room's own figure of the same id."""

    def length(limit_id: str) -> float:
        own = limits.get(limit_id)
        return limit_of(trade, limit_id) if own is None else own.mm

    return Defaults(
        hem_clear_mm=length("hem-clear-default"),
        hem_kiss_mm=length("hem-kiss-default"),
        hem_break_mm=length("hem-break-default"),
        hem_puddle_mm=length("hem-puddle-default"),
        hem_sill_mm=length("hem-sill-default"),
        hem_apron_mm=length("hem-apron-default"),
        hem_below_sill_mm=length("hem-below-sill-default"),
        parked_ring_mm=length("parked-ring"),
        assumed_ceiling_mm=length("assumed-ceiling"),
        assumed_gap_mm=length("assumed-gap"),
        handle_zone_mm=length("handle-zone"),
        tilt_reach=limit_of(trade, "tilt-in-reach"),
        track_glide_mm=length("track-glide"),
        tie_foot=limit_of(trade, "tie-foot"),
        hem_allowance_mm=trade.allowances["hem"].length_mm if "hem" in trade.allowances else 0.0,
        ring_kg=limit_of(trade, "ring-weighs"),
        glide_kg=limit_of(trade, "glide-weighs"),
        sag_neat=limit_of(trade, "sag-neat"),
        sag_fair=limit_of(trade, "sag-fair"),
        pelmet_irons_mm=length("pelmet-irons"),
    )
