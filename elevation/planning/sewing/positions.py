"""Where pleats, rings, eyelets, tabs and hooks go along a heading, from the leading edge."""

from __future__ import annotations

from elevation.planning.sewing.model import MarkKind, Marks
from elevation.trade.model import HeadingRow, Trade
from elevation.trade.pleats import Pleats

_KINDS: dict[str, MarkKind] = {
    "rings": "rings",
    "eyelets": "eyelets",
    "tabs": "tabs",
    "back-tabs": "back-tabs",
    "pocket": "pocket",
    "pencil": "hooks",
    "wave": "hooks",
}


def marks_of(
    heading: HeadingRow, flat_mm: float, finished_mm: float, count: int, pleats: Pleats | None, trade: Trade
) -> Marks:
    """The marks of one piece.

    Parameters
    ----------
    heading : HeadingRow
    flat_mm, finished_mm : float
        Of the hemmed piece: laid flat, and as its heading is finished.
    count : int
        Rings, eyelets, tabs or hooks of it.
    pleats : Pleats or None
    trade : Trade
        For how far eyelets and tabs stand from the edges.

    Returns
    -------
    Marks
        Pleats have a hook each and one at either edge (a retailer's guide counts 7 hooks for 5 pleats:
        bedbathstore.com/pinch.html).
    """
    if heading.is_pleated:
        if pleats is None:
            return Marks("pleats")
        return Marks("pleats", pleats=pleats, hooks=(0.0, *pleats.at_mm, finished_mm))
    kind = _KINDS.get(heading.drawing, "hooks")
    if kind == "pocket":
        return Marks(kind)
    inset = inset_of(heading, trade)
    return Marks(kind, spread(flat_mm, count, inset))


def inset_of(heading: HeadingRow, trade: Trade) -> float:
    """How far in from the edge the first and the last one stand: rings and hooks at the very edge, others on cloth."""
    if heading.drawing == "eyelets":
        return trade.allowances["eyelet-edge"].length_mm
    if heading.drawing in ("tabs", "back-tabs"):
        return trade.allowances["tab-wide"].length_mm / 2
    return 0.0


def spread(flat_mm: float, count: int, inset_mm: float) -> tuple[float, ...]:
    """``count`` places evenly from one inset to the other; one alone stands in the middle."""
    if count < 1:
        return ()
    if count == 1:
        return (flat_mm / 2,)
    inset = min(inset_mm, flat_mm / 2)
    apart = (flat_mm - 2 * inset) / (count - 1)
    return tuple(inset + index * apart for index in range(count))
