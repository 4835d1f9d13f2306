"""Every piece of rod or track that is cut for rooms: how long, of what, where it goes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut, SetOut, SupportOut, TreatmentOut
from elevation.setting_out.support import bent_mm
from elevation.setting_out.tilt import run_of
from elevation.trade.counting import pieces_of
from elevation.trade.mitres import bend
from elevation.trade.model import SectionRow, Trade
from elevation.trade.tables import row_of
from elevation.units import length_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

_OFF_BEND_MM = 101.6
"""A joint stands 4 in off a bend where the stock is long enough (common practice, no source)."""


class Corner(Struct, frozen=True):
    """A bend round a corner of the room: where it begins from the piece's left end, how long it is, how far it turns."""

    at_mm: float
    arc_mm: float
    degrees: float
    radius_mm: float


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
    corners : tuple of Corner
        Where it is bent round corners of the room, from the left.
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
    corners: tuple[Corner, ...] = ()


def rod_pieces(rooms: Sequence[Dressed], trade: Trade) -> tuple[RodPiece, ...]:
    """The pieces of all rods and tracks, in the order of rooms, walls and windows; a tension rod is not cut."""
    found: list[RodPiece] = []
    for at, dressed in enumerate(rooms):
        for wall in dressed.walls:
            for laid in wall.treatments:
                for layer in laid.layers:
                    if layer.support.kind == "tension-rod" or is_bent_on(laid, layer):
                        continue
                    legs = bent_legs(dressed.walls, wall, laid, layer)
                    found.extend(_of_layer(dressed.room, at, wall, laid, layer, trade, len(found), legs))
    return tuple(found)


def _of_layer(
    room: Room,
    at: int,
    wall: SetOut,
    laid: TreatmentOut,
    layer: LayerOut,
    trade: Trade,
    before: int,
    legs: Sequence[tuple[SetOut, LayerOut]],
) -> Iterable[RodPiece]:
    rod = layer_of(room, layer.ref).rod
    section = row_of(trade.sections, rod.section, "section")
    stock_mm = rod.stock.mm if rod.stock else section.stock_mm
    lengths = piece_lengths(layer.support, trade)
    corners: tuple[Corner, ...] = ()
    if len(legs) > 1:
        lengths, corners = _bent_round(legs, stock_mm)
    outer = (layer.support.left_ends, legs[-1][1].support.right_ends)
    ends = [_bent(end, layer.support, trade) > 0 for end in outer]
    for number, length in enumerate(lengths, start=1):
        yield RodPiece(
            mark=mark_of(before + number - 1),
            room_name=room.name,
            wall_name=wall.wall_name or wall.wall,
            window=msg("{name}", name=laid.name) if laid.name else where(laid),
            ref=layer.ref,
            section=section,
            stock_mm=stock_mm,
            length_mm=length_of(length, room.unit, room.graduation_mm).mm,
            number=number,
            count=len(lengths),
            bends=(ends[0] and number == 1, ends[1] and number == len(lengths)),
            room=at,
            corners=_on_piece(corners, lengths, number),
        )


def is_bent_on(laid: TreatmentOut, layer: LayerOut) -> bool:
    """Whether a rod goes on in one piece from the wall to the left: it is cut with that leg."""
    return layer.support.tangents_mm[0] > 0 and laid.joined[0] is not None


def bent_legs(
    walls: Sequence[SetOut], wall: SetOut, laid: TreatmentOut, layer: LayerOut
) -> tuple[tuple[SetOut, LayerOut], ...]:
    """The legs that are one piece with the one that begins it, each with its wall; that one alone where it is not bent."""
    found = [(wall, layer)]
    while layer.support.tangents_mm[1] > 0 and laid.joined[1] is not None and len(found) <= len(walls):
        there = [
            (one, treatment, other)
            for one in walls
            for treatment in one.treatments
            if treatment.ref == laid.joined[1]
            for other in treatment.layers
            if other.ref[-1] == layer.ref[-1]
        ]
        if not there:
            break
        wall, laid, layer = there[0]
        found.append((wall, layer))
    return tuple(found)


def _bent_round(legs: Sequence[tuple[SetOut, LayerOut]], stock_mm: float) -> tuple[tuple[float, ...], tuple[Corner, ...]]:
    """The pieces of a rod bent round corners, as even as can be, and its bends; each leg counts half of an arc."""
    corners: list[Corner] = []
    total = 0.0
    for number, (wall, layer) in enumerate(legs):
        total += layer.support.cut_length_mm
        if number + 1 < len(legs):
            radius = layer.support.bend_mm or 0.0
            _, arc = bend(radius, wall.angles[1])
            corners.append(Corner(total - arc / 2, arc, abs(180.0 - wall.angles[1]), radius))
    count = pieces_of(total, stock_mm)
    lengths: tuple[float, ...] = (total,)
    for off_mm in (_OFF_BEND_MM, 0.0):
        joints = [_beside_bends(total * number / count, corners, off_mm) for number in range(1, count)]
        lengths = tuple(b - a for a, b in pairwise((0.0, *joints, total)))
        if max(lengths) <= stock_mm + TOUCH_MM:
            break
    return lengths, tuple(corners)


def _beside_bends(joint_mm: float, corners: Sequence[Corner], off_mm: float) -> float:
    """A joint so far off the bend that it would fall into, or come close to: only straights are joined."""
    for corner in corners:
        start, end = corner.at_mm - off_mm, corner.at_mm + corner.arc_mm + off_mm
        if start < joint_mm < end:
            return start if joint_mm - start < end - joint_mm else end
    return joint_mm


def _on_piece(corners: Sequence[Corner], lengths: Sequence[float], number: int) -> tuple[Corner, ...]:
    """The bends of one piece (from 1), measured from its own left end."""
    start = sum(lengths[: number - 1])
    end = start + lengths[number - 1]
    return tuple(
        replace(corner, at_mm=corner.at_mm - start)
        for corner in corners
        if start - TOUCH_MM <= corner.at_mm < end - TOUCH_MM
    )


def piece_lengths(support: SupportOut, trade: Trade) -> tuple[float, ...]:
    """The pieces of a rod from left to right, exactly; together its cut length."""
    places = (support.cut_left_mm, *support.splices_mm, support.cut_right_mm)
    run = run_of(support.tilt)
    lengths = [(b - a) * run for a, b in pairwise(places)]
    for at, end in ((0, support.left_ends), (-1, support.right_ends)):
        lengths[at] += _bent(end, support, trade)
    # Bent round a corner it takes a shorter way than its axis to the corner's point: that is less at the bent end.
    bent = sum(support.tangents_mm)
    if bent > 0:
        saved = sum(lengths) - support.cut_length_mm
        for at, tangent in zip((0, -1), support.tangents_mm, strict=True):
            lengths[at] -= saved * tangent / bent
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
