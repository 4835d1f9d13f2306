"""What stands in a wall's corners: the neighbour walls, and what of them comes before this one, in plan.

Plan coordinates of a wall: mm along it from its left end, and mm out from its face into the room. The neighbour's plan is
turned by the inside angle about the corner that both walls share.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, radians, sin

from elevation.room.corners import Side
from elevation.setting_out.leaves import TURNS_IN, carried, leaves, swept
from elevation.setting_out.model import BesideOut, CornerOut, LayerOut, ObstacleOut, OpeningOut, Point, TreatmentOut


def turned(points: Sequence[Point], side: Side, width_mm: float, corner: CornerOut) -> tuple[Point, ...]:
    """Plan points of a neighbour wall as plan points of this one.

    Parameters
    ----------
    points : sequence of Point
        (along, out) of the neighbour wall.
    side : str
        At which end of this wall the neighbour stands.
    width_mm : float
        This wall's width.
    corner : CornerOut
        The neighbour.
    """
    c, s = cos(radians(corner.angle)), sin(radians(corner.angle))
    if side == "right":
        return tuple((width_mm - x * c - z * s, x * s - z * c) for x, z in points)
    wide = corner.width_mm
    return tuple(((wide - x) * c + z * s, (wide - x) * s - z * c) for x, z in points)


def box(left: float, right: float, back: float, front: float) -> tuple[Point, ...]:
    """A rectangle seen from above."""
    return ((left, back), (right, back), (right, front), (left, front))


def leaves_of(opening: OpeningOut) -> tuple[tuple[Point, ...], ...]:
    """What the leaves of an opening that turn in sweep until they stand square to the wall, seen from above: convex.

    A quarter of a circle about each hinge, which lies as deep in the reveal as the sash.
    """
    if opening.sash not in TURNS_IN:
        return ()
    return tuple(swept(leaf, opening.reveal_mm or 0.0) for leaf in leaves(opening))


def _things(
    openings: tuple[OpeningOut, ...], obstacles: tuple[ObstacleOut, ...], treatments: tuple[TreatmentOut, ...]
) -> Iterator[BesideOut]:
    """Everything of a wall that stands out from it, in its own plan."""
    for obstacle in obstacles:
        if obstacle.out_mm > 0:
            outline = box(obstacle.left_mm, obstacle.right_mm, 0.0, obstacle.out_mm)
            yield BesideOut(
                "",
                "",
                obstacle.ref,
                obstacle.kind,
                obstacle.name,
                outline,
                obstacle.bottom_mm,
                obstacle.top_mm,
                obstacle.clearance_mm,
            )
    for opening in openings:
        yield from _opening(opening, treatments)
    for treatment in treatments:
        for layer in treatment.layers:
            if layer.support.projection_mm > 0:
                yield from _layer(layer)


def _opening(opening: OpeningOut, treatments: tuple[TreatmentOut, ...]) -> Iterator[BesideOut]:
    low, high, name = opening.bottom_mm, opening.top_mm, str(opening.number)
    kind = "sash" if opening.kind == "window" else "door"
    turning = leaves_of(opening)
    for outline in turning:
        yield BesideOut("", "", opening.ref, kind, name, outline, low, high)
    if turning:
        for leaf, load in carried(opening, treatments):
            outline = swept(leaf, opening.reveal_mm or 0.0, load)
            yield BesideOut("", "", opening.ref, kind, name, outline, load.bottom_mm, load.top_mm)
    # A leaf's own box is told more exactly by what it sweeps; a sash that tilts and a handle keep theirs.
    for left, bottom, right, top, out in opening.sweep[1 if turning else 0 :]:
        if out > 0:
            yield BesideOut("", "", opening.ref, kind, name, box(left, right, 0.0, out), bottom, top)
    if opening.stool is not None and opening.stool[2] > 0:
        thick, horn, out = opening.stool
        wide = opening.casing_mm + horn
        outline = box(opening.left_mm - wide, opening.right_mm + wide, 0.0, out)
        yield BesideOut("", "", opening.ref, "stool", name, outline, low - thick, low)


def _layer(layer: LayerOut) -> Iterator[BesideOut]:
    support = layer.support
    out, radius, y = support.projection_mm, support.diameter_mm / 2, support.height_mm
    thick = max(support.finial_diameter_mm / 2, radius)
    rod = box(support.left_mm, support.right_mm, out - radius, out + radius)
    yield BesideOut("", "", layer.ref, "rod", "", rod, y - radius, y + radius)
    for left, right, is_carried, ends in (
        (support.metal_left_mm, support.left_mm, support.carried[0], support.left_ends),
        (support.right_mm, support.metal_right_mm, support.carried[1], support.right_ends),
    ):
        if right > left:
            back = 0.0 if is_carried and ends != "socket" else out - thick
            yield BesideOut("", "", layer.ref, "rod", "", box(left, right, back, out + thick), y - thick, y + thick)
    for bracket in layer.brackets:
        half = bracket.half_width_mm
        arm = box(bracket.x_mm - half, bracket.x_mm + half, 0.0, out + radius)
        low, high = min(bracket.plate[1], y - radius), max(bracket.plate[3], y + radius)
        yield BesideOut("", "", bracket.ref, "bracket", "", arm, low, high)
    for panel in (*layer.panels, *layer.guests):
        left, right = min(panel.open[0], panel.closed[0]), max(panel.open[1], panel.closed[1])
        if right > left:
            # Cloth gives way in its folds: it is met in the plane it hangs in, no thicker than the rod.
            cloth = box(left, right, out - radius, out + radius)
            # What comes round another corner belongs to the leg that it hangs on here.
            ref = panel.ref if panel.ref[:-1] == layer.ref else layer.ref
            yield BesideOut("", "", ref, "panel", "", cloth, panel.hem_low_mm, panel.top_mm)


def beside_of(
    side: Side,
    place: tuple[float, float],
    corner: CornerOut,
    openings: tuple[OpeningOut, ...],
    obstacles: tuple[ObstacleOut, ...],
    treatments: tuple[TreatmentOut, ...],
) -> tuple[BesideOut, ...]:
    """What of a neighbour wall comes before this one.

    Parameters
    ----------
    side : str
        At which end of this wall the neighbour stands.
    place : (float, float)
        This wall's width, and how far the neighbour's datum lies over this wall's.
    corner : CornerOut
        The neighbour.
    openings, obstacles, treatments : tuples
        What stands and hangs on it, in its own coordinates.
    """
    width_mm, step_mm = place
    found: list[BesideOut] = []
    for thing in _things(openings, obstacles, treatments):
        outline = turned(thing.outline, side, width_mm, corner)
        if max(z for _, z in outline) > 0.0:
            found.append(
                BesideOut(
                    side,
                    corner.name,
                    thing.ref,
                    thing.kind,
                    thing.name,
                    outline,
                    thing.bottom_mm + step_mm,
                    thing.top_mm + step_mm,
                    thing.clearance_mm,
                )
            )
    return tuple(found)


def stretch_of(outline: Sequence[Point], back_mm: float, front_mm: float) -> tuple[float, float] | None:
    """Which stretch of the wall a convex outline takes up between two depths; None where it is not there at all.

    A rectangle over just these depths meets the outline if, and only if, it reaches into that stretch.
    """
    points = list(outline)
    for depth, keep in ((back_mm, 1.0), (front_mm, -1.0)):
        kept: list[Point] = []
        for index, (x, z) in enumerate(points):
            x0, z0 = points[index - 1]
            inside, before = (z - depth) * keep >= 0.0, (z0 - depth) * keep >= 0.0
            if inside != before:
                part = (depth - z0) / (z - z0)
                kept.append((x0 + (x - x0) * part, depth))
            if inside:
                kept.append((x, z))
        points = kept
        if not points:
            return None
    return min(x for x, _ in points), max(x for x, _ in points)
