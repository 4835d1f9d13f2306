"""What a panel weighs: from a scale, from the weight of its cloth, or from what cloth of its body usually weighs."""

from __future__ import annotations

from msgspec import Struct

from elevation.trade.model import BodyRow, FabricRow
from elevation.words import Message, msg


class Weight(Struct, frozen=True, gc=False):
    """A mass in kg and what it rests on."""

    kg: float
    basis: Message


class Cloth(Struct, frozen=True, gc=False):
    """What a square metre of a panel weighs in grams, all its layers together, and what that rests on."""

    grams: float
    basis: Message


def cloth_of(
    body: BodyRow,
    face: FabricRow | None = None,
    typed_grams: float | None = None,
    lining: FabricRow | None = None,
    interlining: FabricRow | None = None,
) -> Cloth:
    """What a square metre of made-up cloth weighs.

    Parameters
    ----------
    body : BodyRow
        Its usual weight, lining included, stands in where nothing is known of the face cloth.
    face, lining, interlining : FabricRow or None
    typed_grams : float or None
        Of the face cloth; wins over its row.

    Returns
    -------
    Cloth
    """
    behind = sum(row.grams for row in (lining, interlining) if row is not None)
    if typed_grams is not None:
        return Cloth(typed_grams + behind, _TYPED)
    if face is not None:
        return Cloth(face.grams + behind, _ROW)
    # The usual weight of a body has its lining in it; linings that are named are heavier only where they say so.
    return Cloth(max(body.grams, behind), _BODY)


def cut_area(flat_mm: float, finished_mm: float, allowance_mm: float) -> float:
    """Cloth in a panel in square metres: flat width by the length it is cut to, so that hems and heading weigh too."""
    return flat_mm * (finished_mm + allowance_mm) / 1e6


def weight_of(
    cloth: Cloth, flat_mm: float, finished_mm: float | None, allowance_mm: float, count: int, piece_kg: float | None
) -> Weight | None:
    """What a panel weighs.

    Parameters
    ----------
    cloth : Cloth
    flat_mm : float
        Of all its pieces together.
    finished_mm : float or None
        Its finished length; None: not known.
    allowance_mm : float
        What is turned in at heading and hem.
    count : int
        Pieces.
    piece_kg : float or None
        One piece on a scale; it wins.

    Returns
    -------
    Weight or None
        None while neither weight nor length is known.
    """
    if piece_kg is not None:
        return Weight(piece_kg * count, _SCALE)
    if finished_mm is None:
        return None
    return Weight(cut_area(flat_mm, finished_mm, allowance_mm) * cloth.grams / 1e3, cloth.basis)


_SCALE = msg("weighed on a scale")
_TYPED = msg("from the typed weight of its cloth, hems and heading with it")
_ROW = msg("from the table's weight of its cloth, hems and heading with it")
_BODY = msg("about: what cloth of its body usually weighs, hems and heading with it; weigh a panel and type it")
