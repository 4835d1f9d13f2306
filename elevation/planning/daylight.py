"""How much of the daylight a treatment keeps, piece by piece of the glass behind it.

Formulas. The glass of the covered openings is parted along the edges of all cloth. A piece of the area ``A`` lets through

    ``A * product over the panels before it of t ** n``

where ``t`` is the part of daylight that the panel's cloth passes laid flat (face, lining and interlining multiplied, from
the table of cloths) and ``n`` how many thicknesses of it hang there on average: flat width over the width that it covers.
A pelmet and a blind pass nothing. What is kept is the sum over all pieces over the whole glass: 1 for a bare window.

That each thickness takes the same part again is Bouguer's law; light thrown back and forth between them is left out, and so
are sun and sky, frames, what the room throws back, and the slits beside and over the cloth: they are told apart, in mm,
because how much they let in depends on where one stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil
from typing import Literal

from msgspec import Struct

from elevation.room.find import layer_of
from elevation.room.model import Fabric, Ref, Room
from elevation.setting_out.clipping import area_of, clipped
from elevation.setting_out.covers import WIDEST_MM, Cover, box, line_at, tied_covers
from elevation.setting_out.model import LayerOut, OpeningOut, PanelOut, Point, SetOut, Span, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.units.tolerance import TOUCH_MM

Position = Literal["open", "closed", "drawn"]
POSITIONS: tuple[Position, ...] = ("open", "closed", "drawn")


class Piece(Struct, frozen=True, gc=False):
    """A piece of glass: its opening, outline, area, what of the daylight passes it; ``is_bare``: nothing is before it."""

    opening: Ref
    outline: tuple[Point, ...]
    area_mm2: float
    passes: float
    is_bare: bool


class Slit(Struct, frozen=True, gc=False):
    """A way round closed cloth: where (``left``, ``right``, ``top``, ``centre``), how wide, and along what (wall mm).

    At the sides and the top ``width_mm`` is how far the cloth stands out from the wall, in the centre by how much two
    panels do not meet.
    """

    place: Literal["left", "right", "top", "centre"]
    width_mm: float
    at_mm: float
    run: Span


class Daylight(Struct, frozen=True):
    """What a treatment keeps of the daylight in each position, 0 to 1; ``is_known`` False: some cloth's share is not known.

    Where it is not known the cloth counts as if it let nothing through: the least that is kept.
    """

    open: float
    closed: float
    drawn: float
    is_known: bool
    slits: tuple[Slit, ...]


class _Screen(Struct, frozen=True, gc=False):
    """Something before the glass, and what of the light it passes."""

    cover: Cover
    passes: float


def passed_flat(fabric: Fabric, trade: Trade) -> float | None:
    """The part of daylight that a made-up cloth passes laid flat; None where its face is not known by a row."""
    if fabric.row is None:
        return None
    share = 1.0
    for row_id in (fabric.row, fabric.lining, fabric.interlining):
        if row_id is not None:
            share *= row_of(trade.fabrics, row_id, "cloth").transmits
    return share


def passed_hung(flat_share: float, flat_mm: float, covered_mm: float) -> float:
    """What hanging cloth passes: its flat share once for each thickness that hangs there on average, at least one."""
    if covered_mm <= 0:
        return 1.0
    return float(flat_share ** max(flat_mm / covered_mm, 1.0))


def daylight_of(room: Room, treatment: TreatmentOut, trade: Trade) -> Daylight:
    """What a treatment keeps of the daylight.

    Parameters
    ----------
    room : Room
        Says what its cloth is.
    treatment : TreatmentOut
    trade : Trade
    """
    shares = [_kept(pieces_of(room, treatment, trade, position)) for position in POSITIONS]
    is_known = all(
        passed_flat(layer_of(room, layer.ref).fabric, trade) is not None for layer in treatment.layers if layer.panels
    )
    return Daylight(shares[0], shares[1], shares[2], is_known, slits_of(treatment))


def _kept(pieces: Sequence[Piece]) -> float:
    whole = sum(piece.area_mm2 for piece in pieces)
    return sum(piece.area_mm2 * piece.passes for piece in pieces) / whole if whole > 0 else 1.0


def pieces_of(room: Room, treatment: TreatmentOut, trade: Trade, position: Position) -> tuple[Piece, ...]:
    """All the glass of a treatment's openings in pieces, each behind the same panels all over."""
    screens = [*_dress(treatment, position)]
    for layer in treatment.layers:
        flat = passed_flat(layer_of(room, layer.ref).fabric, trade) or 0.0
        for panel in layer.panels:
            screens += _cloth(panel, position, flat)
    return tuple(piece for opening in treatment.openings for piece in _parted(opening, screens))


def _dress(treatment: TreatmentOut, position: Position) -> list[_Screen]:
    """Pelmet and blinds: nothing passes them. A blind is let down only as it hangs just now."""
    found = []
    pelmet = treatment.pelmet
    if pelmet is not None:
        found.append(_Screen(box(pelmet.left_mm, pelmet.bottom_mm, pelmet.right_mm, pelmet.top_mm), 0.0))
    for blind in treatment.blinds:
        low = blind.hem_mm if position == "drawn" else blind.bottom_mm
        found.append(_Screen(box(blind.left_mm, low, blind.right_mm, blind.top_mm), 0.0))
    return found


