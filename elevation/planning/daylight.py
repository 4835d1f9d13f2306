"""How much of the daylight a treatment keeps, piece by piece of the glass behind it.

Formulas. The glass of the covered openings is parted along the edges of all cloth. A piece of the area ``A`` lets through

    ``A * product over the panels before it of t ** n``

where ``t`` is the part of daylight that the panel's cloth passes laid flat (module ``cloth_light``; between two bounds
where only its body is known) and ``n`` how many thicknesses of it hang there on average: flat width over the width that it
covers.
A pelmet and a blind pass nothing. What is kept is the sum over all pieces over the whole glass: 1 for a bare window.

Sun and sky are left out, and so are frames, what the room throws back, and the slits beside and over the cloth: they are
told apart, in mm, because how much they let in depends on where one stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, prod, sqrt
from typing import Literal

from msgspec import Struct

from elevation.planning.cloth_light import is_chosen, passed_flat, passed_hung
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.setting_out.clipping import area_of, clipped
from elevation.setting_out.covers import WIDEST_MM, Cover, box, line_at, tied_covers
from elevation.setting_out.dress import cover_of
from elevation.setting_out.model import LayerOut, OpeningOut, PanelOut, Point, SetOut, Span, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM

Position = Literal["open", "closed", "drawn"]
POSITIONS: tuple[Position, ...] = ("open", "closed", "drawn")


class Piece(Struct, frozen=True, gc=False):
    """A piece of glass: its opening, outline, area, the least and the most of the daylight that passes it.

    ``is_bare``: nothing is before it.
    """

    opening: Ref
    outline: tuple[Point, ...]
    area_mm2: float
    passes: float
    passes_most: float
    is_bare: bool


class Slit(Struct, frozen=True, gc=False):
    """A way round closed cloth: where (``left``, ``right``, ``top``, ``centre``), how wide, and along what (wall mm).

    At the sides and the top ``width_mm`` is how far the cloth stands out from the wall, in the centre by how much two
    panels do not meet. ``share`` is what of the light that enters at the edge of the glass leaves the slit again (see
    ``passed_round``); ``beside`` is the stretch of the run that the glass takes up.
    """

    place: Literal["left", "right", "top", "centre"]
    width_mm: float
    at_mm: float
    run: Span
    share: float
    beside: Span


class Kept(Struct, frozen=True, gc=False):
    """What of the daylight is kept, 0 to 1: at least and at most; the same where all cloth before the glass is chosen."""

    least: float
    most: float


class Daylight(Struct, frozen=True):
    """What a treatment keeps of the daylight in each position.

    ``is_chosen`` False: some cloth is known by its body alone.
    """

    open: Kept
    closed: Kept
    drawn: Kept
    is_chosen: bool
    slits: tuple[Slit, ...]


class _Screen(Struct, frozen=True, gc=False):
    """Something before the glass, and what of the light it passes at least and at most."""

    cover: Cover
    passes: float
    passes_most: float


def daylight_of(room: Room, treatment: TreatmentOut, trade: Trade) -> Daylight:
    """What a treatment keeps of the daylight.

    Parameters
    ----------
    room : Room
        Says what its cloth is.
    treatment : TreatmentOut
    trade : Trade
    """
    kept = [_kept(pieces_of(room, treatment, trade, position)) for position in POSITIONS]
    return Daylight(kept[0], kept[1], kept[2], _all_chosen(room, treatment), slits_of(treatment))


def _all_chosen(room: Room, treatment: TreatmentOut) -> bool:
    return all(is_chosen(layer_of(room, layer.ref).fabric) for layer in treatment.layers if layer.panels)


def _kept(pieces: Sequence[Piece]) -> Kept:
    whole = sum(piece.area_mm2 for piece in pieces)
    if whole <= 0:
        return Kept(1.0, 1.0)
    least = sum(piece.area_mm2 * piece.passes for piece in pieces) / whole
    return Kept(least, sum(piece.area_mm2 * piece.passes_most for piece in pieces) / whole)


def pieces_of(room: Room, treatment: TreatmentOut, trade: Trade, position: Position) -> tuple[Piece, ...]:
    """All the glass of a treatment's openings in pieces, each behind the same panels all over."""
    screens = [*_dress(treatment, position)]
    for layer in treatment.layers:
        flat = passed_flat(layer_of(room, layer.ref).fabric, trade)
        for panel in layer.panels:
            screens += _cloth(panel, position, flat)
    return tuple(piece for opening in treatment.openings for piece in _parted(opening, screens))


def _dress(treatment: TreatmentOut, position: Position) -> list[_Screen]:
    """Pelmet and blinds: nothing passes them. A blind is let down only as it hangs just now."""
    found = []
    pelmet = treatment.pelmet
    if pelmet is not None:
        found.append(_Screen(cover_of(pelmet), 0.0, 0.0))
    for blind in treatment.blinds:
        low = blind.hem_mm if position == "drawn" else blind.bottom_mm
        found.append(_Screen(box(blind.left_mm, low, blind.right_mm, blind.top_mm), 0.0, 0.0))
    return found


