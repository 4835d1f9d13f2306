"""The order in which a wall is measured, and the number of each measurement.

The measuring sheet and the window's form both take their numbers from here, so that figure 7 on the paper
is field 7 on the screen.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from elevation.room.model import Obstacle, Opening, Ref, Wall
from elevation.room.mounting import INSIDE
from elevation.words import Message, msg


class TapeField(NamedTuple):
    """One measurement.

    Attributes
    ----------
    number : int
        From 1, in the order of the tape.
    ref : Ref
        The wall, opening or obstacle that it belongs to.
    field : str
        Path of the field inside that thing: ``width``, ``stool.horn``, ``head.rise``, ``ceiling.0.height``.
    name : Message
        What to measure, from where to where.
    letter : str
        Which of several readings of that number it is; empty for the one figure that is used.
    """

    number: int
    ref: Ref
    field: str
    name: Message
    letter: str = ""

    @property
    def label(self) -> str:
        """Number and letter: ``9``, ``9b``."""
        return f"{self.number}{self.letter}"


_Unnumbered = tuple[Ref, str, Message]


def fields(wall: Wall) -> tuple[TapeField, ...]:
    """Every measurement of a wall in tape order: along the wall, then heights, then what stands before it.

    Parameters
    ----------
    wall : Wall

    Returns
    -------
    tuple of TapeField
        Numbered from 1 without gaps; each (ref, field) once.
    """
    found = (*_along(wall), *_profiles(wall), *_heights(wall), *_details(wall), *_obstacles(wall))
    return tuple(TapeField(number, *fact) for number, fact in enumerate(found, 1))


def reading_fields(wall: Wall) -> tuple[TapeField, ...]:
    """What may be read in several places: a letter each beside the number of the figure that is used.

    Three widths and three heights have the number of the width and the height; the diagonals follow the heights.
    """
    numbers = {(entry.ref, entry.field): entry.number for entry in fields(wall)}
    found: list[TapeField] = []
    for number, opening in enumerate(wall.openings, 1):
        ref = (wall.id, opening.id)
        for used, readings in _readings(number):
            found.extend(
                TapeField(numbers[ref, used], ref, f"taken.{field}", name, letter)
                for letter, (field, name) in zip("abcde", readings, strict=False)
            )
    return tuple(found)


def _readings(number: int) -> tuple[tuple[str, tuple[tuple[str, Message], ...]], ...]:
    return (
        (
            "width",
            (
                ("width_top", msg("opening {number}: width at the top", number=number)),
                ("width_middle", msg("opening {number}: width in the middle", number=number)),
                ("width_bottom", msg("opening {number}: width at the bottom", number=number)),
            ),
        ),
        (
            "height",
            (
                ("height_left", msg("opening {number}: height at the left", number=number)),
                ("height_middle", msg("opening {number}: height in the middle", number=number)),
                ("height_right", msg("opening {number}: height at the right", number=number)),
                ("diagonal_rising", msg("opening {number}: diagonal up to the right", number=number)),
                ("diagonal_falling", msg("opening {number}: diagonal down to the right", number=number)),
            ),
        ),
    )


def _place_field(opening: Opening) -> str:
    return "left" if opening.left is not None and opening.gap is None else "gap"


def _along(wall: Wall) -> Iterator[_Unnumbered]:
    here: Ref = (wall.id,)
    yield here, "width", msg("wall, left end to right end")
    for index, opening in enumerate(wall.openings):
        ref = (wall.id, opening.id)
        number = index + 1
        if _place_field(opening) == "left":
            yield ref, "left", msg("opening {number}: left end of the wall to its left side", number=number)
        elif index == 0:
            yield ref, "gap", msg("opening {number}: left end of the wall to its casing", number=number)
        else:
            yield ref, "gap", msg("opening {number}: casing of opening {before} to its casing", number=number, before=index)
        yield ref, "casing", msg("opening {number}: width of its casing, one side", number=number)
        yield ref, "width", msg("opening {number}: width between the jambs", number=number)
    if wall.openings:
        yield here, "gap_right", msg("last casing to the right end of the wall")


def _profiles(wall: Wall) -> Iterator[_Unnumbered]:
    here: Ref = (wall.id,)
    # A wall that was not measured yet still has one ceiling height to ask for.
    for index in range(max(1, len(wall.ceiling))):
        if len(wall.ceiling) > 1:
            yield here, f"ceiling.{index}.x", msg("ceiling, point {number}: from the left end", number=index + 1)
            yield here, f"ceiling.{index}.height", msg("ceiling, point {number}: height", number=index + 1)
        else:
            yield here, f"ceiling.{index}.height", msg("floor to ceiling")
    for index in range(len(wall.floor)):
        yield here, f"floor.{index}.x", msg("floor, point {number}: from the left end", number=index + 1)
        yield here, f"floor.{index}.height", msg("floor, point {number}: over the level line", number=index + 1)
    yield here, "crown", msg("height of the crown moulding")
    yield here, "baseboard", msg("height of the baseboard")


def _heights(wall: Wall) -> Iterator[_Unnumbered]:
    for number, opening in enumerate(wall.openings, 1):
        ref = (wall.id, opening.id)
        if opening.kind == "window":
            yield ref, "sill", msg("opening {number}: floor to sill", number=number)
            yield ref, "height", msg("opening {number}: sill to head", number=number)
        else:
            yield ref, "height", msg("opening {number}: floor to head", number=number)
        if opening.head.kind == "segmental":
            yield ref, "head.rise", msg("opening {number}: rise of the arch", number=number)
        elif opening.head.kind == "raked":
            yield ref, "head.right_height", msg("opening {number}: height at the right side", number=number)


def _details(wall: Wall) -> Iterator[_Unnumbered]:
    inside = _hung_inside(wall)
    for number, opening in enumerate(wall.openings, 1):
        ref = (wall.id, opening.id)
        yield ref, "reveal", msg("opening {number}: depth of the reveal", number=number)
        yield ref, "frame", msg("opening {number}: opening to glass", number=number)
        if opening.stool is not None:
            yield ref, "stool.thickness", msg("opening {number}: thickness of the stool", number=number)
            yield ref, "stool.horn", msg("opening {number}: stool past the casing", number=number)
            yield ref, "stool.projection", msg("opening {number}: stool out from the wall", number=number)
        if opening.kind == "window":
            yield ref, "apron", msg("opening {number}: height of the apron", number=number)
        yield ref, "sash.handle_out", msg("opening {number}: handle out from the wall", number=number)
        if opening.id in inside:
            yield ref, "sash.handle_stands", msg("opening {number}: handle out from the sash", number=number)


def _hung_inside(wall: Wall) -> frozenset[str]:
    """Openings in whose reveal or on whose sash something hangs in any scheme."""
    return frozenset(
        opening
        for scheme in wall.schemes
        for treatment in scheme.treatments
        if treatment.mount in INSIDE
        for opening in treatment.openings
    )


_KINDS: dict[str, Message] = {
    "outlet": msg("outlet"),
    "switch": msg("switch"),
    "light": msg("wall light"),
    "hot-water-radiator": msg("radiator"),
    "electric-heater": msg("electric heater"),
    "fan-heater": msg("fan heater"),
    "portable-heater": msg("portable heater"),
    "flame-heater": msg("heater with a flame"),
    "floor-register": msg("floor register"),
    "wall-register": msg("wall register"),
    "smoke-alarm": msg("smoke alarm"),
    "shelf": msg("shelf"),
    "furniture": msg("furniture"),
    "picture": msg("picture"),
    "pipe": msg("pipe"),
    "door-swing": msg("way of a door"),
}


def kind_of(kind: str) -> Message:
    """An obstacle's kind as a label."""
    return _KINDS[kind]


def _name_of(obstacle: Obstacle) -> str | Message:
    return obstacle.name or kind_of(obstacle.kind)


def _obstacles(wall: Wall) -> Iterator[_Unnumbered]:
    for obstacle in wall.obstacles:
        ref = (wall.id, obstacle.id)
        name = _name_of(obstacle)
        yield ref, "left", msg("{name}: from the left end", name=name)
        yield ref, "width", msg("{name}: width", name=name)
        yield ref, "bottom", msg("{name}: over the floor", name=name)
        yield ref, "height", msg("{name}: height", name=name)
        yield ref, "projection", msg("{name}: out from the wall", name=name)
        if "heater" in obstacle.kind or "radiator" in obstacle.kind:
            yield ref, "clearance", msg("{name}: distance its own sheet asks for", name=name)