def _cloth(panel: PanelOut, position: Position, flat: float) -> list[_Screen]:
    span = {"open": panel.open, "closed": panel.closed, "drawn": panel.drawn}[position]
    passes = passed_hung(flat, panel.flat_width_mm, span[1] - span[0])
    if panel.tie is not None and (position == "drawn" or panel.stationary):
        return [_Screen(cover, passes) for cover in tied_covers(panel, panel.tie)]
    if span[1] - span[0] <= TOUCH_MM:
        return []
    return [_Screen(box(span[0], panel.hem_low_mm, span[1], panel.top_mm), passes)]


def _parted(opening: OpeningOut, screens: Sequence[_Screen]) -> list[Piece]:
    """The glass of one opening parted into columns, each column into pieces from the bottom up."""
    left, right = opening.glass_left_mm, opening.glass_right_mm
    near = [one for one in screens if one.cover.low[0][0] < right and one.cover.low[-1][0] > left]
    places = {left, right}
    for one in near:
        places.update(x for x, _ in (*one.cover.low, *one.cover.high) if left < x < right)
    found: list[Piece] = []
    for a, b in pairwise(sorted(places)):
        here = [one for one in near if one.cover.low[0][0] < (a + b) / 2 < one.cover.low[-1][0]]
        # Under a swept edge the column is narrow; under level ones it is as wide as it likes.
        count = 1 if all(_is_level(one.cover) for one in here) else max(1, ceil((b - a) / WIDEST_MM))
        for step in range(count):
            found += _column(opening, a + (b - a) * step / count, a + (b - a) * (step + 1) / count, here)
    return found


def _is_level(cover: Cover) -> bool:
    return all(len({y for _, y in line}) == 1 for line in (cover.low, cover.high))


def _column(opening: OpeningOut, left: float, right: float, screens: Sequence[_Screen]) -> list[Piece]:
    middle = (left + right) / 2
    spans = [(line_at(one.cover.low, middle), line_at(one.cover.high, middle), one.passes) for one in screens]
    low, high = opening.glass_bottom_mm, opening.glass_top_mm
    edges = sorted({low, high, *(y for bottom, top, _ in spans for y in (bottom, top) if low < y < high)})
    found = []
    for bottom, top in pairwise(edges):
        outline = clipped(opening.glass, left, bottom, right, top)
        area = area_of(outline)
        if area <= TOUCH_MM:
            continue
        before = [share for a, b, share in spans if a < (bottom + top) / 2 < b]
        passes = 1.0
        for share in before:
            passes *= share
        found.append(Piece(opening.ref, outline, area, passes, not before))
    return found


def slits_of(treatment: TreatmentOut) -> tuple[Slit, ...]:
    """Where light comes round the front layer when it is closed; none for cloth between the jambs."""
    if treatment.mount in INSIDE or not treatment.layers or not treatment.layers[0].panels:
        return ()
    layer = treatment.layers[0]
    panels = sorted(layer.panels, key=lambda panel: panel.closed[0])
    low, high = min(panel.hem_low_mm for panel in panels), max(panel.top_mm for panel in panels)
    out = layer.support.projection_mm
    found: list[Slit] = []
    for place, x, is_shut in (
        ("left", panels[0].closed[0], _returns(layer, 0) or treatment.joined[0] is not None),
        ("right", panels[-1].closed[1], _returns(layer, 1) or treatment.joined[1] is not None),
    ):
        if not is_shut and out > TOUCH_MM:
            found.append(Slit("left" if place == "left" else "right", out, x, (low, high)))
    if treatment.mount == "wall" and treatment.pelmet is None and out > TOUCH_MM:
        found.append(Slit("top", out, high, (panels[0].closed[0], panels[-1].closed[1])))
    for one, other in pairwise(panels):
        gap = other.closed[0] - one.closed[1]
        if gap > TOUCH_MM:
            found.append(Slit("centre", gap, (one.closed[1] + other.closed[0]) / 2, (low, high)))
    return tuple(found)


def _returns(layer: LayerOut, side: int) -> bool:
    """Whether cloth or rod goes on to a wall at that end: back to this one, or to a socket in the one beside it."""
    return layer.wish.returns or layer.support.carried[side]


def kept_over_wall(room: Room, set_out: SetOut, trade: Trade, position: Position) -> tuple[float, tuple[Piece, ...]]:
    """What of a whole wall's daylight is kept, glass before which nothing hangs with it; and all the pieces."""
    pieces = [piece for treatment in set_out.treatments for piece in pieces_of(room, treatment, trade, position)]
    behind = {piece.opening for piece in pieces}
    pieces += [
        Piece(opening.ref, opening.glass, area_of(opening.glass), 1.0, True)
        for opening in set_out.openings
        if opening.ref not in behind and len(opening.glass) > 2
    ]
    return _kept(pieces), tuple(pieces)
