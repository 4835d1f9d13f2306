"""Cloth that passes corners: a leg of a bent track without cloth of its own is closed by that of the outer legs.

All legs are one axis, from the first one's left end to the last one's right end, bends along their arcs. Where every panel
parks at one of these two ends the cloth draws along the whole of it; what of a panel comes on to another wall is its guest
there.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.corners import AROUND, run_of
from elevation.room.find import treatment_of
from elevation.room.model import Layer, Panel, Ref, Rod, Room, Treatment
from elevation.setting_out.facts import Defaults, Overhead, WallFacts
from elevation.setting_out.model import BracketOut, OpeningOut, PanelOut, Span, SupportOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.panels import Making, making_of, panels_of
from elevation.setting_out.support import ends_of
from elevation.setting_out.travel import Mover, Way, ways_of
from elevation.trade.folds import fold_depth
from elevation.trade.mitres import bend as bend_of
from elevation.trade.model import Trade
from elevation.trade.stack import stack_of
from elevation.trade.tables import row_of
from elevation.units.tolerance import TOUCH_MM

_LEAST_MM = 1.0


class Leg(Struct, frozen=True, gc=False):
    """One leg of a run: its treatment, and what its rod's ends follow from."""

    ref: Ref
    treatment: Treatment
    openings: tuple[OpeningOut, ...]
    overhead: Overhead


class Part(Struct, frozen=True, gc=False):
    """A panel's way on one wall; how much it covers along the track there, and in all, open, closed, as drawn, mm."""

    way: Way
    here: tuple[float, float, float]
    whole: tuple[float, float, float]


class Guest(Struct, frozen=True, gc=False):
    """What of another leg's panel comes before a wall, and the layer it hangs in."""

    ref: Ref
    layer: Layer
    panel: Panel
    part: Part


class Passing(Struct, frozen=True, gc=False):
    """What passes the corners of one layer: where its own panels go on this wall, and whose cloth comes here."""

    layer: str
    own: tuple[Part, ...]
    guests: tuple[Guest, ...]


NOBODY: tuple[Passing, ...] = ()


Stand = tuple[tuple[OpeningOut, ...], Overhead]
"""The openings that a leg covers, and what its rod knows of its wall."""


def passing_round(
    room: Room, ref: Ref, stands: Callable[[Ref, Treatment], Stand], defaults: Defaults, trade: Trade
) -> tuple[Passing, ...]:
    """What passes the corners of the leg at ``ref``, layer by layer.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment.
    stands : callable
        ``(ref, treatment) -> Stand`` of any leg of the run.
    defaults, trade
    """
    run = run_of(room, ref)
    first = treatment_of(room, run[0])
    is_bent = any(layer.rod.kind == "track" and layer.rod.bend is not None for layer in first.layers)
    if len(run) < 2 or not is_bent:
        return NOBODY
    legs: list[Leg] = []
    for one in run:
        treatment = treatment_of(room, one)
        openings, overhead = stands(one, treatment)
        if not openings:
            return NOBODY
        legs.append(Leg(one, treatment, openings, overhead))
    return passing_of(legs, run.index(ref[:3]), defaults, trade)


def passing_of(legs: Sequence[Leg], own: int, defaults: Defaults, trade: Trade) -> tuple[Passing, ...]:
    """What passes the corners of the leg at index ``own``, layer by layer; none where each leg has cloth of its own."""
    found = (_of_layer(legs, own, layer, defaults, trade) for layer in legs[0].treatment.layers)
    return tuple(one for one in found if one is not None)


def _of_layer(legs: Sequence[Leg], own: int, lead: Layer, defaults: Defaults, trade: Trade) -> Passing | None:
    layers = [next((one for one in leg.treatment.layers if one.id == lead.id), None) for leg in legs]
    if lead.rod.kind != "track" or lead.rod.bend is None:
        return None
    there = [layer for layer in layers if layer is not None]
    first, last = there[0], there[-1]
    if len(there) < len(legs) or all(layer.panels for layer in there) or any(layer.panels for layer in there[1:-1]):
        return None
    if any(p.parks != "left" or p.stationary for p in first.panels) or any(
        p.parks != "right" or p.stationary for p in last.panels
    ):
        return None
    axes = [_axis(leg, layer.rod, lead.rod) for leg, layer in zip(legs, there, strict=True)]
    start = sum(axis.long for axis in axes[:own])
    owners = [(0, panel) for panel in first.panels] + [(len(legs) - 1, panel) for panel in last.panels]
    movers = [_mover(there[number], panel, lead.rod, trade) for number, panel in owners]
    overlap = lead.rod.overlap.mm if lead.rod.overlap else 0.0
    ways = ways_of(
        movers,
        (),
        0.0,
        sum(axis.long for axis in axes),
        rings=True,
        parks_outside=False,
        ring_mm=defaults.parked_ring_mm,
        carried=(True, True),
        overlap_mm=overlap,
    )
    mine: list[Part] = []
    guests: list[Guest] = []
    for (number, panel), way in zip(owners, ways, strict=True):
        part = axes[own].part(way, start)
        if number == own:
            mine.append(part)
        elif max(part.here) > _LEAST_MM:
            layer = there[number]
            guests.append(Guest((*legs[number].ref, layer.id), layer, panel, part))
    return Passing(lead.id, tuple(mine), tuple(guests))


def _wide(span: Span) -> float:
    return span[1] - span[0]


