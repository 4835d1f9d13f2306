"""Leaves that turn: where they hang, and how what hangs on them moves with them.

Seen from above, from a leaf's hinge: ``r`` along the leaf, ``q`` out from its face on the room's side. Turned by an angle t
into the room a point comes to r cos t - q sin t along the wall and r sin t + q cos t out from the closed leaf's face.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import acos, atan2, cos, degrees, hypot, pi, sin, sqrt

from msgspec import Struct

from elevation.setting_out.model import LayerOut, OpeningOut, Point, TreatmentOut
from elevation.units.tolerance import TOUCH_MM

TURNS_IN = frozenset({"casement-in", "swing-in"})
TURNS_OUT = frozenset({"casement-out", "swing-out"})

_ARC_STEPS = 12
"""Pieces that a quarter circle is drawn around in."""


class Leaf(Struct, frozen=True, gc=False):
    """A leaf: where its hinge stands along the wall, which way it lies from there (1 right, -1 left), how wide it is."""

    hinge_mm: float
    way: float
    wide_mm: float

    @property
    def span(self) -> tuple[float, float]:
        """Its left and right edge while it is closed."""
        other = self.hinge_mm + self.way * self.wide_mm
        return min(self.hinge_mm, other), max(self.hinge_mm, other)


class Load(Struct, frozen=True, gc=False):
    """What hangs on a leaf: where it begins from the hinge, how far out its back and front stand, its heights."""

    near_mm: float
    back_mm: float
    out_mm: float
    bottom_mm: float
    top_mm: float


def leaves(opening: OpeningOut) -> tuple[Leaf, ...]:
    """The leaves of an opening that turn about an upright edge, in or out; none for other sashes."""
    if opening.sash not in TURNS_IN | TURNS_OUT:
        return ()
    wide = opening.right_mm - opening.left_mm
    if opening.hinge == "both":
        return Leaf(opening.left_mm, 1.0, wide / 2), Leaf(opening.right_mm, -1.0, wide / 2)
    if opening.hinge == "right":
        return (Leaf(opening.right_mm, -1.0, wide),)
    return (Leaf(opening.left_mm, 1.0, wide),)


def load_on(leaf: Leaf, layers: Sequence[LayerOut]) -> Load | None:
    """What of a treatment on the sash hangs on one leaf; None where nothing does."""
    found: Load | None = None
    for layer in layers:
        support = layer.support
        low, high = leaf.span
        left, right = max(support.metal_left_mm, low), min(support.metal_right_mm, high)
        if support.from_sash_mm is None or right - left <= TOUCH_MM:
            continue
        near = left - leaf.hinge_mm if leaf.way > 0 else leaf.hinge_mm - right
        # Cloth gives way in its folds; rod and finial do not.
        thick = max(support.diameter_mm, support.finial_diameter_mm) / 2
        bottom = min([support.height_mm - thick, *(panel.hem_low_mm for panel in layer.panels)])
        back, out = max(support.from_sash_mm - thick, 0.0), support.from_sash_mm + thick
        one = Load(max(near, 0.0), back, out, bottom, support.height_mm + thick)
        if found is not None:
            one = Load(
                min(one.near_mm, found.near_mm),
                min(one.back_mm, found.back_mm),
                max(one.out_mm, found.out_mm),
                min(one.bottom_mm, found.bottom_mm),
                max(one.top_mm, found.top_mm),
            )
        found = one
    return found


def carried(opening: OpeningOut, treatments: Sequence[TreatmentOut]) -> tuple[tuple[Leaf, Load], ...]:
    """The leaves of an opening with what treatments on its sash hang on each."""
    layers = [
        layer
        for treatment in treatments
        if treatment.mount == "sash" and any(one.ref == opening.ref for one in treatment.openings)
        for layer in treatment.layers
    ]
    if not layers:
        return ()
    found = ((leaf, load_on(leaf, layers)) for leaf in leaves(opening))
    return tuple((leaf, load) for leaf, load in found if load is not None)


def opens_to(load: Load, reveal_mm: float) -> float:
    """How far a leaf turns into the room before what hangs on it meets the jamb, in degrees; 90 where it does not.

    The jamb's edge stands ``reveal_mm`` out from the closed leaf's face, beside the hinge. A point r from the hinge and q
    out from the leaf passes over the hinge's line at t = atan(r / q), as far out as it is from the hinge. Within the reveal
    it meets the jamb there. What is farther out comes down to the jamb's edge later, as r sin t + q cos t falls to the
    reveal's depth: so the first to meet it is the point of the rod's end that passes the line just at that depth.
    """
    r, low, high = load.near_mm, load.back_mm, load.out_mm
    if high <= TOUCH_MM or r >= reveal_mm - TOUCH_MM:
        return 90.0
    q = min(max(sqrt(reveal_mm * reveal_mm - r * r), low), high)
    far = hypot(r, q)
    # r sin t + q cos t = far cos(t - atan(r / q))
    return min(degrees(atan2(r, q) + acos(min(reveal_mm / far, 1.0))), 90.0)


def swept(leaf: Leaf, reveal_mm: float, load: Load | None = None) -> tuple[Point, ...]:
    """What a leaf that turns in sweeps until it stands square to the wall, seen from above: convex, drawn around outside.

    With its load it sweeps a circle farther out, and at last stands out on the hinge's other side.
    """
    q = 0.0 if load is None else load.out_mm
    radius = hypot(leaf.wide_mm, q)
    last = pi / 2 + atan2(q, leaf.wide_mm)
    step = last / _ARC_STEPS
    outer = radius / cos(step / 2)
    x, z = leaf.hinge_mm, -reveal_mm
    points = [(radius, 0.0)]
    points += [(outer * cos(step * (n + 0.5)), outer * sin(step * (n + 0.5))) for n in range(_ARC_STEPS)]
    points.append((radius * cos(last), radius * sin(last)))
    if q > 0:
        points.append((-q, 0.0))
    return ((x, z), *((x + leaf.way * a, z + b) for a, b in points))
