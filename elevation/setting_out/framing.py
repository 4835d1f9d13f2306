"""What likely stands inside the wall: studs, jacks, kings and headers, lintels, and edges to keep off.

Nothing here is more than likely until somebody found it: a stud that was found wins over what is likely there, and the
others are counted from it. Without one, only what stands beside and over openings can be guessed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import OpeningOut, Point, Span, ZoneOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.trade.tables import limit_of
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM

FRAMING = frozenset({"stud", "jack", "king", "header"})
"""Kinds of zones that a screw holds in."""

_WOODEN_HEADERS = frozenset({"board-timber-studs", "plaster-lath"})
_LEAST_MM = 10.0  # a zone lower or narrower than this is nothing to fix to


class FramingSizes(Struct, frozen=True, gc=False):
    """Usual sizes in mm: spacing and width of studs, opening to the first of them, header; lintel; masonry's edge."""

    spacing_mm: float
    wide_mm: float
    gap_mm: float
    header_mm: float
    lintel_mm: float
    bearing_mm: float
    keep_off_mm: float


def framing_sizes(trade: Trade, limits: Mapping[str, Length]) -> FramingSizes:
    """The sizes of the limits table, each overridden by the room's own figure of the same id."""

    def length(limit_id: str) -> float:
        own = limits.get(limit_id)
        return limit_of(trade, limit_id) if own is None else own.mm

    return FramingSizes(
        length("stud-spacing"),
        length("stud-wide"),
        length("frame-gap"),
        length("header-high"),
        length("lintel-high"),
        length("lintel-bearing"),
        length("reveal-keep-off"),
    )


def zones_of(
    wall_id: str,
    substrate: str,
    build: str,
    openings: tuple[OpeningOut, ...],
    studs: tuple[Length, ...],
    spacing: Length | None,
    facts: WallFacts,
    sizes: FramingSizes,
) -> tuple[ZoneOut, ...]:
    """The zones of a wall, left to right.

    Parameters
    ----------
    wall_id : str
    substrate, build : str
        Row of the wall kinds, and how that is built.
    openings : tuple of OpeningOut
    studs : tuple of Length
        Middles of studs that were found.
    spacing : Length or None
        From stud to stud on this wall; None takes the usual one.
    facts : WallFacts
    sizes : FramingSizes
    """
    if build == "masonry":
        found = [zone for opening in openings for zone in _of_masonry(opening, facts, sizes)]
    elif build == "studs":
        step = sizes.spacing_mm if spacing is None else spacing.mm
        found = _of_studs((wall_id,), substrate in _WOODEN_HEADERS, openings, studs, step, facts, sizes)
    else:
        found = []
    found.extend(zone for opening in openings for zone in _shutter_box(opening, facts, sizes))
    return tuple(sorted(found, key=lambda zone: (zone.left_mm, zone.bottom_mm)))


def _shutter_box(opening: OpeningOut, facts: WallFacts, sizes: FramingSizes) -> Iterator[ZoneOut]:
    """The box of a roller shutter over the head, a little wider than the opening as its rails are."""
    if opening.shutter_box_mm <= 0:
        return
    left = max(opening.left_mm - sizes.keep_off_mm, 0.0)
    right = min(opening.right_mm + sizes.keep_off_mm, facts.width_mm)
    top = min(opening.top_mm + opening.shutter_box_mm, _ceiling_over(facts, left, right))
    if top - opening.top_mm > _LEAST_MM:
        yield ZoneOut("shutter-box", opening.ref, left, opening.top_mm, right, top)


def _of_masonry(opening: OpeningOut, facts: WallFacts, sizes: FramingSizes) -> Iterator[ZoneOut]:
    """A lintel over the opening, and the bands along its reveal where a fixing would break the edge out."""
    left, right, low = opening.left_mm, opening.right_mm, opening.bottom_mm
    high = opening.top_mm + opening.shutter_box_mm  # a lintel lies over the box
    far = min(right + sizes.bearing_mm, facts.width_mm)
    ceiling = _ceiling_over(facts, left, right)
    top = min(high + sizes.lintel_mm, ceiling)
    if top - high > _LEAST_MM:
        yield ZoneOut("lintel", opening.ref, max(left - sizes.bearing_mm, 0.0), high, far, top)
    off = sizes.keep_off_mm
    yield ZoneOut("keep-off", opening.ref, max(left - off, 0.0), low, left, opening.left_top_mm)
    yield ZoneOut("keep-off", opening.ref, right, low, min(right + off, facts.width_mm), opening.right_top_mm)


