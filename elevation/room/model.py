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

from elevation.units import Length

Ref = tuple[str, ...]


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


class Held(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A place given by what is held, not by where it landed.

    ``hold`` of a rod's height: ``above-head``, ``above-casing``, ``below-ceiling``, ``above-floor``
    (centre line; head and casing of the highest covered opening, ceiling at its lowest along the rod);
    ``bracket-drop`` (``at`` below where brackets of the ceiling hold it); inside an opening ``below-head``, ``above-sill``
    and ``share-of-opening`` (``at`` above that ``share`` of its height, 0 to 1; the only hold with a share).
    ``hold`` of a rod's end: ``beyond-opening``, ``beyond-casing``, ``from-corner``, ``rod-length``, ``inside-opening``
    (inward from the jamb)
    (the end of the rod without finial; ``rod-length`` may stand at one end only: the other end holds the rod).
    ``hold`` of a bracket: ``from-left-end``, ``from-right-end`` (inward from that end of the rod),
    ``from-centre`` (signed, right positive), ``from-wall-left`` (a stud that was found).
    """

    hold: Literal[
        "above-head", "above-casing", "below-ceiling", "above-floor",
        "bracket-drop", "below-head", "above-sill", "share-of-opening",
        "beyond-opening", "beyond-casing", "from-corner", "rod-length", "inside-opening",
        "from-left-end", "from-right-end", "from-centre", "from-wall-left",
    ]  # fmt: skip
    at: Length
    share: float = 0.0


class Hem(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """Where the hem should be.

    ``target``: ``sill`` and ``apron`` (``at`` above (sill) or below (apron)), ``clear`` (``at`` over the floor), ``kiss``,
    ``break`` and ``puddle`` (``at`` of extra cloth on the floor), ``length`` (``at`` is the finished
    length), ``panel`` (the panel in hand hangs as long as it is).
    """

    target: Literal["sill", "apron", "clear", "kiss", "break", "puddle", "length", "panel"] = "clear"
    at: Length | None = None


class Bracket(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One support of the rod.

    Attributes
    ----------
    id : str
    place : Held
    kit : str
        Row id in the bracket table.
    rings_pass : bool or None
        Whether rings can slide past; None takes the kit's own answer.
    height : Length or None
        As built: centre of the rod at this bracket over the datum, measured after hanging.
    """

    id: str
    place: Held
    kit: str = "shop-strap"
    rings_pass: bool | None = None
    height: Length | None = None


class Panel(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """Cloth that moves (or stays) as one.

    Attributes
    ----------
    id : str
    flat_width : Length
        Width of one piece laid flat, between its finished edges.
    count : int
        Pieces hung side by side that move as one panel.
    parks : str
        Where it stands when open: ``left``, ``right`` (the rod's ends), or ``left-of:ID`` / ``right-of:ID``
        of a bracket.
    stationary : bool
        It never draws.
    label_length, measured_length : Length or None
        Length as the packet says; as measured, top edge to hem. The measured one wins.
    hung_length : Length or None
        As built: top edge to hem as it hangs; wins over both.
    drawn : Length or None
        Width along the rod that it covers just now; None is fully open.
    stack : Length or None
        Its stack squeezed together by hand and measured; overrides every table.
    """

    id: str
    flat_width: Length
    count: int = 1
    parks: str = "left"
    stationary: bool = False
    label_length: Length | None = None
    measured_length: Length | None = None
    drawn: Length | None = None
    stack: Length | None = None
    hung_length: Length | None = None


class Fabric(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """The cloth: a name, a colour ``#rrggbb`` and a body (``sheer``, ``light``, ``medium``, ``lined``, ``interlined``)."""

    name: str = ""
    colour: str = "#b9704a"
    body: Literal["sheer", "light", "medium", "lined", "interlined"] = "light"


class Packet(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What a support's own packet or sheet says; None where it was not read.

    Attributes
    ----------
    least, most : Length or None
        Tension rods: the openings that it fits, from jamb to jamb.
    holds_kg : float or None
        Tension rods: what may hang on it, in kg.
    spacing : Length or None
        Tracks: the farthest from one fixing to the next.
    """

    least: Length | None = None
    most: Length | None = None
    holds_kg: float | None = None
    spacing: Length | None = None


class Rod(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What the cloth hangs on: a rod on brackets, a track, or a tension rod.

    Attributes
    ----------
    height, left, right : Held
    section : str
        Row id in the section table.
    diameter : Length or None
        Typed outer diameter; wins over the table's.
    projection : Length
        Wall's face to the rod's centre line; in a reveal and on a sash: the sash to the rod's centre line.
    ends : str
        Row id in the ends table (``bare``, ``cap``, ``ball-finial``, ``socket``, ``return`` ...).
    left_ends, right_ends : str or None
        Row id for that end alone where it ends in another way.
    stock : Length or None
        Longest piece at hand; None takes the section's.
    kind : str
        ``rod``; ``track``, whose glides run past its fixings; or ``tension-rod``, which presses between two jambs
        and has no brackets.
    packet : Packet
    overlap : Length or None
        By how much the leading edges of a pair overlap: only a track with an overlap arm can.
    """

    height: Held
    left: Held
    right: Held
    section: str = "conduit-3/4"
    diameter: Length | None = None
    projection: Length = Length(88.9, "3 1/2 in")
    ends: str = "ball-finial"
    left_ends: str | None = None
    right_ends: str | None = None
    stock: Length | None = None
    kind: Literal["rod", "track", "tension-rod"] = "rod"
    packet: Packet = Packet()
    overlap: Length | None = None


class Built(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What the tape read once a rod was hung; None where it was not read.

    Attributes
    ----------
    floor_left, floor_middle, floor_right : Length or None
        Underside of the rod down to the floor: at the left end bracket (or rod end), midway, at the right one.
    bracket_to_bracket : Length or None
        Centre of the left end bracket to that of the right one.
    """

    floor_left: Length | None = None
    floor_middle: Length | None = None
    floor_right: Length | None = None
    bracket_to_bracket: Length | None = None


class Board(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A mounting board on the wall that carries the brackets; its thickness adds to the rod's projection.

    ``left`` and ``right``: beyond the centres of the end brackets. ``height`` is that of its face on the wall; it stands
    behind the middle of the brackets' plates.
    """

    left: Length
    right: Length
    height: Length = Length(139.7, "5 1/2 in")
    thickness: Length = Length(19.05, "3/4 in")


class Layer(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One plane of cloth on its own rod.

    ``drop`` is measured on her own rings or hooks: the rod's centre line down to the top of the cloth; None takes
    the heading's usual figure. ``built`` is what was read once its rod was hung.
    ``board`` is across sound fixings behind the brackets of a wall mount.
    """

    id: str
    rod: Rod
    brackets: tuple[Bracket, ...] = ()
    heading: str = "clip-rings"
    drop: Length | None = None
    fabric: Fabric = Fabric()
    hem: Hem = Hem()
    panels: tuple[Panel, ...] = ()
    built: Built = Built()
    board: Board | None = None


class Treatment(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What hangs before one or more openings; layers from front to back.

    ``mount``: brackets on the ``wall`` or the ``ceiling``; in the ``reveal`` between the jambs of one opening; or on the
    ``sash`` of one opening itself (a café curtain).
    """

    id: str
    openings: tuple[str, ...]
    layers: tuple[Layer, ...]
    name: str = ""
    mount: Literal["wall", "ceiling", "reveal", "sash"] = "wall"


class Scheme(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One way to dress the wall.

    ``clear_glass_to`` is the scheme's own stated goal: glass covered per side when open, at most.
    """

    id: str
    name: str = ""
    treatments: tuple[Treatment, ...] = ()
    clear_glass_to: Length | None = None


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
    one_height : bool
        The rods of all its walls are wished at one height.
    limits : dict
        Limits of rules that this room overrides, by the limit's id.
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
    one_height: bool = False
    limits: dict[str, Length] = {}
    walls: tuple[Wall, ...] = ()

    @property
    def graduation_mm(self) -> float:
        """The tape's smallest mark in mm."""
        if self.graduation is not None:
            return self.graduation.mm
        return 25.4 / 16 if self.unit == "in" else 1.0