class _Axis(Struct, frozen=True, gc=False):
    """One leg along the track: where it runs on its wall, and what the bends at its ends do to it.

    ``long`` is its length with half of the arc of each bend in place of the way to the mitre. ``bends`` are tangent and
    half of the arc at its left and right end, nothing where it is not bent.
    """

    span: Span
    long: float
    bends: tuple[Span, Span]

    def place(self, u: float) -> float:
        """The place on the wall of a point ``u`` from where the leg begins; cloth in a bend lies before its tangent."""
        (left_tangent, left_arc), (right_tangent, right_arc) = self.bends
        u = min(max(u, 0.0), self.long)
        if self.long <= left_arc + right_arc:
            # No straight is left between its bends; that is told of elsewhere.
            return self.span[0] + _wide(self.span) * (u / self.long if self.long > 0 else 0.0)
        if u < left_arc:
            return self.span[0] + left_tangent * u / left_arc
        if u > self.long - right_arc:
            return self.span[1] - right_tangent * (self.long - u) / right_arc
        return self.span[0] + left_tangent + u - left_arc

    def part(self, way: Way, start: float) -> Part:
        """The part of a way along the whole track that is on this leg, which begins ``start`` from the track's left end."""

        def on(span: Span) -> Span:
            return self.place(span[0] - start), self.place(span[1] - start)

        def covers(span: Span) -> float:
            return max(min(span[1] - start, self.long) - max(span[0] - start, 0.0), 0.0)

        here = Way(way.side, on(way.travel), on(way.open), on(way.closed), on(way.drawn))
        spans = way.open, way.closed, way.drawn
        opened, closed, drawn = map(covers, spans)
        return Part(here, (opened, closed, drawn), (_wide(way.open), _wide(way.closed), _wide(way.drawn)))


def _axis(leg: Leg, rod: Rod, lead: Rod) -> _Axis:
    span = ends_of(replace(rod, projection=lead.projection), leg.openings, leg.overhead.width_mm, leg.overhead.angles)
    radius = 0.0 if lead.bend is None else lead.bend.mm
    bends = []
    for held, angle in zip((rod.left, rod.right), leg.overhead.angles, strict=True):
        tangent, arc = bend_of(radius, angle) if held.hold == AROUND else (0.0, 0.0)
        bends.append((tangent, arc / 2))
    long = _wide(span) + sum(half - tangent for tangent, half in bends)
    return _Axis(span, max(long, 0.0), (bends[0], bends[1]))


def _mover(layer: Layer, panel: Panel, lead: Rod, trade: Trade) -> Mover:
    heading = row_of(trade.headings, layer.heading, "heading")
    body = row_of(trade.bodies, layer.fabric.body, "body")
    flat = panel.flat_width.mm * panel.count
    packet = lead.packet.stack.mm if lead.packet.stack else None
    stack = stack_of(flat, heading, body, panel.stack.mm if panel.stack else None, packet)
    return Mover(panel.parks, flat, stack.typical_mm, False, panel.drawn.mm if panel.drawn else None)


def guests_of(
    passing: Passing,
    covered: tuple[Placed, ...],
    brackets: tuple[BracketOut, ...],
    support: SupportOut,
    facts: WallFacts,
    defaults: Defaults,
    trade: Trade,
) -> tuple[PanelOut, ...]:
    """The guests of a layer set out over its own floor; each keeps the ref of the panel that it is part of."""
    found: list[PanelOut] = []
    for guest in passing.guests:
        layer = replace(guest.layer, panels=(guest.panel,), tie=None)
        making = making_of(layer, covered, brackets, support, defaults, trade)
        if making is None:
            continue
        made = panels_of(guest.ref, layer, replace(making, ways=(guest.part.way,)), support, facts, defaults)
        found.extend(_part(replace(panel, fullness=None), guest.part) for panel in made)
    return tuple(found)


def along_all(making: Making, passing: Passing) -> Making:
    """What a layer's own panels are and where they go, where the track goes on: each as it lies along all of that."""
    if len(passing.own) != len(making.ways):
        return making
    ways = []
    for alone, part in zip(making.ways, passing.own, strict=True):
        way = part.way
        ways.append(Way(way.side, way.travel, way.open, way.closed, way.drawn, alone.cannot_pass))
    return replace(making, ways=tuple(ways))


def closed_on(panels: tuple[PanelOut, ...], passing: Passing) -> tuple[PanelOut, ...]:
    """A layer's own panels with the fullness that is left of them where they close on round the corner."""
    if len(passing.own) != len(panels):
        return panels
    made: list[PanelOut] = []
    for panel, part in zip(panels, passing.own, strict=True):
        closed = part.whole[1]
        is_drawn_out = closed > panel.stack_low_mm + TOUCH_MM
        made.append(replace(_part(panel, part), fullness=panel.flat_width_mm / closed if is_drawn_out else None))
    return tuple(made)


def _part(panel: PanelOut, part: Part) -> PanelOut:
    """A panel of which only a part may be before this wall."""
    count = panel.fold_count
    opened, closed, drawn = (
        here / all_mm if all_mm > 0 else 1.0 for here, all_mm in zip(part.here, part.whole, strict=True)
    )
    return replace(
        panel,
        on_mm=part.whole[1] - part.here[1],
        on_open_mm=part.whole[0] - part.here[0],
        shares=(opened, closed, drawn),
        fold_depth_mm=fold_depth(panel.flat_width_mm / count, part.whole[1] / count),
    )
