"""What the sewing sheet says, as plain data: bolts cut into pieces, panels with their lines and marks. All in mm."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from elevation.planning.piece_names import PanelName
from elevation.room.model import Ref
from elevation.trade.pleats import Pleats
from elevation.words import Message

Across = Literal["piece", "selvedge", "strip"]
"""What lies across the bolt: a piece; the edge that is no use; a strip that is left over."""
Along = Literal["place", "cut", "match", "left"]
"""What lies along it: cloth to find the pattern's first motif; pieces; half a repeat skipped; what is left over."""


class CutPiece(Struct, frozen=True, gc=False):
    """A piece of cloth cut from the bolt.

    Attributes
    ----------
    panel : PanelName
    number, count : int
        Which of how many pieces of that panel, from its leading edge.
    length_mm, width_mm : float
        As cut: along the panel and across it.
    trim_top_mm, trim_bottom_mm : float
        What is cut off its ends so that the pattern meets its neighbours.
    share : float
        The part of a width that it is: 1, 1/2; 0 where it is none (a strip, or cloth that runs through on its side).
    cut_edge : str
        The side of it, as it hangs, that was cut and is no selvedge: ``left``, ``right`` or empty.
    shift_mm : float
        How far up the pattern starts on it, against the panel's first piece.
    """

    panel: PanelName
    number: int
    count: int
    length_mm: float
    width_mm: float
    trim_top_mm: float = 0.0
    trim_bottom_mm: float = 0.0
    share: float = 1.0
    cut_edge: str = ""
    shift_mm: float = 0.0


class Area(Struct, frozen=True, gc=False):
    """A stretch across the bolt, from its edge at 0."""

    from_mm: float
    to_mm: float
    kind: Across
    piece: CutPiece | None = None


class Strip(Struct, frozen=True, gc=False):
    """A stretch along the bolt, from its square end at 0, and what lies across it."""

    from_mm: float
    to_mm: float
    kind: Along
    areas: tuple[Area, ...]


class BoltPlan(Struct, frozen=True):
    """One cloth for one room, laid out whole: strips from its square end on, which fill it.

    Attributes
    ----------
    name : Message
    use : str
        ``face``, ``lining`` or ``interlining``.
    width_mm : float
        From edge to edge.
    bought_mm : float
        As it is sold.
    washed : float
        The part of its length that the wash took before it was laid out; 0: it is cut as bought.
    repeat_mm : float
        Of its pattern as it is laid out; 0: plain.
    half_drop, one_way, turned : bool
        ``turned``: some of it is cut on its side.
    shrinks : float
        The part of its length that a wash will still take.
    strips : tuple of Strip
    """

    name: Message
    use: str
    width_mm: float
    bought_mm: float
    washed: float
    repeat_mm: float
    half_drop: bool
    one_way: bool
    turned: bool
    shrinks: float
    strips: tuple[Strip, ...]

    @property
    def length_mm(self) -> float:
        """Along the bolt, as it is laid out."""
        return self.strips[-1].to_mm if self.strips else 0.0

    @property
    def pieces(self) -> tuple[CutPiece, ...]:
        """Every piece, in the order in which they are cut."""
        return tuple(area.piece for strip in self.strips for area in strip.areas if area.piece is not None)


MarkKind = Literal["pleats", "rings", "eyelets", "tabs", "back-tabs", "hooks", "pocket"]


class Marks(Struct, frozen=True, gc=False):
    """What is marked along a heading, from the leading edge.

    Attributes
    ----------
    kind : str
    flat : tuple of float
        Middles of rings, eyelets, tabs or hooks on the panel as it lies flat.
    pleats : Pleats or None
    hooks : tuple of float
        Pleats: hooks along the finished heading, from edge to edge.
    """

    kind: MarkKind
    flat: tuple[float, ...] = ()
    pleats: Pleats | None = None
    hooks: tuple[float, ...] = ()


class Edge(Struct, frozen=True, gc=False):
    """One upright edge of a panel: its finished length there, and how deep its hem is."""

    finished_mm: float
    hem_mm: float


class SewnPanel(Struct, frozen=True):
    """A panel to be made.

    ``pieces`` are the face's from the leading edge; ``lining`` and ``interlining`` likewise. ``left`` and ``right`` are its
    edges as it hangs; ``cut_mm`` is heading, finished length and hem together, the same at both. ``apart_mm`` is the flat
    cloth between two marks, 0 where there are none. ``drawn_mm`` is the flat cloth that the room's panel was drawn with.
    """

    ref: Ref
    name: PanelName
    side: str
    pieces: tuple[CutPiece, ...]
    lining: tuple[CutPiece, ...]
    interlining: tuple[CutPiece, ...]
    hemmed_mm: float
    finished_mm: float
    heading_mm: float
    cut_mm: float
    left: Edge
    right: Edge
    side_hem_mm: float
    marks: Marks
    apart_mm: float
    drawn_mm: float


Remedy = Literal["as-it-is", "fine", "measure", "shorten", "turn-up", "lift", "short", "unknown"]


class Alteration(Struct, frozen=True):
    """What a ready-made panel needs.

    Attributes
    ----------
    ref : Ref
    name : PanelName
    side : str
    count : int
        Pieces of it that hang side by side.
    width_mm : float
        Of one piece, flat.
    has_mm : float or None
        How long it is; None where nobody knows.
    by : str
        How that is known: ``hung``, ``measured`` or ``label``.
    off_mm : float
        By how much a label may be wrong.
    left, right : Edge or None
        What is wished at its edges as it hangs, and the hem's depth there; None where nothing is to be sewn.
    cut_mm : float or None
        Where it is cut, level, from its top; None: nothing is cut off.
    what : str
        ``as-it-is`` and ``fine``: nothing is sewn; ``measure``: only a label says how long it is; ``shorten``: fold, cut,
        hem; ``turn-up``: too little to cut, its own hem is turned up; ``lift``: too little to fold; ``short``: too short.
    by_mm : float
        ``lift`` and ``short``: by how much, where that is most.
    gap_low_mm, gap_high_mm : float or None
        As it hangs now: hem to floor.
    marks : Marks or None
        Where clips go.
    wash : float
        Part of its length that the first wash may take.
    """

    ref: Ref
    name: PanelName
    side: str
    count: int
    width_mm: float
    has_mm: float | None
    by: str
    off_mm: float
    left: Edge | None
    right: Edge | None
    cut_mm: float | None
    what: Remedy
    by_mm: float
    gap_low_mm: float | None
    gap_high_mm: float | None
    marks: Marks | None
    wash: float
