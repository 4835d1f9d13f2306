"""What of the daylight passes cloth: made up and laid flat, known or between what its kind passes, and hung in folds.

That each thickness takes the same part again is Bouguer's law; light thrown back and forth between them is left out.
"""

from __future__ import annotations

from collections.abc import Iterable

from elevation.room.model import Fabric
from elevation.trade.model import Trade
from elevation.trade.tables import row_of

_BEHIND: dict[str, tuple[str, ...]] = {"lined": ("lining",), "interlined": ("lining", "interlining")}
"""What hangs behind the face in a body, by the kinds of the table of cloths."""


def is_chosen(fabric: Fabric) -> bool:
    """Whether the face is a row of the table of cloths, so that its share is known."""
    return fabric.row is not None


def passed_flat(fabric: Fabric, trade: Trade) -> tuple[float, float]:
    """The least and the greatest part of daylight that a made-up cloth passes laid flat, each 0 to 1.

    The shares of face, lining and interlining multiplied. Both are the same where the face is a row of the table. Where
    only its body is known it is any face of that body: the densest for the least, the thinnest for the greatest; where the
    table has no face of it (a body that means a lining) any face with any such lining.
    """
    known = [row_id for row_id in (fabric.row, fabric.lining, fabric.interlining) if row_id is not None]
    rows = [row_of(trade.fabrics, row_id, "cloth") for row_id in known]
    low = high = 1.0
    for row in rows:
        low, high = low * row.transmits, high * row.transmits
    if is_chosen(fabric):
        return low, high
    faces = [row for row in trade.fabrics.values() if row.kind == "face"]
    unknown = [[row.transmits for row in faces if row.body == fabric.body] or [row.transmits for row in faces]]
    unknown += [
        [row.transmits for row in trade.fabrics.values() if row.kind == kind]
        for kind in _BEHIND.get(fabric.body, ())
        if all(row.kind != kind for row in rows)
    ]
    for shares in unknown:
        least, most = _ends(shares)
        low, high = low * least, high * most
    return low, high


def _ends(shares: Iterable[float]) -> tuple[float, float]:
    ordered = sorted(shares)
    return (ordered[0], ordered[-1]) if ordered else (0.0, 1.0)


def passed_hung(flat_share: float, flat_mm: float, covered_mm: float) -> float:
    """What hanging cloth passes: its flat share once for each thickness that hangs there on average, at least one."""
    if covered_mm <= 0:
        return 1.0
    return float(flat_share ** max(flat_mm / covered_mm, 1.0))
