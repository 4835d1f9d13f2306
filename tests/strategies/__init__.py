"""Random rooms that can say everything the room file can say.

One maker fills a wall from a source of choices. ``random_room(seed)`` takes them from ``random.Random``: the same seed
makes the same room for ever, for tests over a fixed number of walls. ``rooms()`` and ``walls()`` let hypothesis take
them, so that a failing room shrinks.

Every room is physically possible: it passes ``check_room`` and the row check. Whether it is wise is another matter.
"""

from __future__ import annotations

import random

from hypothesis import strategies as st

from elevation.room.model import Room, Wall
from elevation.units import length_of
from tests.strategies.choices import (
    BODIES,
    CEILING_KITS,
    CEILINGS,
    FACES,
    FIXINGS,
    FLOORS,
    HEAD_KINDS,
    HEADINGS,
    HEM_TARGETS,
    KINDS,
    KITS,
    LININGS,
    MATERIALS,
    MOUNTS,
    OBSTACLE_KINDS,
    OPENING_KINDS,
    PATTERNS,
    ROD_ENDS,
    SASH_KINDS,
    SECTIONS,
    SUBSTRATES,
    Choices,
)
from tests.strategies.corners import Corners
from tests.strategies.schemes import Schemes
from tests.strategies.walls import Walls

__all__ = (
    "BODIES",
    "CEILINGS",
    "CEILING_KITS",
    "FACES",
    "FIXINGS",
    "FLOORS",
    "HEADINGS",
    "HEAD_KINDS",
    "HEM_TARGETS",
    "KINDS",
    "KITS",
    "LININGS",
    "MATERIALS",
    "MOUNTS",
    "OBSTACLE_KINDS",
    "OPENING_KINDS",
    "PATTERNS",
    "ROD_ENDS",
    "SASH_KINDS",
    "SECTIONS",
    "SUBSTRATES",
    "Maker",
    "random_room",
    "random_walls",
    "rooms",
    "walls",
)


class Maker(Corners, Walls, Schemes):
    """Makes one room's parts in its unit."""

    def room(self) -> Room:
        """A room with one wall, or with four."""
        pick = self.pick
        ids = ("w1", "w2", "w3", "w4") if pick.chance(8) else ("w1",)
        walls = tuple(self.wall(key, tuple(other for other in ids if other != key)) for key in ids)
        if len(walls) > 1:
            walls = self.ring(walls)
        coarse = {"in": (25.4 / 8, 25.4 / 16, 25.4 / 32), "mm": (1.0, 5.0)}[self.unit]
        graduation = pick.one_of(coarse)
        text = length_of(graduation, self.unit, 25.4 / 32 if self.unit == "in" else 1.0)
        made = Room(
            name=pick.one_of(("", "Room", "Wohnküche", 'A "room" & more')),
            unit=self.unit,
            graduation=text if pick.chance(2) else None,
            language=pick.one_of(("en", "de")),
            sleeping=pick.chance(2),
            no_holes=pick.chance(8),
            children=pick.chance(4),
            wiring=pick.one_of(("not-known", "uk", "de")),
            floor_to_come=self.between(5, 40) if pick.chance(8) else None,
            fullness_rule=pick.one_of(("all", "rod", "fixed", "narrower")),
            one_height=pick.chance(4),
            tug_kg=pick.whole(1, 40) / 1 if pick.chance(5) else None,
            limits={"rod-low": self.between(25, 150)} if pick.chance(6) else {},
            walls=walls,
        )
        return self.with_later_kinds(made)


def random_room(seed: int) -> Room:
    """The room of that seed: the same one on every machine."""
    source = random.Random(seed)
    choices = Choices(source.randint)
    return Maker(choices, choices.one_of(("in", "mm"))).room()


def random_walls(count: int, first_seed: int = 0) -> list[tuple[Room, Wall]]:
    """``count`` fixed walls with their rooms."""
    made: list[tuple[Room, Wall]] = []
    seed = first_seed
    while len(made) < count:
        room = random_room(seed)
        made.extend((room, wall) for wall in room.walls)
        seed += 1
    return made[:count]


@st.composite
def rooms(draw: st.DrawFn) -> Room:
    """Any room; fails shrink towards few and plain things."""
    choices = Choices(lambda low, high: draw(st.integers(low, high)))
    return Maker(choices, choices.one_of(("in", "mm"))).room()


@st.composite
def walls(draw: st.DrawFn) -> Wall:
    """Any wall, in a room that is not told."""
    choices = Choices(lambda low, high: draw(st.integers(low, high)))
    return Maker(choices, choices.one_of(("in", "mm"))).wall("w1")
