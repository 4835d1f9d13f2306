"""What the view of schemes shows: compared and drawn, on the worker."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from elevation.planning.comparing import Comparison, compare
from elevation.room.model import Room
from elevation.sheet.drawing import View, draw_wall
from elevation.trade.model import Trade
from elevation.window.schemes_picture import Drawn
from elevation.window.texts import tr


class Made(Struct, frozen=True):
    """What the worker made."""

    compared: Comparison
    drawn: tuple[Drawn, ...]


def made_of(
    room: Room, wall: str, ids: Sequence[str | None], trade: Trade, view: View, is_cancelled: Callable[[], bool]
) -> Made:
    """The schemes of a wall compared and drawn.

    Raises
    ------
    NoSuch
        The wall has no such scheme.
    """
    compared = compare(room, wall, ids, trade, is_cancelled=is_cancelled)
    drawn = tuple(Drawn(tr(one.name), one.set_out, draw_wall(one.set_out, trade, view)) for one in compared.schemes)
    return Made(compared, drawn)
