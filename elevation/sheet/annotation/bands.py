"""Dimension lines stacked outward from one side of the wall, nearest first.

Each slot of a side holds one dimension line: the chains in it do not meet along the wall, and each chain's labels keep to
its own part of the line, so that what one treatment does never moves the label of another.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.model import Point
from elevation.sheet.annotation.ladder import CLEAR, PAST, STROKE, Line, Rows, climb
from elevation.sheet.annotation.model import FIGURE, Box, Chain, Label, Segment, Side, places_of
from elevation.sheet.records import Dimension

FIRST = 10.0
"""First dimension line from the outline, paper mm."""
STEP = 7.0
"""Next dimension lines, at least."""
APART = 9.0
"""Two chains share a line only if they are this far apart, paper mm."""

Slot = tuple[Chain, ...]


class Frame(Struct, frozen=True, gc=False):
    """How a side's (along, outward) turn into wall coordinates.

    Attributes
    ----------
    side : str
    outline : float
        Where the side's outline is, paper mm from the wall's origin.
    scale : float
        Wall mm for one paper mm.
    """

    side: Side
    outline: float
    scale: float

    @property
    def along(self) -> str:
        """The axis that its dimensions measure."""
        return "x" if self.side in ("bottom", "top") else "y"

    def across(self, outward: float) -> float:
        """Paper coordinate across the axis, from the distance outward."""
        return self.outline + outward if self.side in ("top", "right") else self.outline - outward

    def paper(self, along: float, outward: float) -> Point:
        """Paper point from the wall's origin."""
        across = self.across(outward)
        return (along, across) if self.along == "x" else (across, along)

    def wall(self, along: float, outward: float) -> Point:
        """Wall point."""
        x, y = self.paper(along, outward)
        return x * self.scale, y * self.scale

    def box(self, low: float, high: float, near: float, far: float) -> Box:
        """Paper box from the wall's origin."""
        one, other = self.paper(low, near), self.paper(high, far)
        return min(one[0], other[0]), min(one[1], other[1]), max(one[0], other[0]), max(one[1], other[1])


class Laid(Struct, frozen=True, gc=False):
    """One dimension with its label in place."""

    owner: Ref
    side: Side
    segment: Segment
    label: Label
    line: float
    box: Box
    place: str


class SideOut(Struct, frozen=True, gc=False):
    """A side laid: its dimensions, where its lines run (outward), and how far out it reaches, paper mm."""

    frame: Frame
    laid: tuple[Laid, ...]
    lines: tuple[float, ...]
    depth: float


def share(chains: Sequence[Chain], scale: float) -> tuple[Slot, ...]:
    """Chains on as few lines as they need: each takes the first line on which it keeps its distance."""
    slots: list[list[Chain]] = []
    for chain in sorted(chains, key=lambda chain: (chain.low, chain.high)):
        for slot in slots:
            if chain.low - slot[-1].high >= APART * scale:
                slot.append(chain)
                break
        else:
            slots.append([chain])
    return tuple(tuple(slot) for slot in slots)


def lay_side(
    frame: Frame, slots: Sequence[Slot], bounds: tuple[float, float], letter_room: float, previous: Mapping[str, str]
) -> SideOut:
    """Stack the slots of a side and give every dimension its label.

    Parameters
    ----------
    frame : Frame
    slots : sequence of Slot
        Nearest to the wall first.
    bounds : (float, float)
        Labels stay within, along the side, paper mm.
    letter_room : float
        Room of a key letter.
    previous : mapping
        Rungs of the last laying by place.
    """
    rows = Rows(frame.side in ("top", "left"))
    laid: list[Laid] = []
    lines: list[float] = []
    line = FIRST
    for index, (slot, crossing) in enumerate(zip(slots, _crossings(slots, frame.scale), strict=True)):
        depth = PAST
        for place, chain in enumerate(slot):
            part = _part(slot, place, bounds, frame.scale)
            ends = tuple((segment.low / frame.scale, segment.high / frame.scale) for segment in chain.segments)
            names = places_of(chain, f"{frame.side}{index}")
            labels = climb(
                Line(chain.segments, ends, part, _near(crossing, part), letter_room),
                rows,
                tuple(previous.get(name) for name in names),
            )
            for segment, label, name in zip(chain.segments, labels, names, strict=True):
                low, high = label.centre - label.width / 2, label.centre + label.width / 2
                box = frame.box(low, high, line + label.near, line + label.far)
                laid.append(Laid(chain.owner, frame.side, segment, label, line, box, name))
                depth = max(depth, label.far)
        lines.append(line)
        inward = STROKE + 0.4 if rows.above_is_out else -rows.box(0)[0]
        reach = line + depth
        line += max(STEP, depth + 0.9 + inward)
    return SideOut(frame, tuple(laid), tuple(lines), reach if slots else 0.0)


def _crossings(slots: Sequence[Slot], scale: float) -> list[tuple[float, ...]]:
    """For each slot where the extension lines of the slots outside it cross it, in order."""
    places: set[float] = set()
    crossings = []
    for slot in reversed(slots):
        crossings.append(tuple(sorted(places)))
        for chain in slot:
            for segment in chain.segments:
                places.add(round(segment.low / scale, 4))
                places.add(round(segment.high / scale, 4))
    return crossings[::-1]


def _near(crossing: tuple[float, ...], part: tuple[float, float]) -> tuple[float, ...]:
    # Lines elsewhere along the wall hinder nothing here, and this way their moving does not lay these labels again.
    return crossing[bisect_left(crossing, part[0] - CLEAR) : bisect_right(crossing, part[1] + CLEAR)]


def _part(slot: Slot, place: int, bounds: tuple[float, float], scale: float) -> tuple[float, float]:
    low = (slot[place - 1].high + slot[place].low) / 2 / scale + 0.5 if place else bounds[0]
    high = (slot[place].high + slot[place + 1].low) / 2 / scale - 0.5 if place + 1 < len(slot) else bounds[1]
    return low, high


def dimension(item: Laid, frame: Frame, text: str) -> Dimension:
    """The record of a laid dimension; ``text`` is its figure or its key letter."""
    segment, label, scale = item.segment, item.label, frame.scale
    along_x = frame.along == "x"
    a = (segment.low, segment.low_from) if along_x else (segment.low_from, segment.low)
    b = (segment.high, segment.high_from) if along_x else (segment.high_from, segment.high)
    baseline = Rows(frame.side in ("top", "left")).baseline(label.near, label.far)
    leader: tuple[Point, ...] = ()
    if label.leader is not None:
        s1, t1, s2, t2 = label.leader
        leader = (frame.wall(s1, item.line + t1), frame.wall(s2, item.line + t2))
    return Dimension(
        segment.ref,
        segment.field,
        a,
        b,
        "x" if along_x else "y",
        frame.across(item.line) * scale,
        text,
        frame.wall(label.centre, item.line + baseline),
        label.rung,
        FIGURE,
        leader,
        segment.ink,
    )
