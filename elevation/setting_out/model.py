"""Where everything lands: plain numbers in mm, wall coordinates (x right, y up).

All values are floats in millimetres unless the name says otherwise. ``None`` means that a fact it
depends on has not been measured; ``SetOut.missing`` says which.
"""

from __future__ import annotations

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.carried import HoldOut, LoadsOut
from elevation.setting_out.standing import (
    BandOut,
    BesideOut,
    ChainOut,
    CornerOut,
    LinkOut,
    MissingFact,
    ObstacleOut,
    OpeningOut,
    Point,
    Profile,
    Span,
    ZoneOut,
)
from elevation.setting_out.worn import BlindOut, BoardOut, PelmetOut, TieOut
from elevation.words import Message

__all__ = [
    "BandOut",
    "BesideOut",
    "BlindOut",
    "BoardOut",
    "BracketOut",
    "ChainOut",
    "ClearancesOut",
    "CornerOut",
    "GlassOut",
    "LayerOut",
    "LinkOut",
    "MissingFact",
    "ObstacleOut",
    "OpeningOut",
    "PanelOut",
    "PelmetOut",
    "Point",
    "Profile",
    "ProportionOut",
    "SetOut",
    "Span",
    "SupportOut",
    "TieOut",
    "TreatmentOut",
    "WishOut",
    "ZoneOut",
]


class SupportOut(Struct, frozen=True, gc=False):
    """The rod: four places are kept apart (bracket centre, rod end, cut end, finial).

    ``left_mm``/``right_mm`` are the ends of the rod without finial; ``cut_left_mm``/``cut_right_mm`` where the tube is cut;
    ``metal_left_mm``/``metal_right_mm`` the outermost metal with finials. ``finial_mm`` is a finial's
    length, ``finial_diameter_mm`` its thickness. ``splices_mm`` are x of joints; ``splice_free`` those without a
    bracket. ``pieces`` is how many pieces of stock make the rod,
    ``material`` what it looks to be made of. ``projection_mm`` is the wall's face to the centre line
    (negative: in the reveal), ``from_sash_mm`` the sash to it, for mounts inside an opening. ``left_ends``
    and ``right_ends`` are the rows of the ends table on either side; ``carried`` tells at which of them a socket or a tube
    bent back to the wall carries the rod. A bent tube's cut length follows its middle line to the wall. ``drop_mm`` is
    how far below the ceiling brackets that are fixed to it hold the centre line.
    ``kind`` is ``rod``, ``track`` or ``tension-rod``. ``overlap_mm`` is what leading edges are asked to overlap by;
    ``least_mm``, ``most_mm``, ``holds_kg`` and ``spacing_mm`` are the packet's. ``planned_mm`` is the planned height of a
    rod that was read to hang at ``height_mm`` instead, ``line`` its axis where that is not level, as planned or
    through the readings. ``tilt`` is how steep it is planned, rise to the right over length; ``height_mm`` is then
    that of its middle. ``bend_mm`` is the radius it is bent to in the corners that it goes round in one piece,
    ``tangents_mm`` how far before the mitre its left and right straight then ends. ``stack_mm``, ``arm_mm`` and
    ``least_bend_mm`` are the packet's. ``sag_mm`` is that of the span that comes
    nearest its limit (or is farthest past it), below the line through its brackets and with panels where that is worst;
    ``sag_limit_mm`` is what looks neat there.
    """

    kind: str
    left_mm: float
    right_mm: float
    height_mm: float
    length_mm: float
    cut_left_mm: float
    cut_right_mm: float
    cut_length_mm: float
    metal_left_mm: float
    metal_right_mm: float
    diameter_mm: float
    projection_mm: float
    ends: str
    finial_mm: float
    finial_diameter_mm: float
    splices_mm: tuple[float, ...]
    splice_free: tuple[float, ...]
    pieces: int
    material: str = "steel"
    from_sash_mm: float | None = None
    left_ends: str = ""
    right_ends: str = ""
    carried: tuple[bool, bool] = (False, False)
    drop_mm: float = 0.0
    overlap_mm: float = 0.0
    least_mm: float | None = None
    most_mm: float | None = None
    holds_kg: float | None = None
    spacing_mm: float | None = None
    planned_mm: float | None = None
    line: Profile | None = None
    sag_mm: float | None = None
    sag_limit_mm: float | None = None
    tilt: float = 0.0
    bend_mm: float | None = None
    tangents_mm: tuple[float, float] = (0.0, 0.0)
    stack_mm: float | None = None
    arm_mm: float | None = None
    least_bend_mm: float | None = None

    @property
    def plan_mm(self) -> float:
        """Height of the centre line that follows from what is held, whatever was read after hanging."""
        return self.height_mm if self.planned_mm is None else self.planned_mm


