"""Putting a mounting board behind the brackets of a layer, in a size that is sold."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.room.model import Board, Layer, Ref, Room
from elevation.units import Length, length_of

# Height and thickness. Nominal 1x4, 1x6, 1x8: PS 20 actual sizes; mm sizes are common practice, no source.
_INCH_SIZES = ((88.9, "3 1/2 in"), (139.7, "5 1/2 in"), (184.15, "7 1/4 in"))
_MM_SIZES = ((90.0, "90 mm"), (120.0, "120 mm"), (140.0, "140 mm"), (180.0, "180 mm"))


def usual_board(room: Room, plates_mm: float, left_mm: float, right_mm: float) -> Board:
    """A board that carries plates ``plates_mm`` high and reaches that far beyond the end brackets' centres.

    Parameters
    ----------
    room : Room
        Says in which unit boards are bought.
    plates_mm : float
        From the lowest edge of a plate to the highest.
    left_mm, right_mm : float
    """
    sizes = _INCH_SIZES if room.unit == "in" else _MM_SIZES
    height = next((size for size in sizes if size[0] >= plates_mm), sizes[-1])
    thick = Length(19.05, "3/4 in") if room.unit == "in" else Length(20.0, "20 mm")
    left, right = (length_of(mm, room.unit, room.graduation_mm) for mm in (left_mm, right_mm))
    return Board(left, right, Length(*height), thick)


def with_board(room: Room, ref: Ref, board: Board | None) -> Room:
    """A room in which the layer at ``ref`` has that board, or none.

    Raises
    ------
    NoSuch
        There is no such layer.
    """

    def put(layer: Layer) -> Layer:
        return layer if layer.board == board else replace(layer, board=board)

    return edit_at(room, ref[:4], put)
