"""Ready-made panels solved both ways: the best length for this height, and the height for this length; and the widths.

All lengths hang from the top of the cloth; heights are over one datum. Geometry: what is longer hangs lower by as much.
Fullness is the flat width of all pieces over what they cover.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from msgspec import Struct

from elevation.trade.model import ReadyMadeRow, ReadyWidthRow
from elevation.units.tolerance import RELATIVE


class Fit(Struct, frozen=True, gc=False):
    """A ready-made length at one place, in mm.

    ``over_mm`` is how much longer it is than the length wished (negative: shorter); the rod would have to hang that much
    higher for it to hang as wished, its centre at ``rod_mm``.
    """

    row: ReadyMadeRow
    over_mm: float
    rod_mm: float


def fits(rows: Iterable[ReadyMadeRow], market: str, wished_mm: float, rod_mm: float) -> tuple[Fit, ...]:
    """Every length of a market, shortest first, where ``wished_mm`` would hang as wished from a rod at ``rod_mm``."""
    found = (row for row in rows if row.market == market)
    return tuple(
        Fit(row, row.length_mm - wished_mm, rod_mm + row.length_mm - wished_mm)
        for row in sorted(found, key=lambda row: row.length_mm)
    )


def best(found: tuple[Fit, ...], slack_mm: float) -> Fit | None:
    """The longest that hangs no more than ``slack_mm`` lower than wished; None where all are too long."""
    return max((fit for fit in found if fit.over_mm <= slack_mm), key=lambda fit: fit.over_mm, default=None)


def next_longer(found: tuple[Fit, ...], than: Fit | None) -> Fit | None:
    """The shortest that is longer than ``than`` (None: of all)."""
    longer = (fit for fit in found if than is None or fit.row.length_mm > than.row.length_mm)
    return min(longer, key=lambda fit: fit.row.length_mm, default=None)


class WidthFit(Struct, frozen=True, gc=False):
    """Ready-made pieces of one width hung side by side as one panel: how many, and the fullness that they give."""

    row: ReadyWidthRow
    count: int
    fullness: float


def width_fits(rows: Iterable[ReadyWidthRow], market: str, covers_mm: float, low: float) -> tuple[WidthFit, ...]:
    """The fewest pieces of every width of a market, narrowest first, that give at least fullness ``low``.

    Parameters
    ----------
    rows : iterable of ReadyWidthRow
    market : str
        ``in`` or ``mm``.
    covers_mm : float
        Along the rod, with what returns to the wall; nothing fits where that is not above 0.
    low : float
        Least fullness of the heading, above 0.
    """
    if covers_mm <= 0:
        return ()
    found = []
    for row in sorted((row for row in rows if row.market == market), key=lambda row: row.width_mm):
        # Two pieces that reach the fullness exactly are not made three by the last bit of a quotient.
        count = max(1, ceil(low * covers_mm / row.width_mm * (1 - RELATIVE)))
        found.append(WidthFit(row, count, count * row.width_mm / covers_mm))
    return tuple(found)


def best_width(found: tuple[WidthFit, ...], wished: float, high: float) -> WidthFit | None:
    """The one whose fullness is nearest the wished one and not over ``high``; of equals the fewest pieces."""
    inside = (fit for fit in found if fit.fullness <= high * (1 + RELATIVE))
    return min(inside, key=lambda fit: (round(abs(fit.fullness - wished), 9), fit.count), default=None)