class BracketOut(Struct, frozen=True, gc=False):
    """A bracket: centre ``x_mm``, rod centre ``height_mm`` there, plate (left, bottom, right, top) and what that is ``on``.

    A plate on the ``ceiling`` is seen edge-on; others are on the ``wall`` or the ``sash``, or there is none: the bracket of
    the front ``layer`` carries it. ``shift_mm`` is how far to the right of its planned place it was read to stand.
    ``is_there``: it hung there before, nothing is drilled for it.
    ``load_n`` is the most that hangs on it, ``uplift_n`` the most that the rod lifts on it (0: never), in N, with panels
    where that is worst; ``droop_mm`` is how far its arm gives under what hangs on it with the panels as drawn.
    ``out_mm`` is how far out its kit holds a rod (0: as one likes).
    ``fixing`` is the row of what holds it, ``holds_times`` how many times the worst load that holds, ``held`` the rest.
    """

    ref: Ref
    x_mm: float
    height_mm: float
    built: bool
    rings_pass: bool
    half_width_mm: float
    plate: tuple[float, float, float, float]
    kit: str
    on: str = "wall"
    shift_mm: float = 0.0
    is_there: bool = False
    out_mm: float = 0.0
    load_n: float | None = None
    uplift_n: float | None = None
    droop_mm: float = 0.0
    fixing: str = ""
    holds_times: float | None = None
    held: HoldOut | None = None


class PanelOut(Struct, frozen=True, gc=False):
    """A panel.

    ``travel`` are the stops it moves between. ``open``, ``closed`` and ``drawn`` are the (left, right) of
    the cloth in those positions. ``top_mm`` is the top of the cloth, ``heading_mm`` how far that is below the rod's
    centre line (negative: above). ``hem`` is the lower edge as drawn: (x, y) points left to right, following the floor
    where its target does. ``gap_low_mm``/``gap_high_mm`` least and greatest gap of hem to floor over all it travels.
    ``fullness`` is flat width over closed width (None for a stationary panel, and where closed it has no more room than its
    least stack).
    ``flat_width_mm`` is that of all its pieces together. ``hem_low_mm`` is the lowest height that the hem would
    reach if it hung free.
    ``cannot_pass`` are refs of brackets in its way, nearest first. ``parks_at_mm`` is the fixed edge of the stack.
    ``side`` is ``left`` or ``right``: which way the fixed edge lies. ``target_gap_mm`` is the wished gap of hem
    to floor (negative lies on it) where the target is the floor, else None.
    ``fold_count`` and ``fold_depth_mm`` belong to the closed position (front to back of a fold).
    ``mass_kg`` is what all its pieces weigh together (None: not known yet), ``mass_basis`` what that rests on.
    ``length_by`` says how a panel in hand is known by a length of its own: ``hung``, ``measured`` or ``label``; empty: it
    is still to be made.
    ``tie`` is how a tie-back gathers it as drawn. ``on_mm`` is how much more it covers, closed, beyond a corner that it
    passes on a bent track, ``on_open_mm`` open (a stack longer than its wall); ``shares`` is
    what part of it is before this wall, open, closed and as drawn (0 to 1).
    """

    ref: Ref
    flat_width_mm: float
    count: int
    finished_length_mm: float | None
    top_mm: float
    heading_mm: float
    side: str
    stationary: bool
    parks_at_mm: float
    travel: Span
    open: Span
    closed: Span
    drawn: Span
    rings: int
    fullness: float | None
    stack_low_mm: float
    stack_mm: float
    stack_high_mm: float
    stack_basis: Message
    fold_count: int
    fold_depth_mm: float
    hem: tuple[Point, ...]
    hem_low_mm: float
    gap_low_mm: float | None
    gap_high_mm: float | None
    target_gap_mm: float | None
    cannot_pass: tuple[Ref, ...]
    mass_kg: float | None = None
    mass_basis: Message | None = None
    length_by: str = ""
    tie: TieOut | None = None
    on_mm: float = 0.0
    on_open_mm: float = 0.0
    shares: tuple[float, float, float] = (1.0, 1.0, 1.0)

    def folds_over(self, position: str) -> int:
        """How many of its folds are before this wall, ``open``, ``closed`` or ``drawn``: all but what passes a corner."""
        share = dict(zip(("open", "closed", "drawn"), self.shares, strict=True))[position]
        return max(1, round(self.fold_count * share))

    def flat_over(self, position: str) -> float:
        """How much of its flat width is before this wall in that position, mm."""
        return self.flat_width_mm * dict(zip(("open", "closed", "drawn"), self.shares, strict=True))[position]


class WishOut(Struct, frozen=True, gc=False):
    """What a layer's cloth is wished to be and what is known of it, that rules compare with where it landed.

    ``ring_mm`` is the clear width of a ring or eyelet; ``shrinks`` the part of its length that the first wash will take on
    the rod (0: none known, or washed before); ``fullness`` and ``returns`` as wished, None and False where nothing is;
    ``hem_mm`` the height that a hem at sill or apron is wished at, ``length_mm`` a finished length that is wished.
    """

    ring_mm: float | None = None
    shrinks: float = 0.0
    fullness: float | None = None
    returns: bool = False
    hem_mm: float | None = None
    length_mm: float | None = None


