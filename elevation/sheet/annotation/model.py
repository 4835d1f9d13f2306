"""What annotation is laid from, and what comes out; paper mm along and outward from the wall's outline."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.model import Point
from elevation.sheet.records import Group, Ink

Side = Literal["bottom", "top", "left", "right"]
Box = tuple[float, float, float, float]

RUNGS = ("between", "beside", "staggered", "leader", "key")
"""The ladder, first wish first; the last always works."""

FIGURE = 3.8
"""Type size of figures, paper mm: figures are then 2.5 mm high, the ISO 3098 lettering for sheets up to A2."""


class Segment(Struct, frozen=True, gc=False):
    """One dimension before it has a place.

    Attributes
    ----------
    ref : Ref
        What it measures.
    field : str
        The form field it opens.
    low, high : float
        Its ends along the axis, wall mm, low first.
    low_from, high_from : float
        Where the measured outline is, across the axis, wall mm: the extension lines start there.
    texts : tuple of str
        The figure; where there is more than one, the fuller texts come first and the bare figure last.
    ink : str
        THIN, or ACCENT where a finding is about it.
    held : bool
        This is what the room file holds: it is marked.
    priority : int
        The higher climbs the ladder first.
    """

    ref: Ref
    field: str
    low: float
    high: float
    low_from: float
    high_from: float
    texts: tuple[str, ...]
    ink: str = Ink.THIN
    held: bool = False
    priority: int = 0


class Chain(Struct, frozen=True, gc=False):
    """Segments on one dimension line, in order, that belong to one treatment (or to the wall)."""

    owner: Ref
    segments: tuple[Segment, ...]

    @property
    def low(self) -> float:
        """Where the first segment starts, wall mm."""
        return min(segment.low for segment in self.segments)

    @property
    def high(self) -> float:
        """Where the last segment ends, wall mm."""
        return max(segment.high for segment in self.segments)


class Label(Struct, frozen=True, gc=False):
    """A figure that has found its place beside its dimension line, paper mm.

    Attributes
    ----------
    text : str
        The figure, or its key letter.
    figure : str
        The bare figure, also where ``text`` is a key letter.
    rung : str
    centre : float
        Along the line.
    near, far : float
        Its box outward from the line.
    width : float
    leader : tuple of float or None
        (along, outward, along, outward) of its leader.
    step : str
        The rung and which of its places, to be remembered at the next laying.
    """

    text: str
    figure: str
    rung: str
    centre: float
    near: float
    far: float
    width: float
    leader: tuple[float, float, float, float] | None = None
    step: str = ""


class KeyLine(Struct, frozen=True, gc=False):
    """One line of the key table: a letter and the figure it stands for."""

    letter: str
    figure: str


class Annotation(Struct, frozen=True, gc=False):
    """The annotation of a wall, laid for one scale.

    Attributes
    ----------
    groups : tuple of Group
        In wall coordinates: dimensions per treatment and one for the wall, held marks, findings.
    keys : tuple of KeyLine
        What the key table has to show.
    extent : Box
        Left, bottom, right, top of everything laid and of the wall, paper mm from the wall's origin.
    labels : tuple of (Box, str, str)
        Box (paper mm from the wall's origin), text and rung of every label; rung ``mark`` for finding marks.
    rungs : dict
        What each label did, by place: ``rung:detail``; to be passed in at the next laying so that labels stay there.
    unshown : tuple of (Ref, str)
        Facts that found no column, as text for the key table.
    """

    groups: tuple[Group, ...]
    keys: tuple[KeyLine, ...]
    extent: Box
    labels: tuple[tuple[Box, str, str], ...]
    rungs: dict[str, str]
    unshown: tuple[tuple[Ref, str], ...] = ()


def overlap(a: Box, b: Box, slack: float = 1e-6) -> bool:
    """Whether two boxes share area."""
    return a[0] < b[2] - slack and b[0] < a[2] - slack and a[1] < b[3] - slack and b[1] < a[3] - slack


def places_of(chain: Chain, line: str) -> list[str]:
    """A name for the place of each label of a chain, the same while it is dragged; the two casings of a window differ."""
    seen: dict[str, int] = {}
    names = []
    for segment in chain.segments:
        name = ":".join((line, "/".join(chain.owner), "/".join(segment.ref), segment.field))
        seen[name] = seen.get(name, 0) + 1
        names.append(f"{name}:{seen[name]}")
    return names


__all__ = [
    "FIGURE",
    "RUNGS",
    "Annotation",
    "Box",
    "Chain",
    "KeyLine",
    "Label",
    "Point",
    "Segment",
    "Side",
    "overlap",
    "places_of",
]
