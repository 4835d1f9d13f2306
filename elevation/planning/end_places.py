"""Where ends that carry a rod are fixed: sockets in side walls or jambs, tubes bent back to the wall."""

from __future__ import annotations

from msgspec import Struct

from elevation.planning.drilling import Sides, between_jambs, from_ends, in_opening, inside_of, over_floor
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.setting_out.tilt import axis_at
from elevation.trade.model import Trade
from elevation.words import Message, msg


class EndPlace(Struct, frozen=True):
    """An end that carries its rod.

    Attributes
    ----------
    name : Message
    is_socket : bool
        Else a tube that is bent back to the wall.
    upright : Sides
        The rod's axis between floor and ceiling, or sill and head.
    along : Sides or None
        A bent tube's middle between the wall's ends, or the jambs; None for a socket: it stands on the side wall.
    out : tuple of (Message, float) or None
        A socket's middle on its side wall: from the wall's face or from the sash, and how far.
    holes_mm : tuple of float
        Screws over (minus: under) the axis.
    """

    name: Message
    is_socket: bool
    upright: Sides
    along: Sides | None
    out: tuple[Message, float] | None
    holes_mm: tuple[float, ...]


def end_places(wall: SetOut, laid: TreatmentOut, trade: Trade) -> tuple[EndPlace, ...]:
    """The ends that carry rods of a treatment, front layers first, left before right.

    Parameters
    ----------
    wall : SetOut
    laid : TreatmentOut
        One of its treatments.
    trade : Trade
    """
    return tuple(
        _place(wall, laid, layer, side, trade)
        for layer in laid.layers
        for side in (0, 1)
        if layer.support.carried[side] and (layer.support.left_ends, layer.support.right_ends)[side] in trade.ends
    )


def _place(wall: SetOut, laid: TreatmentOut, layer: LayerOut, side: int, trade: Trade) -> EndPlace:
    support = layer.support
    x = (support.left_mm, support.right_mm)[side]
    row = trade.ends[(support.left_ends, support.right_ends)[side]]
    height = axis_at(support, x)
    is_inside = laid.mount in ("reveal", "sash")
    opening = inside_of(laid, x)
    is_socket = row.shape == "socket"
    if is_socket:
        name = msg("left socket") if side == 0 else msg("right socket")
    else:
        name = msg("left end") if side == 0 else msg("right end")
    if len(laid.layers) > 1:
        name = msg("{end}, rod {number} from the front", end=name, number=laid.layers.index(layer) + 1)
    along = out = None
    if is_socket:
        if is_inside and support.from_sash_mm is not None:
            out = (msg("out from the sash"), support.from_sash_mm)
        elif support.projection_mm < 0:
            out = (msg("in from the wall's face"), -support.projection_mm)
        else:
            out = (msg("out from the wall's face"), support.projection_mm)
    else:
        along = between_jambs(opening, x) if is_inside else from_ends(wall, x)
    upright = in_opening(opening, height) if is_inside else over_floor(wall, x, height)
    return EndPlace(name, is_socket, upright, along, out, row.holes_mm)
