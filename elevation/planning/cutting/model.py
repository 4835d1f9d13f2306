"""What is cut from what: pieces wanted, bars to be had, bars as they will be cut. Plain numbers in mm."""

from __future__ import annotations

from msgspec import Struct


class Piece(Struct, frozen=True, gc=False):
    """A piece that is wanted: ``key`` is the caller's name for it, ``length_mm`` as it will be cut."""

    key: str
    length_mm: float


class Stock(Struct, frozen=True, gc=False):
    """A kind of bar.

    Attributes
    ----------
    key : str
        The caller's name for it.
    length_mm : float
    count : int, optional
        How many there are (a shelf); None for a shop that has as many as are wanted.
    cost : int
        What one bar counts when bars are compared, in any whole unit: 1 each for the fewest bars, cents where prices are
        known. Bars with a ``count`` are there already: they cost nothing and are used first.
    """

    key: str
    length_mm: float
    count: int | None = None
    cost: int = 1


class Bar(Struct, frozen=True, gc=False):
    """A bar as it is cut: pieces in the order of the tape from the zero end, and what is left over (never negative).

    ``marks_mm`` are where the cuts end, from the bar's zero end: each piece ends at its mark, and the saw takes its kerf
    beyond it, so that nothing is measured from a cut edge.
    """

    stock: Stock
    pieces: tuple[Piece, ...]
    marks_mm: tuple[float, ...]
    offcut_mm: float


class CutPlan(Struct, frozen=True):
    """All bars.

    Attributes
    ----------
    bars : tuple of Bar
        Those from the shelf first; alike ones beside each other.
    too_long : tuple of Piece
        Pieces that no bar holds; they are in no bar.
    cost : int
        That of the bars that must be bought.
    bound : int
        No way of cutting costs less.
    """

    bars: tuple[Bar, ...]
    too_long: tuple[Piece, ...]
    cost: int
    bound: int

    @property
    def is_proven(self) -> bool:
        """Whether no other way of cutting needs less."""
        return self.cost <= self.bound


class Sizes(Struct, frozen=True):
    """A task in whole grains: ``widths`` (with kerf) of the sizes, falling, how many of each, what each kind of bar holds.

    A set of pieces fits a bar exactly if their widths add up to no more than the bar's room: the kerf of the last cut may
    lie beyond the end.
    """

    widths: tuple[int, ...]
    demands: tuple[int, ...]
    rooms: tuple[int, ...]
    counts: tuple[int | None, ...]
    costs: tuple[int, ...]


class Packed(Struct, frozen=True):
    """One bar in terms of ``Sizes``: the kind of bar, and how many pieces of each size it gives."""

    kind: int
    takes: tuple[int, ...]
