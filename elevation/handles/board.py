"""The ends of a mounting board, each as far beyond its end bracket as it is pulled."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.handles.context import (
    Context,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    make,
    place_of,
    right_end_mm,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.boards import with_board
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.setting_out.framing import FRAMING
from elevation.units import Length
from elevation.words import msg

LEFT, RIGHT = "board-left", "board-right"


def _hold(ref: Ref, side: str) -> HoldFigure:
    def write(room: Room, figure: Length, alone: bool) -> Room:
        board = layer_of(room, ref).board
        if board is None:  # pragma: no cover - the handle is made of it
            return room
        made = replace(board, left=figure) if side == LEFT else replace(board, right=figure)
        return with_board(room, ref, made if alone else replace(made, left=figure, right=figure))

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        board, own = dressed.landed.board, dressed.layer.board
        if board is None or own is None:
            continue
        middle = (board.bottom_mm + board.top_mm) / 2
        for axis, x, held, sign in ((LEFT, board.left_mm, own.left, -1), (RIGHT, board.right_mm, own.right, 1)):
            base = x - sign * held.mm
            span = (0.0, base) if axis == LEFT else (base, right_end_mm(context.set_out))
            place = place_of(dressed)
            if axis == LEFT:
                name = msg("left end of the mounting board, {where}", where=place)
            else:
                name = msg("right end of the mounting board, {where}", where=place)
            yield make(
                axis,
                dressed.landed.ref,
                (x, middle),
                "x",
                x,
                span,
                Scale(base, sign),
                held,
                _hold(dressed.landed.ref, axis),
                name,
                msg("beyond the end bracket"),
                low_why=msg("the wall's end") if axis == LEFT else msg("the end bracket"),
                high_why=msg("the end bracket") if axis == LEFT else msg("the wall's end"),
            )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    board, support = dressed.landed.board, dressed.landed.support
    if board is None:  # pragma: no cover - the handle is made of it
        return
    middle = (board.bottom_mm + board.top_mm) / 2
    end_mm = support.left_mm if handle.axis == LEFT else support.right_mm
    yield Sticking(handle.axis, handle.ref, end_mm, msg("as long as the rod"), PROPORTION)
    for zone in context.set_out.zones:
        if zone.kind in FRAMING and zone.kind != "header" and zone.bottom_mm <= middle <= zone.top_mm:
            value_mm = zone.left_mm if handle.axis == LEFT else zone.right_mm
            yield Sticking(handle.axis, handle.ref, value_mm, msg("just across the framing there"), NEIGHBOUR)


FAMILY = Family(frozenset({LEFT, RIGHT}), _handles, _places)
