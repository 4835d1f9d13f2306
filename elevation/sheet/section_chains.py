"""The dimensions of a section: projection and clearances across, hem gap and rod up; as chains for the label ladder."""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct

from elevation.room.model import Held, Layer, Ref, Treatment
from elevation.setting_out.model import ObstacleOut
from elevation.setting_out.tilt import is_as_held
from elevation.sheet.annotation.figures import figure, figures
from elevation.sheet.annotation.model import Chain, Segment
from elevation.sheet.records import Ink
from elevation.sheet.section_cut import INSIDE, Cut, Hanging
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Style, msg, say

LEAST_MM = 0.5
_NEAREST_MM = 300.0
"""Things farther behind the cloth, or farther below its hem, are no concern of it."""

_FLAT_MM = 25.0


class SectionChains(Struct, frozen=True, gc=False):
    """Chains on each side, nearest first: left and right are heights, top and bottom are depths."""

    left: tuple[Chain, ...]
    right: tuple[Chain, ...]
    top: tuple[Chain, ...]
    bottom: tuple[Chain, ...]


class Level(Struct, frozen=True, gc=False):
    """A height to be dimensioned, what it belongs to, the form field it opens, and where its line starts (z)."""

    y_mm: float
    ref: Ref
    field: str
    from_mm: float
    held: bool = False


def chains_of(cut: Cut, treatment: Treatment | None, style: Style, *, has_opening: bool = True) -> SectionChains:
    """The chains of a section.

    Parameters
    ----------
    cut : Cut
    treatment : Treatment or None
        Says what is held.
    style : Style
    has_opening : bool
        Give the opening's own heights at the left: left away where the elevation stands beside it.
    """
    left = _opening(cut, style) if has_opening else ()
    return SectionChains(left, _heights(cut, treatment, style), _projections(cut, style), _depths(cut, style))


def _owner(cut: Cut) -> Ref:
    return cut.treatment.ref if cut.treatment is not None else (cut.wall,)


def _layer(treatment: Treatment | None, index: int) -> Layer | None:
    return treatment.layers[index] if treatment is not None and index < len(treatment.layers) else None


def _is(held: Held | None, *holds: str) -> bool:
    return held is not None and held.hold in holds


def _is_hem_held(layer: Layer | None) -> bool:
    """Whether the gap under a hem is what was decided, not what comes of a length."""
    return layer is not None and layer.hem.target not in ("panel", "length")


def _chain(owner: Ref, levels: list[Level], style: Style) -> tuple[Chain, ...]:
    """Segments between levels in order; the upper level says what each one is."""
    levels = sorted(levels, key=lambda level: level.y_mm)
    pieces = [(a, b) for a, b in pairwise(levels) if b.y_mm - a.y_mm > LEAST_MM]
    if not pieces:
        return ()
    texts = figures([b.y_mm - a.y_mm for a, b in pieces], style)
    return (
        Chain(
            owner,
            tuple(
                Segment(
                    b.ref, b.field, a.y_mm, b.y_mm, a.from_mm, b.from_mm, (text,), held=b.held, priority=1 if b.held else 0
                )
                for (a, b), text in zip(pieces, texts, strict=True)
            ),
        ),
    )


def _opening(cut: Cut, style: Style) -> tuple[Chain, ...]:
    """Floor, sill, head, casing, ceiling."""
    opening, back = cut.opening, -cut.thick_mm
    levels = [Level(cut.floor_mm, (cut.wall,), "floor.0.height", back)]
    if opening is not None:
        if opening.bottom_mm > cut.floor_mm + LEAST_MM:
            levels.append(Level(opening.bottom_mm, opening.ref, "sill", cut.sash_mm))
        levels.append(Level(cut.head_mm, opening.ref, "height", cut.sash_mm))
    if cut.known_ceiling:
        levels.append(Level(cut.ceiling_mm, (cut.wall,), "ceiling.0.height", back))
    return _chain((cut.wall,), levels, style)


def _heights(cut: Cut, treatment: Treatment | None, style: Style) -> tuple[Chain, ...]:
    if not cut.hangings:
        return ()
    owner = _owner(cut)
    front, layer = cut.hangings[0], _layer(treatment, 0)
    height = front.layer.support.height_mm
    rod = layer.rod.height if layer is not None and is_as_held(front.layer.support) else None
    levels = [Level(cut.floor_mm, (cut.wall,), "floor.0.height", cut.room_mm)]
    is_over_floor = True
    if front.hem_mm is not None and front.panel is not None:
        is_over_floor = front.hem_mm <= cut.floor_mm + _NEAREST_MM
        if not is_over_floor and cut.opening is not None and front.hem_mm > cut.opening.bottom_mm - TOUCH_MM:
            levels.append(Level(cut.opening.bottom_mm, cut.opening.ref, "sill", 0.0))
        # What is held of a hem is the gap under it, so the mark stands there.
        levels.append(Level(front.hem_mm, front.layer.ref, "hem", front.front_mm, _is_hem_held(layer)))
    levels.append(Level(height, front.layer.ref, "length", front.centre_mm))
    top, field, held = cut.ceiling_mm, "ceiling.0.height", _is(rod, "below-ceiling", "bracket-drop")
    ref: Ref = (cut.wall,)
    if cut.treatment is not None and cut.treatment.mount in INSIDE and cut.opening is not None:
        top, field, held, ref = cut.head_mm, "rod.height", _is(rod, "below-head"), front.layer.ref
    elif cut.crown_mm > LEAST_MM and cut.treatment is not None and cut.treatment.mount == "wall":
        levels.append(Level(cut.ceiling_mm - cut.crown_mm, (cut.wall,), "crown", cut.crown_mm))
    if cut.known_ceiling or field != "ceiling.0.height":
        levels.append(
            Level(top, ref if not held else front.layer.ref, field if not held else "rod.height", cut.room_mm, held)
        )
    found = [*_chain(owner, levels, style), *_above_opening(cut, rod, front, style), *_over_heater(cut, style)]
    for index, hanging in enumerate(cut.hangings[1:], 1):
        found.extend(_back_layer(cut, hanging, _layer(treatment, index), front, style))
    return tuple(found)


