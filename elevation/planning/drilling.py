"""Where holes go: each bracket's screws, and its place from two sides so that a sum check finds a wrong figure."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.findings.naming import opening_name
from elevation.room.model import Ref
from elevation.setting_out.model import BracketOut, LayerOut, OpeningOut, SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import BracketRow, Trade
from elevation.trade.tables import row_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg


class Sides(Struct, frozen=True):
    """A place between two datums: what lies on either side, and the whole between them (None where that is not measured).

    ``first`` and ``second`` add up to ``whole``: the check before a hole is drilled.
    """

    first: Message
    first_mm: float
    second: Message
    second_mm: float | None
    whole: Message
    whole_mm: float | None


class DrillPlace(Struct, frozen=True):
    """One bracket to be fixed.

    Attributes
    ----------
    ref : Ref
    mark : str
        1, 2, 3 ... from the left along the wall.
    kit : BracketRow
    on : str
        ``wall``, ``ceiling`` or ``sash``.
    x_mm, height_mm : float
        Its middle, and the rod's centre line there, in wall coordinates.
    along, upright : Sides
        Its middle between the wall's ends (or jambs), the centre line between floor and ceiling (or sill and head).
    beside : tuple of (Message, float) or None
        The nearest edge of casing (or opening) of what it hangs before: its name and how far from the middle.
    edge_mm : float or None
        Where that edge is, from the wall's left end: with the middle's own place it finds either figure wrong.
    out : tuple of (Message, float) or None
        How far from the wall's face the rod's centre line is, where the bracket does not say it by itself.
    holes : tuple of (float, float)
        Screws in wall coordinates; those of a ceiling bracket along the wall and out from its face.
    """

    ref: Ref
    mark: str
    kit: BracketRow
    on: str
    x_mm: float
    height_mm: float
    along: Sides
    upright: Sides
    beside: tuple[Message, float] | None
    edge_mm: float | None
    out: tuple[Message, float] | None
    holes: tuple[tuple[float, float], ...]


def drill_places(wall: SetOut, laid: TreatmentOut, trade: Trade) -> tuple[DrillPlace, ...]:
    """Every bracket of a treatment that has screws of its own, numbered from the left; front layers first.

    Parameters
    ----------
    wall : SetOut
    laid : TreatmentOut
        One of its treatments.
    trade : Trade

    Returns
    -------
    tuple of DrillPlace
        Empty for a tension rod, and for a rod that sockets alone carry.
    """
    found: list[DrillPlace] = []
    for layer in laid.layers:
        for bracket in layer.brackets:
            kit = row_of(trade.brackets, bracket.kit, "bracket kit")
            if kit.holes_mm:
                found.append(_place(wall, laid, layer, bracket, kit, str(len(found) + 1)))
    return tuple(found)


def _place(
    wall: SetOut, laid: TreatmentOut, layer: LayerOut, bracket: BracketOut, kit: BracketRow, mark: str
) -> DrillPlace:
    x, height = bracket.x_mm, bracket.height_mm
    projection = layer.support.projection_mm
    if kit.mount == "ceiling":
        holes = tuple((x + hole, projection) for hole in kit.holes_mm)
    else:
        holes = tuple((x, height + hole) for hole in kit.holes_mm)
    beside, edge = _beside(laid, x)
    inside = inside_of(laid, x) if laid.mount in ("reveal", "sash") else None
    return DrillPlace(
        ref=bracket.ref,
        mark=mark,
        kit=kit,
        on=kit.mount,
        x_mm=x,
        height_mm=height,
        along=from_ends(wall, x) if inside is None else between_jambs(inside, x),
        upright=over_floor(wall, x, height) if inside is None else in_opening(inside, height),
        beside=None if inside is not None else beside,
        edge_mm=None if inside is not None else edge,
        out=_out(laid, layer),
        holes=holes,
    )


def from_ends(wall: SetOut, x: float) -> Sides:
    """A place between the ends of its wall."""
    return Sides(
        msg("from the wall's left end"),
        x,
        msg("from the wall's right end"),
        wall.width_mm - x if wall.known_width else None,
        msg("wall width"),
        wall.width_mm if wall.known_width else None,
    )


def over_floor(wall: SetOut, x: float, height: float) -> Sides:
    """A height between floor and ceiling, as they are there."""
    floor, ceiling = height_at(wall.floor, x), height_at(wall.ceiling, x)
    known = wall.ceiling.known
    return Sides(
        msg("over the floor"),
        height - floor,
        msg("under the ceiling"),
        ceiling - height if known else None,
        msg("floor to ceiling there"),
        ceiling - floor if known else None,
    )


def inside_of(laid: TreatmentOut, x: float) -> OpeningOut:
    """The opening that a bracket inside one stands in; the nearest where figures contradict each other."""
    return min(laid.openings, key=lambda one: max(one.left_mm - x, x - one.right_mm, 0.0))


def between_jambs(opening: OpeningOut, x: float) -> Sides:
    """A place between the jambs of an opening."""
    return Sides(
        msg("from the left jamb"),
        x - opening.left_mm,
        msg("from the right jamb"),
        opening.right_mm - x,
        msg("jamb to jamb"),
        opening.right_mm - opening.left_mm,
    )


def in_opening(opening: OpeningOut, height: float) -> Sides:
    """A height between sill and head of an opening."""
    return Sides(
        msg("over the sill"),
        height - opening.bottom_mm,
        msg("under the head"),
        opening.top_mm - height,
        msg("sill to head"),
        opening.top_mm - opening.bottom_mm,
    )


def _beside(laid: TreatmentOut, x: float) -> tuple[tuple[Message, float] | None, float | None]:
    """The nearest edge, how far from it the middle is, and where it is itself."""
    edges: list[tuple[float, Message]] = []
    for opening in laid.openings:
        name = opening_name(opening)
        trim = opening.casing_mm > TOUCH_MM
        left = opening.left_mm - opening.casing_mm
        right = opening.right_mm + opening.casing_mm
        edges.append((left, _edge(name, trim=trim, is_left=True)))
        edges.append((right, _edge(name, trim=trim, is_left=False)))
    if not edges:  # pragma: no cover - a treatment that covers nothing is not set out
        return None, None
    at, name = min(edges, key=lambda edge: abs(edge[0] - x))
    if x < at:
        return (msg("left of {edge}", edge=name), at - x), at
    return (msg("right of {edge}", edge=name), x - at), at


def _edge(name: Message, *, trim: bool, is_left: bool) -> Message:
    if trim:
        text = msg("the casing's left edge, {opening}") if is_left else msg("the casing's right edge, {opening}")
    else:
        text = msg("the left jamb, {opening}") if is_left else msg("the right jamb, {opening}")
    return Message(text.template, {"opening": name})


def _out(laid: TreatmentOut, layer: LayerOut) -> tuple[Message, float] | None:
    support = layer.support
    if laid.mount == "ceiling":
        return msg("out from the wall's face"), support.projection_mm
    if laid.mount in ("reveal", "sash") and support.from_sash_mm is not None:
        return msg("out from the sash"), support.from_sash_mm
    return None


def mirrored(places: Sequence[DrillPlace]) -> tuple[tuple[DrillPlace, ...], ...]:
    """Places that one printed sheet serves: the outermost two of a rod, by turning the print over, and each inner one.

    Two serve each other where their kits are the same and neither was read to hang at another height than planned.
    """
    rods: dict[Ref, list[DrillPlace]] = {}
    for place in places:
        rods.setdefault(place.ref[:-1], []).append(place)
    found: list[tuple[DrillPlace, ...]] = []
    for rod in rods.values():
        first, last = rod[0], rod[-1]
        if len(rod) > 1 and first.kit.id == last.kit.id:
            found.append((first, last))
            found.extend((one,) for one in rod[1:-1])
        else:
            found.extend((one,) for one in rod)
    return tuple(found)