class PatternOut(Struct, frozen=True, gc=False):
    """The pattern of a cloth: its kind and colour, its repeat across and up the flat cloth, in mm.

    ``half_drop``: it steps by half a repeat from one repeat to the next.
    """

    kind: str
    ink: str
    across_mm: float
    up_mm: float
    half_drop: bool = False


class LayerOut(Struct, frozen=True, gc=False):
    """One layer: support, brackets and panels, with heading, colour and body to draw them by.

    ``is_built``: something of it was read after hanging, and stands here in place of the plan.
    ``loads`` is None where what hangs is not known, or nothing carries the rod. ``guests`` are parts of panels of other
    legs that come before this wall round a bent track's corner, with those panels' refs.
    ``is_lined``: a lining hangs behind the face.
    """

    ref: Ref
    support: SupportOut
    brackets: tuple[BracketOut, ...]
    panels: tuple[PanelOut, ...]
    heading: str
    colour: str
    body: str
    is_built: bool = False
    board: BoardOut | None = None
    loads: LoadsOut | None = None
    wish: WishOut = WishOut()
    pattern: PatternOut | None = None
    guests: tuple[PanelOut, ...] = ()
    is_lined: bool = False


class GlassOut(Struct, frozen=True, gc=False):
    """Glass of all covered openings together; fractions 0 to 1.

    ``covered_left_mm``/``covered_right_mm``: stack over glass per side, open. ``support_to_clear_mm``: length of a rod
    that would leave all glass clear with these panels. ``light_blocking_mm``: width along the wall
    that the closed cloth covers. ``clear_drawn`` is for the panels as drawn just now.
    """

    area_mm2: float
    clear_open: float
    clear_closed: float
    clear_drawn: float
    stack_over_left_mm: float
    stack_over_right_mm: float
    support_to_clear_mm: float
    light_blocking_mm: float


class ClearancesOut(Struct, frozen=True, gc=False):
    """Distances from the rod's centre line and ends; the least along the rod where it varies.

    ``left_of_opening_mm``/``right_of_opening_mm``: rod's end without finial to the first and last covered opening;
    ``bracket_left_mm``/``bracket_right_mm``: outermost bracket centre to the same. ``head_to_ceiling_mm`` is the gap that
    the rod has to share (casing top, or head, to ceiling or crown, least over the covered openings).
    """

    above_opening_mm: float
    above_casing_mm: float
    below_ceiling_mm: float | None
    left_of_opening_mm: float
    right_of_opening_mm: float
    bracket_left_mm: float | None
    bracket_right_mm: float | None
    head_to_ceiling_mm: float | None
    hem_to_floor_low_mm: float | None
    hem_to_floor_high_mm: float | None


class TreatmentOut(Struct, frozen=True, gc=False):
    """A treatment where it lands. ``openings`` are those it covers, left to right.

    ``joined`` are the legs of it on the walls to the left and to the right, where it goes on round those corners.
    """

    ref: Ref
    name: str
    mount: str
    openings: tuple[OpeningOut, ...]
    layers: tuple[LayerOut, ...]
    glass: GlassOut
    clearances: ClearancesOut
    joined: tuple[Ref | None, Ref | None] = (None, None)
    pelmet: PelmetOut | None = None
    blinds: tuple[BlindOut, ...] = ()


class ProportionOut(Struct, frozen=True, gc=False):
    """One live proportion: a name, its parts (each a label and mm, in order), and a ratio to say."""

    name: Message
    parts: tuple[tuple[Message, float], ...]
    ratio: float


class SetOut(Struct, frozen=True, gc=False):
    """One wall dressed in one scheme.

    ``width_mm`` is assumed (``known_width`` False) where the wall was not measured. ``crown_mm`` and
    ``baseboard_mm`` are zero where absent or unknown. ``ends`` are the kinds (``corner``/``open``) left and right.
    ``zones`` are what likely stands inside the wall, left to right; ``bands`` where cables and pipes likely run.
    ``angles`` are the inside angles at its left and right end, ``corners`` the walls
    there where they are known, ``beside`` is what of them comes before this
    one.
    """

    wall: str
    wall_name: str
    scheme: str | None
    scheme_name: str
    width_mm: float
    known_width: bool
    ends: tuple[str, str]
    ceiling: Profile
    floor: Profile
    crown_mm: float
    baseboard_mm: float
    chain: ChainOut
    openings: tuple[OpeningOut, ...]
    obstacles: tuple[ObstacleOut, ...]
    treatments: tuple[TreatmentOut, ...]
    proportions: tuple[ProportionOut, ...]
    missing: tuple[MissingFact, ...]
    zones: tuple[ZoneOut, ...] = ()
    bands: tuple[BandOut, ...] = ()
    corners: tuple[CornerOut | None, CornerOut | None] = (None, None)
    angles: Span = (90.0, 90.0)
    beside: tuple[BesideOut, ...] = ()
