"""Ready-made panels solved both ways: the best length for this height, and the height for this length.

All lengths hang from the top of the cloth; heights are over one datum. Geometry: what is longer hangs lower by as much.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from elevation.trade.model import ReadyMadeRow


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