def _above_opening(cut: Cut, rod: Held | None, front: Hanging, style: Style) -> tuple[Chain, ...]:
    """The rod above the casing, or above the head where that is held or nothing cases it; held above the floor: whole."""
    support, owner = front.layer.support, _owner(cut)
    found: list[Chain] = []
    if cut.opening is not None and cut.treatment is not None and cut.treatment.mount not in INSIDE:
        is_cased = cut.casing_top_mm > cut.head_mm + LEAST_MM and not _is(rod, "above-head")
        low = cut.casing_top_mm if is_cased else cut.head_mm
        if support.height_mm - low > LEAST_MM:
            held = _is(rod, "above-casing" if is_cased else "above-head")
            bare = figure(support.height_mm - low, style)
            full = say(
                msg("{length} above the casing", length=bare) if is_cased else msg("{length} above the head", length=bare),
                style,
            )
            start = cut.stock.casing_mm if is_cased else 0.0
            found.append(
                Chain(
                    owner,
                    (
                        Segment(
                            front.layer.ref, "rod.height", low, support.height_mm, start, front.centre_mm, (full, bare),
                            held=held, priority=2,
                        ),
                    ),
                )
            )  # fmt: skip
    if _is(rod, "above-floor"):
        bare = figure(support.height_mm - cut.floor_mm, style)
        segment = Segment(
            front.layer.ref, "rod.height", cut.floor_mm, support.height_mm, cut.room_mm, front.centre_mm, (bare,), held=True
        )
        found.append(Chain(owner, (segment,)))
    return tuple(found)


def _over_heater(cut: Cut, style: Style) -> tuple[Chain, ...]:
    """How far the hem hangs over something that stands under it."""
    front = cut.hangings[0]
    if front.hem_mm is None:
        return ()
    under = [
        obstacle
        for obstacle, _ in cut.obstacles
        if LEAST_MM < front.hem_mm - obstacle.top_mm < _NEAREST_MM and obstacle.out_mm > front.back_mm - _NEAREST_MM
    ]
    # A flat thing in the wall or on the floor, an outlet or a register, is no concern of a hem.
    under = [thing for thing in under if thing.out_mm > _FLAT_MM and thing.top_mm > cut.floor_mm + _FLAT_MM]
    if not under:
        return ()
    thing = max(under, key=lambda obstacle: obstacle.top_mm)
    text = figure(front.hem_mm - thing.top_mm, style)
    segment = Segment(thing.ref, "height", thing.top_mm, front.hem_mm, thing.out_mm, front.front_mm, (text,))
    return (Chain(_owner(cut), (segment,)),)


def _back_layer(cut: Cut, hanging: Hanging, layer: Layer | None, front: Hanging, style: Style) -> tuple[Chain, ...]:
    """Heights of another layer, where they differ from the front one's."""
    levels: list[Level] = []
    support = hanging.layer.support
    if hanging.hem_mm is not None and (front.hem_mm is None or abs(hanging.hem_mm - front.hem_mm) > LEAST_MM):
        levels = [
            Level(cut.floor_mm, (cut.wall,), "floor.0.height", cut.room_mm),
            Level(
                hanging.hem_mm,
                hanging.layer.ref,
                "hem",
                hanging.front_mm,
                _is_hem_held(layer),
            ),
        ]
    chains = list(_chain(_owner(cut), levels, style)) if levels else []
    if abs(support.height_mm - front.layer.support.height_mm) > LEAST_MM:
        bare = figure(support.height_mm - cut.floor_mm, style)
        segment = Segment(
            hanging.layer.ref, "rod.height", cut.floor_mm, support.height_mm, cut.room_mm, hanging.centre_mm, (bare,)
        )
        chains.append(Chain(_owner(cut), (segment,)))
    return tuple(chains)


