"""What stands on a wall, set out: plain numbers in mm, wall coordinates (x right, y up).

``None`` means that a fact it depends on has not been measured.
"""

from __future__ import annotations

from msgspec import Struct

from elevation.room.model import Ref
from elevation.words import Message

Point = tuple[float, float]
Span = tuple[float, float]


class Profile(Struct, frozen=True, gc=False):
    """A line along the wall given by points with rising x; straight between, level beyond its ends.

    ``known`` is False where nothing was measured and the points are only there to draw (dashed).
    """

    points: tuple[Point, ...]
    known: bool = True


class LinkOut(Struct, frozen=True, gc=False):
    """One link of the measuring chain along the wall, in order from the left.

    Attributes
    ----------
    key : str
        ``gap:ID`` (before that opening), ``casing-left:ID``, ``width:ID``, ``casing-right:ID``, ``gap-right``.
    ref : Ref
        The opening (or wall) it belongs to.
    left_mm, right_mm : float
        Where it stands.
    typed : bool
        It was measured; otherwise it was worked out.
    """

    key: str
    ref: Ref
    left_mm: float
    right_mm: float
    typed: bool


class ChainOut(Struct, frozen=True, gc=False):
    """The measuring chain resolved.

    ``closing_error_mm`` is (sum of the typed links) minus (typed wall width) when everything was typed; where places typed
    from the wall's left end part the chain, that of the stretch that misses by most; where blank links are left, by how
    much the typed ones are too long for any room to be left. None where nothing can be compared.
    ``again`` are keys of the typed links to measure again, longest first, where it does not close.
    """

    links: tuple[LinkOut, ...]
    closing_error_mm: float | None = None
    again: tuple[str, ...] = ()


class OpeningOut(Struct, frozen=True, gc=False):
    """An opening where it stands.

    ``left_mm .. top_mm`` bound the clear opening (top at the crown of the head, its highest point).
    ``casing_top_mm`` is the casing's upper edge at the crown (the head where uncased).
    ``glass_area_mm2`` by formula; ``glass`` is the outline as one closed polygon (frame deducted), ``lites`` the
    glazing-bar lines. ``rise_mm`` is the arc's rise over the springing; ``left_top_mm`` and ``right_top_mm`` are the head's
    heights at the sides (the springing of an arc; a raked head rises from one to the other). ``casing_mm`` is zero where
    it was not measured, so nothing is reckoned from a guess.
    ``sweep`` are rectangles (left, bottom, right, top, out) that a moving sash or leaf needs in front of the
    wall, ``out`` mm deep (negative: behind the wall's face, in the reveal).
    ``known_casing`` False: drawn dashed. ``placed`` False: position assumed. ``head_rise_mm`` is how much higher a flat
    head was read at its right corner than at its left one.
    """

    ref: Ref
    number: int
    kind: str
    left_mm: float
    right_mm: float
    bottom_mm: float
    top_mm: float
    head: str
    rise_mm: float
    right_top_mm: float
    casing_mm: float
    casing_top_mm: float
    frame_mm: float
    glass_left_mm: float
    glass_right_mm: float
    glass_bottom_mm: float
    glass_top_mm: float
    glass_area_mm2: float
    glass: tuple[Point, ...]
    columns: int
    rows: int
    sash: str
    hinge: str
    handle_out_mm: float
    sweep: tuple[tuple[float, float, float, float, float], ...]
    stool: tuple[float, float, float] | None
    apron_mm: float
    reveal_mm: float | None
    escape: bool
    known_casing: bool
    placed: bool
    left_top_mm: float = 0.0
    handle_stands_mm: float | None = None
    shutter_box_mm: float = 0.0
    head_rise_mm: float = 0.0


class ObstacleOut(Struct, frozen=True, gc=False):
    """An obstacle where it stands; ``out_mm`` is its projection, ``clearance_mm`` its own sheet's figure."""

    ref: Ref
    kind: str
    name: str
    left_mm: float
    right_mm: float
    bottom_mm: float
    top_mm: float
    out_mm: float
    clearance_mm: float | None


class ZoneOut(Struct, frozen=True, gc=False):
    """Something that likely stands inside the wall, as a rectangle on its face.

    ``kind``: ``stud``, ``jack``, ``king``, ``header`` (wood or steel to fix to), ``lintel`` (drill hammer, hard to fix to),
    ``keep-off`` (too near a masonry edge), ``shutter-box`` (of a roller shutter: hollow, nothing
    holds there). ``ref`` is the opening it belongs to, else the wall; ``is_found`` where somebody
    found it, else it is only likely: to be confirmed with a probe.
    """

    kind: str
    ref: Ref
    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float
    is_found: bool = False


class BandOut(Struct, frozen=True, gc=False):
    """A stretch of wall where a cable or pipe likely runs: detect first. No place outside the bands is free for that.

    ``kind`` is ``cable`` or ``pipe``. ``ref`` is the obstacle that it feeds, or the opening or wall that it runs along;
    ``row`` the id in the table of bands where a country's usage says so, else empty. ``is_upright``: it runs up and down.
    """

    kind: str
    ref: Ref
    row: str
    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float
    is_upright: bool = False


class MissingFact(Struct, frozen=True):
    """A fact not measured yet, the thing it belongs to, and what cannot be known without it."""

    ref: Ref
    field: str
    text: Message


class CornerOut(Struct, frozen=True, gc=False):
    """The wall in a corner: its id, name and width, and the inside angle in degrees.

    ``openings`` are those on it: (near, far, reveal) as distances along it from the corner, and how deep its sash lies.
    """

    wall: str
    name: str
    width_mm: float
    angle: float
    openings: tuple[tuple[float, float, float], ...] = ()


class BesideOut(Struct, frozen=True, gc=False):
    """Something of the neighbour wall, in plan before this one.

    Attributes
    ----------
    side : str
        The corner it stands in: ``left`` or ``right``.
    wall : str
        Name of the wall that it belongs to.
    ref : Ref
        What it is.
    kind : str
        ``rod``, ``bracket``, ``panel`` (cloth in any position), ``sash`` (what a sash or door of that wall sweeps), or
        the kind of an obstacle.
    name : str
        As somebody called it.
    outline : tuple of Point
        Convex, seen from above: mm along this wall and out from its face.
    bottom_mm, top_mm : float
        Over this wall's datum.
    clearance_mm : float or None
        Heaters: their own sheet's figure.
    """

    side: str
    wall: str
    ref: Ref
    kind: str
    name: str
    outline: tuple[Point, ...]
    bottom_mm: float
    top_mm: float
    clearance_mm: float | None = None
