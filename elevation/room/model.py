"""What was measured and decided: a room as frozen data.

Identity is a cache key: an edit makes new values only along the path that changed.
Every wall, opening, obstacle, scheme, treatment, layer, bracket and panel has an ``id``, unique
among everything that has the same parent. A ``Ref`` is the tuple of ids from the wall down.
``None`` means *not measured yet*, never zero; a zero length means *measured, there is none*.

Coordinates that these lengths feed: mm, x to the right from the wall's left end,
y up from a level datum through the finished floor at the left end.
"""

# Annotations stay values here, not texts: a room is decoded by them, and reading them back took as long as the room.

from typing import Literal

from msgspec import Struct

from elevation.room.hung import (
    Blind,
    Board,
    Bracket,
    Built,
    Fabric,
    Held,
    Hem,
    Layer,
    Making,
    Offer,
    Packet,
    Panel,
    Pelmet,
    Rod,
    Scheme,
    TieBack,
    Treatment,
)
from elevation.room.measured import Head, Obstacle, ObstacleKind, Opening, Readings, Sash, Station, Stool, WallEnd
from elevation.units import Length

__all__ = [
    "Blind",
    "Board",
    "Bracket",
    "Built",
    "Fabric",
    "Head",
    "Held",
    "Hem",
    "Layer",
    "Length",
    "Making",
    "Obstacle",
    "ObstacleKind",
    "Offer",
    "Opening",
    "Packet",
    "Panel",
    "Pelmet",
    "Readings",
    "Ref",
    "Rod",
    "Room",
    "Sash",
    "Scheme",
    "Station",
    "Stool",
    "TieBack",
    "Treatment",
    "Wall",
    "WallEnd",
]

Ref = tuple[str, ...]


class Wall(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One wall, seen from inside the room.

    Attributes
    ----------
    id, name : str
    width : Length or None
        From left end to right end.
    ceiling : tuple of Station
        Points of the ceiling line; one point is a level ceiling; none: not measured.
    floor : tuple of Station
        Heights of the floor over the datum; none: level at zero.
    crown, baseboard : Length or None
        Heights of the mouldings; zero for none.
    left, right : WallEnd
    substrate : str
        Row of the wall kinds; ``not-known`` until tested.
    openings, obstacles, schemes : tuples
        Openings stand in order from the left.
    studs : tuple of Length
        Middles of the studs that were found, from the wall's left end, in order.
    stud_spacing : Length or None
        From stud to stud; None takes the usual figure.
    gap_right : Length or None
        Last link of the measuring chain: last casing to the wall's right end.
    """

    id: str
    name: str = ""
    width: Length | None = None
    ceiling: tuple[Station, ...] = ()
    floor: tuple[Station, ...] = ()
    crown: Length | None = None
    baseboard: Length | None = None
    left: WallEnd = WallEnd()
    right: WallEnd = WallEnd()
    substrate: Literal[
        "not-known", "board-timber-studs", "board-metal-studs", "board-dabs", "board-battens", "plaster-lath",
        "solid-brick", "hollow-block", "aerated-block", "concrete", "timber", "tile",
    ] = "not-known"  # fmt: skip
    studs: tuple[Length, ...] = ()
    stud_spacing: Length | None = None
    gap_right: Length | None = None
    openings: tuple[Opening, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    schemes: tuple[Scheme, ...] = ()


class Room(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A room: its walls and what holds for all of them.

    Attributes
    ----------
    name : str
    unit : str
        ``in`` or ``mm``: how lengths are shown.
    graduation : Length or None
        The tape's smallest mark; None: 1/16 in or 1 mm.
    language : str
        Language of sheets.
    sleeping, no_holes, children : bool
        A sleeping room; a rented one where nothing may be drilled; children or pets who pull.
    wiring : str
        The country whose usage says where cables are laid; ``not-known``: only straight from boxes.
    floor_to_come : Length or None
        Thickness of a floor still to be laid.
    fullness_rule : str
        What fullness multiplies: ``all`` (rod, overlap and returns), ``rod`` (returns and hems added after), ``fixed`` (a
        fixed sum added), ``narrower`` (as all, each width less its selvedges).
    one_height : bool
        The rods of all its walls are wished at one height.
    tug_kg : float or None
        What somebody who tugs at a panel adds to a bracket, as the mass that pulls as hard; None takes the usual figure.
    limits : dict
        Limits of rules that this room overrides, by the limit's id.
    rows : dict
        Rows of somebody's own tables that the room names, so that it opens wherever it is sent: by table and id, cells by
        the titles of their columns.
    walls : tuple of Wall
    """

    name: str = ""
    unit: Literal["in", "mm"] = "in"
    graduation: Length | None = None
    language: Literal["en", "de"] = "en"
    sleeping: bool = False
    no_holes: bool = False
    children: bool = False
    wiring: Literal["not-known", "uk", "de"] = "not-known"
    floor_to_come: Length | None = None
    fullness_rule: Literal["all", "rod", "fixed", "narrower"] = "all"
    one_height: bool = False
    tug_kg: float | None = None
    limits: dict[str, Length] = {}
    rows: dict[str, dict[str, dict[str, str]]] = {}
    walls: tuple[Wall, ...] = ()

    @property
    def graduation_mm(self) -> float:
        """The tape's smallest mark in mm."""
        if self.graduation is not None:
            return self.graduation.mm
        return 25.4 / 16 if self.unit == "in" else 1.0
