"""Her own shelf: bars that are cut first, and parts that need not be bought."""

from __future__ import annotations

from collections.abc import Mapping

from elevation.planning.cutting.model import Stock
from elevation.trade.model import SawRow, Trade
from elevation.trade.own import BAR
from elevation.trade.tables import row_of

CARRY = "carry"
"""The row of the allowances that says how long a piece may be to be carried home."""


def shelf_bars(section: str, trade: Trade) -> tuple[Stock, ...]:
    """The bars of one section that lie on the shelf, the shortest first.

    Parameters
    ----------
    section : str
        Row id.
    trade : Trade

    Returns
    -------
    tuple of Stock
        With counts: bars that are there cost nothing and are used first.
    """
    counts: dict[float, int] = {}
    for row in trade.shelf.values():
        if row.part == f"{BAR}:{section}" and row.count:
            counts[row.length_mm] = counts.get(row.length_mm, 0) + row.count
    return tuple(Stock(f"shelf-{length:g}", length, count, 0) for length, count in sorted(counts.items()))


def shelf_parts(trade: Trade) -> Mapping[str, float]:
    """How much of each part lies there, bars aside: pieces, or mm of what is sold by length."""
    found: dict[str, float] = {}
    for row in trade.shelf.values():
        if not row.part.startswith(f"{BAR}:"):
            found[row.part] = found.get(row.part, 0.0) + row.count * (row.length_mm or 1.0)
    return found


OWN_SAW = "my-saw"
"""Her own saw, where she chose or measured one; else the usual one is reckoned with."""
USUAL_SAW = "hacksaw"


def saw_of(trade: Trade) -> SawRow:
    """The saw that bars are cut with."""
    return trade.saws.get(OWN_SAW) or row_of(trade.saws, USUAL_SAW, "saw")


def carry_mm(trade: Trade) -> float | None:
    """The longest piece that she carries home; None where any length will do."""
    row = trade.allowances.get(CARRY)
    return row.length_mm if row is not None and row.length_mm > 0 else None
