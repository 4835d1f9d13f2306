"""What was decided to hang: schemes, treatments, layers, rods, brackets and panels, as relations.

A treatment says what is held ("4 in above the casing"), not where that lands.
"""

# Annotations stay values here, not texts: a room is decoded by them, and reading them back took as long as the room.

from typing import Literal

from msgspec import Struct

from elevation.units import Length


class Held(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A place given by what is held, not by where it landed.

    ``hold`` of a rod's height: ``above-head``, ``above-casing``, ``below-ceiling``, ``above-floor``
    (centre line; head and casing of the highest covered opening, ceiling at its lowest along the rod);
    ``bracket-drop`` (``at`` below where brackets of the ceiling hold it); inside an opening ``below-head``, ``above-sill``
    and ``share-of-opening`` (``at`` above that ``share`` of its height, 0 to 1; the only hold with a share).
    ``hold`` of a rod's end: ``beyond-opening``, ``beyond-casing``, ``from-corner``, ``rod-length``, ``inside-opening``
    (inward from the jamb), ``around-corner`` (``at`` short of where its axis meets that of the neighbour wall's rod)
    (the end of the rod without finial; ``rod-length`` may stand at one end only: the other end holds the rod).
    ``hold`` of a bracket: ``from-left-end``, ``from-right-end`` (inward from that end of the rod),
    ``from-centre`` (signed, right positive), ``from-wall-left`` (a stud that was found).
    """

    hold: Literal[
        "above-head", "above-casing", "below-ceiling", "above-floor",
        "bracket-drop", "below-head", "above-sill", "share-of-opening",
        "beyond-opening", "beyond-casing", "from-corner", "around-corner", "rod-length", "inside-opening",
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
    there : bool
        It hung there before anything was planned: no new hole is drilled for it.
    fixing : str or None
        Row id in the fixings table; None takes the usual screw where the bracket stands on wood.
    pull_kg, shear_kg : float or None
        What one fixing may carry straight out of the wall and along it, as its packet says; they win over the row's.
    """

    id: str
    place: Held
    kit: str = "shop-strap"
    rings_pass: bool | None = None
    height: Length | None = None
    there: bool = False
    fixing: str | None = None
    pull_kg: float | None = None
    shear_kg: float | None = None


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
    weight_kg : float or None
        What one piece weighs on a scale, in kg, everything sewn on; wins over what its cloth would weigh.
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
    weight_kg: float | None = None


class Fabric(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """The cloth of a layer and what it is made of.

    Attributes
    ----------
    name, colour : str
        ``colour`` is ``#rrggbb``.
    body : str
        How thick it stacks: ``sheer``, ``light``, ``medium``, ``lined`` or ``interlined``.
    row : str or None
        Row id in the fabrics table; None: only its body is known.
    grams : float or None
        What a square metre of the face cloth weighs, typed; wins over the row's.
    lining, interlining : str or None
        Row ids in the fabrics table.
    width : Length or None
        As it is sold, edge to edge; wins over the row's.
    repeat : Length or None
        Of its pattern, up the cloth; None: plain.
    half_drop : bool
        The pattern steps by half a repeat from width to width.
    one_way : bool
        A print or pile that runs one way: never turned on its side.
    railroaded : bool
        Turned on its side, where it is wide enough for the drop.
    shrinks : float or None
        Part of its length that the first wash takes, 0 to 0.3; wins over the row's.
    pattern : str
        ``plain``, ``stripes`` (up the cloth), ``bands`` (across it), ``check`` (both), ``grid`` (fine lines both ways) or
        ``dots``.
    ink : str
        Colour of the pattern, ``#rrggbb``.
    repeat_across : Length or None
        Of its pattern, across the cloth; None: as up the cloth, and where that is not known either a usual one.
    """

    name: str = ""
    colour: str = "#b9704a"
    body: Literal["sheer", "light", "medium", "lined", "interlined"] = "light"
    row: str | None = None
    grams: float | None = None
    lining: str | None = None
    interlining: str | None = None
    width: Length | None = None
    repeat: Length | None = None
    half_drop: bool = False
    one_way: bool = False
    railroaded: bool = False
    shrinks: float | None = None
    pattern: Literal["plain", "stripes", "bands", "check", "grid", "dots"] = "plain"
    ink: str = "#f3ead8"
    repeat_across: Length | None = None


class Making(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """How the panels of a layer are made up, where something else than the usual is wished.

    Attributes
    ----------
    fullness : float or None
        Flat cloth over what it covers; None takes the heading's usual one.
    returns : bool
        The outer edges turn back to the wall.
    heading, hem : Length or None
        Cloth turned in there, all turns together.
    washed_first : bool
        The cloth is washed before it is cut, so it shrinks no more.
    settles : Length or None
        How much longer it hangs after some weeks; it is made that much shorter.
    """

    fullness: float | None = None
    returns: bool = False
    heading: Length | None = None
    hem: Length | None = None
    washed_first: bool = False
    settles: Length | None = None


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
    stack : Length or None
        Tracks: what one panel of a track this long stacks to.
    arm : Length or None
        Tracks: by how much its overlap arm lets the leading edges pass each other; zero: it has none.
    least_bend : Length or None
        Tracks: the least radius that it is bent to.
    """

    least: Length | None = None
    most: Length | None = None
    holds_kg: float | None = None
    spacing: Length | None = None
    stack: Length | None = None
    arm: Length | None = None
    least_bend: Length | None = None


class Rod(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What the cloth hangs on: a rod on brackets, a track, or a tension rod.

    Attributes
    ----------
    height, left, right : Held
    section : str
        Row id in the section table.
    diameter : Length or None
        Typed outer diameter; wins over the table's.
    wall : Length or None
        Typed wall of the tube, zero for a solid rod; wins over the table's.
    material : str or None
        Row id in the materials table; None takes the section's.
    projection : Length
        Wall's face to the rod's centre line; in a reveal and on a sash: the sash to the rod's centre line.
    ends : str
        Row id in the ends table (``bare``, ``cap``, ``ball-finial``, ``socket``, ``return`` ...).
    left_ends, right_ends : str or None
        Row id for that end alone where it ends in another way.
    left_fixing, right_fixing : str or None
        Row id in the fixings table: what holds an end that carries the rod (a socket, a tube bent back to the wall).
    stock : Length or None
        Longest piece at hand; None takes the section's.
    kind : str
        ``rod``; ``track``, whose glides run past its fixings; or ``tension-rod``, which presses between two jambs
        and has no brackets.
    packet : Packet
    overlap : Length or None
        By how much the leading edges of a pair overlap: only a track with an overlap arm can.
    tilt : str
        ``level``; parallel to the ``head`` (from the left corner of the first opening's to the right one of the last);
        parallel to the ``ceiling``; or ``split``, half way between these two. Held heights are the least along it; over
        the floor and the sill they are those of its middle.
    bend : Length or None
        What goes round corners in one piece: the radius that its axis is bent to there. None: cut and joined on the mitre.
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
    wall: Length | None = None
    material: str | None = None
    left_fixing: str | None = None
    right_fixing: str | None = None
    tilt: Literal["level", "head", "ceiling", "split"] = "level"
    bend: Length | None = None


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


class TieBack(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What gathers each panel of a layer to its own side, as far as it is drawn just now.

    Attributes
    ----------
    hold : str
        Its height: ``share-of-drop`` (``share`` of the drop, 0 to 1, up from the hem) or ``above-floor`` (``at``).
    share : float
    at : Length or None
    out : Length
        The hook's centre beyond the panel's fixed edge, away from the opening.
    waist : Length or None
        Width of the gathered cloth; None takes the panel's stack.
    kind : str
        ``loop`` of cord or cloth on a hook, or a fixed ``arm`` that the cloth is tucked behind.
    there : bool
        Its hooks or arms were in the wall before: nothing new is drilled for them.
    """

    hold: Literal["share-of-drop", "above-floor"] = "share-of-drop"
    share: float = 1 / 3
    at: Length | None = None
    out: Length = Length(50.8, "2 in")
    waist: Length | None = None
    kind: Literal["loop", "arm"] = "loop"
    there: bool = False


class Layer(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One plane of cloth on its own rod.

    ``drop`` is measured on her own rings or hooks: the rod's centre line down to the top of the cloth; None takes
    the heading's usual figure. ``built`` is what was read once its rod was hung.
    ``board`` is across sound fixings behind the brackets of a wall mount. ``tie`` gathers its panels.
    ``ring`` is the clear width of a ring or eyelet, measured.
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
    tie: TieBack | None = None
    making: Making = Making()
    ring: Length | None = None


class Pelmet(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What covers rod and heading from the front, with returns to the wall: a stiff board, or a valance of cloth.

    Attributes
    ----------
    kind : str
        ``board`` or ``valance`` (gathered, of the front layer's cloth).
    depth : Length
        From its top to its lower edge.
    above : Length
        Its top over the centre line of the highest rod.
    left, right : Length
        Its outside beyond the outermost rod ends (without finials).
    projection : Length
        The wall's face to its front.
    """

    depth: Length
    above: Length
    left: Length
    right: Length
    projection: Length
    kind: Literal["board", "valance"] = "board"


class Blind(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """A blind behind the treatment, one for each opening that it covers.

    Attributes
    ----------
    place : str
        Its box hangs in the ``reveal`` under the head, or on the ``wall`` above the casing.
    height, projection : Length
        Of the box; in the reveal the sash to the box's front, else the wall's face to it.
    width : Length or None
        Of the box, about the opening's middle; None: from jamb to jamb in the reveal, else as wide as the casing.
    above : Length
        On the wall: the box's lower edge above the casing (the head where uncased).
    drop : Length or None
        How far its cloth is let down just now, under the box; None: raised.
    cord : str
        ``none``; a ``loop`` of cord or chain that hangs free; a ``held-loop``, kept taut by a holder screwed to the wall;
        or ``cords`` with loose ends.
    cord_side : str
    """

    height: Length
    projection: Length
    place: Literal["reveal", "wall"] = "reveal"
    width: Length | None = None
    above: Length = Length(0.0, "0 in")
    drop: Length | None = None
    cord: Literal["none", "loop", "held-loop", "cords"] = "none"
    cord_side: Literal["left", "right"] = "right"


class Offer(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What a shop asks for a whole treatment, to compare with: price, currency as it is written, where and which day."""

    price: float
    currency: str = ""
    place: str = ""
    date: str = ""


class Treatment(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """What hangs before one or more openings; layers from front to back.

    ``mount``: brackets on the ``wall`` or the ``ceiling``; in the ``reveal`` between the jambs of one opening; or on the
    ``sash`` of one opening itself (a café curtain). A ``pelmet`` is left out of account inside an opening.

    ``continues`` is the id of the treatment on the wall to the left, in the scheme of the same id, that goes on round the
    corner as this one: the rods of both have one height, projection and section, and those of the first one count.

    ``offer`` is what a shop asks for all of it.
    """

    id: str
    openings: tuple[str, ...]
    layers: tuple[Layer, ...]
    name: str = ""
    mount: Literal["wall", "ceiling", "reveal", "sash"] = "wall"
    continues: str | None = None
    pelmet: Pelmet | None = None
    blind: Blind | None = None
    offer: Offer | None = None


class Scheme(Struct, frozen=True, gc=False, forbid_unknown_fields=True, omit_defaults=True):
    """One way to dress the wall.

    ``clear_glass_to`` is the scheme's own stated goal: glass covered per side when open, at most.
    """

    id: str
    name: str = ""
    treatments: tuple[Treatment, ...] = ()
    clear_glass_to: Length | None = None
