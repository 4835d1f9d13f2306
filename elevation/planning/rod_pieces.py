"""Every piece of rod or track that is cut for rooms: how long, of what, where it goes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut, SetOut, SupportOut, TreatmentOut
from elevation.setting_out.support import bent_mm
from elevation.setting_out.tilt import run_of
from elevation.trade.model import SectionRow, Trade
from elevation.trade.tables import row_of
from elevation.units import length_of
from elevation.words import Message, msg


class RodPiece(Struct, frozen=True):
    """A piece to be cut.

    Attributes
    ----------
    mark : str
        What is written on it: A, B ... AA.
    room_name, wall_name : str
    window : Message
        The treatment: its openings or its own name.
    ref : Ref
        The layer.
    section : SectionRow
    stock_mm : float
        The longest piece of it at hand or to be had.
    length_mm : float
        As cut, on the room's graduation.
    number, count : int
        Which of how many pieces of that rod, from the left.
    bends : tuple of bool
        Whether its left and right end is bent back to the wall.
    room : int
        The number of its room, from 0.
    """

    mark: str
    room_name: str
    wall_name: str
    window: Message
    ref: Ref
    section: SectionRow
    stock_mm: float
    length_mm: float
    number: int
    count: int
    bends: tuple[bool, bool]
    room: int = 0


def rod_pieces(rooms: Sequence[Dressed], trade: Trade) -> tuple[RodPiece, ...]:
    """The pieces of all rods and tracks, in the order of rooms, walls and windows; a tension rod is not cut."""
    found: list[RodPiece] = []
    for at, dressed in enumerate(rooms):
        for wall in dressed.walls:
            for laid in wall.treatments:
                for layer in laid.layers:
                    if layer.support.kind != "tension-rod":
                        found.extend(_of_layer(dressed.room, at, wall, laid, layer, trade, len(found)))
    return tuple(found)


def _of_layer(
    room: Room, at: int, wall: SetOut, laid: TreatmentOut, layer: LayerOut, trade: Trade, before: int
) -> Iterable[RodPiece]:
    rod = layer_of(room, layer.ref).rod
    section = row_of(trade.sections, rod.section, "section")
    lengths = piece_lengths(layer.support, trade)
    ends = [_bent(end, layer.support, trade) > 0 for end in (layer.support.left_ends, layer.support.right_ends)]
    for number, length in enumerate(lengths, start=1):
        yield RodPiece(
            mark=mark_of(before + number - 1),
            room_name=room.name,
            wall_name=wall.wall_name or wall.wall,
            window=msg("{name}", name=laid.name) if laid.name else where(laid),
            ref=layer.ref,
            section=section,
            stock_mm=rod.stock.mm if rod.stock else section.stock_mm,
            length_mm=length_of(length, room.unit, room.graduation_mm).mm,
            number=number,
            count=len(lengths),
            bends=(ends[0] and number == 1, ends[1] and number == len(lengths)),
            room=at,
        )


def piece_lengths(support: SupportOut, trade: Trade) -> tuple[float, ...]:
    """The pieces of a rod from left to right, exactly; together its cut length."""
    places = (support.cut_left_mm, *support.splices_mm, support.cut_right_mm)
    run = run_of(support.tilt)
    lengths = [(b - a) * run for a, b in pairwise(places)]
    for at, end in ((0, support.left_ends), (-1, support.right_ends)):
        lengths[at] += _bent(end, support, trade)
    return tuple(lengths)


def _bent(end: str, support: SupportOut, trade: Trade) -> float:
    # A rod that goes on round a corner ends in a joint, which is no row of the table and takes no tube.
    row = trade.ends.get(end)
    return 0.0 if row is None else bent_mm(row, support.projection_mm)


def mark_of(number: int) -> str:
    """The letter of a piece: A to Z, then AA, AB and so on."""
    letters = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
