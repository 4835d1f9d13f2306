"""An opening measured in several places: which reading is used, and why.

Outside the opening the largest width counts, so that the rod clears all of it; inside it the smallest, so that what hangs
there fits (makers' measuring guides). Heights by the same reasoning.
"""

from __future__ import annotations

from typing import Literal

from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.room.find import opening_of, wall_of
from elevation.room.model import Opening, Readings, Ref, Room, Wall
from elevation.units import Length

WIDTHS = ("width_top", "width_middle", "width_bottom")
HEIGHTS = ("height_left", "height_middle", "height_right")
DIAGONALS = ("diagonal_rising", "diagonal_falling")

Side = Literal["width", "height"]
NOTHING = Readings()


def readings_of(taken: Readings, side: Side) -> tuple[Length, ...]:
    """The readings of one kind that were taken, in their order."""
    found = (getattr(taken, key) for key in (WIDTHS if side == "width" else HEIGHTS))
    return tuple(length for length in found if length is not None)


def hangs_inside(wall: Wall, opening_id: str) -> bool:
    """Whether anything hangs inside that opening in any scheme of the wall."""
    return any(
        treatment.mount in ("reveal", "sash") and opening_id in treatment.openings
        for scheme in wall.schemes
        for treatment in scheme.treatments
    )


def used(taken: Readings, side: Side, is_inside: bool) -> Length | None:
    """The reading that counts: the largest, or the smallest where something hangs inside; None where none was taken."""
    found = readings_of(taken, side)
    if not found:
        return None
    return min(found, key=_mm) if is_inside else max(found, key=_mm)


def _mm(length: Length) -> float:
    return length.mm


def with_used(room: Room, ref: Ref) -> Room:
    """A room in which the opening at ``ref`` is as wide and as high as the readings that count.

    What was not read stays as it is. An opening without readings gives back the very same room.

    Raises
    ------
    NoSuch
        There is no such opening.
    """
    opening = opening_of(room, ref)
    is_inside = hangs_inside(wall_of(room, ref[0]), opening.id)
    width = used(opening.taken, "width", is_inside)
    height = used(opening.taken, "height", is_inside)

    def put(one: Opening) -> Opening:
        made = one
        if width is not None and width.mm != one.width.mm:
            made = replace(made, width=width)
        if height is not None and height.mm != one.height.mm:
            made = replace(made, height=height)
        return made

    return edit_at(room, ref[:2], put)
