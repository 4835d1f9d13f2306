"""What holds ends that carry a rod: a socket on a side wall or jamb in shear, a tube bent back to the wall as a bracket.

How a side wall is built is known only where it is a wall of the room. Each end is taken at its worst load with a tug.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Rod
from elevation.setting_out.carried import HoldOut, LoadsOut
from elevation.setting_out.hold_facts import (
    USUAL,
    USUAL_THROUGH_LATH,
    HoldFacts,
    at_framing,
    build_of,
    face_of,
    finds_hold,
    row_strength,
)
from elevation.setting_out.model import LayerOut, ZoneOut
from elevation.setting_out.mounting import INSIDE
from elevation.trade.fixing import on_plate, times_held
from elevation.trade.model import EndRow, Trade


class _Into(Struct, frozen=True, gc=False):
    """What an end is fixed to: a wall's kind and build, whether wood is there (None: a screw that is chosen found it)."""

    substrate: str
    build: str
    is_wood: bool | None
    is_bare_wood: bool


def ends_held(
    mount: str,
    layer: LayerOut,
    loads: LoadsOut,
    rod: Rod,
    zones: Sequence[ZoneOut],
    facts: HoldFacts,
    trade: Trade,
) -> tuple[HoldOut | None, HoldOut | None]:
    """What holds the left and the right end of a rod; None for an end that carries nothing.

    Parameters
    ----------
    mount : str
        Of the treatment.
    layer : LayerOut
    loads : LoadsOut
        Its loads, those of its ends with them.
    rod : Rod
        As it is in the room: with the fixings that were chosen.
    zones : sequence of ZoneOut
        What likely stands inside the wall.
    facts : HoldFacts
    trade : Trade
    """
    support = layer.support
    left = _end(mount, layer, 0, support.left_ends, rod.left_fixing, loads, zones, facts, trade)
    right = _end(mount, layer, 1, support.right_ends, rod.right_fixing, loads, zones, facts, trade)
    return left, right


def _end(
    mount: str,
    layer: LayerOut,
    side: int,
    ends: str,
    chosen: str | None,
    loads: LoadsOut,
    zones: Sequence[ZoneOut],
    facts: HoldFacts,
    trade: Trade,
) -> HoldOut | None:
    carried = loads.ends_n[side]
    if carried is None or not layer.support.carried[side]:
        return None
    row = trade.ends[ends]
    load = max(carried, 0.0) + facts.tug_n
    into = _into(mount, layer, side, row, zones, facts, trade)
    if into.build == "unknown":
        return HoldOut(chosen or "", None, "wall", load)
    key = chosen or _usual(into)
    if not key:
        return HoldOut("", None, "chosen", load)
    fixing = trade.fixings[key]
    is_wood = chosen is not None if into.is_wood is None else into.is_wood
    if not finds_hold(fixing, into.build, into.substrate, is_wood, chosen is not None):
        return HoldOut(key, None, "there", load, factor=fixing.factor)
    strength = row_strength(fixing, 0.0 if into.is_bare_wood else face_of(into.substrate, trade), trade)
    if strength is None:
        return HoldOut(key, None, "short", load, factor=fixing.factor)
    arm = max(layer.support.projection_mm, 0.0) if row.shape == "return" else 0.0
    asked = on_plate(load, load * arm, row.holes_mm, row.plate_below_mm)
    if asked is None:
        return HoldOut(key, None, "packet", load, factor=fixing.factor)
    times = times_held(*asked, strength)
    return HoldOut(key, times, "" if times else "packet", load, *asked, factor=fixing.factor)


def _into(
    mount: str, layer: LayerOut, side: int, row: EndRow, zones: Sequence[ZoneOut], facts: HoldFacts, trade: Trade
) -> _Into:
    if row.shape == "return":
        x = (layer.support.left_mm, layer.support.right_mm)[side]
        is_wood = facts.build == "timber" or (
            facts.substrate != "board-metal-studs" and at_framing(x, layer.support.height_mm, zones)
        )
        return _Into(facts.substrate, facts.build, is_wood, facts.build == "timber")
    if mount in INSIDE:
        # The jamb of a framed wall is wood; that of another is what the wall is.
        is_framed = facts.build in ("timber", "studs")
        return _Into(facts.substrate, facts.build, is_framed or None, is_framed)
    there = facts.sides[side]
    build = build_of(there, trade)
    return _Into(there, build, True if build == "timber" else None, build == "timber")


def _usual(into: _Into) -> str:
    """The screw that is taken where there is wood and nothing was chosen; else none."""
    if not into.is_wood:
        return ""
    return USUAL_THROUGH_LATH if into.substrate == "plaster-lath" and not into.is_bare_wood else USUAL
