"""Hatching of what is cut through, clipped to a rectangle by geometry: mm, spacing as on the wall."""

from __future__ import annotations

import math

from elevation.sheet.paths import Step, rectangle, segment

Box = tuple[float, float, float, float]
_GOLDEN = 0.618033988749895


def oblique(box: Box, spacing: float, lean: float = 1.0) -> tuple[Step, ...]:
    """Lines at 45 degrees (ISO 128-3: lines of hatching lean to the outline), ``spacing`` mm apart square to them.

    Parameters
    ----------
    box : (left, bottom, right, top)
    spacing : float
    lean : float
        1.0 rises to the right, -1.0 to the left.

    Returns
    -------
    tuple of steps
    """
    left, bottom, right, top = box
    if right - left <= 0 or top - bottom <= 0:
        return ()
    step = spacing * math.sqrt(2)
    steps: list[Step] = []
    # Lines y = lean * x + c, at places of the whole drawing, so that two boxes beside each other continue one another.
    corners = [y - lean * x for x in (left, right) for y in (bottom, top)]
    first = math.ceil(min(corners) / step)
    for index in range(first, math.floor(max(corners) / step) + 1):
        c = index * step
        at = sorted((((bottom - c) / lean), ((top - c) / lean)))
        x1, x2 = max(left, at[0]), min(right, at[1])
        if x2 - x1 > 1e-6:
            steps.extend(segment(x1, lean * x1 + c, x2, lean * x2 + c))
    return tuple(steps)


def crossed(box: Box) -> tuple[Step, ...]:
    """A cross from corner to corner: timber that is cut across its length."""
    left, bottom, right, top = box
    return (*segment(left, bottom, right, top), *segment(left, top, right, bottom))


def stippled(box: Box, spacing: float, size: float) -> tuple[Step, ...]:
    """Small triangles and dots in no visible order, the same each time: concrete, and the grain of boards."""
    left, bottom, right, top = box
    across, up = int((right - left) / spacing), int((top - bottom) / spacing)
    steps: list[Step] = []
    for row in range(up):
        for column in range(across):
            index = row * across + column
            x = left + (column + 0.15 + 0.7 * ((index * _GOLDEN) % 1.0)) * spacing
            y = bottom + (row + 0.15 + 0.7 * ((index * _GOLDEN * _GOLDEN * 1.7) % 1.0)) * spacing
            s = size * (0.6 + 0.8 * ((index * 0.37) % 1.0))
            if left + s < x < right - s and bottom + s < y < top - s:
                if index % 3:
                    steps.extend(rectangle(x, y, x + s * 0.25, y + s * 0.25))
                else:
                    steps.extend((("M", x, y), ("L", x + s, y + 0.2 * s), ("L", x + 0.35 * s, y + s * 0.9), ("Z",)))
    return tuple(steps)


def grained(box: Box, spacing: float) -> tuple[Step, ...]:
    """Lines along the height: timber cut along its length."""
    left, bottom, right, top = box
    count = int((right - left) / spacing)
    return tuple(
        step
        for index in range(1, count)
        for step in segment(left + (right - left) * index / count, bottom, left + (right - left) * index / count, top)
    )


def coursed(box: Box, course: float) -> tuple[Step, ...]:
    """Level joints every ``course`` mm up from the datum: chambers of hollow block."""
    left, bottom, right, top = box
    first = math.floor(bottom / course) + 1
    return tuple(
        step
        for index in range(first, math.ceil(top / course))
        for step in segment(left, index * course, right, index * course)
    )


def broken(x: float, bottom: float, top: float, size: float) -> tuple[Step, ...]:
    """An upright break line with a zigzag in its middle: what is beyond it is not drawn."""
    y = (bottom + top) / 2
    return (
        ("M", x, bottom),
        ("L", x, y - size),
        ("L", x - size * 0.6, y - size / 3),
        ("L", x + size * 0.6, y + size / 3),
        ("L", x, y + size),
        ("L", x, top),
    )
