"""What a valance takes in cloth: gathered by its tape before the rods, of the front layer's own cloth."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from elevation.room.model import Layer, Room
from elevation.setting_out.cloth import (
    MOST_WIDTHS,
    Bolt,
    before_wash,
    bolt_mm,
    bolt_through,
    bolt_upright,
    cut_of,
    runs_one_way,
    usable_mm,
)
from elevation.setting_out.model import PelmetOut
from elevation.trade.model import HeadingRow, Trade
from elevation.trade.tables import row_of
from elevation.trade.yardage import can_railroad, exact, flat_width, widths_of

HEADING = "pencil-pleat"
"""The row of the headings whose tape gathers a valance: its fullness and its turn count."""


class ValanceCloth(Struct, frozen=True, gc=False):
    """One valance to be sewn, mm.

    Attributes
    ----------
    heading : HeadingRow
        Of its tape.
    finished_mm, depth_mm : float
        Front and both returns together; from its top to its lower edge.
    flat_mm, hemmed_mm : float
        Flat cloth as wished, and as whole widths make it, joined, its ends hemmed.
    turned_mm, hem_mm, side_hem_mm : float
        Turned in at its top, at its lower edge and at each end, all turns of one hem together.
    widths : float
        Whole ones; 0 where the cloth runs through on its side.
    face : Bolt
        What is bought for it.
    """

    heading: HeadingRow
    finished_mm: float
    depth_mm: float
    flat_mm: float
    hemmed_mm: float
    turned_mm: float
    hem_mm: float
    side_hem_mm: float
    widths: float
    face: Bolt


def valance_cloth(room: Room, front: Layer, pelmet: PelmetOut, trade: Trade) -> ValanceCloth | None:
    """The cloth of a valance; None for a board, and for one that no workroom would sew.

    Parameters
    ----------
    room : Room
        For its convention of fullness, its unit and its tape.
    front : Layer
        Of whose cloth it is.
    pelmet : PelmetOut
    trade : Trade
    """
    if pelmet.kind != "valance":
        return None
    heading = row_of(trade.headings, HEADING, "heading")
    more = trade.allowances
    # A valance is short, and hemmed as short panels are, whatever the hem of the panels under it.
    side, hem = more["side-hem"].length_mm, more["hem-short"].length_mm
    wide, depth = pelmet.length_mm, pelmet.top_mm - pelmet.bottom_mm
    flat = flat_width(
        room.fullness_rule,
        wide,
        0.0,
        2 * pelmet.out_mm,
        heading.fullness_typical,
        2 * side,
        more["fixed-convention"].length_mm,
    )
    fabric, usable = front.fabric, usable_mm(room, front.fabric, trade)
    widths = widths_of(flat, usable)
    if widths > MOST_WIDTHS:
        return None
    cut = cut_of(front, depth, heading.turned_in_mm, hem, room.graduation_mm)
    step = more["sold-in" if room.unit == "in" else "sold-mm"].length_mm
    if fabric.railroaded and can_railroad(bolt_mm(fabric, trade), cut, one_way=runs_one_way(fabric, trade)):
        face = bolt_through(before_wash(flat + 2 * exact(side), front, trade), cut, fabric, step, trade)
        widths, hemmed = Fraction(0), float(flat)
    else:
        face = bolt_upright(widths, before_wash(cut, front, trade), fabric, usable, step)
        # Where every width counts less what selvedge and seam take, its seams are taken already.
        joins = 0 if room.fullness_rule == "narrower" else max(0, int(widths) - 1)
        hemmed = float(widths) * usable - 2 * side - joins * 2 * more["seam"].length_mm
    return ValanceCloth(
        heading=heading,
        finished_mm=wide + 2 * pelmet.out_mm,
        depth_mm=depth,
        flat_mm=float(flat),
        hemmed_mm=hemmed,
        turned_mm=heading.turned_in_mm,
        hem_mm=hem,
        side_hem_mm=side,
        widths=float(widths),
        face=face,
    )
