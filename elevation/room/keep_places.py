"""Openings stay where they are when one beside them comes or goes.

A gap is measured from the neighbour's casing. When the neighbour changes, the gap that was typed is no longer
that of the tape; what is held is the place.
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.model import Opening, Wall
from elevation.room.stand import stands
from elevation.units import Length, length_of, parse_length
from elevation.units.tolerance import TOUCH_MM

_LONGEST_SUM = 60


def keep_places(before: Wall, after: Wall, unit: str, graduation_mm: float) -> Wall:
    """``after`` with the gaps beside what came or went set so that every other opening stands where it stood.

    A gap that can be given as the sum of what was typed is given so, exactly; otherwise it goes to the nearest
    graduation. Where the old place or the new neighbour's is not known, the gap becomes one that is not measured.

    Parameters
    ----------
    before, after : Wall
        The wall before and after an opening was added or removed.
    unit : str
        ``in`` or ``mm``.
    graduation_mm : float
        The tape's smallest mark.
    """
    old = {opening.id: index for index, opening in enumerate(before.openings)}
    old_places = stands(before)
    openings = list(after.openings)
    for index, opening in enumerate(openings):
        was = old.get(opening.id)
        if was is None or opening.gap is None or _id_before(before, was) == _id_before(after, index):
            continue
        edge = _edge_before(replace(after, openings=tuple(openings)), index)
        place = old_places[was]
        if opening.left is not None or edge is None or place is None:
            openings[index] = replace(opening, gap=None)
            continue
        gap_mm = place - _casing_mm(opening) - edge
        if gap_mm < -TOUCH_MM:
            openings[index] = replace(opening, gap=None, left=length_of(place, unit, graduation_mm))
        else:
            openings[index] = replace(
                opening, gap=_sum(before, was, opening.gap, gap_mm) or length_of(gap_mm, unit, graduation_mm)
            )
    kept = replace(after, openings=tuple(openings))
    return _keep_last(before, kept, unit, graduation_mm)


def _keep_last(before: Wall, after: Wall, unit: str, graduation_mm: float) -> Wall:
    """The gap from the last casing to the wall's end, where the last opening is another one now."""
    if after.gap_right is None or _id_before(before, len(before.openings)) == _id_before(after, len(after.openings)):
        return after
    old_edge = _edge_before(before, len(before.openings))
    edge = _edge_before(after, len(after.openings))
    if old_edge is None or edge is None or old_edge + after.gap_right.mm < edge - TOUCH_MM:
        return replace(after, gap_right=None)
    gap_mm = old_edge + after.gap_right.mm - edge
    exact = _sum(before, len(before.openings), after.gap_right, gap_mm)
    return replace(after, gap_right=exact or length_of(gap_mm, unit, graduation_mm))


def _sum(before: Wall, was: int, gap: Length, wanted_mm: float) -> Length | None:
    """``gap`` and all of the opening before it that is gone, as a sum of what was typed; None where that is not it."""
    if was == 0:
        return None
    gone = before.openings[was - 1]
    if gone.gap is None:
        return None
    parts = [gone.gap, gone.width, gap] if gone.casing is None else [gone.gap, gone.casing, gone.width, gone.casing, gap]
    text = " + ".join(part.text for part in parts if part.mm != 0)
    if len(text) > _LONGEST_SUM:
        return None
    try:
        made = parse_length(text)
    except BadInput:  # a part that starts with a minus, for example
        return None
    return made if abs(made.mm - wanted_mm) <= TOUCH_MM else None


def _id_before(wall: Wall, index: int) -> str | None:
    return wall.openings[index - 1].id if index else None


def _edge_before(wall: Wall, index: int) -> float | None:
    """Where the casing of the opening before ``index`` ends (the wall's left end before the first), in mm."""
    if index == 0:
        return 0.0
    # Only what stands to the left counts: what comes after is what is being settled.
    left = stands(replace(wall, openings=wall.openings[:index], gap_right=None))[index - 1]
    if left is None:
        left = stands(wall)[index - 1]
    before = wall.openings[index - 1]
    return None if left is None else left + before.width.mm + _casing_mm(before)


def _casing_mm(opening: Opening) -> float:
    return opening.casing.mm if opening.casing else 0.0
