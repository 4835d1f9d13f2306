"""A new room from a few typed facts, with a sensible first scheme, so that something right stands there at once."""

from __future__ import annotations

from math import ceil
from typing import Literal

from msgspec import Struct

from elevation.room.edits import replace_at
from elevation.room.model import (
    Bracket,
    Held,
    Hem,
    Layer,
    Opening,
    Panel,
    Rod,
    Room,
    Scheme,
    Station,
    Treatment,
    Wall,
)
from elevation.room.validate import check_room
from elevation.trade import load_trade
from elevation.trade.model import Trade
from elevation.trade.placement import split_gap
from elevation.units import Length, length_of

Unit = Literal["in", "mm"]

_HEADING = "clip-rings"
_SECTIONS: dict[Unit, str] = {"in": "conduit-3/4", "mm": "tube-20"}
_KIT = "shop-strap"
_PASSING_KIT = "open-arm"
_PROJECTION: dict[Unit, Length] = {"in": Length(88.9, "3 1/2 in"), "mm": Length(90.0, "90 mm")}
_ENDS = "ball-finial"
_SHORT_ENDS = "cap"

_IN = 25.4
REACH_IN = 9.0
"""End brackets stand this far beyond the opening where the wall allows: the middle of the usual 6 to 12 in."""

LEAST_REACH_IN = 2.0
"""Less room than this beside the opening, and the rod's end is put at it all the same: a finding will say so."""

MIDDLE_OVER_IN = 60.0
"""A longer rod is proposed with a middle bracket. A proposal only: what it carries is not worked out here."""


class FirstFacts(Struct, frozen=True):
    """What she measures first.

    Attributes
    ----------
    name : str
        Of the room.
    unit : str
        ``in`` or ``mm``.
    width, ceiling : Length
        Of the wall; height of the ceiling over the floor.
    opening_width, opening_height : Length
        Between the jambs; from sill to head.
    sill : Length
        Height over the floor.
    left : Length or None
        From the wall's left end to the opening; None puts it in the wall's middle.
    casing : Length or None
        Width of the trim; zero for none; None where not measured.
    crown, baseboard : Length or None
        None where not measured.
    """

    width: Length
    ceiling: Length
    opening_width: Length
    opening_height: Length
    sill: Length
    unit: Unit = "in"
    name: str = ""
    left: Length | None = None
    casing: Length | None = None
    crown: Length | None = None
    baseboard: Length | None = None


def first_room(facts: FirstFacts, trade: Trade | None = None) -> Room:
    """A room with one wall, one window and a first scheme.

    The scheme is a pair of ready-hemmed panels on rings: the rod a little more than 3 in over the casing, or where the
    gap to the ceiling is too small for that, so that it shares it; end brackets about 9 in beyond the opening,
    farther where the open panels need it to clear the glass, nearer where the wall ends; the hem just clear of the floor.

    Parameters
    ----------
    facts : FirstFacts
    trade : Trade or None
        The trade's tables; None loads them.

    Raises
    ------
    BadInput
        The facts cannot be true together: an opening wider than its wall, for example.
    """
    tables = load_trade() if trade is None else trade
    unit = facts.unit
    left = facts.left or _halved(facts.width.mm - facts.opening_width.mm, unit)
    opening = Opening(
        id="w1",
        width=facts.opening_width,
        height=facts.opening_height,
        left=left,
        sill=facts.sill,
        casing=facts.casing,
    )
    wall = Wall(
        id="wall-1",
        width=facts.width,
        ceiling=(Station(_round(0.0, unit), facts.ceiling),),
        crown=facts.crown,
        baseboard=facts.baseboard,
        openings=(opening,),
    )
    bare = Room(name=facts.name, unit=unit, walls=(wall,))
    check_room(bare, facts.name or "new room")
    layer = _layer(facts, left.mm, unit, tables)
    scheme = Scheme(id="s1", treatments=(Treatment(id="t1", openings=("w1",), layers=(layer,)),))
    room = replace_at(bare, (wall.id,), schemes=(scheme,))
    check_room(room, facts.name or "new room")
    return room


