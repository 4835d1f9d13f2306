"""Where axes that run along two walls meet in the corner: plain geometry, plain numbers in and out."""

from __future__ import annotations

from math import radians, tan

from elevation.trade.model import EndRow

JOINT = EndRow("corner-joint", "", 0.0, 0.0, 0.0, "none", "", "published")
"""The end of a rod that meets another in a corner: cut on the mitre, measured at the axis. No row: nobody buys it."""


def mitre(projection: float, angle: float) -> float:
    """How far from the corner two axes meet that both stand ``projection`` out from their walls.

    Parameters
    ----------
    projection : float
        From wall to axis, the same on both walls, in any unit.
    angle : float
        Inside angle between the walls, in degrees (above 0, below 360).

    Returns
    -------
    float
        Along either wall from the corner, in the same unit; negative (beyond the wall's end) where the angle is more than
        180 degrees: the axis runs out round an outside corner.
    """
    return projection / tan(radians(angle / 2))


def bend(radius: float, angle: float) -> tuple[float, float]:
    """A bend round a corner in place of a mitre.

    Parameters
    ----------
    radius : float
        Of the axis, in any unit.
    angle : float
        Inside angle between the walls, in degrees.

    Returns
    -------
    tangent, arc : float
        How far before the mitre each straight ends, and how long the axis is from the one to the other.
    """
    turned = radians(abs(180.0 - angle))
    return radius * tan(turned / 2), radius * turned
