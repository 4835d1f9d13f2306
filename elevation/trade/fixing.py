"""What screws and anchors hold: withdrawal from wood, and a plate on its screws as a cantilever; N and mm."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.trade.model import FixingRow

WITHDRAWAL = 2850 * 6.894757293168361e-3
"""N/mm2: allowable withdrawal of a wood screw from side grain is 2850 G2 D lbf for each inch of thread (NDS 12.2)."""

LEAST_THREADS = 6.0
"""Less thread in the wood than six diameters counts for nothing (NDS 12.1; from memory)."""

FULL_THREADS = 10.0
"""From ten diameters on a screw has its full shear; between, its part of it (NDS 12.3; from memory)."""


class Strength(Struct, frozen=True, gc=False):
    """What one fixing may carry out of the wall and along it, in N; None where only its packet says."""

    pull_n: float | None
    shear_n: float | None


def withdrawal_n(gravity: float, diameter_mm: float, thread_mm: float) -> float:
    """Allowable pull of a wood screw out of side grain, in N.

    Parameters
    ----------
    gravity : float
        Specific gravity of the wood, oven-dry.
    diameter_mm, thread_mm : float
        Of the screw, and of its thread in the wood.
    """
    return WITHDRAWAL * gravity**2 * diameter_mm * thread_mm


def screw_strength(
    row: FixingRow, before_mm: float, is_flush: bool, gravity: float, stays: float, wood_mm: float | None = None
) -> Strength | None:
    """What a wood screw holds under a load that stays.

    Parameters
    ----------
    row : FixingRow
    before_mm : float
        Plate, and board or plaster, between its head and the wood.
    is_flush : bool
        The plate lies on the wood itself.
    gravity, stays : float
        Of the wood; and the part of its strength that stays.
    wood_mm : float or None
        How thick the wood is where that is no stud.

    Returns
    -------
    Strength or None
        None for a screw that is too short, or of no thickness.
    """
    thread = row.length_mm - before_mm
    if wood_mm is not None:
        thread = min(thread, wood_mm)
    elif thread < LEAST_THREADS * row.diameter_mm:
        return None
    if thread <= 0 or row.diameter_mm <= 0:
        return None
    part = min(thread / (FULL_THREADS * row.diameter_mm), 1.0)
    shear = row.shear_n if is_flush else row.through_n
    return Strength(withdrawal_n(gravity, row.diameter_mm, thread) * stays, shear * part * stays)


def lever_of(holes_mm: Sequence[float], below_mm: float) -> float:
    """The upper screw's height over the plate's lower edge, about which the plate turns.

    ``holes_mm`` are the holes over the rod's axis, ``below_mm`` is how far the plate reaches below that.
    """
    return max(holes_mm, default=0.0) + below_mm


def on_plate(load_n: float, moment_nmm: float, holes_mm: Sequence[float], below_mm: float) -> tuple[float, float] | None:
    """Pull on the upper screw, and shear on each, of a plate on the wall.

    The plate turns about its lower edge, the upper screw alone holds it there; all share the load downwards.

    Returns
    -------
    pull, shear : float, or None
        In N; None for a plate without screws or height.
    """
    lever = lever_of(holes_mm, below_mm)
    if not holes_mm or lever <= 0:
        return None
    return moment_nmm / lever, load_n / len(holes_mm)


def times_held(pull_n: float, shear_n: float, strength: Strength) -> float | None:
    """How many times what pulls and shears a fixing holds: the straight line between pull alone and shear alone.

    None where a figure that matters is not known, or nothing pulls.
    """
    used = 0.0
    for force, holds in ((pull_n, strength.pull_n), (shear_n, strength.shear_n)):
        if force <= 0:
            continue
        if holds is None or holds <= 0:
            return None
        used += force / holds
    return None if used <= 0 else 1 / used
