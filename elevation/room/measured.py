"""What the tape says of a wall: its outline, openings and what stands on or before it.

``None`` means *not measured yet*, never zero; a zero length means *measured, there is none*.
"""

# Annotations stay values here, not texts: a room is decoded by them, and reading them back took as long as the room.

from typing import Literal

from msgspec import Struct

from elevation.units import Length


class Station(Struct, frozen=True, gc=False, forbid_unknown_fields=True):
    """One point of a ceiling or floor profile: at ``x`` from the left end, ``height`` over the datum."""

    x: Length
    height: Length


class WallEnd(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """How the wall ends: in an inside corner, or open.

    Attributes
    ----------
    kind : str
        ``"corner"`` (a neighbour wall stands there) or ``"open"`` (nothing in the way).
    neighbour : str or None
        Id of the neighbour wall.
    angle : float
        Inside angle in degrees.
    """

    kind: Literal["corner", "open"] = "corner"
    neighbour: str | None = None
    angle: float = 90.0


class Head(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """The upper edge of an opening.

    Attributes
    ----------
    kind : str
        ``flat``; ``segmental`` (a circular arc that rises by ``rise`` over the springing);
        ``half-round`` (rise is half the width); ``raked`` (a slope from the left to the right side).
    rise : Length or None
        Segmental only: rise of the arc. The opening's height is measured to the arc's crown.
    right_height : Length or None
        Raked only: height of the right side over the sill; the opening's ``height`` is the left side's.
    """

    kind: Literal["flat", "segmental", "half-round", "raked"] = "flat"
    rise: Length | None = None
    right_height: Length | None = None


class Stool(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """The ledge at the sill: thickness, how far it runs past the casing (horn), how far it stands out."""

    thickness: Length
    horn: Length
    projection: Length


class Sash(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """How the sash or leaf moves.

    Attributes
    ----------
    kind : str
        ``fixed``, ``double-hung``, ``sliding``, ``casement-in``, ``casement-out``, ``tilt-in``, ``swing-in``,
        ``swing-out`` (the last two for doors).
    hinge : str
        ``left``, ``right`` or ``both`` (two leaves); meaningless for those that slide.
    handle_out : Length or None
        How far the handle stands out from the wall's face.
    handle_stands : Length or None
        How far the handle stands out from the sash itself: what hangs in the reveal has to pass it.
    """

    kind: Literal["fixed", "double-hung", "sliding", "casement-in", "casement-out", "tilt-in", "swing-in", "swing-out"] = (
        "fixed"
    )
    hinge: Literal["left", "right", "both"] = "left"
    handle_out: Length | None = None
    handle_stands: Length | None = None


class Readings(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """An opening measured in several places, as the tape read it; None where it was not.

    Attributes
    ----------
    width_top, width_middle, width_bottom : Length or None
        Between the jambs.
    height_left, height_middle, height_right : Length or None
        From sill (or floor) to head.
    diagonal_rising, diagonal_falling : Length or None
        From the lower left corner up to the right; from the upper left one down to the right.
    """

    width_top: Length | None = None
    width_middle: Length | None = None
    width_bottom: Length | None = None
    height_left: Length | None = None
    height_middle: Length | None = None
    height_right: Length | None = None
    diagonal_rising: Length | None = None
    diagonal_falling: Length | None = None


class Opening(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A window or door in the wall.

    Attributes
    ----------
    id : str
    kind : str
        ``window``, ``door`` or ``sliding-door``.
    left : Length or None
        From the wall's left end to the opening's left side.
    gap : Length or None
        From the previous opening's casing (or the wall's left end) to this opening's casing.
        Either of ``left`` and ``gap`` places the opening; with neither it is worked out from the chain.
    width, height : Length
        Between the jambs; from sill (or floor) to the highest point of the head
        (raked: to the head at the left side).
    sill : Length
        Height of the opening's lower edge over the datum; zero for doors.
    head : Head
    casing : Length or None
        Width of the trim around it; zero for none; None where not measured.
    stool : Stool or None
    apron : Length or None
        Height of the board under the stool.
    reveal : Length or None
        Depth from the wall's face to the sash.
    frame : Length or None
        From the opening's edge to the glass, all round; None: glass is taken as the opening.
    columns, rows : int
        Lites across and up.
    sash : Sash
    escape : bool
        The window a sleeper would climb out of.
    shutter_box : Length or None
        How high the box of a roller shutter stands in the wall over the head: nothing holds a fixing there.
    taken : Readings
        The readings that ``width`` and ``height`` were chosen from.
    """

    id: str
    width: Length
    height: Length
    kind: Literal["window", "door", "sliding-door"] = "window"
    left: Length | None = None
    gap: Length | None = None
    sill: Length = Length(0.0, "0 mm")
    head: Head = Head()
    casing: Length | None = None
    stool: Stool | None = None
    apron: Length | None = None
    reveal: Length | None = None
    frame: Length | None = None
    columns: int = 1
    rows: int = 1
    sash: Sash = Sash()
    escape: bool = False
    taken: Readings = Readings()
    shutter_box: Length | None = None


ObstacleKind = Literal[
    "outlet", "switch", "light", "hot-water-radiator", "electric-heater", "fan-heater", "portable-heater",
    "flame-heater", "floor-register", "wall-register", "smoke-alarm", "shelf", "furniture", "picture", "pipe",
    "door-swing",
]  # fmt: skip


class Obstacle(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """Something on or before the wall that a rod, bracket or panel may meet.

    Attributes
    ----------
    id, kind, name : str
    left, bottom, width, height : Length
        Its outline on the wall; ``bottom`` over the datum.
    projection : Length
        How far it stands out from the wall's face.
        A ``door-swing`` is the region that a door of another wall sweeps against this one.
    clearance : Length or None
        Heaters: the distance that its own sheet asks for, where it is known.
    """

    id: str
    kind: ObstacleKind
    left: Length
    bottom: Length
    width: Length
    height: Length
    projection: Length = Length(0.0, "0 mm")
    name: str = ""
    clearance: Length | None = None
