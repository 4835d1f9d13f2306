"""Typed rows of the trade's tables, and the one frozen value that holds them all."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Sure = Literal["published", "one source", "common practice", "from memory"]


class HeadingRow(Struct, frozen=True, gc=False):
    """How cloth is made to hang.

    ``drop_mm``: top of the cloth below the centre line (negative: it stands above) of a rod of diameter ``rod_mm``;
    all cloth hangs from the rod's top, so ``drop_below`` says what it is on another one.
    ``pitch_mm``: flat cloth between two rings, hooks or pleats. ``carries``: ``rings`` slide on the rod and pass an
    open bracket; ``sleeve`` (pocket, tab, eyelet) never passes one. ``stack_*`` along the rod per 1371.6 mm
    (54 in) of flat cloth of body ``light``; ``stack_plus_mm`` once a panel. Lengths hang from the top of the cloth.
    ``folds`` is how many whole folds lie between two rings, eyelets, tabs or pleats; ``even``: their number is made
    even; ``parks_outside``: the outermost is held beyond the end bracket (a pocket's cloth stays inside it).
    ``datum``: what the drop to the hem is measured from. ``turned_in_mm``: cloth turned in at the heading. ``pleat_*``:
    flat cloth that one pleat takes up, ``space_*``: what lies between two; 0 where nothing is pleated. ``drawing`` is the
    kind of drawing; ``is_common`` False: offered a step away.
    """

    id: str
    name: str
    drop_mm: float
    pitch_mm: float
    carries: Literal["rings", "sleeve"]
    fullness_low: float
    fullness_typical: float
    fullness_high: float
    stack_low_mm: float
    stack_mm: float
    stack_high_mm: float
    stack_plus_mm: float
    stack_model: Literal["flat-on-rings", "pleated-on-cord"]
    source: str
    sure: Sure
    folds: float = 1.0
    even: bool = False
    parks_outside: bool = True
    rod_mm: float = 0.0
    datum: Literal["ring-eye", "rod-top", "cloth-top"] = "ring-eye"
    turned_in_mm: float = 0.0
    pleat_low_mm: float = 0.0
    pleat_high_mm: float = 0.0
    space_low_mm: float = 0.0
    space_high_mm: float = 0.0
    drawing: str = ""
    is_common: bool = True

    @property
    def is_pleated(self) -> bool:
        """Whether pleats are sewn in, that are counted and spaced."""
        return self.pleat_high_mm > 0

    def drop_below(self, diameter_mm: float) -> float:
        """Top of the cloth below the centre line of a rod of that diameter; without ``rod_mm`` the same for all."""
        return self.drop_mm if self.rod_mm == 0 else self.drop_mm - (diameter_mm - self.rod_mm) / 2


class SectionRow(Struct, frozen=True, gc=False):
    """A rod section: outer diameter, wall (0 for solid), longest stock, all mm."""

    id: str
    name: str
    material: str
    outer_mm: float
    wall_mm: float
    stock_mm: float
    source: str
    sure: Sure


class MaterialRow(Struct, frozen=True, gc=False):
    """What a rod is made of.

    ``elastic`` (modulus of elasticity), ``yields`` (where metal keeps a bend, where wood breaks) and ``bends_to`` (the most
    that a rod is bent to) in N/mm2, ``density`` in kg/m3; ``creep`` is the whole sag under a load that stays over the first
    one; ``looks`` is how it is drawn.
    """

    id: str
    name: str
    elastic: float
    density: float
    yields: float
    bends_to: float
    creep: float
    looks: str
    source: str
    sure: Sure


class BracketRow(Struct, frozen=True, gc=False):
    """A bracket kit: plate on the wall (width, above and below the rod's axis), width along the rod, rings pass or not.

    ``mount`` is what it is screwed to: ``wall``, ``ceiling``, ``sash``, or the front ``layer``'s bracket. A ceiling's
    bracket holds the rod's axis ``drop_mm`` below the ceiling; its plate's width is that along the rod, above and below
    are zero. ``holes_mm`` are its screws: over (negative: below) the rod's axis, under a ceiling along the rod from its
    middle.
    Its arm is a bar of steel, ``arm_wide_mm`` along the rod and ``arm_deep_mm`` high (0: not known, or no bar).
    ``holds_down``: the rod cannot be lifted out of it. ``out_mm`` is how far from the wall it holds the rod's axis (0: made
    to measure, or not known).
    """

    id: str
    name: str
    plate_width_mm: float
    plate_above_mm: float
    plate_below_mm: float
    width_mm: float
    rings_pass: bool
    source: str
    sure: Sure
    mount: Literal["wall", "ceiling", "sash", "layer"] = "wall"
    drop_mm: float = 0.0
    holes_mm: tuple[float, ...] = ()
    arm_wide_mm: float = 0.0
    arm_deep_mm: float = 0.0
    holds_down: bool = True
    out_mm: float = 0.0


class FixingRow(Struct, frozen=True, gc=False):
    """What holds a bracket: a wood screw, or an anchor.

    ``into``: ``wood``; ``board`` with a hollow behind it; ``board-steel`` (board and a thin steel stud); ``masonry``.
    ``pull_n`` and ``shear_n`` are what one may carry out of the wall and along it, in N, 0 where only the packet says;
    a screw's pull follows from ``diameter_mm``, ``length_mm`` and the wood; ``through_n`` is its shear with board between
    plate and wood. ``factor`` is how much more it breaks at. ``friction``: nothing but friction keeps it from pulling out.
    """

    id: str
    name: str
    into: Literal["wood", "board", "board-steel", "masonry"]
    diameter_mm: float
    length_mm: float
    pull_n: float
    shear_n: float
    through_n: float
    factor: float
    friction: bool
    drill: str
    source: str
    sure: Sure


class EndRow(Struct, frozen=True, gc=False):
    """How a rod ends: extra tube beyond the rod's end (bare ends), length and thickness of cap, finial or socket.

    A ``socket`` is screwed to a side wall or jamb and a ``return`` bends the tube back to the wall, on an arc of radius
    ``bend_mm`` (0: an elbow): both carry the rod, so no bracket is needed there. ``holes_mm`` are the screws
    that hold such an end over the rod's axis, ``plate_below_mm`` how far what lies on the wall reaches below that.
    """

    id: str
    name: str
    extra_tube_mm: float
    length_mm: float
    diameter_mm: float
    shape: Literal["none", "cap", "ball", "spear", "socket", "return"]
    source: str
    sure: Sure
    bend_mm: float = 0.0
    holes_mm: tuple[float, ...] = ()
    plate_below_mm: float = 0.0

    @property
    def carries(self) -> bool:
        """Whether the end itself carries the rod."""
        return self.shape in ("socket", "return")


class AllowanceRow(Struct, frozen=True, gc=False):
    """What is added to cloth before it is cut: a length in mm, all its turns together."""

    id: str
    name: str
    length_mm: float
    source: str
    sure: Sure


class ReadyMadeRow(Struct, frozen=True, gc=False):
    """A length that panels are sold in, by market (``in`` or ``mm``)."""

    id: str
    name: str
    market: Literal["in", "mm"]
    length_mm: float
    source: str
    sure: Sure


class ReadyWidthRow(Struct, frozen=True, gc=False):
    """A width that single panels are sold in, laid flat, by market (``in`` or ``mm``)."""

    id: str
    name: str
    market: Literal["in", "mm"]
    width_mm: float
    source: str
    sure: Sure


class BodyRow(Struct, frozen=True, gc=False):
    """How thick cloth stacks beside ``light``: the factor on stack figures of flat cloth, and on those of pleated cloth.

    ``grams`` is what a square metre of it weighs with its lining, as cloth of that body usually does.
    """

    id: str
    name: str
    stack_factor: float
    source: str
    sure: Sure
    pleated_factor: float = 1.0
    grams: float = 0.0


class FabricRow(Struct, frozen=True, gc=False):
    """A cloth: what a square metre weighs in grams, what it lets through, how wide it is sold, how it shrinks.

    ``kind``: ``face``, ``lining`` or ``interlining``. ``transmits`` is the part of daylight that passes it flat, 0 to
    1; ``shrinks`` the part of its length that the first wash takes. ``one_way``: pile or print runs one way, so it is never
    railroaded. ``body`` is the row of the bodies table that it stacks like, alone or with it behind the face.
    """

    id: str
    name: str
    kind: Literal["face", "lining", "interlining"]
    grams: float
    transmits: float
    width_mm: float
    shrinks: float
    one_way: bool
    body: str
    source: str
    sure: Sure


class SawRow(Struct, frozen=True, gc=False):
    """A tool that cuts bars: what one cut takes."""

    id: str
    name: str
    kerf_mm: float
    source: str
    sure: Sure


class RingRow(Struct, frozen=True, gc=False):
    """A ring that is sold: its bore, mm."""

    id: str
    name: str
    bore_mm: float
    source: str
    sure: Sure


class PackRow(Struct, frozen=True, gc=False):
    """How many of one kind of part (its id) come in one pack."""

    id: str
    name: str
    count: float
    source: str
    sure: Sure


class ToolRow(Struct, frozen=True, gc=False):
    """A tool or consumable, and what work asks for it."""

    id: str
    name: str
    kind: Literal["tool", "consumable"]
    when: Literal["always", "holes", "masonry", "cut", "rod", "metal", "cloth"]
    source: str
    sure: Sure


class DrillRow(Struct, frozen=True, gc=False):
    """A drill: its diameter (0: she has none of that size), and the measure that its set is sold in."""

    id: str
    name: str
    diameter_mm: float
    market: Literal["in", "mm"]
    source: str
    sure: Sure


class PriceRow(Struct, frozen=True, gc=False):
    """What a part (its id: ``bracket:shop-strap``) costs: ``price`` buys ``pack`` pieces, or so many mm (``is_length``)."""

    id: str
    price: float
    currency: str
    pack: float
    is_length: bool
    date: str
    place: str


class FlatRow(Struct, frozen=True, gc=False):
    """A flat bar that brackets are made of: width, thickness, the length it is sold in, mm."""

    id: str
    name: str
    wide_mm: float
    thick_mm: float
    stock_mm: float
    source: str
    sure: Sure


class BracketPartRow(Struct, frozen=True, gc=False):
    """A part of a bracket that is made at the bench.

    ``flat`` is what it is cut from (``none``: it is bought and counted); it is cut ``fixed_mm`` + ``projections`` times the
    way from plate to rod's axis + ``diameters`` times the rod's diameter long.
    """

    id: str
    name: str
    kit: str
    count: int
    flat: str
    fixed_mm: float
    projections: float
    diameters: float
    source: str
    sure: Sure


class FinishRow(Struct, frozen=True, gc=False):
    """A finish: coats on each side, hours between two, hours until something may hang on it."""

    id: str
    name: str
    coats: int
    between_hours: float
    hard_hours: float
    source: str
    sure: Sure


class ShelfRow(Struct, frozen=True, gc=False):
    """Something that lies on her own shelf: what part it is, how long one piece is (0: it is counted only), how many.

    ``part`` is its name in the buying list's table (``ring:ring-1-1/4``). A bar (``rod:conduit-3/4``) always has a length.
    """

    id: str
    part: str
    length_mm: float
    count: int


class SubstrateRow(Struct, frozen=True, gc=False):
    """What a wall is made of.

    ``build``: ``studs`` (something to fix to every so often), ``battens``, ``dabs``, ``masonry``, ``timber``, or
    ``unknown``. ``sounds`` under a knock; ``shows`` in an outlet's hole with the current off; ``pin`` pushed in;
    ``fix``: what usually holds. No load figure: it depends on what is really there.
    """

    id: str
    name: str
    build: Literal["unknown", "studs", "battens", "dabs", "masonry", "timber"]
    sounds: str
    shows: str
    pin: str
    fix: str
    source: str
    sure: Sure


class CutRow(Struct, frozen=True, gc=False):
    """How a section draws a wall of one substrate (its id): whole thickness, that of the face, and the hatching."""

    id: str
    name: str
    thick_mm: float
    face_mm: float
    hatch: Literal["plain", "cavity", "brick", "hollow", "aerated", "concrete", "timber"]
    source: str
    sure: Sure


class BandRow(Struct, frozen=True, gc=False):
    """Where a country usually lays cables: from ``near_mm`` to ``far_mm`` off ceiling, floor, corners or openings."""

    id: str
    name: str
    region: Literal["uk", "de"]
    side: Literal["ceiling", "floor", "corner", "opening"]
    near_mm: float
    far_mm: float
    authority: str
    source: str
    sure: Sure


class LimitRow(Struct, frozen=True, gc=False):
    """A limit of a rule: a length (mm), area (mm2), force (N), mass (kg) or ratio, with the words of its authority."""

    id: str
    name: str
    value: float
    kind: Literal["length", "area", "ratio", "force", "mass"]
    authority: str
    source: str
    sure: Sure


class Trade(Struct, frozen=True):
    """What the trade knows, as one value that is passed in; keys are row ids."""

    headings: dict[str, HeadingRow]
    sections: dict[str, SectionRow]
    brackets: dict[str, BracketRow]
    ends: dict[str, EndRow]
    ready_made: dict[str, ReadyMadeRow]
    bodies: dict[str, BodyRow]
    limits: dict[str, LimitRow]
    substrates: dict[str, SubstrateRow] = {}
    bands: dict[str, BandRow] = {}
    fabrics: dict[str, FabricRow] = {}
    saws: dict[str, SawRow] = {}
    allowances: dict[str, AllowanceRow] = {}
    cuts: dict[str, CutRow] = {}
    materials: dict[str, MaterialRow] = {}
    fixings: dict[str, FixingRow] = {}
    rings: dict[str, RingRow] = {}
    packs: dict[str, PackRow] = {}
    tools: dict[str, ToolRow] = {}
    ready_widths: dict[str, ReadyWidthRow] = {}
    prices: dict[str, PriceRow] = {}
    shelf: dict[str, ShelfRow] = {}
    flats: dict[str, FlatRow] = {}
    bracket_parts: dict[str, BracketPartRow] = {}
    finishes: dict[str, FinishRow] = {}
    drills: dict[str, DrillRow] = {}