def _projections(cut: Cut, style: Style) -> tuple[Chain, ...]:
    """Wall to rod, one line a layer: what is held of a rod's depth. Inside an opening it counts from the sash."""
    found: list[Chain] = []
    for hanging in reversed(cut.hangings):
        support = hanging.layer.support
        inside = support.from_sash_mm is not None
        start = support.projection_mm - support.from_sash_mm if support.from_sash_mm is not None else 0.0
        board = 0.0 if hanging.layer.board is None or inside else hanging.layer.board.thick_mm
        whole = support.projection_mm - start
        if whole <= LEAST_MM:
            continue
        pieces = [(start, support.projection_mm)]
        if board > LEAST_MM:
            pieces = [(start, start + board), (start + board, support.projection_mm)]
        bares = figures([b - a for a, b in pieces], style)
        y = support.height_mm
        segments = []
        for (a, b), bare in zip(pieces, bares, strict=True):
            is_rod = b == support.projection_mm
            segments.append(
                Segment(
                    hanging.layer.ref,
                    "rod.projection" if is_rod else "board.thickness",
                    a,
                    b,
                    cut.ceiling_mm if a == 0.0 else y,
                    y,
                    (bare,),
                    held=True,
                    priority=2,
                )
            )
        found.append(Chain(_owner(cut), tuple(segments)))
    pelmet = cut.treatment.pelmet if cut.treatment is not None else None
    if pelmet is not None and pelmet.left_mm <= cut.station_mm <= pelmet.right_mm:
        pelmet = pelmet.level_at(cut.station_mm)
        bare = figure(pelmet.out_mm, style)
        owner = _owner(cut)
        one = Segment(owner, "pelmet.projection", 0.0, pelmet.out_mm, cut.ceiling_mm, pelmet.top_mm, (bare,), held=True)
        found.append(Chain(owner, (one,)))
    return tuple(found)


def _depths(cut: Cut, style: Style) -> tuple[Chain, ...]:
    """Under the drawing: what the cloth clears, then the wall to the cloth and how deep its folds stand."""
    found: list[Chain] = []
    hangings = [hanging for hanging in cut.hangings if hanging.panel is not None and hanging.hem_mm is not None]
    if not hangings:
        return ()
    # What stands at the wall meets the cloth nearest to it first.
    nearest = min(hangings, key=lambda hanging: hanging.back_mm)
    gap = _behind(cut, nearest, style)
    if gap is not None:
        found.append(Chain(_owner(cut), (gap,)))
    for hanging in hangings:
        start = cut.sash_mm if hanging.layer.support.from_sash_mm is not None else 0.0
        places = [start, hanging.back_mm, hanging.front_mm]
        pieces = [(a, b) for a, b in pairwise(places) if b - a > LEAST_MM]
        if not pieces:
            continue
        bares = figures([b - a for a, b in pieces], style)
        low = hanging.hem_mm if hanging.hem_mm is not None else cut.floor_mm
        segments = tuple(
            Segment(
                hanging.layer.ref,
                "folds" if a == hanging.back_mm else "wall-to-cloth",
                a,
                b,
                cut.floor_mm if a == start else low,
                low,
                (bare,),
            )
            for (a, b), bare in zip(pieces, bares, strict=True)
        )
        found.append(Chain(_owner(cut), segments))
    return tuple(found)


def _behind(cut: Cut, hanging: Hanging, style: Style) -> Segment | None:
    """From what stands out farthest behind the cloth to the cloth; in the accent where the cloth would lie on it."""
    panel, hem = hanging.panel, hanging.hem_mm
    if panel is None or hem is None or cut.treatment is None or cut.treatment.mount in INSIDE:
        return None
    fronts: list[tuple[float, float, Ref]] = []
    for obstacle, _ in cut.obstacles:
        if _stands_behind(obstacle, hanging, hem, panel.top_mm):
            fronts.append((obstacle.out_mm, min(obstacle.top_mm, panel.top_mm), obstacle.ref))
    opening = cut.opening
    if opening is not None and opening.stool is not None and hem < opening.bottom_mm < panel.top_mm:
        fronts.append((opening.stool[2], opening.bottom_mm, opening.ref))
    elif opening is not None and opening.casing_mm > 0 and hem < cut.casing_top_mm:
        fronts.append((cut.stock.casing_mm, max(hem, opening.bottom_mm), opening.ref))
    if not fronts:
        return None
    out, y, ref = max(fronts, key=lambda front: front[:2])
    gap = hanging.back_mm - out
    if abs(gap) <= LEAST_MM or -style.graduation_mm / 2 <= gap < 0:
        # What lies within half a mark of touching is not called too deep.
        return None
    low, high = (out, hanging.back_mm) if gap > 0 else (hanging.back_mm, out)
    bare = figure(abs(gap), style)
    full = say(msg("{length} clear", length=bare) if gap > 0 else msg("{length} too deep", length=bare), style)
    texts = (full, bare) if gap > 0 else (full,)
    return Segment(ref, "projection", low, high, y, y, texts, Ink.THIN if gap > 0 else Ink.ACCENT, priority=3)


def _stands_behind(thing: ObstacleOut, hanging: Hanging, hem: float, top: float) -> bool:
    """Whether a thing is at the height of the cloth and between it and the wall, or in its way."""
    return thing.bottom_mm < top and thing.top_mm > hem and thing.out_mm <= hanging.front_mm + LEAST_MM