def _cloth(panel: PanelOut, position: Position, flat: tuple[float, float]) -> list[_Screen]:
    span = {"open": panel.open, "closed": panel.closed, "drawn": panel.drawn}[position]
    least, most = (passed_hung(share, panel.flat_width_mm, span[1] - span[0]) for share in flat)
    if panel.tie is not None and (position == "drawn" or panel.stationary):
        return [_Screen(cover, least, most) for cover in tied_covers(panel, panel.tie)]
    if span[1] - span[0] <= TOUCH_MM:
        return []
    return [_Screen(box(span[0], panel.hem_low_mm, span[1], panel.top_mm), least, most)]


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
    spans = [(line_at(one.cover.low, middle), line_at(one.cover.high, middle), one) for one in screens]
    low, high = opening.glass_bottom_mm, opening.glass_top_mm
    edges = sorted({low, high, *(y for bottom, top, _ in spans for y in (bottom, top) if low < y < high)})
    found = []
    for bottom, top in pairwise(edges):
        outline = clipped(opening.glass, left, bottom, right, top)
        area = area_of(outline)
        if area <= TOUCH_MM:
            continue
        before = [one for a, b, one in spans if a < (bottom + top) / 2 < b]
        least = prod(one.passes for one in before)
        most = prod(one.passes_most for one in before)
        found.append(Piece(opening.ref, outline, area, least, most, not before))
    return found


def passed_round(width_mm: float, past_mm: float) -> float:
    """What of the light at the edge of the glass comes straight through the gap between wall and cloth, 0 to 1.

    ``sqrt(1 + (past / width)^2) - past / width``: how much of one mouth the other sees, for a gap between two long strips
    (crossed strings: H. C. Hottel, in any textbook of radiation; here wall and cloth throw nothing back).

    Parameters
    ----------
    width_mm : float
        How far the cloth stands out from the wall, more than 0.
    past_mm : float
        How far it goes past the glass.
    """
    ratio = max(past_mm, 0.0) / width_mm
    return sqrt(1.0 + ratio * ratio) - ratio


def slits_of(treatment: TreatmentOut) -> tuple[Slit, ...]:
    """Where light comes round the front layer when it is closed; none for cloth between the jambs or before no glass."""
    panes = [opening for opening in treatment.openings if len(opening.glass) > 2]
    if treatment.mount in INSIDE or not treatment.layers or not treatment.layers[0].panels or not panes:
        return ()
    layer = treatment.layers[0]
    panels = sorted(layer.panels, key=lambda panel: panel.closed[0])
    low, high = min(panel.hem_low_mm for panel in panels), max(panel.top_mm for panel in panels)
    across = min(pane.glass_left_mm for pane in panes), max(pane.glass_right_mm for pane in panes)
    up = min(pane.glass_bottom_mm for pane in panes), max(pane.glass_top_mm for pane in panes)
    left, right = panels[0].closed[0], panels[-1].closed[1]
    out = layer.support.projection_mm
    found: list[Slit] = []
    if out > TOUCH_MM:
        if not _is_shut(treatment, layer, 0):
            found.append(Slit("left", out, left, (low, high), passed_round(out, across[0] - left), up))
        if not _is_shut(treatment, layer, 1):
            found.append(Slit("right", out, right, (low, high), passed_round(out, right - across[1]), up))
        if treatment.mount == "wall" and treatment.pelmet is None:
            found.append(Slit("top", out, high, (left, right), passed_round(out, high - up[1]), across))
    for one, other in pairwise(panels):
        gap = other.closed[0] - one.closed[1]
        if gap > TOUCH_MM:
            found.append(Slit("centre", gap, (one.closed[1] + other.closed[0]) / 2, (low, high), 1.0, up))
    return tuple(found)


def _is_shut(treatment: TreatmentOut, layer: LayerOut, side: int) -> bool:
    return _returns(layer, side) or treatment.joined[side] is not None


def _returns(layer: LayerOut, side: int) -> bool:
    """Whether cloth or rod goes on to a wall at that end: back to this one, or to a socket in the one beside it."""
    return layer.wish.returns or layer.support.carried[side]


def kept_over_wall(room: Room, set_out: SetOut, trade: Trade, position: Position) -> tuple[Kept, tuple[Piece, ...]]:
    """What of a whole wall's daylight is kept, glass before which nothing hangs with it; and all the pieces."""
    pieces = [piece for treatment in set_out.treatments for piece in pieces_of(room, treatment, trade, position)]
    behind = {piece.opening for piece in pieces}
    pieces += [
        Piece(opening.ref, opening.glass, area_of(opening.glass), 1.0, 1.0, True)
        for opening in set_out.openings
        if opening.ref not in behind and len(opening.glass) > 2
    ]
    return _kept(pieces), tuple(pieces)
