"""A round rod's cross-section: area, second moment, modulus, and what a length of it weighs."""

from __future__ import annotations

import math

from msgspec import Struct

from elevation.trade.model import MaterialRow

GRAVITY = 9.80665
"""Standard gravity in m/s2, by definition."""


class Section(Struct, frozen=True, gc=False):
    """A round tube or, with a wall of half its diameter, a solid bar; all in mm.

    ``area_mm2``, ``inertia_mm4`` (second moment of area) and ``modulus_mm3`` follow from the two sizes.
    """

    outer_mm: float
    wall_mm: float
    area_mm2: float
    inertia_mm4: float
    modulus_mm3: float


def section_of(outer_mm: float, wall_mm: float) -> Section | None:
    """The cross-section of a round rod.

    Parameters
    ----------
    outer_mm : float
        Outer diameter.
    wall_mm : float
        Wall; 0, or more than half the diameter, is solid.

    Returns
    -------
    Section or None
        None for a rod that has no size.
    """
    if not outer_mm > 0 or wall_mm < 0:
        return None
    wall = outer_mm / 2 if wall_mm == 0 else min(wall_mm, outer_mm / 2)
    inner = outer_mm - 2 * wall
    inertia = math.pi / 64 * (outer_mm**4 - inner**4)
    return Section(outer_mm, wall, math.pi / 4 * (outer_mm**2 - inner**2), inertia, 2 * inertia / outer_mm)


def weight_n_per_mm(section: Section, material: MaterialRow) -> float:
    """What 1 mm of the rod weighs, in N."""
    return section.area_mm2 * material.density * 1e-9 * GRAVITY
