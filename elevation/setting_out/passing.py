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
from elevation.setting_out.panels import making_of, panels_of
from elevation.setting_out.support import ends_of
from elevation.setting_out.travel import Mover, Way, ways_of
from elevation.trade.folds import fold_depth
from elevation.trade.mitres import bend as bend_of
from elevation.trade.model import Trade
from elevation.trade.stack import stack_of
from elevation.trade.tables import row_of

_LEAST_MM = 1.0


class Leg(Struct, frozen=True, gc=False):
    """One leg of a run: its treatment, and what its rod's ends follow from."""

    ref: Ref
    treatment: Treatment
    openings: tuple[OpeningOut, ...]
    overhead: Overhead


class Guest(Struct, frozen=True, gc=False):
    """What of another leg's panel comes before a wall: the layer it hangs in, and its way here.

    ``whole`` is how much all of it covers, closed and as drawn, mm.
    """

    ref: Ref
    layer: Layer
    panel: Panel
    side: str
    closed: Span
    drawn: Span
    whole: Span


class Passing(Struct, frozen=True, gc=False):
    """What passes the corners of one layer: how much farther its own panels reach, and whose cloth comes here.

    ``on`` is for each panel how much it covers beyond this wall, closed and as drawn, mm.
    """

    layer: str
    on: tuple[Span, ...]
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
    spans = [_span(leg, layer.rod, lead.rod) for leg, layer in zip(legs, there, strict=True)]
    longs = [_long(leg, layer.rod, span, lead.rod.bend.mm) for leg, layer, span in zip(legs, there, spans, strict=True)]
    starts = [sum(longs[:number]) for number in range(len(longs))]
    owners = [(0, panel) for panel in first.panels] + [(len(legs) - 1, panel) for panel in last.panels]
    movers = [_mover(there[number], panel, lead.rod, trade) for number, panel in owners]
    overlap = lead.rod.overlap.mm if lead.rod.overlap else 0.0
    ways = ways_of(
        movers,
        (),
        0.0,
        sum(longs),
        rings=True,
        parks_outside=False,
        ring_mm=defaults.parked_ring_mm,
        carried=(True, True),
        overlap_mm=overlap,
    )
    on: list[Span] = []
    guests: list[Guest] = []
    for (number, panel), way in zip(owners, ways, strict=True):
        whole = way.closed[1] - way.closed[0], way.drawn[1] - way.drawn[0]
        if number == own:
            on.append((max(whole[0] - longs[own], 0.0), max(whole[1] - longs[own], 0.0)))
            continue

        def here(span: Span) -> Span:
            low, high = (min(max(u - starts[own], 0.0), longs[own]) for u in span)
            scale = (spans[own][1] - spans[own][0]) / longs[own] if longs[own] > 0 else 0.0
            return spans[own][0] + low * scale, spans[own][0] + high * scale

        closed = here(way.closed)
        if closed[1] - closed[0] > _LEAST_MM:
            layer = there[number]
            ref = (*legs[number].ref, layer.id)
            guests.append(Guest(ref, layer, panel, way.side, closed, here(way.drawn), whole))
    return Passing(lead.id, tuple(on), tuple(guests)) if guests or any(one[0] for one in on) else None


def _span(leg: Leg, rod: Rod, lead: Rod) -> Span:
    rod = replace(rod, projection=lead.projection)
    return ends_of(rod, leg.openings, leg.overhead.width_mm, leg.overhead.angles)


def _long(leg: Leg, rod: Rod, span: Span, radius_mm: float) -> float:
    """How long a leg's axis is, with half of the arc of each bend in place of the way to the mitre."""
    long = span[1] - span[0]
    for held, angle in zip((rod.left, rod.right), leg.overhead.angles, strict=True):
        if held.hold == AROUND:
            tangent, arc = bend_of(radius_mm, angle)
            long -= tangent - arc / 2
    return max(long, 0.0)


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
        edge = guest.closed[0] if guest.side == "left" else guest.closed[1]
        way = Way(guest.side, guest.closed, (edge, edge), guest.closed, guest.drawn)
        made = panels_of(guest.ref, layer, replace(making, ways=(way,)), support, facts, defaults)
        found.extend(_part(replace(panel, fullness=None), guest.whole) for panel in made)
    return tuple(found)


def closed_on(panels: tuple[PanelOut, ...], passing: Passing) -> tuple[PanelOut, ...]:
    """A layer's own panels with the fullness that is left of them where they close on round the corner."""
    if len(passing.on) != len(panels):
        return panels
    made: list[PanelOut] = []
    for panel, (closed, drawn) in zip(panels, passing.on, strict=True):
        if closed <= 0:
            made.append(panel)
            continue
        whole = panel.closed[1] - panel.closed[0] + closed, panel.drawn[1] - panel.drawn[0] + drawn
        made.append(replace(_part(panel, whole), fullness=panel.flat_width_mm / whole[0]))
    return tuple(made)


def _part(panel: PanelOut, whole: Span) -> PanelOut:
    """A panel of which only a part is before this wall: ``whole`` is all that it covers, closed and as drawn."""
    count = panel.fold_count
    return replace(
        panel,
        on_mm=max(whole[0] - (panel.closed[1] - panel.closed[0]), 0.0),
        on_drawn_mm=max(whole[1] - (panel.drawn[1] - panel.drawn[0]), 0.0),
        fold_depth_mm=fold_depth(panel.flat_width_mm / count, whole[0] / count),
    )