def _layer(facts: FirstFacts, left_mm: float, unit: Unit, trade: Trade) -> Layer:
    width_mm = facts.opening_width.mm
    inset = _round(trade.limits["bracket-inset"].value, unit)
    panel_width, count, stack_mm = _panel(width_mm, inset.mm, unit, trade)
    wanted_mm = max(REACH_IN * _IN + inset.mm, stack_mm)
    beside = (left_mm, facts.width.mm - left_mm - width_mm)
    ends, reaches = _ends(beside, wanted_mm, unit, trade)
    rod_mm = width_mm + sum(reach.mm for reach in reaches)
    middles = max(ceil(rod_mm / trade.sections[_SECTIONS[unit]].stock_mm) - 1, int(rod_mm > MIDDLE_OVER_IN * _IN))
    places = [(Held("from-left-end", inset), _KIT)]
    for number in range(1, middles + 1):
        # Rings slide past these: panels that could not meet would be a poor proposal.
        off_centre_mm = rod_mm * (number / (middles + 1) - 0.5)
        places.append((Held("from-centre", _round(off_centre_mm, unit)), _PASSING_KIT))
    places.append((Held("from-right-end", inset), _KIT))
    return Layer(
        id="l1",
        rod=Rod(
            height=Held("above-casing", _above_casing(facts, unit, trade)),
            left=Held("beyond-opening", reaches[0]),
            right=Held("beyond-opening", reaches[1]),
            section=_SECTIONS[unit],
            projection=_PROJECTION[unit],
            ends=ends,
        ),
        brackets=tuple(Bracket(f"b{number}", place, kit) for number, (place, kit) in enumerate(places, 1)),
        heading=_HEADING,
        hem=Hem("clear", _round(trade.limits["hem-clear-default"].value, unit)),
        panels=(Panel("p1", panel_width, count, "left"), Panel("p2", panel_width, count, "right")),
    )


def _ends(beside_mm: tuple[float, float], wanted_mm: float, unit: Unit, trade: Trade) -> tuple[str, list[Length]]:
    """Finials where both fit beside the rod that is wanted, else caps; and how far the rod goes beyond the opening."""
    for ends in (_ENDS, _SHORT_ENDS):
        allowed = [room_mm - trade.ends[ends].length_mm - _IN / 2 for room_mm in beside_mm]
        if min(allowed) >= wanted_mm:
            break
    reaches = []
    for room_mm, most_mm in zip(beside_mm, allowed, strict=True):
        least_mm = min(LEAST_REACH_IN * _IN, max(room_mm, 0.0))
        reaches.append(_round_down(max(min(wanted_mm, most_mm), least_mm), unit))
    return ends, reaches


def _panel(width_mm: float, inset_mm: float, unit: Unit, trade: Trade) -> tuple[Length, int, float]:
    """Flat width of a piece, pieces in a panel, and the panel's open stack in mm.

    Of the widths that panels are sold in the first that gives no more cloth than the heading takes, else the least cloth:
    over some windows one piece of the first is too little and two are too much.
    """
    found = [_pieces(width_mm, inset_mm, piece, trade) for piece in _PIECES[unit]]
    most_mm = trade.headings[_HEADING].fullness_high * (width_mm / 2 + REACH_IN * _IN)
    least = min(found, key=lambda one: one[0].mm * one[1])
    return next((one for one in found if one[0].mm * one[1] <= most_mm), least)


def _pieces(width_mm: float, inset_mm: float, piece: Length, trade: Trade) -> tuple[Length, int, float]:
    """As many pieces of one width as give the heading's least fullness; with that width, and the stack in mm."""
    heading = trade.headings[_HEADING]
    count = 1
    while True:
        flat_mm = piece.mm * count
        stack_mm = flat_mm / 1371.6 * heading.stack_mm + heading.stack_plus_mm
        half_rod_mm = width_mm / 2 + max(REACH_IN * _IN + inset_mm, stack_mm)
        if flat_mm >= heading.fullness_low * half_rod_mm or count == 20:
            return piece, count, stack_mm
        count += 1


def _above_casing(facts: FirstFacts, unit: Unit, trade: Trade) -> Length:
    """The rod over the casing: an inch more than the least, or sharing a gap too small for what is asked on both sides."""
    casing_mm = facts.casing.mm if facts.casing is not None else trade.limits["assumed-casing"].value
    top_mm = facts.sill.mm + facts.opening_height.mm + casing_mm
    gap_mm = facts.ceiling.mm - (facts.crown.mm if facts.crown else 0.0) - top_mm
    low_mm = trade.limits["rod-low"].value
    under_mm = trade.limits["rod-under-ceiling"].value
    if gap_mm < low_mm + under_mm:
        return _round(split_gap(0.0, max(gap_mm, 0.0), low_mm, under_mm), unit)
    return _round_down(min(low_mm + _IN, gap_mm - under_mm), unit)


def _halved(room_mm: float, unit: Unit) -> Length:
    return _round(max(room_mm, 0.0) / 2, unit)


def _round(mm: float, unit: Unit) -> Length:
    return length_of(mm, unit, _GRADUATION[unit])


def _round_down(mm: float, unit: Unit) -> Length:
    """Down to a whole half inch or 5 mm: a proposal is easier to read in round figures."""
    step = _IN / 2 if unit == "in" else 5.0
    return _round(int(mm / step + 1e-9) * step, unit)


_GRADUATION = {"in": _IN / 16, "mm": 1.0}
# The usual width of a panel first; the others from ready_widths.csv.
_PIECES = {
    "in": (Length(1371.6, "54 in"), Length(1066.8, "42 in")),
    "mm": (Length(1400.0, "1400 mm"), Length(1680.0, "1680 mm"), Length(1170.0, "1170 mm")),
}
