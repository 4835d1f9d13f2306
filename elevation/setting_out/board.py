"""A mounting board behind the brackets: where it lands, and how it holds the rod farther out."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.room.model import Board, Layer
from elevation.setting_out.model import BoardOut, BracketOut
from elevation.units import Length


def out_by(layer: Layer, board: Board) -> Layer:
    """The layer with its rod as far from the wall's face as the board puts it: brackets stand on the board."""
    projection = layer.rod.projection
    return replace(layer, rod=replace(layer.rod, projection=Length(projection.mm + board.thickness.mm, projection.text)))


def board_of(board: Board, brackets: Sequence[BracketOut]) -> BoardOut | None:
    """The board's face behind the brackets' plates; None where there are no brackets to carry.

    Parameters
    ----------
    board : Board
    brackets : sequence of BracketOut
        Left to right.
    """
    if not brackets:
        return None
    low = min(bracket.plate[1] for bracket in brackets)
    high = max(bracket.plate[3] for bracket in brackets)
    middle, half = (low + high) / 2, board.height.mm / 2
    left = min(bracket.x_mm for bracket in brackets) - board.left.mm
    right = max(bracket.x_mm for bracket in brackets) + board.right.mm
    return BoardOut(left, middle - half, right, middle + half, board.thickness.mm)