def _of_studs(
    ref: Ref,
    has_header: bool,
    openings: tuple[OpeningOut, ...],
    studs: tuple[Length, ...],
    step_mm: float,
    facts: WallFacts,
    sizes: FramingSizes,
) -> list[ZoneOut]:
    half = sizes.wide_mm / 2
    middles = [stud.mm for stud in studs]
    found = [zone for x in middles for zone in _stud(ref, x, openings, facts, sizes, is_found=True)]
    taken = [(x - half, x + half) for x in middles]
    beside: list[ZoneOut] = []
    for opening in openings:
        beside.extend(zone for zone in _beside(opening, facts, sizes) if not _meets((zone.left_mm, zone.right_mm), taken))
        if has_header:
            beside.extend(_header(opening, facts, sizes))
    taken += [(zone.left_mm, zone.right_mm) for zone in beside if zone.kind != "header"]
    likely = [
        zone
        for x in layout(middles, step_mm, facts.width_mm, half)
        if not _meets((x - half, x + half), taken)
        for zone in _stud(ref, x, openings, facts, sizes, is_found=False)
    ]
    return [*found, *beside, *likely]


def layout(middles: Sequence[float], step_mm: float, width_mm: float, half_mm: float) -> list[float]:
    """Where other studs likely stand, counted from those that were found; none found gives none.

    Parameters
    ----------
    middles : sequence of float
        Middles of the studs that were found, rising.
    step_mm : float
        From stud to stud.
    width_mm, half_mm : float
        Width of the wall, half the width of a stud.
    """
    if not middles or step_mm <= 2 * half_mm:
        return []
    found: list[float] = []
    x = middles[0] - step_mm
    while x >= half_mm - TOUCH_MM:
        found.append(x)
        x -= step_mm
    for left, right in (*pairwise(middles), (middles[-1], None)):
        x = left + step_mm
        # Between two that were found the layout runs from the left one and gives way to the right one.
        end = width_mm - half_mm + TOUCH_MM if right is None else right - step_mm / 2
        while x <= end:
            found.append(x)
            x += step_mm
    return sorted(found)


def _stud(
    ref: Ref, x: float, openings: tuple[OpeningOut, ...], facts: WallFacts, sizes: FramingSizes, *, is_found: bool
) -> Iterator[ZoneOut]:
    """One stud from floor to ceiling, but for the opening that it would run through."""
    half = sizes.wide_mm / 2
    floor, ceiling = height_at(facts.floor, x), height_at(facts.ceiling, x)
    pieces: list[Span] = [(floor, ceiling)]
    for opening in openings:
        reach = sizes.gap_mm
        if opening.left_mm - reach < x + half and opening.right_mm + reach > x - half:
            pieces = [
                piece
                for low, high in pieces
                for piece in ((low, min(high, opening.bottom_mm - reach)), (max(low, opening.top_mm + reach), high))
            ]
    for low, high in pieces:
        if high - low > _LEAST_MM:
            yield ZoneOut("stud", ref, x - half, low, x + half, high, is_found)


def _beside(opening: OpeningOut, facts: WallFacts, sizes: FramingSizes) -> Iterator[ZoneOut]:
    """The jack under the header and the king beside it, on both sides: the wood nearest to a window."""
    wide = sizes.wide_mm
    top = opening.top_mm + sizes.gap_mm
    for edge, way in ((opening.left_mm, -1.0), (opening.right_mm, 1.0)):
        for kind, near in (("jack", sizes.gap_mm), ("king", sizes.gap_mm + wide)):
            a, b = edge + way * near, edge + way * (near + wide)
            left, right = min(a, b), max(a, b)
            if left < -TOUCH_MM or right > facts.width_mm + TOUCH_MM:
                continue
            x = (left + right) / 2
            ceiling = height_at(facts.ceiling, x)
            high = min(top, ceiling) if kind == "jack" else ceiling
            floor = height_at(facts.floor, x)
            if high - floor > _LEAST_MM:
                yield ZoneOut(kind, opening.ref, left, floor, right, high)


def _header(opening: OpeningOut, facts: WallFacts, sizes: FramingSizes) -> Iterator[ZoneOut]:
    """The header over the opening, carried by the jacks."""
    reach = sizes.gap_mm + sizes.wide_mm
    left, right = max(opening.left_mm - reach, 0.0), min(opening.right_mm + reach, facts.width_mm)
    low = opening.top_mm + sizes.gap_mm
    high = min(low + sizes.header_mm, _ceiling_over(facts, left, right))
    if high - low > _LEAST_MM:
        yield ZoneOut("header", opening.ref, left, low, right, high)


def _ceiling_over(facts: WallFacts, left: float, right: float) -> float:
    points: Iterable[Point] = facts.ceiling.points
    return min(
        [height_at(facts.ceiling, left), height_at(facts.ceiling, right), *(y for x, y in points if left < x < right)]
    )


def _meets(span: Span, taken: Sequence[Span]) -> bool:
    return any(span[0] < right - TOUCH_MM and left < span[1] - TOUCH_MM for left, right in taken)
